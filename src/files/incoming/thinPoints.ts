/**
 * A cloud of points made light enough to work with, and what that costs in height.
 *
 * Units   the file's own, in and out.
 * Method  One point is kept in each square of a grid, the nearest to its middle, and in squares on the rim the outermost
 *         too; the grid is as coarse as it must be. Points that would lie in slivers (longer than a few squares: along the
 *         hull, where chords pass by the rim) are kept. Each point left out is held against the ground of those kept.
 * Source  first principles.
 */
import { locate, type Tin, trianglePlane, triangulate } from "../../terrain";
import type { IncomingPoints } from "./incoming";

export interface ThinnedPoints {
  readonly points: IncomingPoints;
  /** Side of the squares. */
  readonly cell: number;
  /** By how much a point left out lies above or below the ground of those kept, at most and root mean square. */
  readonly greatest: number;
  readonly rms: number;
}

/** More points than this are offered thinned: with them the window answers at once. */
export const mostPoints = 50_000;

/** At most `most` points, and those of slivers along the hull. Null where there are no more than that anyway. */
export function thinPoints(points: IncomingPoints, most = mostPoints): ThinnedPoints | null {
  const count = points.x.length;
  if (count <= most) return null;
  const box = boxOf(points);
  let cell = Math.sqrt((Math.max(box.width, 1e-9) * Math.max(box.height, 1e-9)) / most);
  if (Math.max(box.width, box.height) / cell > most) cell = Math.max(box.width, box.height) / most;
  let kept = onePerSquare(points, box, cell);
  while (kept.size > most) {
    cell *= 1.1;
    kept = onePerSquare(points, box, cell);
  }
  for (const i of box.outermost) kept.add(i);
  let chosen = part(points, kept);
  let found = missed(points, kept, chosen, SLIVER * cell);
  if (found.inSlivers.length > 0) {
    for (const i of found.inSlivers) kept.add(i);
    chosen = part(points, kept);
    found = missed(points, kept, chosen, SLIVER * cell);
  }
  return { points: chosen, cell, greatest: found.greatest, rms: found.rms };
}

/** A triangle longer than so many squares has no place where points stand in every square. */
const SLIVER = 4;

function part(points: IncomingPoints, kept: ReadonlySet<number>): IncomingPoints {
  const order = [...kept].sort((a, b) => a - b);
  return {
    names: order.map((i) => points.names[i] ?? ""),
    x: Float64Array.from(order, (i) => points.x[i] as number),
    y: Float64Array.from(order, (i) => points.y[i] as number),
    z: Float64Array.from(order, (i) => points.z[i] as number),
  };
}

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly width: number;
  readonly height: number;
  readonly outermost: readonly number[];
}

function boxOf({ x, y }: IncomingPoints): Box {
  let [west, east, south, north] = [0, 0, 0, 0];
  for (let i = 1; i < x.length; i++) {
    if ((x[i] as number) < (x[west] as number)) west = i;
    if ((x[i] as number) > (x[east] as number)) east = i;
    if ((y[i] as number) < (y[south] as number)) south = i;
    if ((y[i] as number) > (y[north] as number)) north = i;
  }
  const [minX, minY] = [x[west] as number, y[south] as number];
  return {
    minX,
    minY,
    width: (x[east] as number) - minX,
    height: (y[north] as number) - minY,
    outermost: [west, east, south, north],
  };
}

function onePerSquare(
  { x, y }: IncomingPoints,
  { minX, minY, width, height }: Box,
  cell: number,
): Set<number> {
  const columns = Math.floor(width / cell) + 1;
  const rows = Math.floor(height / cell) + 1;
  const best = new Int32Array(columns * rows).fill(-1);
  const away = new Float64Array(columns * rows).fill(Infinity);
  for (let i = 0; i < x.length; i++) {
    const [u, v] = [((x[i] as number) - minX) / cell, ((y[i] as number) - minY) / cell];
    const [column, row] = [Math.floor(u), Math.floor(v)];
    const square = row * columns + column;
    const off = (u - column - 0.5) ** 2 + (v - row - 0.5) ** 2;
    if (off >= (away[square] as number)) continue;
    away[square] = off;
    best[square] = i;
  }
  const kept = new Set(best.filter((i) => i >= 0));
  const isEmpty = (column: number, row: number) =>
    column < 0 || row < 0 || column >= columns || row >= rows || (best[row * columns + column] as number) < 0;
  for (const [dx, dy] of WAYS) {
    const outermost = new Map<number, number>();
    for (let i = 0; i < x.length; i++) {
      const [east, north] = [x[i] as number, y[i] as number];
      const [column, row] = [Math.floor((east - minX) / cell), Math.floor((north - minY) / cell)];
      if (!isEmpty(column + dx, row + dy)) continue;
      const square = row * columns + column;
      const before = outermost.get(square);
      if (
        before === undefined ||
        dx * (east - (x[before] as number)) + dy * (north - (y[before] as number)) > 0
      )
        outermost.set(square, i);
    }
    for (const i of outermost.values()) kept.add(i);
  }
  return kept;
}

const WAYS = [
  [-1, 0],
  [1, 0],
  [0, -1],
  [0, 1],
] as const;

/** Places beyond the rim of those kept, and points without heights, say nothing. */
function missed(
  points: IncomingPoints,
  kept: ReadonlySet<number>,
  chosen: IncomingPoints,
  longest: number,
): Pick<ThinnedPoints, "greatest" | "rms"> & { readonly inSlivers: readonly number[] } {
  const inSlivers: number[] = [];
  const high = Array.from(chosen.z, (z, i) => (Number.isNaN(z) ? -1 : i)).filter((i) => i >= 0);
  const of = (values: Float64Array) => Float64Array.from(high, (i) => values[i] as number);
  const made = triangulate(of(chosen.x), of(chosen.y), of(chosen.z));
  let [greatest, sum, count, last] = [0, 0, 0, 0];
  if (!made.ok) return { greatest, rms: 0, inSlivers };
  for (let i = 0; i < points.x.length; i++) {
    const [x, y, z] = [points.x[i] as number, points.y[i] as number, points.z[i] as number];
    if (kept.has(i) || Number.isNaN(z)) continue;
    const found = locate(made.tin, x, y, last);
    if (found < 0) continue;
    last = found;
    if (longestSide(made.tin, found) > longest) inSlivers.push(i);
    const off = Math.abs(trianglePlane(made.tin, found, x, y).z - z);
    greatest = Math.max(greatest, off);
    sum += off * off;
    count++;
  }
  return { greatest, rms: count === 0 ? 0 : Math.sqrt(sum / count), inSlivers };
}

function longestSide({ x, y, triangles }: Tin, triangle: number): number {
  const at = (k: number) => triangles[3 * triangle + (k % 3)] as number;
  const sides = [0, 1, 2].map((k) => {
    const [a, b] = [at(k), at(k + 1)];
    return Math.hypot((x[b] as number) - (x[a] as number), (y[b] as number) - (y[a] as number));
  });
  return Math.max(...sides);
}
