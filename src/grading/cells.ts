/**
 * How a regular grid lies about the building: for each cell the area of its part outside the walls and the
 * centroid of that part, where the ground is sampled.
 *
 * Units   metres, square metres.
 * Method  Cells that a wall touches are clipped exactly against it; a value at the centroid of the part
 *         integrates anything linear over it without error. All others are whole or nothing.
 * Source  First principles; clipping by half-planes (Sutherland, Hodgman 1974).
 */
import { clipConvexByHalfPlane, type Point } from "../geometry";
import type { Grid } from "../terrain";

export interface Cells {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Area of the part outside the walls, m2. */
  readonly weight: Float64Array;
  /** 1 where the centre is inside the walls. */
  readonly inside: Uint8Array;
  /** 1 where the whole cell is inside the walls. */
  readonly covered: Uint8Array;
  /** Cells whose sample isn't at their centre. */
  readonly cut: readonly number[];
}

export function cellsAbout(grid: Grid, ring: readonly Point[]): Cells {
  const { x, y } = centres(grid);
  const inside = centresInside(grid, ring);
  const whole = grid.cell * grid.cell;
  const weight = new Float64Array(inside.length);
  for (let i = 0; i < inside.length; i++) weight[i] = inside[i] ? 0 : whole;
  const cut = cellsOnWalls(grid, ring);
  for (const i of cut) {
    const part = insidePart(ring, x[i] as number, y[i] as number, grid.cell / 2);
    const outside = Math.max(0, whole - part.area);
    weight[i] = outside;
    // A sliver's centroid is lost in rounding; its weight is next to nothing, so the centre will do.
    if (outside < whole * 1e-6) continue;
    x[i] = (x[i] as number) - part.momentX / outside;
    y[i] = (y[i] as number) - part.momentY / outside;
  }
  const covered = new Uint8Array(inside.length);
  for (let i = 0; i < inside.length; i++) covered[i] = weight[i] === 0 ? 1 : 0;
  return { x, y, weight, inside, covered, cut };
}

function centres({ x0, y0, cell, columns, rows }: Grid): { x: Float64Array; y: Float64Array } {
  const x = new Float64Array(columns * rows);
  const y = new Float64Array(columns * rows);
  for (let j = 0, i = 0; j < rows; j++) {
    const centreY = y0 + (j + 0.5) * cell;
    for (let column = 0; column < columns; column++, i++) {
      x[i] = x0 + (column + 0.5) * cell;
      y[i] = centreY;
    }
  }
  return { x, y };
}

/** Rows of cell centres against the ring: between each pair of crossings the centres are inside. */
export function centresInside(grid: Grid, ring: readonly Point[]): Uint8Array {
  const inside = new Uint8Array(grid.columns * grid.rows);
  for (let j = 0; j < grid.rows; j++) {
    const crossings = crossingsAt(ring, grid.y0 + (j + 0.5) * grid.cell);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.ceil(((crossings[k] as number) - grid.x0) / grid.cell - 0.5);
      const to = Math.ceil(((crossings[k + 1] as number) - grid.x0) / grid.cell - 0.5);
      const first = Math.max(0, from);
      const end = Math.min(grid.columns, to);
      if (end > first) inside.fill(1, j * grid.columns + first, j * grid.columns + end);
    }
  }
  return inside;
}

function crossingsAt(ring: readonly Point[], y: number): number[] {
  const crossings: number[] = [];
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length] as Point;
    if (ay > y !== by > y) crossings.push(ax + ((y - ay) * (bx - ax)) / (by - ay));
  });
  return crossings.sort((a, b) => a - b);
}

/** Cells that a wall may touch: every wall followed through the rows, widened by a hair. */
function cellsOnWalls(grid: Grid, ring: readonly Point[]): number[] {
  const found = new Set<number>();
  ring.forEach((a, k) => {
    cellsAlong(grid, a, ring[(k + 1) % ring.length] as Point, (i) => found.add(i));
  });
  return [...found];
}

/** Cells that a straight line may touch, by their index. */
export function cellsAlong(grid: Grid, a: Point, b: Point, found: (cell: number) => void): void {
  const hair = 1e-6;
  const rows = span(a[1], b[1], grid.y0, grid.cell, grid.rows);
  for (let j = rows.first; j <= rows.last; j++) {
    const bottom = grid.y0 + (j - hair) * grid.cell;
    const top = grid.y0 + (j + 1 + hair) * grid.cell;
    const [from, to] = partBetween(a, b, bottom, top);
    const columns = span(from, to, grid.x0, grid.cell, grid.columns);
    for (let c = columns.first; c <= columns.last; c++) found(j * grid.columns + c);
  }
}

function span(
  a: number,
  b: number,
  start: number,
  cell: number,
  most: number,
): { first: number; last: number } {
  const hair = 1e-6;
  return {
    first: Math.max(0, Math.floor((Math.min(a, b) - start) / cell - hair)),
    last: Math.min(most - 1, Math.floor((Math.max(a, b) - start) / cell + hair)),
  };
}

/** x at both ends of the part of a-b that lies between two heights of y. */
function partBetween(a: Point, b: Point, bottom: number, top: number): readonly [number, number] {
  const rise = b[1] - a[1];
  if (rise === 0) return [a[0], b[0]];
  const t0 = Math.min(1, Math.max(0, (bottom - a[1]) / rise));
  const t1 = Math.min(1, Math.max(0, (top - a[1]) / rise));
  return [a[0] + t0 * (b[0] - a[0]), a[0] + t1 * (b[0] - a[0])];
}

/** Area of the ring inside a square cell, and its first moments about the cell's centre. */
function insidePart(
  ring: readonly Point[],
  centreX: number,
  centreY: number,
  half: number,
): { area: number; momentX: number; momentY: number } {
  let part: number[] = [];
  for (const [x, y] of ring) part.push(x - centreX, y - centreY);
  const corners: Point[] = [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ];
  for (let k = 0; k < 4; k++)
    part = clipConvexByHalfPlane(part, corners[k] as Point, corners[(k + 1) % 4] as Point);
  // A ring with reflex corners leaves edges run to and fro along the cell's sides; their areas cancel.
  return moments(part);
}

/** Area of a flat x, y polygon whichever way round, and its first moments about the origin. */
export function moments(part: ArrayLike<number>): { area: number; momentX: number; momentY: number } {
  let twice = 0;
  let sumX = 0;
  let sumY = 0;
  for (let k = 0, last = part.length - 2; k < part.length; last = k, k += 2) {
    const [ax, ay] = [part[last] as number, part[last + 1] as number];
    const [bx, by] = [part[k] as number, part[k + 1] as number];
    const cross = ax * by - ay * bx;
    twice += cross;
    sumX += cross * (ax + bx);
    sumY += cross * (ay + by);
  }
  const turn = twice < 0 ? -1 : 1;
  return { area: (turn * twice) / 2, momentX: (turn * sumX) / 6, momentY: (turn * sumY) / 6 };
}
