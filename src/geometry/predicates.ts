/**
 * Orientation and circle tests whose sign is always right.
 *
 * Sign    Axes x east, y north: counter-clockwise is positive.
 * Method  Adaptive exact arithmetic (robust-predicates). That library counts y downwards, so its
 *         orientation is turned round here, once.
 * Source  J. R. Shewchuk, Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric
 *         Predicates, Discrete & Computational Geometry 18 (1997).
 */
import { incircle, orient2d } from "robust-predicates";

/** Positive where a, b, c turn left (counter-clockwise), negative where they turn right, 0 in one line. */
export function turn(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return -orient2d(ax, ay, bx, by, cx, cy);
}

/** Positive where d lies inside the circle through the counter-clockwise corners a, b, c; 0 on it. */
export function inCircle(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): number {
  return incircle(ax, ay, bx, by, cx, cy, dx, dy);
}
