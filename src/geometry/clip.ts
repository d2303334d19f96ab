/**
 * Cutting convex polygons by straight lines. Polygons are flat x, y arrays of corners in order, either way
 * round; the last side closes by itself.
 *
 * Method  Sutherland-Hodgman: walk round, keep what is on the left, add a point where a side crosses.
 * Source  I. E. Sutherland, G. W. Hodgman, Reentrant Polygon Clipping, Communications of the ACM 17 (1974).
 * Error   A few rounding units of the coordinates; no tolerance is applied.
 */
import type { Point } from "./point";

/** The part of a convex polygon to the left of the directed line a -> b (on the line counts as left). */
export function clipConvexByHalfPlane(polygon: ArrayLike<number>, a: Point, b: Point): number[] {
  const kept: number[] = [];
  const count = polygon.length >> 1;
  if (count === 0) return kept;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  let px = polygon[2 * count - 2] as number;
  let py = polygon[2 * count - 1] as number;
  let before = dx * (py - a[1]) - dy * (px - a[0]);
  for (let i = 0; i < count; i++) {
    const x = polygon[2 * i] as number;
    const y = polygon[2 * i + 1] as number;
    const side = dx * (y - a[1]) - dy * (x - a[0]);
    if ((before < 0 && side > 0) || (before > 0 && side < 0)) {
      const t = before / (before - side);
      kept.push(px + t * (x - px), py + t * (y - py));
    }
    if (side >= 0) kept.push(x, y);
    px = x;
    py = y;
    before = side;
  }
  return kept;
}

/** The part of a convex polygon inside a convex ring whose corners run counter-clockwise. */
export function clipConvexByConvex(polygon: ArrayLike<number>, ring: readonly Point[]): number[] {
  let rest: number[] = Array.from(polygon);
  for (let i = 0; i < ring.length && rest.length > 0; i++) {
    rest = clipConvexByHalfPlane(rest, ring[i] as Point, ring[(i + 1) % ring.length] as Point);
  }
  return rest;
}

/** Area of a flat x, y polygon, positive counter-clockwise, m2. */
export function flatArea(polygon: ArrayLike<number>): number {
  const ox = polygon[0] as number;
  const oy = polygon[1] as number;
  let twice = 0;
  for (let i = 2; i + 3 < polygon.length; i += 2) {
    const bx = (polygon[i] as number) - ox;
    const by = (polygon[i + 1] as number) - oy;
    const cx = (polygon[i + 2] as number) - ox;
    const cy = (polygon[i + 3] as number) - oy;
    twice += bx * cy - by * cx;
  }
  return twice / 2;
}
