/** How hard it rains while water gathers. */
import type { Storm } from "../document/schema";
import { intensityFor } from "../drainage";

/** Where a time lies against the rows of the table: beyond its shortest or longest storm, whose row is then taken. */
export function beyondTable(
  table: Storm["table"],
  time: number,
): "shorter than its rows" | "longer than its rows" | null {
  if (table.length === 0) return null;
  const durations = table.map(({ duration }) => duration);
  if (time < Math.min(...durations) - 1) return "shorter than its rows";
  return time > Math.max(...durations) + 1 ? "longer than its rows" : null;
}

/** Whether a longer storm rains harder than a shorter one, as in no table. */
export function rainRises(table: Storm["table"]): boolean {
  const rows = [...table].sort((a, b) => a.duration - b.duration);
  return rows.some(({ intensity }, i) => i > 0 && intensity > (rows[i - 1]?.intensity ?? intensity));
}

/** m/s for a time, s: from the local table where one is typed, else the one figure; null while none is. */
export function rainFor(
  { table, intensity }: Pick<Storm, "table" | "intensity">,
  time: number,
): number | null {
  return intensityFor(table, time) ?? intensity;
}
