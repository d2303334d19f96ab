/** Circles: where two tapes meet. Lengths in metres. */
import type { Point } from "./point";

/**
 * The two places at distance `r0` from `c0` and `r1` from `c1`: to the left and to the right of the way from `c0` to
 * `c1` (the same place twice where they just touch). Null where they don't meet, or the centres are one point.
 * Method: foot of the chord at a = (r0² - r1² + d²) / 2d from c0, half chord √(r0² - a²). Source: first principles.
 */
export function circlesMeet(
  c0: Point,
  r0: number,
  c1: Point,
  r1: number,
): { readonly left: Point; readonly right: Point } | null {
  const dx = c1[0] - c0[0];
  const dy = c1[1] - c0[1];
  const d = Math.hypot(dx, dy);
  if (!(d > 0) || !(d <= r0 + r1) || !(d >= Math.abs(r0 - r1))) return null;
  const a = (r0 * r0 - r1 * r1 + d * d) / (2 * d);
  const h = Math.sqrt(Math.max(0, (r0 - a) * (r0 + a)));
  const ux = dx / d;
  const uy = dy / d;
  const x = c0[0] + a * ux;
  const y = c0[1] + a * uy;
  return { left: [x - h * uy, y + h * ux], right: [x + h * uy, y - h * ux] };
}
