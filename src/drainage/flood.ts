/**
 * Water levels on a grid: how high every cell fills before water runs over to the edge.
 *
 * Units   metres.
 * Method  Priority-flood: from the edge inwards, always from the lowest cell reached so far, a cell fills to
 *         the higher of its own ground and the level it was reached from. Eight neighbours.
 * Source  R. Barnes, C. Lehman, D. Mulla, Priority-flood, Computers & Geosciences 62 (2014).
 * Error   None beyond the grid's own: the levels are heights that stand in the grid.
 */
import FlatQueue from "flatqueue";

export interface Flood {
  /** Ground, or the water level where that is higher. A blocked cell keeps its ground. */
  readonly level: Float64Array;
  /** For each cell the cell whose height holds its water: itself where none stands. */
  readonly sill: Int32Array;
}

/**
 * Cells with blocked = 1 are walls: water neither stands on them nor crosses them. All border cells drain. With a `rise`,
 * m, each cell that fills stands that much higher than the one it fills from, so that all of them fall to the edge.
 */
export function flood(z: Float64Array, columns: number, rows: number, blocked?: Uint8Array, rise = 0): Flood {
  const level = z.slice();
  const sill = new Int32Array(z.length);
  for (let i = 0; i < sill.length; i++) sill[i] = i;
  const seen = blocked ? Uint8Array.from(blocked) : new Uint8Array(z.length);
  const queue = new FlatQueue(z.length, Float64Array, Int32Array);
  const reach = (cell: number) => {
    if (seen[cell]) return;
    seen[cell] = 1;
    queue.push(cell, level[cell] as number);
  };
  for (let i = 0; i < columns; i++) {
    reach(i);
    reach((rows - 1) * columns + i);
  }
  for (let j = 0; j < rows; j++) {
    reach(j * columns);
    reach(j * columns + columns - 1);
  }
  for (let cell = queue.pop(); cell !== undefined; cell = queue.pop()) {
    const height = (level[cell] as number) + rise;
    const column = cell % columns;
    const row = (cell - column) / columns;
    for (let j = Math.max(0, row - 1); j <= Math.min(rows - 1, row + 1); j++) {
      for (let i = Math.max(0, column - 1); i <= Math.min(columns - 1, column + 1); i++) {
        const next = j * columns + i;
        if (seen[next]) continue;
        if ((z[next] as number) < height) {
          level[next] = height;
          sill[next] = sill[cell] as number;
        }
        reach(next);
      }
    }
  }
  return { level, sill };
}
