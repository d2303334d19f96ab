/** What the ground is at a place of the plan, as it is and finished, and whether it was measured. Metres; gradients rise over run. */
import type { Point, Project } from "../document/schema";
import { containsPoint, distanceToSegment } from "../geometry";
import { groundAt } from "../terrain";
import type { GroundGrid, Results } from "./results";

export interface PlaceReading {
  readonly inside: boolean;
  readonly guessed: boolean;
  /** The ground as it is, m. */
  readonly ground: number;
  /** Finished ground, or the floor inside the walls; null before there is a building. */
  readonly finished: number | null;
  /** Gradient of what water will run on: finished ground where there is one, else the ground; null where unknown. */
  readonly gradient: { readonly gx: number; readonly gy: number } | null;
}

/** Reads a place; null where there is no ground yet or the place lies beyond its reach. */
export function readPlace(
  results: Results,
  project: Project,
  at: Point,
  floor: number | null,
): PlaceReading | null {
  const ground = results.ground ? groundAt(results.ground, at[0], at[1]) : null;
  if (!ground) return null;
  const outline = project.building?.outline;
  const inside = outline !== undefined && containsPoint(outline, at[0], at[1]) && !onWall(outline, at);
  const flat = { inside, guessed: ground.guessed, ground: ground.z };
  if (inside) return { ...flat, finished: floor, gradient: null };
  const gradient = { gx: ground.gx, gy: ground.gy };
  if (!results.surface) return { ...flat, finished: null, gradient };
  const finished = finishedAt(results.surface, at);
  // Beyond the grid no earth is moved.
  if (!finished) return { ...flat, finished: ground.z, gradient };
  return { ...flat, finished: finished.z, gradient: finished.gradient };
}

/** Nearer to a wall's line than this, m, a place is on it: what is read there is the ground before the wall. */
const wallLine = 0.005;

function onWall(outline: readonly Point[], [x, y]: Point): boolean {
  return outline.some(
    (a, i) => distanceToSegment(a, outline[(i + 1) % outline.length] as Point, x, y) < wallLine,
  );
}

/**
 * Finished ground at a place outside the walls, between the centres of the grid's cells.
 *
 * Method  bilinear; cells inside the walls lend no height, so beside a wall the nearest cell outside decides.
 *         Null beyond the grid.
 */
function finishedAt(
  { grid, finished, inside }: GroundGrid,
  [x, y]: Point,
): { z: number; gradient: PlaceReading["gradient"] } | null {
  const u = (x - grid.x0) / grid.cell - 0.5;
  const v = (y - grid.y0) / grid.cell - 0.5;
  const i = Math.floor(u);
  const j = Math.floor(v);
  if (i < 0 || j < 0 || i + 1 >= grid.columns || j + 1 >= grid.rows) return null;
  const [s, t] = [u - i, v - j];
  const at = (di: number, dj: number) => (j + dj) * grid.columns + i + di;
  const corners = [at(0, 0), at(1, 0), at(0, 1), at(1, 1)];
  const open = corners.filter((index) => inside[index] === 0);
  if (open.length === 0) return null;
  if (open.length < 4) {
    const nearest = nearestCorner(corners, open, s, t);
    return { z: finished[nearest] as number, gradient: null };
  }
  const [sw, se, nw, ne] = corners.map((index) => finished[index] as number) as [
    number,
    number,
    number,
    number,
  ];
  const z = sw * (1 - s) * (1 - t) + se * s * (1 - t) + nw * (1 - s) * t + ne * s * t;
  const gx = ((se - sw) * (1 - t) + (ne - nw) * t) / grid.cell;
  const gy = ((nw - sw) * (1 - s) + (ne - se) * s) / grid.cell;
  return { z, gradient: { gx, gy } };
}

function nearestCorner(corners: readonly number[], open: readonly number[], s: number, t: number): number {
  const off = [s + t, 1 - s + t, s + 1 - t, 2 - s - t];
  return open.reduce((best, index) =>
    (off[corners.indexOf(index)] as number) < (off[corners.indexOf(best)] as number) ? index : best,
  );
}
