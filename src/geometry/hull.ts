/** Convex hull by the monotone chain. Metres. Source: A.M. Andrew, Information Processing Letters 9 (1979). */
import type { Point } from "./point";

/** Corners of the hull, counter-clockwise, none of them on a straight side. Fewer than three points come back sorted. */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const chain = (list: readonly Point[]) => {
    const out: Point[] = [];
    for (const point of list) {
      while (out.length >= 2 && side(out[out.length - 2] as Point, out[out.length - 1] as Point, point) <= 0)
        out.pop();
      out.push(point);
    }
    return out.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

/** Positive where c lies left of the way from a to b. */
function side(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
