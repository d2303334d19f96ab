/**
 * Everything about grading that doesn't depend on the floor height: the grid, the ground on it, and what
 * every act does in every cell. Made once a layout; a floor drag then costs one clamp a cell.
 */
import type { Bounds } from "../geometry";
import { type Grid, type Ground, groundAt, locate, sampleGrid, trianglePlane } from "../terrain";
import { type Cells, cellsAbout } from "./cells";
import { operatorsOf, type Prepared, type PrepareOptions, prepare } from "./operators";
import { partsOfCells } from "./parts";
import type { FloorRange, GradingPlan } from "./plan";
import { gridOver } from "./reach";

/** What acts can reach and the walls leave outside, a cell an entry, side by side: a drag reads it at every step. */
export interface OutsideCells {
  /** Where its height stands among those of the places. */
  readonly index: Uint32Array;
  /** The cell of the grid that it is, or is a part of. */
  readonly cell: Uint32Array;
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
  /** Cells that the edge of stone or a wall crosses, summed by their parts; they aren't among those of `outside`. */
  readonly parts: OutsideParts;
}

/** Places of their own, whose heights come after the grid's. */
export interface OutsideParts {
  readonly prepared: Prepared;
  readonly outside: OutsideCells;
}

/** All of a layout but the plan: arrays that can be handed over by another thread. */
export type LayoutArrays = Omit<Layout, "plan">;

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
  const { parts, uncut } = layOutParts({ plan, grid, cells, existing }, ground, range, options);
  const outside = outsideCells(prepared, uncut, guessed);
  return { plan, grid, cells, existing, guessed, prepared, outside, parts };
}

/** Parts of the cells that edges cross, and the area of all others. */
function layOutParts(
  { plan, grid, cells, existing }: Pick<Layout, "plan" | "grid" | "cells" | "existing">,
  ground: Ground,
  range: FloorRange,
  options: PrepareOptions,
): { parts: OutsideParts; uncut: Float64Array } {
  const edges = operatorsOf(plan, options).flatMap((operator) => operator.edges ?? []);
  const { x, y, weight, cell } = partsOfCells(grid, cells, plan.footprint.ring, edges);
  const z = new Float64Array(x.length);
  const guessed = new Uint8Array(x.length);
  const uncut = Float64Array.from(cells.weight);
  let near = 0;
  for (let k = 0; k < x.length; k++) {
    const i = cell[k] as number;
    uncut[i] = 0;
    const [px, py] = [x[k] as number, y[k] as number];
    // Parts come along their edges: the next one lies near.
    const found = locate(ground.tin, px, py, near);
    if (found >= 0) near = found;
    z[k] = found < 0 ? (existing[i] as number) : trianglePlane(ground.tin, found, px, py).z;
    guessed[k] = found < 0 ? 1 : (ground.guessed[found] as number);
  }
  const places = { x, y, existing: z, covered: new Uint8Array(x.length) };
  const prepared = prepare(places, plan, range, options);
  return { parts: { prepared, outside: outsideCells(prepared, weight, guessed, cell) }, uncut };
}

/** `cell`: for parts, the cell of each; others are cells themselves. */
function outsideCells(
  { touched, stone, existing }: Prepared,
  weight: Float64Array,
  guessed: Uint8Array,
  cell?: Uint32Array,
): OutsideCells {
  let count = 0;
  for (let k = 0; k < touched.length; k++) if (weight[touched[k] as number] !== 0) count++;
  const index = new Uint32Array(count);
  const kept = {
    index,
    cell: cell ? new Uint32Array(count) : index,
    existing: new Float64Array(count),
    weight: new Float64Array(count),
    stone: new Float32Array(count),
    guessed: new Uint8Array(count),
  };
  for (let k = 0, n = 0; k < touched.length; k++) {
    const i = touched[k] as number;
    if (weight[i] === 0) continue;
    index[n] = i;
    if (cell) kept.cell[n] = cell[i] as number;
    kept.existing[n] = existing[i] as number;
    kept.weight[n] = weight[i] as number;
    kept.stone[n] = stone[k] as number;
    kept.guessed[n] = guessed[i] as number;
    n++;
  }
  return kept;
}
