/** A rule of the floor band against the present floor: kept or not, by how much, in words. */
import { allowedHeights, hasBearing, limitTolerance, standingIn } from "./floor-standing";
import type { BandRule, HeightSpan } from "./results";
import type { Words } from "./words";

type Lengths = Pick<Words, "length">;

/** "aside": not kept at any floor, so that it isn't the floor's to mend. */
export type LimitState = "kept" | "near" | "broken" | "aside" | "silent" | "off";

export interface Limit {
  readonly state: LimitState;
  /** "2″ to spare", "3″ too high". */
  readonly margin: string;
}

/** A rule kept by less than this is near, m. */
const nearness = 0.0254;
export function limitOf(rule: BandRule, floor: number, words: Lengths): Limit {
  if (!rule.on) return { state: "off", margin: "switched off" };
  if (rule.atAnyFloor === "broken") return { state: "aside", margin: "at no floor" };
  if (!hasBearing(rule)) return { state: "silent", margin: "" };
  const { way, spare } = standingIn(allowedHeights(rule), floor);
  if (spare < -limitTolerance) {
    // Less than the plan's rounding shows is no "0″ too low".
    const by = words.length(-spare) === words.length(0) ? "a hair" : words.length(-spare);
    return { state: "broken", margin: `${by} too ${way}` };
  }
  if (spare === Number.POSITIVE_INFINITY) return { state: "kept", margin: "" };
  const state = spare < nearness ? "near" : "kept";
  return { state, margin: spare < limitTolerance ? "just kept" : `${words.length(spare)} to spare` };
}

const order: readonly LimitState[] = ["broken", "near", "kept", "aside", "silent", "off"];

/** Rules that matter most first; within one state the tighter one first. */
export function byTightness(rules: readonly BandRule[], floor: number, words: Lengths): BandRule[] {
  const rank = (rule: BandRule) => order.indexOf(limitOf(rule, floor, words).state);
  const spare = (rule: BandRule) =>
    hasBearing(rule) ? Math.abs(standingIn(allowedHeights(rule), floor).spare) : Number.POSITIVE_INFINITY;
  return [...rules].sort((a, b) => rank(a) - rank(b) || closer(spare(a), spare(b)));
}

/** Order of two distances; two that are endless are alike. */
function closer(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

/** Whether a floor lies in one of the spans that every limit allows. */
export function isWithin(spans: readonly HeightSpan[], floor: number): boolean {
  return spans.some(([low, high]) => (low === null || floor >= low) && (high === null || floor <= high));
}

/** A limit's height on the plan's rounding step, m, on the side that keeps it; 0: as it is. */
export function roundedInto(height: number, way: "up" | "down", step: number): number {
  if (step <= 0) return height;
  const steps = Number((height / step).toFixed(6));
  return (way === "up" ? Math.ceil(steps) : Math.floor(steps)) * step;
}

/**
 * "99.2 m to 101.4 m", "102 m or more"; empty where nothing bounds it. With the plan's rounding step, m, the ends are told
 * inwards, so that what is read and typed keeps the limits.
 */
export function spanWords(span: HeightSpan, { length }: Lengths, step = 0): string {
  const low = span[0] === null ? null : roundedInto(span[0], "up", step);
  const high = span[1] === null ? null : roundedInto(span[1], "down", step);
  if (low === null) return high === null ? "" : `${length(high)} or less`;
  return high === null ? `${length(low)} or more` : `${length(low)} to ${length(high)}`;
}
