/** The limit that a floor breaks. */
import { keepsRule, passedRule } from "../advice";
import type { Results } from "./results";

/**
 * Name of the rule at the end of the band beyond which the floor lies; where no floor keeps them all, of one that this
 * floor breaks. Null where it keeps every limit.
 */
export function limitBroken({ band, floor }: Pick<Results, "band" | "floor">): string | null {
  if (floor === null) return null;
  if (!band.empty) return passedRule(band, floor)?.name ?? null;
  const broken = band.rules.find((rule) => !keepsRule(rule, floor));
  return broken?.name ?? band.clash?.low.name ?? null;
}
