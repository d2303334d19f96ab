/** The limit that a floor breaks. */
import type { Results } from "./results";

/** A rounding unit of height is not a broken limit. */
const slack = 1e-6;

/** Name of the rule at the end of the band beyond which the floor lies; null where it keeps the band. */
export function limitBroken({ band, floor }: Pick<Results, "band" | "floor">): string | null {
  if (floor === null) return null;
  const over = band.high !== null && floor > band.high + slack;
  const under = band.low !== null && floor < band.low - slack;
  if (!over && !under) return null;
  const limit = over ? band.high : band.low;
  return band.rules.find(({ on, height }) => on && height === limit)?.name ?? null;
}
