/**
 * Plain grids of heights as text: ncols, nrows, xllcorner or xllcenter, yllcorner or yllcenter, cellsize (or dx, dy),
 * NODATA_value, then the rows from north to south.
 */
import { type ReadResult, received, refused } from "./incoming";
import { goesOn, type Job, stopped } from "./job";
import { type Raster, type RasterWish, thinned, thinningWords } from "./raster";
import { shown } from "./text";

const HEADS = [
  "ncols",
  "nrows",
  "xllcorner",
  "xllcenter",
  "yllcorner",
  "yllcenter",
  "cellsize",
  "dx",
  "dy",
  "nodata_value",
];
const MOST_CELLS = 50_000_000;
const CELLS_PER_STEP = 500_000;

export function isAsciiGrid(text: string): boolean {
  return /^\s*ncols\s+\d/i.test(text.slice(0, 200));
}

export async function readAsciiGrid(
  file: string,
  text: string,
  wish: RasterWish = {},
  job: Job = {},
): Promise<ReadResult> {
  const word = /\S+/g;
  const head = new Map<string, number>();
  let found = word.exec(text);
  while (found && HEADS.includes(found[0].toLowerCase())) {
    const value = word.exec(text);
    if (value === null || !Number.isFinite(Number(value[0])))
      return refused(`${file}: found ${shown(value?.[0] ?? "")} after ${found[0]}, expected a number.`);
    head.set(found[0].toLowerCase(), Number(value[0]));
    found = word.exec(text);
  }
  const frame = frameOf(head);
  if (typeof frame === "string") return refused(`${file}: ${frame}`);
  const heights = new Float64Array(frame.columns * frame.rows);
  const nothing = head.get("nodata_value") ?? -9999;
  let count = 0;
  for (; found && count < heights.length; found = word.exec(text)) {
    const value = Number(found[0]);
    if (!Number.isFinite(value) && !/^[+-]?nan$/i.test(found[0]))
      return refused(`${file}, height ${count + 1}: found ${shown(found[0])}, expected a number.`);
    heights[count++] = value === nothing ? Number.NaN : value;
    if (count % CELLS_PER_STEP === 0 && !(await goesOn(job, count / heights.length))) return stopped;
  }
  if (count < heights.length)
    return refused(
      `${file} breaks off: found ${count} heights, expected ${frame.rows} rows of ${frame.columns}.`,
    );
  const taken = thinned({ ...frame, heights }, wish);
  if (taken === null) return refused(`${file}: there are no heights within the window.`);
  const said = thinningWords(file, taken);
  return received(file, {
    kind: "ascii-grid",
    units: { known: false },
    points: taken.points,
    warnings: said ? [said] : [],
  });
}

function frameOf(head: ReadonlyMap<string, number>): Omit<Raster, "heights"> | string {
  const columns = head.get("ncols") ?? 0;
  const rows = head.get("nrows") ?? 0;
  const stepX = head.get("dx") ?? head.get("cellsize") ?? 0;
  const stepY = head.get("dy") ?? head.get("cellsize") ?? 0;
  if (!(Number.isInteger(columns) && Number.isInteger(rows) && columns > 0 && rows > 0))
    return "its head doesn't say how many columns and rows there are (ncols, nrows).";
  if (!(stepX > 0 && stepY > 0)) return "its head doesn't say how large a cell is (cellsize).";
  if (columns * rows > MOST_CELLS)
    return `it has ${columns * rows} cells; at most ${MOST_CELLS} can be read. Cut it to the lot.`;
  const left =
    head.get("xllcenter") ?? (head.has("xllcorner") ? (head.get("xllcorner") as number) + stepX / 2 : null);
  const low =
    head.get("yllcenter") ?? (head.has("yllcorner") ? (head.get("yllcorner") as number) + stepY / 2 : null);
  if (left === null || low === null) return "its head doesn't say where it lies (xllcorner, yllcorner).";
  return { columns, rows, stepX, stepY, x: left, y: low + (rows - 1) * stepY };
}
