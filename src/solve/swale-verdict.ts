/** What a swale does, in the same words everywhere. */
import { levelBed } from "../drainage";
import type { SwaleResult } from "./results";
import type { Words } from "./words";

export type SwaleVerdict = "drains" | "falls too little" | "doesn't drain";

/** A fall this much under the rule still keeps it; a bed this far under its outlet's ground still comes out, m. */
const sameFall = 1e-9;
const outletTolerance = 0.02;

/**
 * A bed that is level, rises or can't come out doesn't drain; one that only falls less than the rule falls too little.
 *
 * Units   `leastFall` is the user's rule, rise over run.
 */
export function swaleVerdict(swale: SwaleResult, leastFall: number): SwaleVerdict {
  if (swale.drains) return "drains";
  const outlet = swale.stations[swale.stations.length - 1];
  const buried = outlet !== undefined && outlet.existing - outlet.bed > outletTolerance;
  const tooFlat = swale.leastFall >= levelBed && swale.leastFall < leastFall - sameFall;
  return tooFlat && !buried ? "falls too little" : "doesn't drain";
}

/** What the bed does where it falls least: "falls 1.2 %", "is level", "rises 0.4 %". */
export function leastFallWords(
  { leastFall }: Pick<SwaleResult, "leastFall">,
  words: Pick<Words, "slope">,
): string {
  if (Math.abs(leastFall) < levelBed) return "is level";
  return `${leastFall > 0 ? "falls" : "rises"} ${words.slope(Math.abs(leastFall))}`;
}
