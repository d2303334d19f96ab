/**
 * Water levels on a grid: how high every cell fills before water runs over to the edge.
 *
 * Units   metres.
 * Method  Priority-flood: from the edge inwards, always from the lowest cell reached so far, a cell fills to
 *         the higher of its own ground and the level it was reached from. Eight neighbours. What fills waits in a plain
 *         line, not in the queue.
 * Source  R. Barnes, C. Lehman, D. Mulla, Priority-flood, Computers & Geosciences 62 (2014).
 * Error   None beyond the grid's own: the levels are heights that stand in the grid.
 */
import FlatQueue from "flatqueue";
import type { Grid } from "../terrain";

/** Ground that water is followed on. */
export interface FlowGround {
  readonly grid: Grid;
  readonly z: Float64Array;
  /** 1 where water can't go: within the walls. */
  readonly blocked: Uint8Array;
}

export interface Flood {
  /** Ground, or the water level where that is higher. A blocked cell keeps its ground. */
  readonly level: Float64Array;
  /** For each cell the cell whose height holds its water: itself where none stands. */
  readonly sill: Int32Array;
  /** For each cell the neighbour it was reached from, nearer to the edge: -1 at the border and where water can't come. */
  readonly from: Int32Array;
  /** The cells in the order in which they were done: each after the one it was reached from. */
  readonly order: Uint32Array;
}

/** Cells with blocked = 1 are walls: water neither stands on them nor crosses them. All border cells drain. */
export function flood(z: Float64Array, columns: number, rows: number, blocked?: Uint8Array): Flood {
  const level = z.slice();
  const sill = new Int32Array(z.length);
  for (let i = 0; i < sill.length; i++) sill[i] = i;
  const from = new Int32Array(z.length).fill(-1);
  const order = new Uint32Array(z.length);
  const seen = blocked ? Uint8Array.from(blocked) : new Uint8Array(z.length);
  const queue = new FlatQueue(z.length, Float64Array, Int32Array);
  const startAt = (cell: number) => {
    if (seen[cell]) return;
    seen[cell] = 1;
    queue.push(cell, level[cell] as number);
  };
  for (let i = 0; i < columns; i++) {
    startAt(i);
    startAt((rows - 1) * columns + i);
  }
  for (let j = 0; j < rows; j++) {
    startAt(j * columns);
    startAt(j * columns + columns - 1);
  }
  // What fills stands at the level that is being done: it needs no place in the queue. `order` is its own line of waiting.
  let [done, found] = [0, 0];
  while (true) {
    if (done === found) {
      const lowest = queue.pop();
      if (lowest === undefined) break;
      order[found++] = lowest;
    }
    const cell = order[done++] as number;
    const height = level[cell] as number;
    const column = cell % columns;
    const row = (cell - column) / columns;
    for (let j = Math.max(0, row - 1); j <= Math.min(rows - 1, row + 1); j++) {
      for (let i = Math.max(0, column - 1); i <= Math.min(columns - 1, column + 1); i++) {
        const next = j * columns + i;
        if (seen[next]) continue;
        seen[next] = 1;
        from[next] = cell;
        const ground = z[next] as number;
        if (ground > height) {
          queue.push(next, ground);
          continue;
        }
        if (ground < height) {
          level[next] = height;
          sill[next] = sill[cell] as number;
        }
        order[found++] = next;
      }
    }
  }
  return { level, sill, from, order: order.subarray(0, found) };
}

export function floodOver({ grid, z, blocked }: FlowGround): Flood {
  return flood(z, grid.columns, grid.rows, blocked);
}

/** Levels where each cell that fills stands a `rise`, m, higher than the one it fills from: all of them fall to the edge. */
export function risingLevels(z: Float64Array, { from, order }: Flood, rise: number): Float64Array {
  const level = z.slice();
  for (let k = 0; k < order.length; k++) {
    const cell = order[k] as number;
    const before = from[cell] as number;
    if (before >= 0) level[cell] = Math.max(level[cell] as number, (level[before] as number) + rise);
  }
  return level;
}
