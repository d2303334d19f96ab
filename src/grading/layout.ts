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

export interface Layout {
  readonly plan: GradingPlan;
  readonly grid: Grid;
  readonly cells: Cells;
  readonly existing: Float64Array;
  readonly guessed: Uint8Array;
  readonly prepared: Prepared;
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
  return { plan, grid, cells, existing, guessed, prepared };
}
