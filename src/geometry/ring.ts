/**
 * Simple polygons, given as their corners in order; the last side closes by itself (the first corner is
 * not repeated). Lengths in metres, areas in square metres. Counter-clockwise is positive.
 */
import type { Point } from "./point";
import { turn } from "./predicates";
import { type Nearest, nearestShare, segmentsMeet } from "./segment";

/** Area of a ring, positive where its corners run counter-clockwise, m2. Source: the shoelace rule. */
export function signedArea(ring: readonly Point[]): number {
  const origin = ring[0];
  if (!origin) return 0;
  let twice = 0;
  for (let i = 2; i < ring.length; i++) {
    const [bx, by] = ring[i - 1] as Point;
    const [cx, cy] = ring[i] as Point;
    // Against the first corner, so that map coordinates of millions cost no digits.
    twice += (bx - origin[0]) * (cy - origin[1]) - (by - origin[1]) * (cx - origin[0]);
  }
  return twice / 2;
}

/** Centre of area of a ring; the mean of its corners where it has no area. Source: first principles. */
export function centroid(ring: readonly Point[]): Point {
  const [ox, oy] = ring[0] ?? [0, 0];
  let twice = 0;
  let sumX = 0;
  let sumY = 0;
  for (let i = 2; i < ring.length; i++) {
    const bx = (ring[i - 1] as Point)[0] - ox;
    const by = (ring[i - 1] as Point)[1] - oy;
    const cx = (ring[i] as Point)[0] - ox;
    const cy = (ring[i] as Point)[1] - oy;
    const cross = bx * cy - by * cx;
    twice += cross;
    sumX += cross * (bx + cx);
    sumY += cross * (by + cy);
  }
  if (twice === 0) return meanOf(ring);
  return [ox + sumX / (3 * twice), oy + sumY / (3 * twice)];
}

/** Length round a ring, m. */
export function perimeter(ring: readonly Point[]): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i] as Point;
    const [bx, by] = ring[(i + 1) % ring.length] as Point;
    sum += Math.hypot(bx - ax, by - ay);
  }
  return sum;
}

/** The same ring with its corners counter-clockwise; the same array where they are so already. */
export function counterClockwise(ring: readonly Point[]): readonly Point[] {
  return signedArea(ring) < 0 ? [...ring].reverse() : ring;
}

/**
 * Whether (x, y) lies inside the ring. Method: crossings of a ray eastwards, half-open in y, so that
 * neighbouring rings share no point; on the very edge either answer may come.
 */
export function containsPoint(ring: readonly Point[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[i] as Point;
    const b = ring[j] as Point;
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) inside = !inside;
  }
  return inside;
}

/** The place on the ring's edge nearest to (x, y); segment i runs from corner i to the next. Needs a corner. */
export function nearestOnRing(ring: readonly Point[], x: number, y: number): Nearest {
  let best: Nearest = { distance: Infinity, x: Number.NaN, y: Number.NaN, segment: -1, t: 0 };
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    const t = nearestShare(a, b, x, y);
    const px = a[0] + t * (b[0] - a[0]);
    const py = a[1] + t * (b[1] - a[1]);
    const distance = Math.hypot(px - x, py - y);
    if (distance < best.distance) best = { distance, x: px, y: py, segment: i, t };
  }
  return best;
}

/** Whether any two sides of the ring cross, touch or overlap other than at a corner they share. Exact. */
export function ringsSelfCross(ring: readonly Point[]): boolean {
  return selfCrossing(ring) !== null;
}

/** The first two sides (by their first corner) that cross or touch where they should not, or null. Exact. */
export function selfCrossing(ring: readonly Point[]): readonly [number, number] | null {
  const n = ring.length;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (sidesCross(ring, i, j)) return [i, j];
    }
  }
  return null;
}

function sidesCross(ring: readonly Point[], i: number, j: number): boolean {
  const n = ring.length;
  const a = ring[i] as Point;
  const b = ring[(i + 1) % n] as Point;
  const c = ring[j] as Point;
  const d = ring[(j + 1) % n] as Point;
  if (j === i + 1) return foldsBack(a, b, d);
  if (i === 0 && j === n - 1) return foldsBack(c, a, b);
  return segmentsMeet(a, b, c, d);
}

/** Whether the way a, b, c turns straight back on itself at b (or has no length). */
function foldsBack(a: Point, b: Point, c: Point): boolean {
  if (turn(a[0], a[1], b[0], b[1], c[0], c[1]) !== 0) return false;
  return (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) <= 0;
}

function meanOf(points: readonly Point[]): Point {
  let x = 0;
  let y = 0;
  for (const point of points) {
    x += point[0];
    y += point[1];
  }
  return [x / points.length, y / points.length];
}

/** Every corner is a right angle: its sides' directions differ from square by less than a thousandth (0.06°). */
export function isRightAngled(ring: readonly Point[]): boolean {
  return (
    ring.length >= 4 &&
    ring.every(([x, y], i) => {
      const [ax, ay] = ring[(i + ring.length - 1) % ring.length] as Point;
      const [bx, by] = ring[(i + 1) % ring.length] as Point;
      const [ux, uy, vx, vy] = [x - ax, y - ay, bx - x, by - y];
      const size = Math.hypot(ux, uy) * Math.hypot(vx, vy);
      return size > 0 && Math.abs(ux * vx + uy * vy) < 1e-3 * size;
    })
  );
}
