/** Straight segments between two points. Lengths in metres. Source: first principles. */
import type { Point } from "./point";
import { turn } from "./predicates";

/** The place on a line or ring that is nearest to a point. */
export interface Nearest {
  readonly distance: number;
  readonly x: number;
  readonly y: number;
  /** Index of the segment, from its first corner. */
  readonly segment: number;
  /** Share of that segment, 0 at its start to 1 at its end. */
  readonly t: number;
}

/** How far along a segment (0 to 1) the place nearest to (x, y) lies; 0 for a segment without length. */
export function nearestShare(a: Point, b: Point, x: number, y: number): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const lengthSquared = dx * dx + dy * dy;
  if (lengthSquared === 0) return 0;
  const t = ((x - a[0]) * dx + (y - a[1]) * dy) / lengthSquared;
  return Math.min(1, Math.max(0, t));
}

/** Distance from (x, y) to the segment a-b, m. */
export function distanceToSegment(a: Point, b: Point, x: number, y: number): number {
  const t = nearestShare(a, b, x, y);
  return Math.hypot(a[0] + t * (b[0] - a[0]) - x, a[1] + t * (b[1] - a[1]) - y);
}

/** Whether two segments share at least one point; touching counts. The answer is exact. */
export function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const abc = turn(a[0], a[1], b[0], b[1], c[0], c[1]);
  const abd = turn(a[0], a[1], b[0], b[1], d[0], d[1]);
  const cda = turn(c[0], c[1], d[0], d[1], a[0], a[1]);
  const cdb = turn(c[0], c[1], d[0], d[1], b[0], b[1]);
  if (opposite(abc, abd) && opposite(cda, cdb)) return true;
  return (
    (abc === 0 && withinBox(a, b, c)) ||
    (abd === 0 && withinBox(a, b, d)) ||
    (cda === 0 && withinBox(c, d, a)) ||
    (cdb === 0 && withinBox(c, d, b))
  );
}

/** Shares along a-b and c-d at which their lines cross; null where they are parallel. */
export function crossingShares(a: Point, b: Point, c: Point, d: Point): readonly [number, number] | null {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const vx = d[0] - c[0];
  const vy = d[1] - c[1];
  const denominator = ux * vy - uy * vx;
  if (denominator === 0) return null;
  const wx = c[0] - a[0];
  const wy = c[1] - a[1];
  return [(wx * vy - wy * vx) / denominator, (wx * uy - wy * ux) / denominator];
}

function opposite(p: number, q: number): boolean {
  return (p > 0 && q < 0) || (p < 0 && q > 0);
}

function withinBox(a: Point, b: Point, p: Point): boolean {
  return (
    Math.min(a[0], b[0]) <= p[0] &&
    p[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= p[1] &&
    p[1] <= Math.max(a[1], b[1])
  );
}
