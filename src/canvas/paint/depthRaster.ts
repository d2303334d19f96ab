/**
 * The map of cut and fill as pixels: one colour a class, edges between classes smoothed over a pixel.
 *
 * Method  Depths are bilinear between cell centres. Where the four centres round a place are of one class
 *         the colour is known without looking; elsewhere each pixel is valued, and a pixel that an edge
 *         crosses is mixed by how far the edge lies from its middle.
 * Source  First principles.
 */
import type { Grid, GroundGrid } from "../../solve/results";

/** What is coloured: one value a cell, NaN where there is none. */
export type ValueGrid = Pick<GroundGrid, "grid" | "depth">;

/** Colours of the classes, as the bytes of an image read as one number (ABGR on all current machines). */
export interface ClassColours {
  /** Ascending depths at which one class ends and the next begins, m. */
  readonly edges: readonly number[];
  /** One more than edges; 0 is see-through. */
  readonly colours: Uint32Array;
}

/** Part of the plan that is drawn: its top-left corner and the size of a pixel, m; pixel rows run south. */
export interface RasterWindow {
  readonly x: number;
  readonly y: number;
  readonly step: number;
  readonly width: number;
  readonly height: number;
}

const noClass = 255;

/** Classes of a row of cells, counted from 0 below the first edge; `noClass` inside the walls. */
function classifyRow(
  depth: Float32Array,
  row: { readonly start: number; readonly from: number; readonly to: number },
  edges: readonly number[],
  classes: Uint8Array,
): void {
  // Neighbours are mostly of one class: its bounds are tried before the others.
  let c = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = row.from; i <= row.to; i++) {
    const d = depth[row.start + i] as number;
    if (!(d >= low && d < high)) {
      c = 0;
      while (c < edges.length && d >= (edges[c] as number)) c++;
      low = edges[c - 1] ?? Number.NEGATIVE_INFINITY;
      high = edges[c] ?? Number.POSITIVE_INFINITY;
      if (Number.isNaN(d)) [c, low] = [noClass, Number.POSITIVE_INFINITY];
    }
    classes[i] = c;
  }
}

/** Smallest block of cells that holds every coloured one: [i0, j0, i1, j1], or null where none is. */
export function colouredCells(
  surface: ValueGrid,
  { edges, colours }: ClassColours,
): readonly [number, number, number, number] | null {
  const { columns, rows } = surface.grid;
  const unseen = colours.indexOf(0);
  // Without a see-through class everything is coloured.
  if (unseen < 0) return [0, 0, columns - 1, rows - 1];
  const low = unseen <= 0 ? Number.NEGATIVE_INFINITY : (edges[unseen - 1] as number);
  const high = unseen < 0 || unseen >= edges.length ? Number.POSITIVE_INFINITY : (edges[unseen] as number);
  let [i0, j0, i1, j1] = [columns, rows, -1, -1];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const d = surface.depth[j * columns + i] as number;
      if (!(d < low || d >= high)) continue;
      if (i < i0) i0 = i;
      if (i > i1) i1 = i;
      if (j < j0) j0 = j;
      j1 = j;
    }
  }
  return i1 < 0 ? null : [i0, j0, i1, j1];
}

interface Quad {
  readonly southWest: number;
  readonly southEast: number;
  readonly northWest: number;
  readonly northEast: number;
}

/** The four depths round a place; one inside the walls takes the mean of the others. */
function quadAt(depth: Float32Array, at: number, columns: number): Quad | null {
  const sw = depth[at] as number;
  const se = depth[at + 1] as number;
  const nw = depth[at + columns] as number;
  const ne = depth[at + columns + 1] as number;
  // A sum with one NaN in it is NaN.
  if (!Number.isNaN(sw + se + nw + ne)) return { southWest: sw, southEast: se, northWest: nw, northEast: ne };
  let sum = 0;
  let count = 0;
  for (const d of [sw, se, nw, ne]) {
    if (Number.isNaN(d)) continue;
    sum += d;
    count++;
  }
  if (count === 0) return null;
  const mean = sum / count;
  const or = (d: number) => (Number.isNaN(d) ? mean : d);
  return { southWest: or(sw), southEast: or(se), northWest: or(nw), northEast: or(ne) };
}

/** First pixel column (or row) whose middle is at or beyond each cell centre. */
function pixelStarts(count: number, centre0: number, cell: number, origin: number, step: number): Int32Array {
  const starts = new Int32Array(count);
  for (let i = 0; i < count; i++) starts[i] = Math.ceil((centre0 + i * cell - origin) / step - 0.5);
  return starts;
}

/** Fills `pixels` (width * height, cleared here) with the colours of the classes. */
export function rasterDepth(
  surface: ValueGrid,
  table: ClassColours,
  window: RasterWindow,
  pixels: Uint32Array,
): void {
  pixels.fill(0);
  const { grid } = surface;
  const starts = pixelStarts(grid.columns, grid.x0 + grid.cell / 2, grid.cell, window.x, window.step);
  const columns = columnsIn(starts, window.width);
  // The northern row of one band is the southern row of the next, and the other way round.
  const rows = { south: new Uint8Array(grid.columns), north: new Uint8Array(grid.columns), j: Number.NaN };
  const northing = (v: number) => (window.y - (v + 0.5) * window.step - grid.y0) / grid.cell - 0.5;
  for (let v = 0; v < window.height; ) {
    const j = Math.floor(northing(v));
    const first = v;
    while (v < window.height && Math.floor(northing(v)) === j) v++;
    if (j < 0 || j + 1 >= grid.rows) continue;
    classifyBand(surface, table.edges, columns, j, rows);
    const band = readBand(surface, table, window, { j, starts, columns, rows });
    for (let row = first; row < v; row++) paintRow(band, table, window, pixels, row, northing(row) - j);
  }
}

/** What lies between two rows of cell centres: runs of one colour, and quads that need each pixel's value. */
interface Band {
  /** Colour, first pixel and pixel after the last, three a run. */
  readonly runs: readonly number[];
  readonly quads: readonly MixedQuad[];
}

interface MixedQuad extends Quad {
  readonly u0: number;
  readonly u1: number;
  /** Share of the way from west to east at the first pixel's middle. */
  readonly east0: number;
  /** How much the depth changes over one pixel, m. */
  readonly perPixel: number;
  readonly cell: number;
}

interface BandRows {
  south: Uint8Array;
  north: Uint8Array;
  /** Index of the southern row. */
  j: number;
}

/** Classes of the band's two rows of cells; rows go southwards, so the last southern row serves again. */
function classifyBand(
  { grid, depth }: ValueGrid,
  edges: readonly number[],
  [from, to]: readonly [number, number],
  j: number,
  rows: BandRows,
): void {
  const row = (k: number) => ({ start: k * grid.columns, from, to });
  [rows.north, rows.south] = [rows.south, rows.north];
  if (rows.j !== j + 1) classifyRow(depth, row(j + 1), edges, rows.north);
  classifyRow(depth, row(j), edges, rows.south);
  rows.j = j;
}

interface BandPlace {
  readonly j: number;
  readonly rows: BandRows;
  readonly starts: Int32Array;
  readonly columns: readonly [number, number];
}

function readBand(
  surface: ValueGrid,
  table: ClassColours,
  window: RasterWindow,
  { j, starts, columns, rows }: BandPlace,
): Band {
  const { south, north } = rows;
  const runs: number[] = [];
  const quads: MixedQuad[] = [];
  for (let i = columns[0]; i < columns[1]; i++) {
    const c = south[i] as number;
    const uniform = c !== noClass && c === south[i + 1] && c === north[i] && c === north[i + 1];
    if (uniform && table.colours[c] === 0) continue;
    const u0 = Math.max(0, starts[i] as number);
    const u1 = Math.min(window.width, starts[i + 1] as number);
    if (u0 >= u1) continue;
    if (uniform) addRun(runs, table.colours[c] as number, u0, u1);
    else addQuad(quads, surface, window, { at: j * surface.grid.columns + i, i, u0, u1 });
  }
  return { runs, quads };
}

/** Adds a run of one colour, or lengthens the last where it is of that colour and ends here. */
function addRun(runs: number[], colour: number, u0: number, u1: number): void {
  const n = runs.length;
  if (n > 0 && runs[n - 3] === colour && runs[n - 1] === u0) runs[n - 1] = u1;
  else runs.push(colour, u0, u1);
}

function addQuad(
  quads: MixedQuad[],
  { grid, depth }: ValueGrid,
  window: RasterWindow,
  { at, i, u0, u1 }: { at: number; i: number; u0: number; u1: number },
): void {
  const quad = quadAt(depth, at, grid.columns);
  if (!quad) return;
  const east0 = (window.x + (u0 + 0.5) * window.step - grid.x0) / grid.cell - 0.5 - i;
  quads.push({ ...quad, u0, u1, east0, cell: grid.cell, perPixel: slopePerPixel(quad, grid, window.step) });
}

function paintRow(
  band: Band,
  table: ClassColours,
  window: RasterWindow,
  pixels: Uint32Array,
  row: number,
  north: number,
): void {
  const start = row * window.width;
  const { runs, quads } = band;
  for (let k = 0; k < runs.length; k += 3)
    pixels.fill(runs[k] as number, start + (runs[k + 1] as number), start + (runs[k + 2] as number));
  for (const quad of quads) {
    const west = quad.southWest + (quad.northWest - quad.southWest) * north;
    const east = quad.southEast + (quad.northEast - quad.southEast) * north;
    const growth = ((east - west) * window.step) / quad.cell;
    let value = west + (east - west) * quad.east0;
    for (let u = quad.u0; u < quad.u1; u++, value += growth) {
      pixels[start + u] = smoothColour(value, quad.perPixel, table);
    }
  }
}

/** Columns of cells whose pixels fall into the window: [first, after the last). */
function columnsIn(starts: Int32Array, width: number): [number, number] {
  let from = 0;
  while (from + 1 < starts.length && (starts[from + 1] as number) <= 0) from++;
  let to = starts.length - 1;
  while (to > from && (starts[to - 1] as number) >= width) to--;
  return [from, to];
}

/** How much the depth changes over one pixel in its steepest direction, m; never zero. */
function slopePerPixel(quad: Quad, grid: Grid, step: number): number {
  const gx = (quad.southEast + quad.northEast - quad.southWest - quad.northWest) / 2;
  const gy = (quad.northWest + quad.northEast - quad.southWest - quad.southEast) / 2;
  return Math.max(1e-9, (Math.hypot(gx, gy) / grid.cell) * step);
}

function smoothColour(value: number, perPixel: number, { edges, colours }: ClassColours): number {
  let c = 0;
  while (c < edges.length && value >= (edges[c] as number)) c++;
  const own = colours[c] as number;
  if (c > 0) {
    const share = 0.5 + (value - (edges[c - 1] as number)) / perPixel;
    if (share < 1) return mixed(own, colours[c - 1] as number, share);
  }
  if (c < edges.length) {
    const share = 0.5 + ((edges[c] as number) - value) / perPixel;
    if (share < 1) return mixed(own, colours[c + 1] as number, share);
  }
  return own;
}

/** A share of one colour with the rest of another; weighted by their opacity, so that no dark rim shows. */
function mixed(a: number, b: number, share: number): number {
  if (a === b) return a;
  const alphaA = (a >>> 24) * share;
  const alphaB = (b >>> 24) * (1 - share);
  const alpha = alphaA + alphaB;
  if (alpha < 0.5) return 0;
  const channel = (shift: number) =>
    Math.round((((a >>> shift) & 255) * alphaA + ((b >>> shift) & 255) * alphaB) / alpha);
  return ((Math.round(alpha) << 24) | (channel(16) << 16) | (channel(8) << 8) | channel(0)) >>> 0;
}
