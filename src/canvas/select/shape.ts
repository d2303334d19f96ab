/**
 * Shapes under the hand: what an outline becomes when a wall or corner is pulled, or when it is turned.
 *
 * Units  metres, radians counter-clockwise. Source: first principles.
 */
import type { Point } from "../../document";
import { centroid, crossingShares, signedArea, turned } from "../../geometry";
import { turnBetween } from "../snap/snap";
import { wallEnds } from "./places";

/** Unit vector out of the building at a wall; null where the wall has no length. */
export function wallOutward(outline: readonly Point[], wall: number): Point | null {
  const ends = wallEnds(outline, wall);
  if (!ends) return null;
  const [a, b] = ends;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length === 0) return null;
  const side = signedArea(outline) >= 0 ? 1 : -1;
  return [(side * (b[1] - a[1])) / length, (-side * (b[0] - a[0])) / length];
}

/** Where a wall meets its neighbours' lines after it was moved by a vector. Null where they never meet. */
function movedWall(outline: readonly Point[], wall: number, by: Point): readonly [Point, Point] | null {
  const n = outline.length;
  const ends = wallEnds(outline, wall);
  const before = outline[(wall + n - 1) % n];
  const after = outline[(wall + 2) % n];
  if (!ends || !before || !after) return null;
  const a: Point = [ends[0][0] + by[0], ends[0][1] + by[1]];
  const b: Point = [ends[1][0] + by[0], ends[1][1] + by[1]];
  const first = crossing(before, ends[0], a, b);
  const second = crossing(ends[1], after, a, b);
  return first && second && [first, second];
}

function crossing(a: Point, b: Point, c: Point, d: Point): Point | null {
  const shares = crossingShares(a, b, c, d);
  return shares && [a[0] + shares[0] * (b[0] - a[0]), a[1] + shares[0] * (b[1] - a[1])];
}

/** A wall shorter than this is a slip of the hand, m. */
export const leastWall = 0.3;

/**
 * The outline with a wall pulled out by a distance (in, where negative); its neighbours keep their directions.
 * Null where a neighbour would shrink to nothing or turn round.
 */
export function pullWall(outline: readonly Point[], wall: number, distance: number): Point[] | null {
  const outward = wallOutward(outline, wall);
  if (!outward) return null;
  const ends = movedWall(outline, wall, [outward[0] * distance, outward[1] * distance]);
  if (!ends) return null;
  const pulled = outline.map(([x, y]): Point => [x, y]);
  pulled[wall] = ends[0];
  pulled[(wall + 1) % outline.length] = ends[1];
  const n = outline.length;
  const sound = [wall + n - 1, wall, wall + 1].every((i) => keepsDirection(outline, pulled, i % n));
  return sound ? pulled : null;
}

function keepsDirection(before: readonly Point[], after: readonly Point[], wall: number): boolean {
  const was = wallEnds(before, wall);
  const is = wallEnds(after, wall);
  if (!was || !is) return false;
  const [dx, dy] = [is[1][0] - is[0][0], is[1][1] - is[0][1]];
  const along = (was[1][0] - was[0][0]) * dx + (was[1][1] - was[0][1]) * dy;
  return along > 0 && Math.hypot(dx, dy) >= Math.min(leastWall, wallLength(before, wall)) - 1e-9;
}

function wallLength(outline: readonly Point[], wall: number): number {
  const ends = wallEnds(outline, wall);
  return ends ? Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]) : 0;
}

/** Within this of a direction a wall faces that way: the cosine of 45° and a little. */
const facesWithin = 0.7;

/**
 * The longest wall whose outside faces a direction (a unit vector), or of several the one after `present`.
 * Null where no wall faces that way.
 */
export function facingWall(
  outline: readonly Point[],
  [dx, dy]: Point,
  present: number | null,
): number | null {
  const facing = outline.flatMap((_, wall) => {
    const outward = wallOutward(outline, wall);
    return outward && outward[0] * dx + outward[1] * dy > facesWithin ? [wall] : [];
  });
  if (present !== null && facing.includes(present))
    return facing[(facing.indexOf(present) + 1) % facing.length] ?? null;
  const longest = (a: number, b: number) => (wallLength(outline, b) > wallLength(outline, a) ? b : a);
  return facing.length === 0 ? null : facing.reduce(longest);
}

/** The outline with a corner pulled to a place: its two walls move along, all directions stay. */
export function pullCorner(outline: readonly Point[], corner: number, to: Point): Point[] | null {
  const n = outline.length;
  const from = outline[corner];
  if (!from) return null;
  const wallBefore = (corner + n - 1) % n;
  const distances = [wallBefore, corner].map((wall) => {
    const outward = wallOutward(outline, wall);
    return outward ? (to[0] - from[0]) * outward[0] + (to[1] - from[1]) * outward[1] : 0;
  });
  const once = pullWall(outline, wallBefore, distances[0] ?? 0);
  return once && pullWall(once, corner, distances[1] ?? 0);
}

/** The outline with one corner moved freely. */
export function moveCorner(outline: readonly Point[], corner: number, to: Point): Point[] {
  return outline.map((point, i): Point => (i === corner ? [to[0], to[1]] : [point[0], point[1]]));
}

/** How far a wall must be pulled so that its neighbour after it becomes this long, m. */
export function pullForLength(outline: readonly Point[], wall: number, length: number): number {
  const next = wallEnds(outline, (wall + 1) % outline.length);
  const outward = wallOutward(outline, wall);
  if (!next || !outward) return 0;
  const now = wallLength(outline, (wall + 1) % outline.length);
  const lean = ((next[0][0] - next[1][0]) * outward[0] + (next[0][1] - next[1][1]) * outward[1]) / now;
  return (length - now) * lean;
}

export interface SnappedTurn {
  readonly angle: number;
  readonly word: string | null;
}

const parallelWithin = (3 * Math.PI) / 180;
const step = Math.PI / 12;

/** A turn that makes a wall parallel to a lot line, or a whole multiple of 15°, where one is near. */
export function snapTurn(outline: readonly Point[], lot: readonly Point[], angle: number): SnappedTurn {
  const walls = outline.map((_, i) => wallAngle(outline, i));
  let best: SnappedTurn = { angle, word: null };
  let bestOff = parallelWithin;
  for (const [i] of lot.entries()) {
    const line = wallAngle(lot, i);
    for (const wall of walls) {
      const off = quarterTurn(line - (wall + angle));
      if (Math.abs(off) >= bestOff) continue;
      bestOff = Math.abs(off);
      best = { angle: angle + off, word: "square with the lot line" };
    }
  }
  if (best.word !== null) return best;
  // Steps are counted from the plan's axes, so that a building can be set straight again.
  const heading = (walls[0] ?? 0) + angle;
  const off = Math.round(heading / step) * step - heading;
  return Math.abs(off) < step / 3 ? { angle: angle + off, word: "a step of 15°" } : best;
}

function wallAngle(ring: readonly Point[], i: number): number {
  const ends = wallEnds(ring, i);
  return ends ? Math.atan2(ends[1][1] - ends[0][1], ends[1][0] - ends[0][0]) : 0;
}

/** The same difference of direction but for quarter turns: −45° to 45°. */
function quarterTurn(angle: number): number {
  return angle - Math.round(angle / (Math.PI / 2)) * (Math.PI / 2);
}

/** Turn from one place to another as seen from a centre, −π to π. */
export function turnAbout(centre: Point, from: Point, to: Point): number {
  return turnBetween(
    Math.atan2(from[1] - centre[1], from[0] - centre[0]),
    Math.atan2(to[1] - centre[1], to[0] - centre[0]),
  );
}

export function turnedOutline(outline: readonly Point[], about: Point, angle: number): Point[] {
  return outline.map((point): Point => {
    const [x, y] = turned(point, about, angle);
    return [x, y];
  });
}

export function outlineCentre(outline: readonly Point[]): Point {
  const [x, y] = centroid(outline);
  return [x, y];
}
