import { INCH } from "./constants";
import type { LengthNotation } from "./notation";

/** How far an arrow key moves a thing where nobody said otherwise, m: an inch, or 10 mm. First principles. */
export function usualNudge(notation: LengthNotation): number {
  return notation === "ft-in" || notation === "in" || notation === "ft" ? INCH : 0.01;
}
