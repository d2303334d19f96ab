/** The floor's step by key: half an inch, a twentieth of a foot, or five millimetres. */
import type { Display } from "../document";
import { FOOT, formatLength, INCH } from "../units";

export function floorStep({ length, rounding }: Display): { readonly step: number; readonly words: string } {
  const inches = length === "ft-in" || length === "in";
  const step = inches ? INCH / 2 : length === "ft" ? FOOT / 20 : 0.005;
  return { step, words: formatLength(step, length, rounding) };
}
