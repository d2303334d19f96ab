/**
 * Heights and steepness of the ground as it is, or finished, one value a cell: what the maps in colour show.
 *
 * Units   metres; steepness rise over run.
 * Method  The triangulated ground read at the centres of a grid over the shots; where earth is moved the finished
 *         ground's own grid is read, bilinear. Steepness from differences over two cells. Ground that is only guessed,
 *         and cells inside the walls, have no value.
 */

import type { Grid, GroundGrid, Results } from "../../solve/results";
import type { MapGround } from "../../store/layers";
import { type Ground, sampleGrid } from "../../terrain";
import type { ValueGrid } from "./depthRaster";

/** About so many cells cover the ground. */
const cells = 60_000;
const leastCell = 0.1;
/** Steepness is told to this, rise over run. */
const evenness = 1e-6;
/** Less than this is no earth moved, m. */
const noChange = 1e-4;

export interface GroundMap extends ValueGrid {
  readonly low: number;
  readonly high: number;
}

interface Sampled {
  readonly grid: Grid;
  readonly z: Float64Array;
  readonly guessed: Uint8Array;
}

const sampled = new WeakMap<Ground, Sampled>();

/** The ground on a grid over its shots; read once for each ground. */
function sample(ground: Ground): Sampled {
  const known = sampled.get(ground);
  if (known) return known;
  const { hull } = ground;
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < hull.length; i += 2) {
    minX = Math.min(minX, hull[i] as number);
    maxX = Math.max(maxX, hull[i] as number);
    minY = Math.min(minY, hull[i + 1] as number);
    maxY = Math.max(maxY, hull[i + 1] as number);
  }
  const cell = Math.max(leastCell, Math.sqrt(((maxX - minX) * (maxY - minY)) / cells));
  const columns = Math.max(2, Math.ceil((maxX - minX) / cell));
  const rows = Math.max(2, Math.ceil((maxY - minY) / cell));
  const grid = { x0: minX, y0: minY, cell, columns, rows };
  const made = { grid, ...sampleGrid(ground, grid) };
  sampled.set(ground, made);
  return made;
}

interface Heights {
  readonly grid: Grid;
  /** NaN where there is no ground to show. */
  readonly z: Float64Array;
}

function heightsOf({ ground, surface }: Results, which: MapGround): Heights | null {
  if (!ground) return null;
  const { grid, z, guessed } = sample(ground);
  const shown = z.map((height, i) => (guessed[i] ? Number.NaN : height));
  if (which === "finished" && surface) layOver(shown, grid, surface);
  return { grid, z: shown };
}

/** Heights; null where there is no ground. */
export function heightMap(results: Results, which: MapGround): GroundMap | null {
  const heights = heightsOf(results, which);
  return heights && ranged(heights.grid, Float32Array.from(heights.z));
}

/** Steepness; null where there is no ground. */
export function slopeMap(results: Results, which: MapGround): GroundMap | null {
  const heights = heightsOf(results, which);
  if (!heights) return null;
  const { grid, z } = heights;
  const { columns, rows, cell } = grid;
  const values = new Float32Array(z.length).fill(Number.NaN);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const at = j * columns + i;
      if (Number.isNaN(z[at])) continue;
      const gx = difference(z, at, i > 0 ? at - 1 : at, i + 1 < columns ? at + 1 : at) / cell;
      const gy = difference(z, at, j > 0 ? at - columns : at, j + 1 < rows ? at + columns : at) / cell;
      // An even slope of just 10 % must not flicker between two classes.
      values[at] = Math.round(Math.hypot(gx, gy) / evenness) * evenness;
    }
  }
  return ranged(grid, values);
}

/** Change of height for one cell, from the cells before and after; a missing one lends nothing. */
function difference(z: Float64Array, at: number, before: number, after: number): number {
  const from = Number.isNaN(z[before]) ? at : before;
  const to = Number.isNaN(z[after]) ? at : after;
  if (from === to) return Number.NaN;
  const steps = (from === before && before !== at ? 1 : 0) + (to === after && after !== at ? 1 : 0);
  return ((z[to] as number) - (z[from] as number)) / steps;
}

/** Puts the finished heights where earth is moved; inside the walls no ground is left. */
function layOver(values: Float64Array, grid: Grid, surface: GroundGrid): void {
  for (let j = 0; j < grid.rows; j++) {
    for (let i = 0; i < grid.columns; i++) {
      const x = grid.x0 + (i + 0.5) * grid.cell;
      const y = grid.y0 + (j + 0.5) * grid.cell;
      const found = finishedAt(surface, x, y);
      if (found !== null) values[j * grid.columns + i] = found;
    }
  }
}

/** Finished height; NaN inside the walls; null where no earth is moved or the grid doesn't reach. */
function finishedAt({ grid, finished, depth, inside }: GroundGrid, x: number, y: number): number | null {
  const u = (x - grid.x0) / grid.cell - 0.5;
  const v = (y - grid.y0) / grid.cell - 0.5;
  const [i, j] = [Math.floor(u), Math.floor(v)];
  if (i < 0 || j < 0 || i + 1 >= grid.columns || j + 1 >= grid.rows) return null;
  const sw = j * grid.columns + i;
  const four = [sw, sw + 1, sw + grid.columns, sw + grid.columns + 1] as const;
  if (four.some((k) => inside[k])) return Number.NaN;
  if (four.every((k) => Math.abs(depth[k] as number) < noChange)) return null;
  const [s, t] = [u - i, v - j];
  const at = (k: 0 | 1 | 2 | 3) => finished[four[k]] as number;
  return at(0) * (1 - s) * (1 - t) + at(1) * s * (1 - t) + at(2) * (1 - s) * t + at(3) * s * t;
}

function ranged(grid: Grid, depth: Float32Array): GroundMap | null {
  let [low, high] = [Infinity, -Infinity];
  for (const value of depth) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low <= high ? { grid, depth, low, high } : null;
}
