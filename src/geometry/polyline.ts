/** Open lines of straight pieces. Lengths in metres. Source: first principles. */
import { between, distance, type Point } from "./point";
import { type Nearest, nearestShare } from "./segment";

/** Length along a line, m. */
export function polylineLength(line: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < line.length; i++) sum += distance(line[i - 1] as Point, line[i] as Point);
  return sum;
}

/** Distances from the start to each corner of a line, m; the first is 0. */
export function cornerDistances(line: readonly Point[]): Float64Array {
  const along = new Float64Array(line.length);
  for (let i = 1; i < line.length; i++) {
    along[i] = (along[i - 1] as number) + distance(line[i - 1] as Point, line[i] as Point);
  }
  return along;
}

/** The place a distance along a line, held to its ends, with the direction it runs there (unit vector). */
export function pointAlong(
  line: readonly Point[],
  along: number,
): { at: Point; direction: Point; segment: number } {
  let left = Math.max(0, along);
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1] as Point;
    const b = line[i] as Point;
    const length = distance(a, b);
    if (length > 0 && (left <= length || i === line.length - 1)) {
      const direction: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
      return { at: between(a, b, Math.min(1, left / length)), direction, segment: i - 1 };
    }
    left -= length;
  }
  return { at: line[line.length - 1] as Point, direction: [1, 0], segment: Math.max(0, line.length - 2) };
}

/** The place on a line nearest to (x, y), with its distance from the line's start. Needs two corners. */
export function nearestOnPolyline(line: readonly Point[], x: number, y: number): Nearest & { along: number } {
  let best = { distance: Infinity, x: Number.NaN, y: Number.NaN, segment: -1, t: 0, along: 0 };
  let passed = 0;
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1] as Point;
    const b = line[i] as Point;
    const length = distance(a, b);
    const t = nearestShare(a, b, x, y);
    const px = a[0] + t * (b[0] - a[0]);
    const py = a[1] + t * (b[1] - a[1]);
    const off = Math.hypot(px - x, py - y);
    if (off < best.distance)
      best = { distance: off, x: px, y: py, segment: i - 1, t, along: passed + t * length };
    passed += length;
  }
  return best;
}
