/**
 * The map of cut and fill as pixels: one colour a class, edges between classes smoothed over a pixel.
 *
 * Method  Depths are bilinear between cell centres. Where the four centres round a place are of one class
 *         the colour is known without looking; elsewhere each pixel is valued, and a pixel that an edge
 *         crosses is mixed by how far the edge lies from its middle.
 * Source  First principles.
 */
import type { Grid, GroundGrid } from "../../solve/results";

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

/** Class of each cell; `noClass` inside the walls. Classes are counted from 0 below the first edge. */
function classify(depth: Float32Array, edges: readonly number[], classes: Uint8Array): void {
  for (let i = 0; i < depth.length; i++) {
    const d = depth[i] as number;
    let c = 0;
    while (c < edges.length && d >= (edges[c] as number)) c++;
    if (Number.isNaN(d)) c = noClass;
    classes[i] = c;
  }
}

/** Smallest block of cells that holds every coloured one: [i0, j0, i1, j1], or null where none is. */
export function colouredCells(
  surface: GroundGrid,
  { edges, colours }: ClassColours,
): readonly [number, number, number, number] | null {
  const { columns, rows } = surface.grid;
  const unseen = colours.indexOf(0);
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
  surface: GroundGrid,
  table: ClassColours,
  window: RasterWindow,
  pixels: Uint32Array,
): void {
  pixels.fill(0);
  const { grid, depth } = surface;
  const classes = new Uint8Array(depth.length);
  classify(depth, table.edges, classes);
  const starts = pixelStarts(grid.columns, grid.x0 + grid.cell / 2, grid.cell, window.x, window.step);
  const [from, to] = columnsIn(starts, window.width);
  for (let v = 0; v < window.height; v++) {
    const y = window.y - (v + 0.5) * window.step;
    const gj = (y - grid.y0) / grid.cell - 0.5;
    const j = Math.floor(gj);
    if (j < 0 || j + 1 >= grid.rows) continue;
    for (let i = from; i < to; i++) {
      const u0 = Math.max(0, starts[i] as number);
      const u1 = Math.min(window.width, starts[i + 1] as number);
      if (u0 >= u1) continue;
      const at = j * grid.columns + i;
      const c = classes[at] as number;
      const uniform =
        c !== noClass &&
        c === classes[at + 1] &&
        c === classes[at + grid.columns] &&
        c === classes[at + grid.columns + 1];
      if (!uniform) mixedSpan(surface, table, window, pixels, { at, i, v, u0, u1, north: gj - j });
      else if (table.colours[c] !== 0)
        pixels.fill(table.colours[c] as number, v * window.width + u0, v * window.width + u1);
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

interface Span {
  readonly at: number;
  readonly i: number;
  readonly v: number;
  readonly u0: number;
  readonly u1: number;
  /** Share of the way from the southern to the northern cell centres. */
  readonly north: number;
}

/** Pixels of one row between four cell centres that are not of one class. */
function mixedSpan(
  { grid, depth }: GroundGrid,
  table: ClassColours,
  window: RasterWindow,
  pixels: Uint32Array,
  span: Span,
): void {
  const quad = quadAt(depth, span.at, grid.columns);
  if (!quad) return;
  const west = quad.southWest + (quad.northWest - quad.southWest) * span.north;
  const east = quad.southEast + (quad.northEast - quad.southEast) * span.north;
  const perPixel = slopePerPixel(quad, grid, window.step);
  const first = (window.x + (span.u0 + 0.5) * window.step - grid.x0) / grid.cell - 0.5 - span.i;
  const stepShare = window.step / grid.cell;
  let value = west + (east - west) * first;
  const growth = (east - west) * stepShare;
  const row = span.v * window.width;
  for (let u = span.u0; u < span.u1; u++, value += growth) {
    pixels[row + u] = smoothColour(value, perPixel, table);
  }
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
