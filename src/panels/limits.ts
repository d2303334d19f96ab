/** A rule of the floor band against the present floor: kept or not, by how much, in words. */
import type { BandRule } from "../solve/results";
import type { Notation } from "./notation";

export type LimitState = "kept" | "near" | "broken" | "silent" | "off";

export interface Limit {
  readonly state: LimitState;
  /** "2″ to spare", "3″ too high". */
  readonly margin: string;
}

/** A rule kept by less than this is near, m. */
const nearness = 0.0254;
/** Rounding of a typed height. */
const tolerance = 1e-6;

export function limitOf(rule: BandRule, floor: number, notation: Notation): Limit {
  if (!rule.on) return { state: "off", margin: "switched off" };
  if (rule.height === null) return { state: "silent", margin: "" };
  const spare = rule.kind === "notBelow" ? floor - rule.height : rule.height - floor;
  if (spare < -tolerance)
    return {
      state: "broken",
      margin: `${notation.length(-spare)} too ${rule.kind === "notBelow" ? "low" : "high"}`,
    };
  const state = spare < nearness ? "near" : "kept";
  return { state, margin: spare < tolerance ? "just kept" : `${notation.length(spare)} to spare` };
}

const order: readonly LimitState[] = ["broken", "near", "kept", "silent", "off"];

/** Rules that matter most first; within one state the tighter one first. */
export function byTightness(rules: readonly BandRule[], floor: number, notation: Notation): BandRule[] {
  const rank = (rule: BandRule) => order.indexOf(limitOf(rule, floor, notation).state);
  const spare = (rule: BandRule) => (rule.height === null ? Infinity : Math.abs(rule.height - floor));
  return [...rules].sort((a, b) => rank(a) - rank(b) || spare(a) - spare(b));
}
