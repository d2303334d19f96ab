/** The two-peg worksheet: four readings and two distances → the beam's error, in words. */
import { type PegResult, twoPegCheck } from "../../survey";
import { type LengthNotation, parseLength } from "../../units";
import type { Notation } from "../notation";

/** What is typed: readings on pegs A and B from the middle and from near A, the pegs' distance, and from A to the second stand. */
export interface Pegs {
  readonly midA: string;
  readonly midB: string;
  readonly nearA: string;
  readonly nearB: string;
  readonly apart: string;
  readonly toA: string;
}

export const noPegs: Pegs = { midA: "", midB: "", nearA: "", nearB: "", apart: "", toA: "" };

export type PegAnswer =
  | { readonly state: "empty" }
  | { readonly state: "fault"; readonly field: keyof Pegs; readonly why: string }
  | { readonly state: "found"; readonly result: PegResult };

const fields: readonly (keyof Pegs)[] = ["midA", "midB", "apart", "nearA", "nearB", "toA"];

/** The second stand is outside the pegs' middle: between them or beyond A, `toA` from A along the line away from B. */
export function pegAnswer(pegs: Pegs, reading: LengthNotation, length: LengthNotation): PegAnswer {
  const values: Partial<Record<keyof Pegs, number>> = {};
  for (const field of fields) {
    if (pegs[field].trim() === "") continue;
    const parsed = parseLength(pegs[field], field === "apart" || field === "toA" ? length : reading);
    if (!parsed.ok) return { state: "fault", field, why: parsed.message };
    values[field] = parsed.m;
  }
  const { midA, midB, nearA, nearB, apart, toA } = values;
  if (midA === undefined || midB === undefined || apart === undefined) return { state: "empty" };
  if (nearA === undefined || nearB === undefined || toA === undefined) return { state: "empty" };
  if (apart <= 0) return { state: "fault", field: "apart", why: "The pegs stand some way apart." };
  if (toA < 0 || toA >= apart / 2)
    return { state: "fault", field: "toA", why: "The second stand is nearer to A than to the middle." };
  const half = apart / 2;
  const result = twoPegCheck(
    { a: midA, b: midB, toA: half, toB: half },
    { a: nearA, b: nearB, toA, toB: apart - toA },
  );
  return result === null ? { state: "empty" } : { state: "found", result };
}

/** "⅛″ high at 100 ft", as builders say it. */
export function beamErrorWords(error: number, notation: Notation): string {
  const feet = ["ft-in", "in", "ft"].includes(notation.display.length);
  const at = feet ? 30.48 : 30;
  const off = Math.abs(error) * at;
  if (off < 0.0002) return "none that shows";
  return `${notation.reading(off)} ${error > 0 ? "high" : "low"} at ${feet ? "100 ft" : "30 m"}`;
}
