/**
 * Heights on a grid → points: a window of it, thinned to every n-th row and column.
 *
 * Error   the greatest and the root-mean-square difference between the heights left out and the thinned ones, taken straight
 *         between their four neighbours; in the file's height unit.
 * Source  first principles (bilinear interpolation).
 */
import type { IncomingPoints } from "./incoming";

/** Row 0 is the northernmost; NaN where nothing is known. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  /** Centre of the cell of row 0, column 0, and the steps from cell to cell (stepY positive: southwards). */
  readonly x: number;
  readonly y: number;
  readonly stepX: number;
  readonly stepY: number;
  readonly heights: Float64Array;
}

export interface RasterWish {
  /** In the file's coordinates; nothing: all of it. */
  readonly window?: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  };
  /** At most so many points. */
  readonly most?: number;
  /** Thin as far as the greatest error stays within this; nothing: only as far as `most` needs. */
  readonly within?: number;
}

export interface Thinned {
  readonly points: IncomingPoints;
  /** Every n-th row and column was kept (and the last of each). */
  readonly every: number;
  readonly greatest: number;
  /** Heights beside a gap, where a kept one is missing: they are in neither error. */
  readonly untold: number;
  readonly rms: number;
  /** Cells of the window, those with heights. */
  readonly cells: number;
}

/** As many points as a plan still handles well. */
export const mostRasterPoints = 20_000;

export function thinned(raster: Raster, wish: RasterWish = {}): Thinned | null {
  const most = wish.most ?? mostRasterPoints;
  const part = windowOf(raster, wish);
  if (part === null) return null;
  let every = 1;
  while (axis(part.columns, every).length * axis(part.rows, every).length > most) every++;
  let best = measured(part, every);
  while (wish.within !== undefined && best.greatest <= wish.within) {
    const next = measured(part, every * 2);
    if (next.greatest > wish.within || every * 2 >= Math.max(part.columns, part.rows)) break;
    every *= 2;
    best = next;
  }
  return best.cells === 0 ? null : { ...best, points: pointsOf(part, every), every };
}

function windowOf(raster: Raster, { window }: RasterWish): Raster | null {
  if (!window) return raster;
  const { x, y, stepX, stepY, columns, rows, heights } = raster;
  const left = Math.max(0, Math.ceil((window.minX - x) / stepX - 1e-9));
  const right = Math.min(columns - 1, Math.floor((window.maxX - x) / stepX + 1e-9));
  const top = Math.max(0, Math.ceil((y - window.maxY) / stepY - 1e-9));
  const bottom = Math.min(rows - 1, Math.floor((y - window.minY) / stepY + 1e-9));
  if (left > right || top > bottom) return null;
  const width = right - left + 1;
  const part = new Float64Array(width * (bottom - top + 1));
  for (let row = top; row <= bottom; row++)
    part.set(heights.subarray(row * columns + left, row * columns + right + 1), (row - top) * width);
  return {
    columns: width,
    rows: bottom - top + 1,
    x: x + left * stepX,
    y: y - top * stepY,
    stepX,
    stepY,
    heights: part,
  };
}

/** Indices that are kept of so many: every n-th and the last. */
function axis(count: number, every: number): number[] {
  const kept: number[] = [];
  for (let i = 0; i < count; i += every) kept.push(i);
  if (kept.at(-1) !== count - 1) kept.push(count - 1);
  return kept;
}

function measured({ columns, rows, heights }: Raster, every: number) {
  let greatest = 0;
  let sum = 0;
  let told = 0;
  let cells = 0;
  for (let row = 0; row < rows; row++) {
    const top = row - (row % every);
    const bottom = Math.min(top + every, rows - 1);
    const down = bottom === top ? 0 : (row - top) / (bottom - top);
    for (let column = 0; column < columns; column++) {
      const height = heights[row * columns + column] as number;
      if (Number.isNaN(height)) continue;
      cells++;
      if (every === 1) continue;
      const left = column - (column % every);
      const right = Math.min(left + every, columns - 1);
      const along = right === left ? 0 : (column - left) / (right - left);
      const at = (r: number, c: number) => heights[r * columns + c] as number;
      const upper = at(top, left) * (1 - along) + at(top, right) * along;
      const lower = at(bottom, left) * (1 - along) + at(bottom, right) * along;
      const error = Math.abs(upper * (1 - down) + lower * down - height);
      if (Number.isNaN(error)) continue;
      told++;
      sum += error * error;
      if (error > greatest) greatest = error;
    }
  }
  const untold = every === 1 ? 0 : cells - told;
  return { greatest, rms: told === 0 ? 0 : Math.sqrt(sum / told), cells, untold };
}

function pointsOf(raster: Raster, every: number): IncomingPoints {
  const x: number[] = [];
  const y: number[] = [];
  const z: number[] = [];
  for (const row of axis(raster.rows, every)) {
    for (const column of axis(raster.columns, every)) {
      const height = raster.heights[row * raster.columns + column] as number;
      if (Number.isNaN(height)) continue;
      x.push(raster.x + column * raster.stepX);
      y.push(raster.y - row * raster.stepY);
      z.push(height);
    }
  }
  return {
    names: x.map(() => ""),
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    z: Float64Array.from(z),
  };
}

/** What thinning did, in words; null where all of it was taken. */
export function thinningWords(
  file: string,
  { every, greatest, rms, points, cells, untold }: Thinned,
): string | null {
  if (every === 1) return null;
  const round = (value: number) => Number(value.toPrecision(3));
  const gaps =
    untold === 0
      ? ""
      : ` That leaves out ${untold === 1 ? "1 height" : `${untold} heights`} beside gaps and along a ragged edge: there the ground of the points taken may lie farther off or end sooner. Read a smaller part, or more points, where that matters.`;
  return (
    `${file}: of every ${every} rows and columns one was taken, ${points.x.length} of ${cells} heights. ` +
    `What was left out differs by at most ${round(greatest)} from the ground between them (root mean square ${round(rms)}), in the file's unit of height.${gaps}`
  );
}
