/** Where on a wall a door would go. */
import type { Building, Point, Project } from "../../../document";
import { nearestOnRing } from "../../../geometry";
import { wallEnds, wallName } from "../../select/places";
import { roundTo } from "../../snap/step";

export interface WallPlace {
  readonly wall: number;
  readonly name: string;
  /** From the wall's first corner to the door's near edge, m. */
  readonly offset: number;
  readonly width: number;
  readonly length: number;
  readonly edges: readonly [Point, Point];
  readonly centred: boolean;
}

export interface WallAim {
  readonly at: Point;
  /** How near the wall must be, and how near the middle catches, m. */
  readonly reach: number;
  readonly catches: number;
  readonly step: number;
  readonly free: boolean;
}

/** The place on the nearest wall for a door of this width, or null where no wall is near or long enough. */
export function placeOnWall(project: Project, width: number, aim: WallAim): WallPlace | null {
  const outline = project.building?.outline;
  if (!outline) return null;
  const nearest = nearestOnRing(outline, aim.at[0], aim.at[1]);
  const ends = wallEnds(outline, nearest.segment);
  if (!ends || nearest.distance > aim.reach) return null;
  const length = Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
  if (width > length) return null;
  return {
    ...slidTo(ends, length, width, nearest.t * length, aim),
    wall: nearest.segment,
    name: wallName(outline, nearest.segment),
  };
}

/** How far along a wall the middle of its longest piece without doors and windows lies, m; null where none is so wide. */
export function freeMiddle(
  { outline, doors, windows }: Building,
  wall: number,
  width: number,
): number | null {
  const ends = wallEnds(outline, wall);
  if (!ends) return null;
  const length = Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
  const taken = [...doors, ...windows].filter((each) => each.wall === wall);
  taken.sort((a, b) => a.offset - b.offset);
  let best: readonly [number, number] = [0, 0];
  let from = 0;
  for (const { offset, width: wide } of [...taken, { offset: length, width: 0 }]) {
    if (offset - from > best[1] - best[0] + 1e-9) best = [from, offset];
    from = Math.max(from, offset + wide);
  }
  return best[1] - best[0] < width ? null : (best[0] + best[1]) / 2;
}

/** A door of this width with its middle near `middle` along the wall. */
export function slidTo(
  [a, b]: readonly [Point, Point],
  length: number,
  width: number,
  middle: number,
  aim: Pick<WallAim, "catches" | "step" | "free">,
): Omit<WallPlace, "wall" | "name"> {
  const most = length - width;
  const centred = !aim.free && Math.abs(middle - length / 2) < aim.catches;
  const wanted = centred ? most / 2 : aim.free ? middle - width / 2 : roundTo(middle - width / 2, aim.step);
  const offset = Math.min(most, Math.max(0, wanted));
  const along = (s: number): Point => [
    a[0] + ((b[0] - a[0]) * s) / length,
    a[1] + ((b[1] - a[1]) * s) / length,
  ];
  return { offset, width, length, edges: [along(offset), along(offset + width)], centred };
}
