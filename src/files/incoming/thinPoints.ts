/**
 * A cloud of points made light enough to work with, and what that costs in height.
 *
 * Units   the file's own, in and out.
 * Method  One point is kept in each square of a grid, the nearest to its middle, and the outermost four; the grid is as
 *         coarse as it must be. Each point that is left out is held against the triangulated ground of those kept.
 * Source  first principles.
 */
import { locate, trianglePlane, triangulate } from "../../terrain";
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

/** At most `most` points, and the outermost four. Null where there are no more than that anyway. */
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
  const order = [...kept].sort((a, b) => a - b);
  const chosen: IncomingPoints = {
    names: order.map((i) => points.names[i] ?? ""),
    x: Float64Array.from(order, (i) => points.x[i] as number),
    y: Float64Array.from(order, (i) => points.y[i] as number),
    z: Float64Array.from(order, (i) => points.z[i] as number),
  };
  return { points: chosen, cell, ...missed(points, kept, chosen) };
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
  return new Set(best.filter((i) => i >= 0));
}

/** Places beyond the rim of those kept, and points without heights, say nothing. */
function missed(
  points: IncomingPoints,
  kept: ReadonlySet<number>,
  chosen: IncomingPoints,
): Pick<ThinnedPoints, "greatest" | "rms"> {
  const high = Array.from(chosen.z, (z, i) => (Number.isNaN(z) ? -1 : i)).filter((i) => i >= 0);
  const part = (values: Float64Array) => Float64Array.from(high, (i) => values[i] as number);
  const made = triangulate(part(chosen.x), part(chosen.y), part(chosen.z));
  let [greatest, sum, count, last] = [0, 0, 0, 0];
  if (!made.ok) return { greatest, rms: 0 };
  for (let i = 0; i < points.x.length; i++) {
    const [x, y, z] = [points.x[i] as number, points.y[i] as number, points.z[i] as number];
    if (kept.has(i) || Number.isNaN(z)) continue;
    const found = locate(made.tin, x, y, last);
    if (found < 0) continue;
    last = found;
    const off = Math.abs(trianglePlane(made.tin, found, x, y).z - z);
    greatest = Math.max(greatest, off);
    sum += off * off;
    count++;
  }
  return { greatest, rms: count === 0 ? 0 : Math.sqrt(sum / count) };
}
