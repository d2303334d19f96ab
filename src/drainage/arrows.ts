/**
 * Downhill arrows on a lattice.
 *
 * Units   metres; slope rise over run.
 * Method  Central differences over the grid's neighbours, exact on a plane.
 * Source  First principles.
 */
import type { Arrow } from "../solve/results";
import type { WaterGround } from "./ponds";

/** Arrows across the longer side of the grid. */
const across = 30;
/** Ground flatter than this gets no arrow: its direction is not known from shots. */
const leastSlope = 0.002;

export function downhillArrows({ grid, z, blocked }: WaterGround): Arrow[] {
  const step = Math.max(1, Math.round(Math.max(grid.columns, grid.rows) / across));
  const reach = Math.max(1, Math.floor(step / 4));
  const arrows: Arrow[] = [];
  for (let row = step >> 1; row < grid.rows; row += step) {
    for (let column = step >> 1; column < grid.columns; column += step) {
      if (blocked[row * grid.columns + column]) continue;
      const gx = difference(column, grid.columns, reach, (c) => row * grid.columns + c);
      const gy = difference(row, grid.rows, reach, (r) => r * grid.columns + column);
      const slope = Math.hypot(gx, gy);
      if (!(slope >= leastSlope)) continue;
      const x = grid.x0 + (column + 0.5) * grid.cell;
      const y = grid.y0 + (row + 0.5) * grid.cell;
      arrows.push({ x, y, dx: -gx / slope, dy: -gy / slope, slope });
    }
  }
  return arrows;

  /** Rise over run along one line of cells, between the two neighbours that are on the ground. */
  function difference(at: number, count: number, by: number, cell: (k: number) => number): number {
    let before = Math.max(0, at - by);
    let after = Math.min(count - 1, at + by);
    if (blocked[cell(before)]) before = at;
    if (blocked[cell(after)]) after = at;
    if (before === after) return 0;
    return ((z[cell(after)] as number) - (z[cell(before)] as number)) / ((after - before) * grid.cell);
  }
}
