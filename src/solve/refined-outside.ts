/**
 * Cut and fill outside the walls, on grids refined until three of them agree.
 *
 * Units   metres, m3.
 * Method  The layout's grid covers all that any floor of the range can change. Where it and the coarse one differ by more
 *         than is asked for, the ground that this floor changes is laid out by itself, with ever smaller cells. The error
 *         told is the greater of the differences to the two grids before the last: more than what is left of it in the last,
 *         also where two of them are off alike by chance.
 */
import {
  type Finished,
  finish,
  type GradingPlan,
  grown,
  type Layout,
  layOut,
  type Topsoil,
} from "../grading";
import type { Ground } from "../terrain";
import { outsideError } from "./earthwork";

/** Errors below this share of what is moved, or below this volume, m3, are small enough. */
const smallShare = 0.005;
const smallVolume = 0.1;
/** Cells of the grids, each finer than the one before, and the least cell, m. */
const gridCells = [20_000, 60_000, 240_000, 720_000];
const leastCell = 0.02;

export interface RefinedOutside {
  /** As it came, but for its volumes outside the walls. */
  readonly finished: Finished;
  /** Error of cut and fill together, m3. */
  readonly error: number;
}

export function refinedOutside(
  finished: Finished,
  layout: Layout,
  coarse: Layout,
  ground: Ground,
  topsoil: Topsoil,
): RefinedOutside {
  let error = outsideError(finished, coarse);
  if (smallEnough(error, finished)) return { finished, error };
  const bounds = changedBounds(layout, finished);
  let outside = finished.outside;
  let before: Finished["outside"][] = [];
  for (const mostCells of gridCells) {
    outside = finishedOutside(layout.plan, ground, bounds, finished.floor, mostCells, topsoil);
    const now = outside;
    if (before.length === 2) error = Math.max(...before.map((one) => difference(one, now)));
    if (before.length === 2 && smallEnough(error, { outside })) break;
    before = [...before, outside].slice(-2);
  }
  // The deepest places stay cells of the layout's grid.
  const { greatestCut, greatestFill } = finished.outside;
  return { finished: { ...finished, outside: { ...outside, greatestCut, greatestFill } }, error };
}

function difference(one: Finished["outside"], other: Finished["outside"]): number {
  return Math.abs(one.cut - other.cut) + Math.abs(one.fill - other.fill);
}

function smallEnough(error: number, { outside: { cut, fill } }: Pick<Finished, "outside">): boolean {
  return error <= Math.max(smallVolume, smallShare * (cut + fill));
}

/** The box about the ground that changes at this floor, or that stone is laid on. */
function changedBounds({ grid, prepared, cells }: Layout, { depth }: Finished) {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  prepared.touched.forEach((i, k) => {
    if (depth[i] === 0 && prepared.stone[k] === 0) return;
    const [x, y] = [cells.x[i] as number, cells.y[i] as number];
    box.minX = Math.min(box.minX, x);
    box.maxX = Math.max(box.maxX, x);
    box.minY = Math.min(box.minY, y);
    box.maxY = Math.max(box.maxY, y);
  });
  return box.minX > box.maxX
    ? { minX: grid.x0, minY: grid.y0, maxX: grid.x0, maxY: grid.y0 }
    : grown(box, 2 * grid.cell);
}

function finishedOutside(
  plan: GradingPlan,
  ground: Ground,
  bounds: ReturnType<typeof changedBounds>,
  floor: number,
  mostCells: number,
  topsoil: Topsoil,
): Finished["outside"] {
  const range = { low: floor, high: floor };
  return finish(layOut(plan, ground, { bounds, range, mostCells, leastCell }), floor, topsoil).outside;
}
