/**
 * Low places that hold water.
 *
 * Units   metres, m2, m3.
 * Method  Cells that fill when water may only leave over the edge (see flood.ts), gathered into ponds of one
 *         level. Shallow or tiny ones are left out: they are smaller than what shots can tell.
 */
import type { Pond } from "../solve/results";
import { type Grid, gridRegions } from "../terrain";
import { type Flood, type FlowGround, floodOver } from "./flood";

/** Ponds shallower than this, m, or smaller than this, m2, are left out. */
export const leastPondDepth = 0.025;
export const leastPondArea = 0.5;
/** A cell with less water than this, m, is dry: rounding only. */
const wet = 1e-3;

export interface WaterGround extends FlowGround {
  /** 1 where the ground is a guess. */
  readonly guessed: Uint8Array;
}

/** Ponds, deepest first. `water`: where it is known already. */
export function findPonds(ground: WaterGround, water = floodOver(ground)): Pond[] {
  const { z } = ground;
  const seen = new Uint8Array(z.length);
  const ponds: Pond[] = [];
  for (let i = 0; i < z.length; i++) {
    if (seen[i] || depthAt(water, z, i) <= wet) continue;
    const pond = pondOf(ground, water, gather(ground, water, i, seen));
    if (pond.depth >= leastPondDepth && pond.area >= leastPondArea) ponds.push(pond);
  }
  return ponds.sort((a, b) => b.depth - a.depth);
}

function depthAt(water: Flood, z: Float64Array, i: number): number {
  return (water.level[i] as number) - (z[i] as number);
}

/** All wet cells that touch `start` at its level. */
function gather(ground: WaterGround, water: Flood, start: number, seen: Uint8Array): number[] {
  const { columns, rows } = ground.grid;
  const level = water.level[start];
  const cells = [start];
  seen[start] = 1;
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    const column = cell % columns;
    const row = (cell - column) / columns;
    for (let j = Math.max(0, row - 1); j <= Math.min(rows - 1, row + 1); j++) {
      for (let i = Math.max(0, column - 1); i <= Math.min(columns - 1, column + 1); i++) {
        const next = j * columns + i;
        if (seen[next] || water.level[next] !== level || depthAt(water, ground.z, next) <= wet) continue;
        seen[next] = 1;
        cells.push(next);
      }
    }
  }
  return cells;
}

function pondOf(ground: WaterGround, water: Flood, cells: readonly number[]): Pond {
  const { grid, z, guessed } = ground;
  const cellArea = grid.cell * grid.cell;
  let deepest = cells[0] as number;
  let depths = 0;
  for (const i of cells) {
    depths += depthAt(water, z, i);
    if ((z[i] as number) < (z[deepest] as number)) deepest = i;
  }
  const sill = water.sill[deepest] as number;
  const level = water.level[deepest] as number;
  return {
    at: centre(grid, deepest),
    depth: depthAt(water, z, deepest),
    area: cells.length * cellArea,
    volume: depths * cellArea,
    waterLevel: level,
    spill: centre(grid, sill),
    guessed: guessed[sill] === 1 || cells.some((i) => guessed[i] === 1),
    rings: shore(ground, level, cells),
  };
}

/** The water's edge: where the ground passes through the water level, on a piece of the grid round the pond. */
function shore(ground: WaterGround, level: number, cells: readonly number[]): Float64Array[] {
  const { grid, z } = ground;
  const columns = cells.map((i) => i % grid.columns);
  const rows = cells.map((i) => Math.floor(i / grid.columns));
  const first = { column: least(columns) - 2, row: least(rows) - 2 };
  const piece: Grid = {
    x0: grid.x0 + first.column * grid.cell,
    y0: grid.y0 + first.row * grid.cell,
    cell: grid.cell,
    columns: most(columns) + 3 - first.column,
    rows: most(rows) + 3 - first.row,
  };
  const inPond = new Set(cells);
  const values = new Float64Array(piece.columns * piece.rows);
  for (let j = 0, k = 0; j < piece.rows; j++) {
    for (let i = 0; i < piece.columns; i++, k++) {
      const column = first.column + i;
      const row = first.row + j;
      const within = column >= 0 && row >= 0 && column < grid.columns && row < grid.rows;
      const cell = row * grid.columns + column;
      const depth = within ? level - (z[cell] as number) : -1;
      // Ground beyond the sill lies under the level too, but no water stands there.
      values[k] = within && inPond.has(cell) ? depth : Math.min(depth, -wet);
    }
  }
  return gridRegions(values, piece, 0);
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b));
}

function most(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b));
}

function centre(grid: Grid, cell: number): [number, number] {
  const column = cell % grid.columns;
  const row = (cell - column) / grid.columns;
  return [grid.x0 + (column + 0.5) * grid.cell, grid.y0 + (row + 0.5) * grid.cell];
}
