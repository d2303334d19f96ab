/**
 * Where a few words stand inside a ring so that none of its sides runs through them.
 *
 * Method  the centroid where they are clear there, else the nearest to it of a grid of places over the ring at which
 *         they are; the centroid again where there is none. The words lie level while the plan is turned by `angle`.
 * Units   m, radians.
 */
import { centroid, containsPoint, type Point } from "../../geometry";

/** Places tried along each way of the ring. */
const tried = 24;

export function placeWithin(ring: readonly Point[], half: Point, angle: number): [number, number] {
  const level = ring.map((at) => turned(at, angle));
  const middle = centroid(level);
  const isClear = (at: Point) => containsPoint(level, at[0], at[1]) && !isCrossed(level, at, half);
  const best = isClear(middle) ? middle : nearest(gridOver(level).filter(isClear), middle);
  return turned(best ?? middle, -angle);
}

function turned([x, y]: Point, angle: number): [number, number] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [x * c - y * s, x * s + y * c];
}

function gridOver(ring: readonly Point[]): Point[] {
  const span = (axis: 0 | 1) => {
    const all = ring.map((at) => at[axis]);
    const least = Math.min(...all);
    const step = (Math.max(...all) - least) / tried;
    return Array.from({ length: tried - 1 }, (_, i) => least + (i + 1) * step);
  };
  return span(0).flatMap((x) => span(1).map((y): Point => [x, y]));
}

function nearest(places: readonly Point[], [x, y]: Point): Point | undefined {
  const off = (at: Point) => Math.hypot(at[0] - x, at[1] - y);
  return [...places].sort((a, b) => off(a) - off(b))[0];
}

/** Does a side run through the box about a place? */
function isCrossed(ring: readonly Point[], [x, y]: Point, half: Point): boolean {
  return ring.some((a, i) => {
    const b = ring[(i + 1) % ring.length] as Point;
    const [from, to] = ([0, 1] as const).reduce<Point>(
      ([from, to], axis) => {
        const start = a[axis] - (axis === 0 ? x : y);
        const way = b[axis] - a[axis];
        const reach = half[axis];
        if (way === 0) return Math.abs(start) < reach ? [from, to] : [1, 0];
        const ends = [(-reach - start) / way, (reach - start) / way];
        return [Math.max(from, Math.min(...ends)), Math.min(to, Math.max(...ends))];
      },
      [0, 1],
    );
    return from < to;
  });
}
