/**
 * How far a laid-out building is from what it should be, and which corner to move which way.
 *
 * Units   any one unit of length; angles in radians.
 * Method  The target stands on the first corner and along the first side: the planned outline where there is one, else
 *         the right-angled figure nearest to what was measured (each side at the mean of its two ends; the first side
 *         keeps its length). A move is told along the two sides that meet at the corner.
 * Source  Common practice: hold one side, shift the others until the diagonals agree.
 */
import { type Point, signedArea } from "../geometry";
import type { SquaredCorner } from "./squaring";

export interface CornerMove {
  readonly corner: string;
  readonly distance: number;
  /** Along each side at the corner: towards that neighbour, negative away from it; the greater part first. */
  readonly parts: readonly { readonly corner: string; readonly distance: number }[];
}

export interface CornerAngle {
  readonly corner: string;
  /** Inside angle, radians. */
  readonly angle: number;
  /** angle - the right (or reflex right) angle nearest to it. */
  readonly off: number;
}

export interface OutOfSquare {
  /** The greatest distance that a corner must move. */
  readonly most: number;
  readonly moves: readonly CornerMove[];
  readonly target: readonly Point[];
}

/** A side this far off its direction belongs to no right-angled figure. */
const MOST_OFF = (20 * Math.PI) / 180;
const RIGHT = Math.PI / 2;

/** Null where no plan is given and the corners are far from right angles. */
export function outOfSquare(
  corners: readonly SquaredCorner[],
  planned?: readonly Point[],
): OutOfSquare | null {
  const measured = corners.map(({ x, y }): Point => [x, y]);
  const target = planned?.length === corners.length ? laidOn(measured, planned) : rightAngled(measured);
  if (target === null) return null;
  const moves = corners.map((corner, i) => moveOf(corner.name, i, corners, target));
  return { most: Math.max(...moves.map(({ distance }) => distance)), moves, target };
}

export function cornerAngles(corners: readonly SquaredCorner[]): CornerAngle[] {
  const ring = corners.map(({ x, y }): Point => [x, y]);
  const sense = signedArea(ring) < 0 ? -1 : 1;
  return corners.map(({ name }, i) => {
    const [a, b, c] = [at(ring, i - 1), at(ring, i), at(ring, i + 1)];
    const turned = heading(b, a) - heading(b, c);
    const angle = (((sense * turned) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    const nearest = angle < Math.PI ? RIGHT : 3 * RIGHT;
    return { corner: name, angle, off: angle - nearest };
  });
}

function at(ring: readonly Point[], i: number): Point {
  return ring[(i + ring.length) % ring.length] as Point;
}

function heading(from: Point, to: Point): number {
  return Math.atan2(to[1] - from[1], to[0] - from[0]);
}

/** The plan moved and turned so that its first corner and first side lie on the measured ones; mirrored if need be. */
function laidOn(measured: readonly Point[], planned: readonly Point[]): readonly Point[] {
  const mirror = signedArea(measured) * signedArea(planned) < 0 ? -1 : 1;
  const shape = planned.map(([x, y]): Point => [x, mirror * y]);
  const [origin, along] = [at(shape, 0), at(shape, 1)];
  const turn = heading(at(measured, 0), at(measured, 1)) - heading(origin, along);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [ox, oy] = at(measured, 0);
  return shape.map(([x, y]): Point => {
    const [dx, dy] = [x - origin[0], y - origin[1]];
    return [ox + dx * cos - dy * sin, oy + dx * sin + dy * cos];
  });
}

/** The first side lies on the x axis. */
function rightAngled(ring: readonly Point[]): readonly Point[] | null {
  const n = ring.length;
  if (n < 4 || n % 2 !== 0) return null;
  const across = ring.map((corner, i) => sideSense(corner, at(ring, i + 1)));
  if (across.some((sense, i) => sense === null || sense === across[(i + 1) % n])) return null;
  const level = ring.map((corner, i) => {
    const next = at(ring, i + 1);
    // The first side and the ends of it stay: the rest goes by it.
    if (i === 0) return corner[1];
    if (i === 1) return corner[0];
    if (i === n - 1) return at(ring, 0)[0];
    return across[i] === "x" ? (corner[1] + next[1]) / 2 : (corner[0] + next[0]) / 2;
  });
  return ring.map((_, i): Point => {
    const before = level[(i - 1 + n) % n] as number;
    const after = level[i] as number;
    return across[i] === "x" ? [before, after] : [after, before];
  });
}

/** Whether a side runs along x or along y, null where neither. */
function sideSense(from: Point, to: Point): "x" | "y" | null {
  const angle = Math.abs(heading(from, to));
  if (angle < MOST_OFF || angle > Math.PI - MOST_OFF) return "x";
  return Math.abs(angle - RIGHT) < MOST_OFF ? "y" : null;
}

function moveOf(
  name: string,
  i: number,
  corners: readonly SquaredCorner[],
  target: readonly Point[],
): CornerMove {
  const n = corners.length;
  const corner = corners[i] as SquaredCorner;
  const to = target[i] as Point;
  const [dx, dy] = [to[0] - corner.x, to[1] - corner.y];
  const [before, after] = [(i - 1 + n) % n, (i + 1) % n];
  const u = unit(to, target[before] as Point);
  const v = unit(to, target[after] as Point);
  const cross = u[0] * v[1] - u[1] * v[0];
  const towardsBefore = (dx * v[1] - dy * v[0]) / cross;
  const towardsAfter = (u[0] * dy - u[1] * dx) / cross;
  const parts = [
    { corner: corners[before]?.name ?? "", distance: towardsBefore },
    { corner: corners[after]?.name ?? "", distance: towardsAfter },
  ].sort((a, b) => Math.abs(b.distance) - Math.abs(a.distance));
  return { corner: name, distance: Math.hypot(dx, dy), parts };
}

function unit(from: Point, to: Point): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

/** Least move that is told anywhere, m: 1/16 in. */
export const LEAST_MOVE = 0.0016;

/** "1⅜″ towards D", "1⅜″ towards D and ¼″ away from B", "stays"; parts that round to nothing are left out. */
export function moveInWords(move: CornerMove, format: (distance: number) => string, least: number): string {
  const parts = move.parts.filter(({ distance }) => Math.abs(distance) >= least / 2);
  if (parts.length === 0) return "stays";
  return parts
    .map(
      ({ corner, distance }) =>
        `${format(Math.abs(distance))} ${distance > 0 ? "towards" : "away from"} ${corner}`,
    )
    .join(" and ");
}
