/** Points of the plan: x east, y north, metres. */
export type Point = readonly [number, number];

/** Distance between two points, m. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/** The point a share t of the way from a to b; t = 0 gives a, t = 1 gives b. */
export function between(a: Point, b: Point, t: number): Point {
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

/** Turns a point about a centre, counter-clockwise by an angle in radians. */
export function turned(point: Point, centre: Point, angle: number): Point {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const x = point[0] - centre[0];
  const y = point[1] - centre[1];
  return [centre[0] + cos * x - sin * y, centre[1] + sin * x + cos * y];
}

/** An upright box in plan. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Smallest upright box that holds the points. Of no points: an inverted box (min = Infinity, max = -Infinity). */
export function boundsOf(points: readonly Point[]): Bounds {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const [x, y] of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}
