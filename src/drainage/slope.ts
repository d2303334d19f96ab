/**
 * Which way a grid falls at a cell, and how steeply.
 *
 * Units   metres; rise over run.
 * Method  Differences over the cell's neighbours on three lines, the middle one counting twice; exact on a plane. Where a
 *         neighbour is off the grid or can't be used, the difference is taken to the line's middle.
 * Source  B. Horn, Hill shading and the reflectance map, Proceedings of the IEEE 69 (1981): weights 1, 2, 1.
 */
import type { Grid } from "../terrain";

/** [∂z/∂x, ∂z/∂y]; `reach`: how many cells off the neighbours lie. Nought where nothing can be told. */
export function gradientAt(
  grid: Grid,
  z: Float64Array,
  [column, row]: readonly [number, number],
  reach = 1,
  blocked?: Uint8Array,
): [number, number] {
  const { columns, rows } = grid;
  const isWithin = column >= reach && row >= reach && column < columns - reach && row < rows - reach;
  if (blocked || !isWithin) return withGaps(grid, z, column, row, reach, blocked);
  const middle = row * columns + column;
  const at = (dc: number, dr: number) => z[middle + dr * reach * columns + dc * reach] as number;
  const over = 8 * reach * grid.cell;
  return [
    (at(1, 1) + 2 * at(1, 0) + at(1, -1) - at(-1, 1) - 2 * at(-1, 0) - at(-1, -1)) / over,
    (at(1, 1) + 2 * at(0, 1) + at(-1, 1) - at(1, -1) - 2 * at(0, -1) - at(-1, -1)) / over,
  ];
}

function withGaps(
  { columns, rows, cell }: Grid,
  z: Float64Array,
  column: number,
  row: number,
  reach: number,
  blocked: Uint8Array | undefined,
): [number, number] {
  const isUsable = (c: number, r: number) =>
    c >= 0 && r >= 0 && c < columns && r < rows && !blocked?.[r * columns + c];
  const along = (dc: number, dr: number): number => {
    let [sum, weights] = [0, 0];
    for (const side of [-1, 0, 1]) {
      // The lines beside the middle one lie square to the way that is looked along.
      const [c, r] = [column + side * dr * reach, row + side * dc * reach];
      if (!isUsable(c, r)) continue;
      const before = isUsable(c - dc * reach, r - dr * reach) ? reach : 0;
      const after = isUsable(c + dc * reach, r + dr * reach) ? reach : 0;
      if (before + after === 0) continue;
      const low = z[(r - dr * before) * columns + c - dc * before] as number;
      const high = z[(r + dr * after) * columns + c + dc * after] as number;
      const weight = side === 0 ? 2 : 1;
      sum += (weight * (high - low)) / ((before + after) * cell);
      weights += weight;
    }
    return weights === 0 ? 0 : sum / weights;
  };
  return [along(1, 0), along(0, 1)];
}
