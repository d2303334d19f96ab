/** The band of floor heights: what all rules that are on allow together. Heights in metres. */
import type { BandClash, BandResult, BandRule } from "../solve/results";

/** Heights this near to a limit still keep it, m: rounding of a typed height. */
export const limitTolerance = 1e-6;

export function floorBand(rules: readonly BandRule[]): BandResult {
  const low = limit(rules, "notBelow", Math.max);
  const high = limit(rules, "notAbove", Math.min);
  const clash = clashOf(rules, low, high);
  return { low, high, empty: clash !== null, clash, rules };
}

/** The two rules at the ends of the band where the lower end lies above the upper one. */
function clashOf(rules: readonly BandRule[], low: number | null, high: number | null): BandClash | null {
  if (low === null || high === null || low <= high + limitTolerance) return null;
  const at = (kind: BandRule["kind"], height: number) =>
    rules.find((rule) => rule.on && rule.kind === kind && rule.height === height);
  const [lowest, highest] = [at("notBelow", low), at("notAbove", high)];
  return lowest && highest ? { low: lowest, high: highest, gap: low - high } : null;
}

/** Whether a floor height keeps one rule; a rule without bearing is kept by any. */
export function keepsRule(rule: BandRule, floor: number): boolean {
  if (!rule.on || rule.height === null) return true;
  return rule.kind === "notBelow"
    ? floor >= rule.height - limitTolerance
    : floor <= rule.height + limitTolerance;
}

function limit(
  rules: readonly BandRule[],
  kind: BandRule["kind"],
  tighter: (a: number, b: number) => number,
): number | null {
  return rules.reduce<number | null>((found, rule) => {
    if (!rule.on || rule.kind !== kind || rule.height === null) return found;
    return found === null ? rule.height : tighter(found, rule.height);
  }, null);
}
