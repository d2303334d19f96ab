/** Sizes that no such job has: they come of a slip of unit or finger, and nothing could be drawn of them. */
import type { Project } from "../schema";

/** Longest building, m, and how far its floor may stand off the first mark, m. Our own choice. */
const longestBuilding = 1000;
const farthestFloor = 300;

/** Why a plan can't become like this, in words; null where it can. What it was already is left alone. */
export function tooLarge(before: Project, { building, survey }: Project): string | null {
  if (!building || building === before.building) return null;
  if (building.outline !== before.building?.outline && extent(building.outline) > longestBuilding)
    return "A building is at most 1,000 m (3,280 ft) long here. Was a foot or inch mark missed?";
  const mark = survey.marks[0]?.height.m;
  if (mark === undefined || building.floor === before.building?.floor) return null;
  if (Math.abs(building.floor - mark) > farthestFloor)
    return "That floor would stand more than 300 m (1,000 ft) off the mark's height. Heights are counted as the mark's is: was a unit missed?";
  return null;
}

function extent(outline: readonly (readonly [number, number])[]): number {
  const span = (axis: 0 | 1) => {
    const values = outline.map((corner) => corner[axis]);
    return Math.max(...values) - Math.min(...values);
  };
  return Math.max(span(0), span(1));
}
