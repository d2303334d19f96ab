/** How hard it rains while water gathers. */
import type { Storm } from "../document/schema";
import { intensityFor } from "../drainage";

/** m/s for a time, s: from the local table where one is typed, else the one figure; null while none is. */
export function rainFor(
  { table, intensity }: Pick<Storm, "table" | "intensity">,
  time: number,
): number | null {
  return intensityFor(table, time) ?? intensity;
}
