/** The limit that a floor breaks. */
import { passedRule } from "../advice";
import type { Results } from "./results";

/** Name of the rule at the end of the band beyond which the floor lies; null where it keeps the band. */
export function limitBroken({ band, floor }: Pick<Results, "band" | "floor">): string | null {
  return floor === null ? null : (passedRule(band, floor)?.name ?? null);
}
