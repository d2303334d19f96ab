/**
 * How far grading can change the ground: the box that the layout's grid must cover.
 *
 * Method  The finished ground is worked out on a coarse grid at both ends of the floor range, over a box that
 *         grows until nothing changes at its edge: more fill reaches farther with a higher floor and more cut
 *         with a lower one, so the two ends hold all floors between.
 */
import { type Bounds, boundsOf, type Point } from "../geometry";
import { type Grid, type Ground, sampleGrid } from "../terrain";
import { grown, union } from "./boxes";
import { cellsAbout } from "./cells";
import { finishHeights, prepare } from "./operators";
import type { FloorRange, GradingPlan } from "./plan";

/** First look this far beyond everything that is drawn, m; it doubles until the slopes meet the ground. */
const firstLook = 25;
/** Slopes that haven't met the ground this far out are given up on, m. */
export const farthestLook = 200;
/** A change of height that counts, m. */
const change = 1e-3;
const probeCells = 16_000;

export interface Reach {
  readonly bounds: Bounds;
  /** False: at some floor of the range the slopes still run on at the edge of the box. */
  readonly meets: boolean;
}

/** `cells`: as many at most are looked at. */
export function gradingReach(
  plan: GradingPlan,
  ground: Ground,
  range: FloorRange,
  cells: number = probeCells,
): Reach {
  const drawn = boundsOf(drawnPoints(plan));
  const least = leastBox(plan);
  for (let look = firstLook; ; look *= 2) {
    const margin = Math.min(look, farthestLook);
    const grid = gridOver(grown(drawn, margin), cells, 0.25);
    const changed = changedBox(plan, ground, range, grid);
    if (!changed) return { bounds: least, meets: true };
    const box = union(least, grown(changed.box, 2 * grid.cell));
    if (!changed.atEdge || margin === farthestLook) return { bounds: box, meets: !changed.atEdge };
  }
}

function drawnPoints(plan: GradingPlan): Point[] {
  return [
    ...plan.footprint.ring,
    ...[...plan.drives, ...plan.swales, ...(plan.berms ?? []), ...(plan.walls ?? [])].flatMap(
      ({ line }) => line,
    ),
    ...(plan.pads ?? []).flatMap(({ ring }) => ring),
    ...(plan.points ?? []).map(({ at }) => at),
  ];
}

/** Apron, drives and pads, whose stone is dug in also where the height stays as it is. */
export function leastBox({ footprint, pad, drives, pads = [] }: GradingPlan): Bounds {
  const width = Math.max(pad.width, ...(pad.sides ?? []).map((side) => side.width));
  const apron = grown(boundsOf(footprint.ring), width + 1);
  const strips = drives.map(({ line, drive }) =>
    grown(boundsOf(line), drive.width / 2 + drive.shoulder.width),
  );
  return [...strips, ...pads.map(({ ring }) => boundsOf(ring))].reduce(union, apron);
}

function changedBox(
  plan: GradingPlan,
  ground: Ground,
  range: FloorRange,
  grid: Grid,
): { box: Bounds; atEdge: boolean } | null {
  const cells = cellsAbout(grid, plan.footprint.ring);
  const existing = sampleGrid(ground, grid).z;
  const prepared = prepare({ ...cells, existing }, plan, range);
  const low = finishHeights(prepared, range.low, new Float64Array(existing.length));
  const high = finishHeights(prepared, range.high, new Float64Array(existing.length));
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  let atEdge = false;
  for (const i of prepared.touched) {
    const z = existing[i] as number;
    if (Math.abs((low[i] as number) - z) < change && Math.abs((high[i] as number) - z) < change) continue;
    const column = i % grid.columns;
    const row = (i - column) / grid.columns;
    if (column === 0 || row === 0 || column === grid.columns - 1 || row === grid.rows - 1) atEdge = true;
    box.minX = Math.min(box.minX, grid.x0 + column * grid.cell);
    box.maxX = Math.max(box.maxX, grid.x0 + (column + 1) * grid.cell);
    box.minY = Math.min(box.minY, grid.y0 + row * grid.cell);
    box.maxY = Math.max(box.maxY, grid.y0 + (row + 1) * grid.cell);
  }
  return box.minX > box.maxX ? null : { box, atEdge };
}

/** A grid of square cells over a box: as fine as `leastCell`, but no more than so many cells. */
export function gridOver(box: Bounds, mostCells: number, leastCell: number): Grid {
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  let cell = Math.max(
    leastCell,
    Math.sqrt((width * height) / mostCells),
    width / mostCells,
    height / mostCells,
  );
  // Rounding up to whole cells may overshoot the cap by a row and a column.
  while (Math.ceil(width / cell) * Math.ceil(height / cell) > mostCells) cell *= 1.01;
  return {
    x0: box.minX,
    y0: box.minY,
    cell,
    columns: Math.max(1, Math.ceil(width / cell)),
    rows: Math.max(1, Math.ceil(height / cell)),
  };
}
