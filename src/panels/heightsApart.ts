import { oncePer } from "../solve/once-per";
import type { LevelledPoint } from "../solve/results";

/** From the highest measured ground shot to the lowest, m; a mark and a check aren't ground. Null: none has a height. */
export const heightsApart = oncePer((points: readonly LevelledPoint[]): number | null => {
  let [low, high] = [Infinity, -Infinity];
  for (const { kind, height, at } of points) {
    if (kind !== "ground" || height === null || at === null) continue;
    low = Math.min(low, height);
    high = Math.max(high, height);
  }
  return high < low ? null : high - low;
});
