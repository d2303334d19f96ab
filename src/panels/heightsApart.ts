import type { Breakline } from "../document";
import { oncePer } from "../solve/once-per";
import type { LevelledPoint } from "../solve/results";

/** From the highest measured place of the ground to the lowest, shots and breaklines, m; null: none has a height. */
export function groundApart(
  points: readonly LevelledPoint[],
  breaklines: readonly Pick<Breakline, "points">[],
): number | null {
  let [low, high] = shotHeights(points);
  for (const line of breaklines)
    for (const [, , height] of line.points) {
      if (height === null) continue;
      low = Math.min(low, height);
      high = Math.max(high, height);
    }
  return high < low ? null : high - low;
}

/** Lowest and highest ground shot; a mark and a check aren't ground. */
const shotHeights = oncePer((points: readonly LevelledPoint[]): readonly [low: number, high: number] => {
  let [low, high] = [Infinity, -Infinity];
  for (const { kind, height, at } of points) {
    if (kind !== "ground" || height === null || at === null) continue;
    low = Math.min(low, height);
    high = Math.max(high, height);
  }
  return [low, high];
});
