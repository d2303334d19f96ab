/**
 * The map of cut and fill as pixels: one colour a class, edges between classes smoothed over a pixel.
 *
 * Method  Depths are bilinear between cell centres. Where the four centres round a place are of one class
 *         the colour is known without looking; elsewhere each pixel is valued, and a pixel that an edge
 *         crosses is mixed by how far the edge lies from its middle.
 * Source  First principles.
 */
import type { GroundGrid } from "../../solve/results";

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
    if (Number.isNaN(d)) {
      classes[i] = noClass;
      continue;
    }
    if (!(d >= low && d < high)) {
      c = 0;
      while (c < edges.length && d >= (edges[c] as number)) c++;
      // Reading beyond an array's ends takes a hundred times as long as asking first.
      low = c > 0 ? (edges[c - 1] as number) : Number.NEGATIVE_INFINITY;
      high = c < edges.length ? (edges[c] as number) : Number.POSITIVE_INFINITY;
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
  const band = newBand(grid.columns);
  const painted = { table, window, cell: grid.cell };
  const northing = (v: number) => (window.y - (v + 0.5) * window.step - grid.y0) / grid.cell - 0.5;
  for (let v = 0; v < window.height; ) {
    const j = Math.floor(northing(v));
    const first = v;
    while (v < window.height && Math.floor(northing(v)) === j) v++;
    if (j < 0 || j + 1 >= grid.rows) continue;
    classifyBand(surface, table.edges, columns, j, rows);
    readBand(surface, table, window, { j, starts, columns, rows }, band);
    for (let row = first; row < v; row++) paintRow(band, painted, pixels, row, northing(row) - j);
  }
}

/**
 * What lies between two rows of cell centres: runs of one colour, and quads that need each pixel's value. Written anew
 * for every band into the same numbers: a drag makes a million of them a second.
 */
interface Band {
  /** Colour, first pixel and pixel after the last, three a run. */
  readonly runs: Uint32Array;
  runEnd: number;
  /** First pixel and pixel after the last, two a quad. */
  readonly spans: Int32Array;
  spanEnd: number;
  /** Southwest, southeast, northwest and northeast depth, east0, perPixel: six a quad. */
  readonly quads: Float64Array;
  quadEnd: number;
}

function newBand(columns: number): Band {
  return {
    runs: new Uint32Array(3 * columns),
    runEnd: 0,
    spans: new Int32Array(2 * columns),
    spanEnd: 0,
    quads: new Float64Array(6 * columns),
    quadEnd: 0,
  };
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
  band: Band,
): void {
  const { south, north } = rows;
  band.runEnd = 0;
  band.spanEnd = 0;
  band.quadEnd = 0;
  for (let i = columns[0]; i < columns[1]; i++) {
    const c = south[i] as number;
    const uniform = c === south[i + 1] && c === north[i] && c === north[i + 1];
    // Nothing is painted inside the walls, nor where the class can't be seen.
    if (uniform && (c === noClass || table.colours[c] === 0)) continue;
    const u0 = Math.max(0, starts[i] as number);
    const u1 = Math.min(window.width, starts[i + 1] as number);
    if (u0 >= u1) continue;
    if (uniform) addRun(band, table.colours[c] as number, u0, u1);
    else addQuad(band, surface, window, j * surface.grid.columns + i, i, u0, u1);
  }
}

/** Adds a run of one colour, or lengthens the last where it is of that colour and ends here. */
function addRun(band: Band, colour: number, u0: number, u1: number): void {
  const { runs, runEnd: n } = band;
  if (n > 0 && runs[n - 3] === colour && runs[n - 1] === u0) {
    runs[n - 1] = u1;
    return;
  }
  runs[n] = colour;
  runs[n + 1] = u0;
  runs[n + 2] = u1;
  band.runEnd = n + 3;
}

/** Adds the quad whose southwest corner is cell `at`, in column i: east0 is the share of the way to the east at its first pixel's middle. */
function addQuad(
  band: Band,
  { grid, depth }: ValueGrid,
  window: RasterWindow,
  at: number,
  i: number,
  u0: number,
  u1: number,
): void {
  const { quads, spans, quadEnd: n, spanEnd } = band;
  writeQuad(depth, at, grid.columns, quads, n);
  quads[n + 4] = (window.x + (u0 + 0.5) * window.step - grid.x0) / grid.cell - 0.5 - i;
  writeSlope(quads, n, window.step / grid.cell);
  band.quadEnd = n + 6;
  spans[spanEnd] = u0;
  spans[spanEnd + 1] = u1;
  band.spanEnd = spanEnd + 2;
}

/** The four depths round a place, not all of them inside the walls; one that is takes the mean of the others. */
function writeQuad(depth: Float32Array, at: number, columns: number, quads: Float64Array, n: number): void {
  const sw = depth[at] as number;
  const se = depth[at + 1] as number;
  const nw = depth[at + columns] as number;
  const ne = depth[at + columns + 1] as number;
  quads[n] = sw;
  quads[n + 1] = se;
  quads[n + 2] = nw;
  quads[n + 3] = ne;
  // A sum with one NaN in it is NaN.
  if (!Number.isNaN(sw + se + nw + ne)) return;
  const known = [sw, se, nw, ne].filter((d) => !Number.isNaN(d));
  const mean = known.reduce((sum, d) => sum + d, 0) / known.length;
  for (let k = n; k < n + 4; k++) if (Number.isNaN(quads[k] as number)) quads[k] = mean;
}

function paintRow(
  { runs, runEnd, spans, quads, quadEnd }: Band,
  { table, window, cell }: { table: ClassColours; window: RasterWindow; cell: number },
  pixels: Uint32Array,
  row: number,
  north: number,
): void {
  const start = row * window.width;
  for (let k = 0; k < runEnd; k += 3)
    pixels.fill(runs[k] as number, start + (runs[k + 1] as number), start + (runs[k + 2] as number));
  for (let n = 0, k = 0; n < quadEnd; n += 6, k += 2) {
    const [southWest, southEast] = [quads[n] as number, quads[n + 1] as number];
    const west = southWest + ((quads[n + 2] as number) - southWest) * north;
    const east = southEast + ((quads[n + 3] as number) - southEast) * north;
    const growth = ((east - west) * window.step) / cell;
    const perPixel = quads[n + 5] as number;
    const end = spans[k + 1] as number;
    const from = spans[k] as number;
    let value = west + (east - west) * (quads[n + 4] as number);
    const c = classBetween(value, value + growth * (end - 1 - from), perPixel, table.edges);
    if (c === noClass)
      for (let u = from; u < end; u++, value += growth)
        pixels[start + u] = smoothColour(value, perPixel, table);
    else {
      const colour = table.colours[c] as number;
      for (let u = from; u < end; u++) pixels[start + u] = colour;
    }
  }
}

/** The class of all values between two, where no edge comes within half a pixel of them; else `noClass`. */
function classBetween(one: number, other: number, perPixel: number, edges: readonly number[]): number {
  const low = Math.min(one, other) - perPixel / 2;
  const high = Math.max(one, other) + perPixel / 2;
  let c = 0;
  while (c < edges.length && low >= (edges[c] as number)) c++;
  return c < edges.length && high > (edges[c] as number) ? noClass : c;
}

/** Columns of cells whose pixels fall into the window: [first, after the last). */
function columnsIn(starts: Int32Array, width: number): [number, number] {
  let from = 0;
  while (from + 1 < starts.length && (starts[from + 1] as number) <= 0) from++;
  let to = starts.length - 1;
  while (to > from && (starts[to - 1] as number) >= width) to--;
  return [from, to];
}

/** Writes how much the depth of the quad at n changes over one pixel in its steepest direction, m; never zero. */
function writeSlope(quads: Float64Array, n: number, perCell: number): void {
  const rising = (quads[n + 3] as number) - (quads[n] as number);
  const falling = (quads[n + 1] as number) - (quads[n + 2] as number);
  const gx = (rising + falling) / 2;
  const gy = (rising - falling) / 2;
  quads[n + 5] = Math.max(1e-9, Math.sqrt(gx * gx + gy * gy) * perCell);
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
