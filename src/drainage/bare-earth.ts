/**
 * Earth that lies bare while the work goes on: where it is steep and long, and where a silt barrier goes.
 *
 * Units   metres, m2; slopes rise over run.
 * Method  Cells that are cut or filled count as bare. Those that are steep, gathered into one piece where they touch, are told
 *         with the longest way of water within them. The barrier follows the outline of all bare earth, some way off, where
 *         the ground beyond falls away from it.
 * Source  What is too steep or too long is the user's; a barrier along the low side and some way off the toe: common practice.
 * Error   A cell; outlines are smoothed, so lengths are good to some percent.
 */
import { type Grid, gridRegions } from "../terrain";
import type { Flow } from "./flow";
import { smoothed } from "./gathered";
import { gradientAt } from "./slope";

export interface BareGround {
  readonly grid: Grid;
  readonly existing: Float64Array;
  readonly finished: Float64Array;
  readonly blocked: Uint8Array;
  readonly flow: Flow;
}

export interface SteepPiece {
  readonly at: [number, number];
  readonly area: number;
  readonly steepness: number;
  readonly length: number;
  readonly rings: readonly Float64Array[];
}

/** Ground changed by less than this is left as it is, m. */
const changed = 0.02;
/** Smaller pieces are the grid's, m2. */
const leastPiece = 4;

export function bareCells({ existing, finished, blocked }: BareGround): Uint8Array {
  const bare = new Uint8Array(existing.length);
  for (let i = 0; i < bare.length; i++)
    if (!blocked[i] && Math.abs((finished[i] as number) - (existing[i] as number)) > changed) bare[i] = 1;
  return bare;
}

export function steepPieces(
  ground: BareGround,
  bare: Uint8Array,
  steepness: number,
  length: number,
): SteepPiece[] {
  const { grid, finished, flow } = ground;
  const slopes = slopesOf(grid, finished, bare);
  const steep = bare.map((is, i) => (is && (slopes[i] as number) > steepness ? 1 : 0));
  const ways = waysWithin(flow, steep);
  const seen = new Uint8Array(steep.length);
  const pieces: SteepPiece[] = [];
  for (let start = 0; start < steep.length; start++) {
    if (!steep[start] || seen[start]) continue;
    const cells = touching(grid, steep, start, seen);
    const longest = Math.max(...chunked(cells, (i) => ways[i] as number)) + grid.cell;
    const area = cells.length * grid.cell ** 2;
    if (longest < length || area < leastPiece) continue;
    const worst = cells.reduce((a, b) => ((slopes[b] as number) > (slopes[a] as number) ? b : a));
    const own = new Uint8Array(steep.length);
    for (const i of cells) own[i] = 1;
    pieces.push({
      at: centre(grid, worst),
      area,
      steepness: slopes[worst] as number,
      length: longest,
      rings: regions(grid, own),
    });
  }
  return pieces.sort((a, b) => b.area - a.area);
}

/** Values of a long list, to spread into a call, the greatest of each thousand only. */
function chunked(cells: readonly number[], of: (i: number) => number): number[] {
  const found: number[] = [];
  for (let k = 0; k < cells.length; k += 1000)
    found.push(cells.slice(k, k + 1000).reduce((most, i) => Math.max(most, of(i)), Number.NEGATIVE_INFINITY));
  return found;
}

/** Lines along the low side, `off` from the bare earth; none shorter than `shortest`. */
export function siltBarrier(
  { grid, existing }: BareGround,
  bare: Uint8Array,
  off: number,
  shortest: number,
): Float64Array[] {
  const wide = grown(grid, bare, Math.ceil(off / grid.cell));
  return regions(grid, wide).flatMap((ring) => lowParts(grid, existing, ring, shortest));
}

/** Pieces of an outline from which the ground as it is falls away. */
function lowParts(grid: Grid, z: Float64Array, ring: Float64Array, shortest: number): Float64Array[] {
  const count = ring.length / 2;
  const at = (k: number): [number, number] => {
    const i = ((k % count) + count) % count;
    return [ring[2 * i] as number, ring[2 * i + 1] as number];
  };
  const low = Array.from({ length: count }, (_, k) => {
    const [a, b] = [at(k - 1), at(k + 1)];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    // Outlines run with the inside on their left: outwards is to the right.
    const out = [(b[1] - a[1]) / length, -(b[0] - a[0]) / length] as const;
    const [gx, gy] = gradient(grid, z, ...at(k));
    const slope = Math.hypot(gx, gy);
    return slope > 0.005 && -(gx * out[0] + gy * out[1]) > 0.25 * slope;
  });
  const first = low.indexOf(false);
  if (first < 0) return [Float64Array.from([...ring, ...at(0)])];
  const parts: Float64Array[] = [];
  let part: number[] = [];
  for (let k = first + 1; k <= first + count; k++) {
    if (low[k % count]) part.push(...at(k));
    else {
      if (part.length >= 4 && lineLength(part) >= shortest) parts.push(Float64Array.from(part));
      part = [];
    }
  }
  return parts;
}

/** Length of a flat x, y line, m. */
export function lineLength(line: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 2; k < line.length; k += 2)
    sum += Math.hypot(
      (line[k] as number) - (line[k - 2] as number),
      (line[k + 1] as number) - (line[k - 1] as number),
    );
  return sum;
}

/** Outlines of a set of cells, smoothed, the inside on their left. */
function regions(grid: Grid, cells: Uint8Array): Float64Array[] {
  const values = new Float64Array(cells.length);
  for (let i = 0; i < cells.length; i++) values[i] = cells[i] ? 1 : -1;
  return gridRegions(values, grid, 0).map((ring) => smoothed(ring));
}

/** Cells within `by` cells of one that counts, along rows and columns. */
function grown({ columns, rows }: Grid, cells: Uint8Array, by: number): Uint8Array {
  const wide = new Uint8Array(cells.length);
  for (let j = 0; j < rows; j++) growAlong(cells, wide, j * columns, 1, columns, by);
  const all = new Uint8Array(cells.length);
  for (let i = 0; i < columns; i++) growAlong(wide, all, i, columns, rows, by);
  return all;
}

function growAlong(
  from: Uint8Array,
  to: Uint8Array,
  start: number,
  step: number,
  count: number,
  by: number,
): void {
  let next = 0;
  for (let k = 0; k < count; k++) {
    if (!from[start + k * step]) continue;
    const end = Math.min(count - 1, k + by);
    for (let p = Math.max(next, k - by); p <= end; p++) to[start + p * step] = 1;
    next = end + 1;
  }
}

/** Of the cells that count; 0 elsewhere. */
function slopesOf(grid: Grid, z: Float64Array, cells: Uint8Array): Float64Array {
  const slopes = new Float64Array(z.length);
  for (let i = 0; i < slopes.length; i++)
    if (cells[i]) slopes[i] = Math.hypot(...gradientAt(grid, z, placeOf(grid, i)));
  return slopes;
}

function placeOf({ columns }: Grid, i: number): [number, number] {
  return [i % columns, Math.floor(i / columns)];
}

/** At a place, which may lie beyond the grid: then that of the nearest cell. */
function gradient(grid: Grid, z: Float64Array, x: number, y: number): [number, number] {
  const column = Math.min(grid.columns - 1, Math.max(0, Math.floor((x - grid.x0) / grid.cell)));
  const row = Math.min(grid.rows - 1, Math.max(0, Math.floor((y - grid.y0) / grid.cell)));
  return gradientAt(grid, z, [column, row]);
}

/** Longest way of water to each of the cells from others of them, m. */
function waysWithin({ order, first, second, share, grid }: Flow, cells: Uint8Array): Float64Array {
  const ways = new Float64Array(cells.length);
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number;
    if (!cells[i]) continue;
    const next = ((share[i] as number) >= 0.5 ? first[i] : second[i]) as number;
    if (next < 0 || !cells[next]) continue;
    const slanted = i % grid.columns !== next % grid.columns && Math.abs(i - next) !== 1;
    const way = (ways[i] as number) + grid.cell * (slanted ? Math.SQRT2 : 1);
    if (way > (ways[next] as number)) ways[next] = way;
  }
  return ways;
}

function touching({ columns, rows }: Grid, cells: Uint8Array, start: number, seen: Uint8Array): number[] {
  const found = [start];
  seen[start] = 1;
  for (let k = 0; k < found.length; k++) {
    const i = found[k] as number;
    const column = i % columns;
    const row = (i - column) / columns;
    for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
      for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) {
        const next = r * columns + c;
        if (!cells[next] || seen[next]) continue;
        seen[next] = 1;
        found.push(next);
      }
    }
  }
  return found;
}

function centre({ x0, y0, cell, columns }: Grid, i: number): [number, number] {
  return [x0 + ((i % columns) + 0.5) * cell, y0 + (Math.floor(i / columns) + 0.5) * cell];
}
