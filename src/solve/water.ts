/** Stages of water: what depends on the layout, on the floor, and what may lag behind a drag. */
import type { Lot, Rules } from "../document/schema";
import {
  downhillArrows,
  type Flow,
  type FlowMethod,
  findPonds,
  floodOver,
  flowOver,
  gatheredWays,
  swaleResult,
  type WallNormals,
  type WaterGround,
  wallNormals,
} from "../drainage";
import { type Bounds, boundsOf } from "../geometry";
import {
  type FloorRange,
  finishHeights,
  type GradingPlan,
  gridOver,
  type Layout,
  layOutOn,
  type Prepared,
  prepare,
} from "../grading";
import { type Ground, groundAt, sampleGrid, type Tin } from "../terrain";
import type { HeightAt } from "./grading-plan";
import { waterBox } from "./reach";
import type { Arrow, Gathered, Pond, SwaleResult } from "./results";
import type { Words } from "./words";

/** Cells of the grid on which water is followed. */
const waterCells = 80_000;
const leastCell = 0.2;

/** The grid for water over shots, lot and graded ground. On it a swale is at least a cell and a half wide. */
export function waterLayout(
  plan: GradingPlan,
  ground: Ground,
  tin: Tin,
  lot: Lot["outline"],
  graded: Bounds,
  range: FloorRange,
): Layout {
  const grid = gridOver(waterBox(tin, lot, graded), waterCells, leastCell);
  return layOutOn(grid, plan, ground, range, {
    leastSwaleHalfWidth: 0.75 * grid.cell,
    openPipes: true,
  });
}

export interface StandingWater {
  readonly ponds: readonly Pond[];
  readonly arrows: readonly Arrow[];
  /** Null before there is any ground. */
  readonly flow: Flow | null;
  readonly gathered: readonly Gathered[];
}

/** Where so much ground drains to one place its way is shown, m2, and from this length on, m. */
const leastGathered = 60;
const leastWay = 4;

function waterOn(ground: WaterGround, method: FlowMethod): StandingWater {
  const water = floodOver(ground);
  const flow = flowOver(ground, method, water);
  return {
    ponds: findPonds(ground, water),
    arrows: downhillArrows(ground),
    flow,
    gathered: gatheredWays(flow, leastGathered, leastWay),
  };
}

export function standingWater(layout: Layout, floor: number, method: FlowMethod): StandingWater {
  const ground: WaterGround = {
    grid: layout.grid,
    z: finishHeights(layout.prepared, floor, new Float64Array(layout.existing.length)),
    guessed: layout.guessed,
    blocked: layout.cells.inside,
  };
  return waterOn(ground, method);
}

/**
 * Water that stands whatever the floor: on the ground as it is with what doesn't rise with the floor (swales, berms, pads at a
 * height of their own), and no building on it.
 */
export function pondsAtAnyFloor({ grid, prepared, existing, guessed }: Layout): Pond[] {
  const acts = prepared.acts.filter(({ share }) => share.every((each) => each === 0));
  const z = finishHeights({ ...prepared, acts }, 0, new Float64Array(existing.length));
  return findPonds({ grid, z, guessed, blocked: new Uint8Array(existing.length) });
}

export const noWater: StandingWater = { ponds: [], arrows: [], flow: null, gathered: [] };

/** Water on the ground as it is, before a building stands there. */
export function bareWater(ground: Ground, tin: Tin, lot: Lot["outline"], method: FlowMethod): StandingWater {
  const grid = gridOver(waterBox(tin, lot, boundsOf([])), waterCells, leastCell);
  const { z, guessed } = sampleGrid(ground, grid);
  const bare: WaterGround = { grid, z, guessed, blocked: new Uint8Array(z.length) };
  return waterOn(bare, method);
}

export interface WallReadings {
  readonly normals: WallNormals;
  readonly prepared: Prepared;
  /** Of each wall, the share of its places where the ground is a guess. */
  readonly guessed: readonly number[];
}

export function wallReadings(
  plan: GradingPlan,
  ground: Ground,
  height: HeightAt,
  range: FloorRange,
): WallReadings {
  const normals = wallNormals(plan, height);
  return { normals, prepared: prepare(normals.places, plan, range), guessed: guessesAt(normals, ground) };
}

function guessesAt({ places, normals, walls }: WallNormals, ground: Ground): number[] {
  const isGuess = (i: number) =>
    groundAt(ground, places.x[i] as number, places.y[i] as number)?.guessed ?? true;
  return walls.map((_, wall) => {
    const read = normals
      .filter((normal) => normal.wall === wall)
      .flatMap(({ first, count }) => Array.from({ length: count }, (_, k) => isGuess(first + k)));
    return read.length === 0 ? 0 : read.filter(Boolean).length / read.length;
  });
}

export function swaleResults(
  plan: GradingPlan,
  height: HeightAt,
  leastFall: Rules["leastSwaleFall"],
  words: Words,
): SwaleResult[] {
  return plan.swales.map((line) => swaleResult(line, height, leastFall, words));
}
