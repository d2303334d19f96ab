/**
 * Ways round the building that a ditch can be dug along: few straight pieces, at least so far off the walls.
 *
 * Units   metres.
 * Method  The shortest way between two places outside a zone round the building's hull, found among the zone's corners
 *         (Dijkstra on those that see each other). A ray from the building's middle shuts one side of it.
 * Source  First principles.
 */
import { centroid, convexHull, distance, distanceToSegment, type Point, segmentsMeet } from "../geometry";

/** Corners of the zone round one corner of the building. */
const roundPieces = 8;
/** Rounding of the zone's own sides, m. */
const slack = 1e-6;

/** The hull of a ring, grown by `off` on all sides; its corners lie a little farther out. */
function zoneRound(hull: readonly Point[], off: number): Point[] {
  const reach = off / Math.cos(Math.PI / roundPieces);
  return convexHull(
    hull.flatMap(([x, y]) =>
      Array.from({ length: roundPieces }, (_, k): Point => {
        const angle = (2 * Math.PI * k) / roundPieces;
        return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)];
      }),
    ),
  );
}

/** The distance from a straight piece to a convex hull; 0 where it crosses it. */
function clearance(hull: readonly Point[], a: Point, b: Point): number {
  let least = Number.POSITIVE_INFINITY;
  hull.forEach((c, i) => {
    const d = hull[(i + 1) % hull.length] as Point;
    if (segmentsMeet(a, b, c, d)) least = 0;
    least = Math.min(
      least,
      distanceToSegment(a, b, c[0], c[1]),
      distanceToSegment(c, d, a[0], a[1]),
      distanceToSegment(c, d, b[0], b[1]),
    );
  });
  return least;
}

/**
 * The shortest line from `start` to `end` that stays `off` from the ring and doesn't cross the ray from the ring's middle
 * towards `shut` (a direction, any length); null where there is none. Ends nearer to the ring than `off` are moved out.
 */
export function tautLine(
  ring: readonly Point[],
  start: Point,
  end: Point,
  off: number,
  shut: Point | null,
): Point[] | null {
  const hull = convexHull(ring);
  const zone = zoneRound(hull, off);
  const places = [movedOut(ring, hull, start, off), movedOut(ring, hull, end, off), ...zone];
  const middle = centroid(ring);
  const far = shut && ([middle[0] + shut[0] * 1e4, middle[1] + shut[1] * 1e4] as const);
  const open = (a: Point, b: Point) =>
    clearance(hull, a, b) >= off - slack && !(far && segmentsMeet(middle, far, a, b));
  return shortest(places, open);
}

/** Dijkstra from the first place to the second. */
function shortest(places: readonly Point[], open: (a: Point, b: Point) => boolean): Point[] | null {
  const away = places.map((_, i) => (i === 0 ? 0 : Number.POSITIVE_INFINITY));
  const from = places.map(() => -1);
  const done = places.map(() => false);
  for (;;) {
    let near = -1;
    for (let i = 0; i < places.length; i++)
      if (!done[i] && (near < 0 || (away[i] as number) < (away[near] as number))) near = i;
    if (near < 0 || away[near] === Number.POSITIVE_INFINITY) return null;
    if (near === 1) break;
    done[near] = true;
    const here = places[near] as Point;
    places.forEach((place, i) => {
      if (done[i]) return;
      const way = (away[near] as number) + distance(here, place);
      if (way >= (away[i] as number) || !open(here, place)) return;
      away[i] = way;
      from[i] = near;
    });
  }
  const line: Point[] = [];
  for (let i = 1; i >= 0; i = from[i] as number) line.unshift(places[i] as Point);
  return line;
}

/** A place at least `off` from the hull: itself, or pushed straight away from the building's middle. */
function movedOut(ring: readonly Point[], hull: readonly Point[], place: Point, off: number): Point {
  const [mx, my] = centroid(ring);
  const length = Math.hypot(place[0] - mx, place[1] - my);
  const way: Point = length > 0 ? [(place[0] - mx) / length, (place[1] - my) / length] : [1, 0];
  const isClear = (at: Point) => clearance(hull, at, at) >= off && !within(hull, at);
  if (isClear(place)) return place;
  let [near, far] = [length, length + off + Math.max(...hull.map(([x, y]) => Math.hypot(x - mx, y - my)))];
  for (let i = 0; i < 40; i++) {
    const half = (near + far) / 2;
    if (isClear([mx + way[0] * half, my + way[1] * half])) far = half;
    else near = half;
  }
  return [mx + way[0] * far, my + way[1] * far];
}

function within(hull: readonly Point[], [x, y]: Point): boolean {
  return hull.every((a, i) => {
    const b = hull[(i + 1) % hull.length] as Point;
    return (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) >= 0;
  });
}
