/**
 * Cells that an edge crosses, in parts of their own: so earth and stone on either side of it are summed exactly, however the
 * edge lies in the grid.
 *
 * Units   metres, square metres.
 * Method  The cell is cut along each edge in it, a convex part by a whole line at a time, and along the building's walls; parts
 *         within these go. What an act does to a part is asked at its centroid.
 * Source  First principles; clipping by half-planes (Sutherland, Hodgman 1974).
 */
import { clipConvexByHalfPlane, containsPoint, flatArea, type Point } from "../geometry";
import type { Grid } from "../terrain";
import { type Cells, cellsAlong, moments } from "./cells";
import type { Edge } from "./operator";

export interface CellParts {
  /** Centroids. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Areas, m2. */
  readonly weight: Float64Array;
  /** The cell that each is a part of. */
  readonly cell: Uint32Array;
}

/** A part this small, as a share of its cell, is left with its neighbour. */
const sliver = 1e-6;

export function partsOfCells(
  grid: Grid,
  { weight, cut }: Cells,
  ring: readonly Point[],
  edges: readonly Edge[],
): CellParts {
  const crossed = edgesByCell(grid, edges);
  for (const cell of crossed.keys()) if (weight[cell] === 0) crossed.delete(cell);
  const onWalls = new Set(cut.filter((cell) => crossed.has(cell)));
  ring.forEach((a, k) => {
    const b = ring[(k + 1) % ring.length] as Point;
    cellsAlong(grid, a, b, (cell) => crossed.get(cell)?.push([a, b]));
  });
  const found: number[] = [];
  for (const [cell, lines] of crossed) {
    const column = cell % grid.columns;
    const centre: Point = [
      grid.x0 + (column + 0.5) * grid.cell,
      grid.y0 + ((cell - column) / grid.columns + 0.5) * grid.cell,
    ];
    const parts = cutAlong(lines, centre, grid.cell);
    if (parts.length === 1) continue;
    for (const part of parts) {
      const { area, momentX, momentY } = moments(part);
      const [x, y] = [centre[0] + momentX / area, centre[1] + momentY / area];
      if (!onWalls.has(cell) || !containsPoint(ring, x, y)) found.push(x, y, area, cell);
    }
  }
  return columnsOf(found);
}

function edgesByCell(grid: Grid, edges: readonly Edge[]): Map<number, Edge[]> {
  const crossed = new Map<number, Edge[]>();
  for (const edge of edges)
    cellsAlong(grid, edge[0], edge[1], (cell) => {
      const there = crossed.get(cell);
      if (there) there.push(edge);
      else crossed.set(cell, [edge]);
    });
  return crossed;
}

/** A square cell cut along lines: convex polygons about its centre, flat x, y. */
function cutAlong(lines: readonly Edge[], [cx, cy]: Point, cell: number): number[][] {
  const h = cell / 2;
  const least = sliver * cell * cell;
  let parts = [[-h, -h, h, -h, h, h, -h, h]];
  for (const [[ax, ay], [bx, by]] of lines) {
    const [a, b]: Edge = [
      [ax - cx, ay - cy],
      [bx - cx, by - cy],
    ];
    const made: number[][] = [];
    for (const part of parts) {
      const left = runsThrough(part, a, b) ? clipConvexByHalfPlane(part, a, b) : part;
      const right = left === part ? part : clipConvexByHalfPlane(part, b, a);
      if (left === right || flatArea(left) <= least || flatArea(right) <= least) made.push(part);
      else made.push(left, right);
    }
    parts = made;
  }
  return parts;
}

/** Whether some of the line from a to b lies within a convex polygon that runs counter-clockwise. */
function runsThrough(part: readonly number[], a: Point, b: Point): boolean {
  let [from, to] = [0, 1];
  for (let k = 0, last = part.length - 2; k < part.length; last = k, k += 2) {
    const [px, py] = [part[last] as number, part[last + 1] as number];
    const [dx, dy] = [(part[k] as number) - px, (part[k + 1] as number) - py];
    const first = dx * (a[1] - py) - dy * (a[0] - px);
    const second = dx * (b[1] - py) - dy * (b[0] - px);
    if (first < 0 && second < 0) return false;
    if (first < 0) from = Math.max(from, first / (first - second));
    if (second < 0) to = Math.min(to, first / (first - second));
  }
  return to - from > 1e-9;
}

/** Four numbers a part, side by side, into arrays. */
function columnsOf(found: readonly number[]): CellParts {
  const count = found.length / 4;
  const parts = {
    x: new Float64Array(count),
    y: new Float64Array(count),
    weight: new Float64Array(count),
    cell: new Uint32Array(count),
  };
  for (let i = 0; i < count; i++) {
    parts.x[i] = found[4 * i] as number;
    parts.y[i] = found[4 * i + 1] as number;
    parts.weight[i] = found[4 * i + 2] as number;
    parts.cell[i] = found[4 * i + 3] as number;
  }
  return parts;
}
