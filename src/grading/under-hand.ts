/**
 * A layout on a small grid, for each frame while things are under the hand.
 *
 * Method  From one frame to the next little moves: the grid covers what the layout before reached, there and moved along with the
 *         footprint, and some cells more. Only where the new layout reaches the edge of that box the reach is looked for anew.
 */
import { type Bounds, boundsOf, type Point } from "../geometry";
import type { Ground } from "../terrain";
import { grown, moved, union } from "./boxes";
import { type Layout, layOut } from "./layout";
import type { FloorRange, GradingPlan } from "./plan";
import { gradingReach, leastBox, type Reach } from "./reach";

/** Cells of the grid. */
const cells = 8_000;
/** Cells that are looked at where the reach is looked for: the box is a little wider than the full grid's. */
const probeCells = 4_000;
/** So many cells lie round what was reached before. */
const spareCells = 3;

export interface LayoutUnderHand {
  readonly reach: Reach;
  readonly layout: Layout;
}

/** `before`: the layout of the frame before, of nearly the same plan. */
export function layOutUnderHand(
  plan: GradingPlan,
  ground: Ground,
  range: FloorRange,
  before: LayoutUnderHand | null,
): LayoutUnderHand {
  const near = before && reachedBefore(before, plan);
  if (near) {
    const layout = layOut(plan, ground, { bounds: near, range, mostCells: cells });
    if (!touchesEdge(layout)) return { reach: { bounds: near, meets: true }, layout };
  }
  const reach = gradingReach(plan, ground, range, probeCells);
  return { reach, layout: layOut(plan, ground, { bounds: reach.bounds, range, mostCells: cells }) };
}

/** Null where that layout's slopes ran on beyond its box, or it reached nothing. */
function reachedBefore({ reach, layout }: LayoutUnderHand, plan: GradingPlan): Bounds | null {
  const box = reach.meets ? touchedBox(layout) : null;
  if (!box) return null;
  const [x, y] = southwest(plan);
  const [wasX, wasY] = southwest(layout.plan);
  const along = union(box, moved(box, x - wasX, y - wasY));
  return grown(union(along, leastBox(plan)), spareCells * layout.grid.cell);
}

function southwest({ footprint }: GradingPlan): Point {
  const { minX, minY } = boundsOf(footprint.ring);
  return [minX, minY];
}

function touchedBox({ grid, prepared }: Layout): Bounds | null {
  if (prepared.touched.length === 0) return null;
  let [west, east, south, north] = [grid.columns, 0, grid.rows, 0];
  for (const i of prepared.touched) {
    const column = i % grid.columns;
    const row = (i - column) / grid.columns;
    if (column < west) west = column;
    if (column > east) east = column;
    if (row < south) south = row;
    if (row > north) north = row;
  }
  return {
    minX: grid.x0 + west * grid.cell,
    minY: grid.y0 + south * grid.cell,
    maxX: grid.x0 + (east + 1) * grid.cell,
    maxY: grid.y0 + (north + 1) * grid.cell,
  };
}

function touchesEdge({ grid: { columns, rows }, prepared }: Layout): boolean {
  return prepared.touched.some((i) => {
    const column = i % columns;
    return column === 0 || column === columns - 1 || i < columns || i >= columns * (rows - 1);
  });
}
