/** Contours of the ground as it is and of the finished ground, at one interval. Heights in metres. */
import type { Display } from "../document/schema";
import type { Finished, Layout } from "../grading";
import {
  type ContourUnit,
  contourLevels,
  type Ground,
  gridContours,
  groundContours,
  type Tin,
  tinContours,
} from "../terrain";
import type { Contour } from "./results";

/** The interval of the contours, and every how many of them are heavier. */
export interface ContourScale {
  readonly interval: number;
  readonly majorEvery: number;
}

export interface ContourSet extends ContourScale {
  readonly contours: readonly Contour[];
}

/** Contours are round numbers in the project's notation of heights. */
export function contourUnit({ length }: Display): ContourUnit {
  if (length === "ft-in" || length === "in") return "inch";
  return length === "ft" ? "foot" : "metre";
}

export const noContours: ContourSet = { interval: 0, majorEvery: 1, contours: [] };

/** More lines than this at one interval are a wall of ink: then only the heavier ones are drawn. */
const mostLines = 120;
/** How far round changed ground the finished contours are carried, in cells. */
const carried = 4;
/** A change of height that counts, m. */
const change = 1e-3;

/** The scale alone, for contours of the finished ground where nobody draws those of the ground as it is. */
export function undrawnContours(tin: Tin, readIn: ContourUnit): ContourSet {
  const { low, high } = extremes(tin);
  const { interval, majorEvery } = contourLevels(low, high, readIn);
  return { interval, majorEvery, contours: [] };
}

/** Contours of the ground between the shots, measured and guessed parts apart; the skirt round them has none. */
export function existingContours(tin: Tin, ground: Ground, readIn: ContourUnit): ContourSet {
  const { low, high } = extremes(tin);
  const { interval, levels, majorEvery } = contourLevels(low, high, readIn);
  const guessed = ground.guessed.subarray(0, tin.triangles.length / 3);
  if (guessed.includes(1)) return splitContours(tin, guessed, interval, levels, majorEvery);
  const lines = tinContours(tin, levels);
  return {
    interval,
    majorEvery,
    contours: levels.map((height, i) => ({
      height,
      major: isMajor(height, interval, majorEvery),
      lines: lines[i] ?? [],
    })),
  };
}

function splitContours(
  tin: Tin,
  guessed: Uint8Array,
  interval: number,
  levels: readonly number[],
  majorEvery: number,
): ContourSet {
  const split = groundContours({ tin, guessed }, levels);
  const contours = levels.map((height, i) => ({
    height,
    major: isMajor(height, interval, majorEvery),
    lines: split[i]?.measured ?? [],
    guessed: split[i]?.guessed ?? [],
  }));
  return { interval, majorEvery, contours };
}

/** Contours of the finished ground where it differs from the ground as it is, and a little round about. */
export function finishedContours(layout: Layout, finished: Finished, set: ContourScale): Contour[] {
  const shown = changedCells(layout, finished);
  const { low, high } = range(finished.finished, shown);
  if (low > high || !(set.interval > 0)) return [];
  const every = (high - low) / set.interval > mostLines ? set.majorEvery : 1;
  const step = set.interval * every;
  const levels: number[] = [];
  for (let k = Math.ceil(low / step); k * step <= high && levels.length < mostLines; k++)
    levels.push(k * step);
  const lines = gridContours(finished.finished, layout.grid, levels, (i) => shown[i] === 1);
  return levels.map((height, i) => ({
    height,
    major: isMajor(height, set.interval, set.majorEvery),
    lines: lines[i] ?? [],
  }));
}

function isMajor(height: number, interval: number, majorEvery: number): boolean {
  return Math.round(height / interval) % majorEvery === 0;
}

/** 1 in cells within a few cells of a change, outside the walls. */
function changedCells({ grid, cells, prepared }: Layout, { depth }: Finished): Uint8Array {
  const { columns, rows } = grid;
  const wide = new Uint8Array(columns * rows);
  for (const i of prepared.touched) {
    if (Math.abs(depth[i] as number) < change) continue;
    const column = i % columns;
    wide.fill(1, i - Math.min(carried, column), i + Math.min(carried, columns - 1 - column) + 1);
  }
  const shown = new Uint8Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    for (let k = Math.max(0, j - carried); k <= Math.min(rows - 1, j + carried); k++) {
      const row = k * columns;
      for (let i = 0; i < columns; i++) if (wide[row + i]) shown[j * columns + i] = 1;
    }
  }
  for (let i = 0; i < shown.length; i++) if (cells.inside[i]) shown[i] = 0;
  return shown;
}

function range(values: Float64Array, shown: Uint8Array): { low: number; high: number } {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < values.length; i++) {
    if (!shown[i]) continue;
    const z = values[i] as number;
    if (z < low) low = z;
    if (z > high) high = z;
  }
  return { low, high };
}

function extremes({ z, triangles }: Tin): { low: number; high: number } {
  let low = Infinity;
  let high = -Infinity;
  for (const i of triangles) {
    low = Math.min(low, z[i] as number);
    high = Math.max(high, z[i] as number);
  }
  return { low, high };
}

/** Highest and lowest of the ground's measured points, m. */
export function measuredRange({ tin, measuredPoints }: Ground): { low: number; high: number } {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < measuredPoints; i++) {
    low = Math.min(low, tin.z[i] as number);
    high = Math.max(high, tin.z[i] as number);
  }
  return { low, high };
}
