/**
 * Everything about grading that doesn't depend on the floor height: the grid, the ground on it, and what
 * every act does in every cell. Made once a layout; a floor drag then costs one clamp a cell.
 */
import type { Bounds } from "../geometry";
import { type Grid, type Ground, groundAt, sampleGrid } from "../terrain";
import { type Cells, cellsAbout } from "./cells";
import { type Prepared, type PrepareOptions, prepare } from "./operators";
import type { FloorRange, GradingPlan } from "./plan";
import { gridOver } from "./reach";

/** What acts can reach and the walls leave outside, a cell an entry, side by side: a drag reads it at every step. */
export interface OutsideCells {
  readonly index: Uint32Array;
  readonly existing: Float64Array;
  /** Area outside the walls, m2; never 0. */
  readonly weight: Float64Array;
  /** Thickness of stone, m. */
  readonly stone: Float32Array;
  readonly guessed: Uint8Array;
}

export interface Layout {
  readonly plan: GradingPlan;
  readonly grid: Grid;
  readonly cells: Cells;
  readonly existing: Float64Array;
  readonly guessed: Uint8Array;
  readonly prepared: Prepared;
  readonly outside: OutsideCells;
}

/** Smallest cell, m: finer than this gains nothing against what the ground between shots is known to. */
export const leastCell = 0.1;
/** Most cells of the full grid: what a floor drag can clamp in a few milliseconds. */
export const mostCells = 240_000;

export interface LayoutOptions extends PrepareOptions {
  readonly bounds: Bounds;
  readonly range: FloorRange;
  readonly mostCells?: number;
  readonly leastCell?: number;
}

export function layOut(plan: GradingPlan, ground: Ground, options: LayoutOptions): Layout {
  const grid = gridOver(options.bounds, options.mostCells ?? mostCells, options.leastCell ?? leastCell);
  return layOutOn(grid, plan, ground, options.range, options);
}

/** As `layOut`, on a grid that is given. */
export function layOutOn(
  grid: Grid,
  plan: GradingPlan,
  ground: Ground,
  range: FloorRange,
  options: PrepareOptions = {},
): Layout {
  const cells = cellsAbout(grid, plan.footprint.ring);
  const { z: existing, guessed } = sampleGrid(ground, grid);
  for (const i of cells.cut) {
    const there = groundAt(ground, cells.x[i] as number, cells.y[i] as number);
    if (there) existing[i] = there.z;
  }
  const prepared = prepare({ ...cells, existing }, plan, range, options);
  const outside = outsideCells(prepared, cells.weight, guessed);
  return { plan, grid, cells, existing, guessed, prepared, outside };
}

function outsideCells(
  { touched, stone, existing }: Prepared,
  weight: Float64Array,
  guessed: Uint8Array,
): OutsideCells {
  const kept = touched.filter((i) => weight[i] !== 0);
  return {
    index: kept,
    existing: Float64Array.from(kept, (i) => existing[i] as number),
    weight: Float64Array.from(kept, (i) => weight[i] as number),
    stone: stone.filter((_, k) => weight[touched[k] as number] !== 0),
    guessed: Uint8Array.from(kept, (i) => guessed[i] as number),
  };
}
