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

/**
 * Of very many places those that a box round them may rest on, however it is turned; the others are inside.
 *
 * Method  what lies inside the polygon of the farthest places in eight directions isn't on the hull.
 * Source  S.G. Akl, G.T. Toussaint, Information Processing Letters 7 (1978), with eight directions for their four.
 */
export function outermost<Place extends { readonly x: number; readonly y: number }>(
  places: readonly Place[],
): Place[] {
  const corners = eightDirections.flatMap(([dx, dy]) => farthest(places, dx, dy) ?? []);
  const sides = corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length] as Place;
    return from.x === to.x && from.y === to.y ? [] : [{ from, dx: to.x - from.x, dy: to.y - from.y }];
  });
  if (sides.length < 3) return [...places];
  return places.filter(
    ({ x, y }) => !sides.every(({ from, dx, dy }) => dx * (y - from.y) - dy * (x - from.x) > 0),
  );
}

const eightDirections = [
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
  [-1, -1],
  [0, -1],
  [1, -1],
] as const;

function farthest<Place extends { readonly x: number; readonly y: number }>(
  places: readonly Place[],
  dx: number,
  dy: number,
): Place | undefined {
  let best: Place | undefined;
  let most = -Infinity;
  for (const place of places) {
    const reach = place.x * dx + place.y * dy;
    if (reach > most) [best, most] = [place, reach];
  }
  return best;
}
