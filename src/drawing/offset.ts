/** A line moved sideways, as a drive's edge follows its centreline. */
import { distance, type Point } from "../geometry";

/** Largest angle between two points of a rounded join, radians. */
const roundStep = 0.2;

function unit(a: Point, b: Point): Point {
  const length = distance(a, b);
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}

/** Points of the join at a corner: an arc outside the bend, the crossing of both offsets inside it. */
function join(corner: Point, before: Point, after: Point, offset: number, shortest: number): Point[] {
  const cross = before[0] * after[1] - before[1] * after[0];
  const dot = before[0] * after[0] + before[1] * after[1];
  const turn = Math.atan2(cross, dot);
  const start = Math.atan2(before[0], -before[1]);
  const size = Math.abs(offset);
  const side = offset >= 0 ? 0 : Math.PI;
  if (turn * offset < 0) {
    const steps = Math.max(1, Math.ceil(Math.abs(turn) / roundStep));
    return Array.from({ length: steps + 1 }, (_, k): Point => {
      const angle = start + side + (turn * k) / steps;
      return [corner[0] + size * Math.cos(angle), corner[1] + size * Math.sin(angle)];
    });
  }
  // Inside the bend: along the bisector, no further back than the shorter piece allows.
  const reach = Math.min(size / Math.max(Math.cos(turn / 2), 0.05), Math.hypot(size, shortest));
  const angle = start + side + turn / 2;
  return [[corner[0] + reach * Math.cos(angle), corner[1] + reach * Math.sin(angle)]];
}

/**
 * An open line moved to its left (offset > 0) or right (< 0) by a distance, with rounded outer joins.
 *
 * Units  metres. The ends are square to the first and last piece. Doubled corners are skipped.
 * Limits a bend tighter than the offset can hold may cross itself on its inner side.
 */
export function offsetLine(line: readonly Point[], offset: number): readonly Point[] {
  const corners = line.filter((corner, i) => i === 0 || distance(corner, line[i - 1] as Point) > 1e-9);
  if (corners.length < 2) return [];
  const directions = corners.slice(1).map((to, i) => unit(corners[i] as Point, to));
  const square = (corner: Point, [dx, dy]: Point): Point => [
    corner[0] - dy * offset,
    corner[1] + dx * offset,
  ];
  const last = corners.length - 1;
  const joins = corners.slice(1, last).flatMap((corner, i) => {
    const shortest = Math.min(
      distance(corners[i] as Point, corner),
      distance(corner, corners[i + 2] as Point),
    );
    return join(corner, directions[i] as Point, directions[i + 1] as Point, offset, shortest);
  });
  return [
    square(corners[0] as Point, directions[0] as Point),
    ...joins,
    square(corners[last] as Point, directions[last - 1] as Point),
  ];
}
