/** The band of floor heights: what all rules that are on allow together. Heights in metres. */
import type { BandClash, BandResult, BandRule, HeightSpan } from "../solve/results";

/** Heights this near to a limit still keep it, m: rounding of a typed height. */
export const limitTolerance = 1e-6;

const everywhere: HeightSpan = [null, null];

export function floorBand(rules: readonly BandRule[]): BandResult {
  const bearing = rules.filter((rule) => rule.on && hasBearing(rule));
  const low = tightest(bearing, lowestAllowed, (a, b) => a > b);
  const high = tightest(bearing, highestAllowed, (a, b) => a < b);
  const apart = low && high && low.height > high.height + limitTolerance;
  const spans = apart ? [] : bearing.reduce<readonly HeightSpan[]>(narrowed, [everywhere]);
  const clash: BandClash | null = apart
    ? {
        low: low.rule,
        high: high.rule,
        lowest: low.height,
        highest: high.height,
        gap: low.height - high.height,
      }
    : null;
  const [first, last] = [spans[0], spans[spans.length - 1]];
  return {
    low: first ? first[0] : (low?.height ?? null),
    high: last ? last[1] : (high?.height ?? null),
    spans,
    lowRule: endRule(bearing, first?.[0] ?? low?.height, 0) ?? low?.rule ?? null,
    highRule: endRule(bearing, last?.[1] ?? high?.height, 1) ?? high?.rule ?? null,
    empty: spans.length === 0,
    clash,
    rules,
  };
}

/** Whether the floor decides if a rule is kept. */
export function hasBearing({ height, heights }: BandRule): boolean {
  return height !== null || heights !== undefined;
}

/** The heights that a rule allows; all where it has no bearing. */
export function allowedHeights(rule: BandRule): readonly HeightSpan[] {
  if (rule.kind === "within") return rule.heights ?? [everywhere];
  if (rule.height === null) return [everywhere];
  return [rule.kind === "notBelow" ? [rule.height, null] : [null, rule.height]];
}

/** Whether a floor height keeps one rule; a rule without bearing is kept by any. */
export function keepsRule(rule: BandRule, floor: number): boolean {
  return !rule.on || allowedHeights(rule).some((span) => holds(span, floor));
}

function holds([low, high]: HeightSpan, floor: number): boolean {
  return (low === null || floor >= low - limitTolerance) && (high === null || floor <= high + limitTolerance);
}

/** A floor against spans of heights: too low, too high, or within, and by how much. */
export interface Standing {
  readonly way: "low" | "high";
  /** To the nearest end, m: negative outside the spans; Infinity where no end bounds it. */
  readonly spare: number;
  readonly end: number | null;
}

/** How a floor stands to spans; where there are none, anything is too high by nothing known. */
export function standingIn(spans: readonly HeightSpan[], floor: number): Standing {
  const held = spans.find((span) => holds(span, floor));
  const nearest = (ends: readonly Standing[]) =>
    ends.reduce((a, b) => (Math.abs(b.spare) < Math.abs(a.spare) ? b : a), nowhereNear);
  const ends = (held ? [held] : spans).flatMap(([low, high]): Standing[] => [
    ...(low === null || (!held && floor > low)
      ? []
      : [{ way: "low" as const, spare: floor - low, end: low }]),
    ...(high === null || (!held && floor < high)
      ? []
      : [{ way: "high" as const, spare: high - floor, end: high }]),
  ]);
  return nearest(ends);
}

const nowhereNear: Standing = { way: "high", spare: Number.POSITIVE_INFINITY, end: null };

/** Where a floor lies outside the band: which way and by how much. Null inside it, or where there is no band. */
export function outsideBand(
  { spans, empty }: Pick<BandResult, "spans" | "empty">,
  floor: number,
): { readonly way: "low" | "high"; readonly by: number; readonly end: number | null } | null {
  if (empty || spans.some((span) => holds(span, floor))) return null;
  const { way, spare, end } = standingIn(spans, floor);
  return { way, by: -spare, end };
}

/**
 * The floor that the band allows nearest to one, m: itself inside the band. Beyond an end it goes to the next whole
 * `step` inside, or into the middle of a span that holds none. A band without room leaves it as it is.
 */
export function nearestWithin(
  band: Pick<BandResult, "spans" | "empty">,
  floor: number,
  step: number,
): number {
  const outside = outsideBand(band, floor);
  if (!outside || outside.end === null) return floor;
  const { way, end } = outside;
  const span = band.spans.find((each) => each[way === "low" ? 0 : 1] === end);
  if (!span) return floor;
  const whole = way === "low" ? Math.ceil(end / step - 1e-9) * step : Math.floor(end / step + 1e-9) * step;
  if (holds(span, whole)) return whole;
  const [low, high] = span;
  return ((low ?? end) + (high ?? end)) / 2;
}

/** The rule at the end that a floor outside the band lies beyond; null inside it. */
export function passedRule(band: BandResult, floor: number): BandRule | null {
  const outside = outsideBand(band, floor);
  const bearing = band.rules.filter((rule) => rule.on && hasBearing(rule));
  return outside && endRule(bearing, outside.end, outside.way === "low" ? 0 : 1);
}

interface Limit {
  readonly rule: BandRule;
  readonly height: number;
}

function tightest(
  rules: readonly BandRule[],
  end: (rule: BandRule) => number | null,
  tighter: (a: number, b: number) => boolean,
): Limit | null {
  let found: Limit | null = null;
  for (const rule of rules) {
    const height = end(rule);
    if (height !== null && (found === null || tighter(height, found.height))) found = { rule, height };
  }
  return found;
}

const lowestAllowed = (rule: BandRule) => allowedHeights(rule)[0]?.[0] ?? null;
const highestAllowed = (rule: BandRule) => allowedHeights(rule).at(-1)?.[1] ?? null;

/** The rule whose limit is this end. */
function endRule(rules: readonly BandRule[], height: number | null | undefined, end: 0 | 1): BandRule | null {
  if (height === null || height === undefined) return null;
  return rules.find((rule) => allowedHeights(rule).some((span) => span[end] === height)) ?? null;
}

/** What is left of some spans under one more rule. */
function narrowed(spans: readonly HeightSpan[], rule: BandRule): readonly HeightSpan[] {
  return spans.flatMap((one) => allowedHeights(rule).flatMap((other) => meet(one, other)));
}

function meet([a, b]: HeightSpan, [c, d]: HeightSpan): HeightSpan[] {
  const low = a === null ? c : c === null ? a : Math.max(a, c);
  const high = b === null ? d : d === null ? b : Math.min(b, d);
  return low === null || high === null || low <= high + limitTolerance ? [[low, high]] : [];
}
