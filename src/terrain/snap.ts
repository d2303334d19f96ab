/**
 * Plan coordinates on a fine binary grid, for topology only: which points are neighbours is decided there,
 * where the sign of a turn comes out exactly; heights, areas and volumes keep the measured coordinates.
 */

/** Spacing of the grid, m: 0.06 mm, far under what anyone measures, and exact in binary. */
const GRID_CELL = 2 ** -14;

/** A small site gets a finer grid: at least two million cells across it. */
const CELLS_ACROSS_LOG2 = 21;

/** Points on the grid, and what it takes to get back to metres. */
export interface SnappedPoints {
  /** Whole grid units from the origin, as x0, y0, x1, y1, ... */
  readonly units: Float64Array;
  readonly originX: number;
  readonly originY: number;
  readonly cell: number;
}

/** Snaps points to the grid from the lowest corner of them all. Throws at a place that is not a finite number. */
export function snapped(x: Float64Array, y: Float64Array): SnappedPoints {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < x.length; i++) {
    const px = x[i] as number;
    const py = y[i] as number;
    // A sum is finite only if both are: one test a point.
    if (!Number.isFinite(px + py)) throw new Error(`point ${i} has no finite place: ${px}, ${py}`);
    if (px < minX) minX = px;
    if (px > maxX) maxX = px;
    if (py < minY) minY = py;
    if (py > maxY) maxY = py;
  }
  const cell = gridCell(Math.max(maxX - minX, maxY - minY));
  const perMetre = 1 / cell;
  const units = new Float64Array(2 * x.length);
  for (let i = 0; i < x.length; i++) {
    units[2 * i] = Math.round(((x[i] as number) - minX) * perMetre);
    units[2 * i + 1] = Math.round(((y[i] as number) - minY) * perMetre);
  }
  return { units, originX: minX, originY: minY, cell };
}

function gridCell(extent: number): number {
  if (!(extent > 0)) return GRID_CELL;
  return Math.min(GRID_CELL, 2 ** (Math.ceil(Math.log2(extent)) - CELLS_ACROSS_LOG2));
}

/** For each point the first point on the same grid place: itself, unless an earlier one stands there. */
export function firstAtPlace(units: Float64Array): Uint32Array {
  const count = units.length >> 1;
  const first = new Uint32Array(count);
  const slots = 2 ** Math.ceil(Math.log2(Math.max(2, 2 * count)));
  const table = new Int32Array(slots); // index + 1 of the point that took the slot, 0 while free
  for (let i = 0; i < count; i++) {
    const ux = units[2 * i] as number;
    const uy = units[2 * i + 1] as number;
    let slot = mixed(ux, uy) & (slots - 1);
    let other = table[slot] as number;
    while (other !== 0 && (units[2 * other - 2] !== ux || units[2 * other - 1] !== uy)) {
      slot = (slot + 1) & (slots - 1);
      other = table[slot] as number;
    }
    if (other === 0) table[slot] = i + 1;
    first[i] = other === 0 ? i : other - 1;
  }
  return first;
}

function mixed(ux: number, uy: number): number {
  let hash = Math.imul(ux, 0x9e3779b1) ^ Math.imul(uy, 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return hash ^ (hash >>> 13);
}
