/** Outlines of where a grid's values reach a threshold. */
import type { Grid } from "./grid";
import { type GridValues, traceLevels } from "./grid-contours";

/**
 * Closed rings round the cells with a value at or over the threshold: flat x, y, ending with the place they
 * start from; outer rings counter-clockwise, holes clockwise. The grid's border, and cells that are NaN,
 * count as below: there the ring runs along the cell's edge.
 */
export function gridRegions(values: GridValues, grid: Grid, threshold: number): Float64Array[] {
  const columns = grid.columns + 2;
  const rows = grid.rows + 2;
  const padded = new Float64Array(columns * rows).fill(Number.NaN);
  const reached = new Int16Array(columns * rows);
  for (let j = 0; j < grid.rows; j++) {
    const from = j * grid.columns;
    const to = (j + 1) * columns + 1;
    padded.set(values.subarray(from, from + grid.columns), to);
    for (let i = 0; i < grid.columns; i++)
      reached[to + i] = (values[from + i] as number) >= threshold ? 1 : 0;
  }
  const lattice = {
    x0: grid.x0 - grid.cell,
    y0: grid.y0 - grid.cell,
    cell: grid.cell,
    columns,
    rows,
    values: padded,
    reached,
  };
  return traceLevels(lattice, [threshold])[0] as Float64Array[];
}
