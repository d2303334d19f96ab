/**
 * Where water goes on a grid of heights: directions, and the area that drains through each cell.
 *
 * Units   metres; areas m2; angles radians counter-clockwise from east.
 * Method  Hollows are filled first, with a rise so small that every cell falls to the edge. Then either D-infinity (the
 *         steepest of the eight facets round a cell; its water is shared between the two cells beside that way, by angle)
 *         or D8 (all of it to the neighbour with the steepest drop). Areas add up from the tops down.
 * Source  R. Barnes, C. Lehman, D. Mulla, Priority-flood, Computers & Geosciences 62 (2014), the variant with a rise;
 *         D. Tarboton, Water Resources Research 33(2) (1997), for D-infinity. Water at the border goes inwards where the ground does, else away.
 */
import type { FlowField } from "../solve/results";
import type { Grid } from "../terrain";
import { type FlowGround, floodOver, risingLevels } from "./flood";

/** What a hollow's fill rises by from cell to cell, m: far below what a shot can tell, far above rounding. */
export const rise = 1e-8;

export interface Flow {
  readonly grid: Grid;
  /** Heights with the hollows filled so that every cell falls. */
  readonly filled: Float64Array;
  /** The cells that a cell's water goes to; -1: none, it leaves or stays there. */
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** The part of its water that goes to `first`; the rest goes to `second`. */
  readonly share: Float64Array;
  /** Cells in an order in which each comes before those that it drains to. Blocked cells aren't in it. */
  readonly order: Uint32Array;
  /** Area that drains through each cell, its own included, m2. */
  readonly area: Float64Array;
}

/** Neighbours as column and row steps, counter-clockwise from east (rows run north). */
const ways = [
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
  [-1, -1],
  [0, -1],
  [1, -1],
] as const;

/** The eight facets: the straight neighbour of each and the slanted one beside it, as indices of `ways`. */
const straights = Uint8Array.of(0, 2, 2, 4, 4, 6, 6, 0);
const slants = Uint8Array.of(1, 1, 3, 3, 5, 5, 7, 7);

/** Heights with the hollows filled so that every cell has a falling way to the border; blocked cells keep their ground. */
export function filledWithRise(ground: FlowGround, water = floodOver(ground)): Float64Array {
  return risingLevels(ground.z, water, rise);
}

export type FlowMethod = "d-infinity" | "d8";

/** Directions and drained areas. `water`: where it is known already. */
export function flowOver(
  ground: FlowGround,
  method: FlowMethod = "d-infinity",
  water = floodOver(ground),
): Flow {
  const { grid, blocked } = ground;
  const filled = filledWithRise(ground, water);
  const first = new Int32Array(filled.length).fill(-1);
  const second = new Int32Array(filled.length).fill(-1);
  const share = new Float64Array(filled.length).fill(1);
  const direct = method === "d8" ? steepestNeighbour : steepestFacet;
  // A rim of cells that can't be reached: water at the border goes inwards or away.
  const rim = { columns: grid.columns + 2, rows: grid.rows + 2 };
  const shut = new Uint8Array(rim.columns * rim.rows).fill(1);
  const heights = new Float64Array(shut.length);
  for (let row = 0; row < grid.rows; row++) {
    const [from, to] = [row * grid.columns, (row + 1) * rim.columns + 1];
    shut.set(blocked.subarray(from, from + grid.columns), to);
    heights.set(filled.subarray(from, from + grid.columns), to);
  }
  const found: Found = { first: -1, second: -1, share: 1 };
  const steps = stepsOf(rim.columns);
  const within = stepsOf(grid.columns);
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      const cell = row * grid.columns + column;
      if (blocked[cell]) continue;
      direct((row + 1) * rim.columns + column + 1, heights, shut, steps, found);
      const to = found.first < 0 ? -1 : cell + (within[found.first] as number);
      const beside = found.second < 0 ? -1 : cell + (within[found.second] as number);
      // At the border water goes inwards or away, never along it: what lies beyond isn't known.
      const isRim = row === 0 || column === 0 || row === grid.rows - 1 || column === grid.columns - 1;
      const away = isRim && to >= 0 && atBorder(to, grid);
      const alone = away || (isRim && beside >= 0 && atBorder(beside, grid));
      first[cell] = away ? -1 : to;
      second[cell] = alone ? -1 : beside;
      share[cell] = alone ? 1 : found.share;
    }
  }
  const order = topDown(first, second, blocked);
  return { grid, filled, first, second, share, order, area: drained({ first, second, share, order }, grid) };
}

export function atBorder(cell: number, { columns, rows }: Grid): boolean {
  const column = cell % columns;
  const row = (cell - column) / columns;
  return column === 0 || row === 0 || column === columns - 1 || row === rows - 1;
}

/** The neighbours that one cell's water goes to, as indices of `ways`, -1: none, and the part for the first. */
interface Found {
  first: number;
  second: number;
  share: number;
}

interface Directions {
  readonly first: Int32Array;
  readonly second: Int32Array;
  readonly share: Float64Array;
}

/** What leads from a cell to each of its neighbours on a grid so wide. */
function stepsOf(columns: number): Int32Array {
  return Int32Array.from(ways, ([di, dj]) => dj * columns + di);
}

function steepestNeighbour(
  cell: number,
  z: Float64Array,
  shut: Uint8Array,
  steps: Int32Array,
  found: Found,
): void {
  let best = 0;
  found.first = -1;
  found.second = -1;
  found.share = 1;
  for (let k = 0; k < ways.length; k++) {
    const next = cell + (steps[k] as number);
    if (shut[next]) continue;
    const drop = ((z[cell] as number) - (z[next] as number)) / (k % 2 === 0 ? 1 : Math.SQRT2);
    if (drop <= best) continue;
    best = drop;
    found.first = k;
  }
}

/** Slopes in rise over cells, squared: only which is steepest counts. */
function steepestFacet(
  cell: number,
  z: Float64Array,
  shut: Uint8Array,
  steps: Int32Array,
  found: Found,
): void {
  const e0 = z[cell] as number;
  let best = 0;
  // Plain assignments: this runs eight times for each of up to a million cells.
  let first = -1;
  let second = -1;
  let along = 1;
  let aside = 0;
  for (let k = 0; k < ways.length; k++) {
    const straight = straights[k] as number;
    const slanted = slants[k] as number;
    const near = cell + (steps[straight] as number);
    const far = cell + (steps[slanted] as number);
    const s1 = e0 - (z[near] as number);
    const s2 = (z[near] as number) - (z[far] as number);
    const isOpen = shut[near] === 0;
    if (isOpen && (shut[far] || s2 <= 0)) {
      // Straight to the neighbour: the facet falls away from the slanted one, or that one can't be reached.
      if (s1 > 0 && s1 * s1 > best) {
        best = s1 * s1;
        first = straight;
        second = -1;
      }
    } else if (shut[far] === 0 && (!isOpen || s2 >= s1)) {
      const drop = e0 - (z[far] as number);
      if (drop > 0 && (drop * drop) / 2 > best) {
        best = (drop * drop) / 2;
        first = slanted;
        second = -1;
      }
    } else if (isOpen && s1 * s1 + s2 * s2 > best) {
      best = s1 * s1 + s2 * s2;
      first = straight;
      second = slanted;
      along = s1;
      aside = s2;
    }
  }
  found.first = first;
  found.second = second;
  found.share = second < 0 ? 1 : 1 - Math.atan2(aside, along) / (Math.PI / 4);
}

/** Every cell before those it drains to: a cell follows once all that drain into it are done. */
function topDown(first: Int32Array, second: Int32Array, blocked: Uint8Array): Uint32Array {
  const waits = new Uint8Array(first.length);
  const count = (to: number) => {
    if (to >= 0) waits[to] = (waits[to] as number) + 1;
  };
  for (let i = 0; i < first.length; i++) {
    count(first[i] as number);
    count(second[i] as number);
  }
  const order = new Uint32Array(first.length);
  let found = 0;
  const done = (to: number) => {
    if (to < 0) return;
    waits[to] = (waits[to] as number) - 1;
    if (waits[to] === 0) order[found++] = to;
  };
  for (let i = 0; i < first.length; i++) if (!blocked[i] && waits[i] === 0) order[found++] = i;
  for (let k = 0; k < found; k++) {
    const i = order[k] as number;
    done(first[i] as number);
    done(second[i] as number);
  }
  return order.slice(0, found);
}

function drained(flow: Directions & Pick<Flow, "order">, grid: Grid): Float64Array {
  return gatheredFrom(flow, new Float64Array(flow.first.length).fill(grid.cell * grid.cell));
}

/** What comes through each cell of something that each cell gives, its own included: areas, or areas by their C. */
export function gatheredFrom(
  { first, second, share, order }: Pick<Flow, "first" | "second" | "share" | "order">,
  own: Float64Array,
): Float64Array {
  const area = new Float64Array(first.length);
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number;
    const all = (area[i] as number) + (own[i] as number);
    area[i] = all;
    const a = first[i] as number;
    const b = second[i] as number;
    const part = share[i] as number;
    if (a >= 0) area[a] = (area[a] as number) + part * all;
    if (b >= 0) area[b] = (area[b] as number) + (1 - part) * all;
  }
  return area;
}

/**
 * The way of a drop of water from a place, cell by cell to the edge or to a cell without a way on: flat x, y of
 * the cells' centres, the place itself first. Each cell hands it on to the neighbour that gets most of its water.
 */
export function runFrom(flow: FlowField, x: number, y: number): Float64Array {
  const { grid, first, second, share } = flow;
  const column = Math.floor((x - grid.x0) / grid.cell);
  const row = Math.floor((y - grid.y0) / grid.cell);
  if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return new Float64Array(0);
  const places = [x, y];
  for (let cell = row * grid.columns + column; ; ) {
    const next = ((share[cell] as number) >= 0.5 ? first[cell] : second[cell]) as number;
    if (next < 0) return Float64Array.from(places);
    places.push(
      grid.x0 + ((next % grid.columns) + 0.5) * grid.cell,
      grid.y0 + (Math.floor(next / grid.columns) + 0.5) * grid.cell,
    );
    cell = next;
  }
}

export interface Catchment {
  /** The part of each cell's water that comes to the target, 0 to 1. */
  readonly part: Float64Array;
  /** m2 */
  readonly area: number;
  /** Longest way of water to the target, m, and its fall, m: the longest with what is still to go from there. */
  readonly longest: number;
  readonly fall: number;
  /** The cell of the target that it comes to; -1 where nothing does. */
  readonly entry: number;
  /** It reaches ground at the border of the grid: more may come from beyond. */
  readonly touchesEdge: boolean;
}

/** What drains to the cells that are 1 in `target`. `onward`: how far water still has to go from such a cell, m. */
export function catchmentOf(
  flow: FlowField,
  target: Uint8Array,
  onward: (cell: number) => number = () => 0,
): Catchment {
  const { grid, first, second, share, order, filled } = flow;
  const part = new Float64Array(first.length);
  const way = new Float64Array(first.length);
  const end = new Int32Array(first.length).fill(-1);
  const { columns } = grid;
  const step = (a: number, b: number) =>
    grid.cell * (a % columns !== b % columns && Math.abs(a - b) !== 1 ? Math.SQRT2 : 1);
  let area = 0;
  let farthest = -1;
  let touchesEdge = false;
  for (let k = order.length - 1; k >= 0; k--) {
    const i = order[k] as number;
    const a = first[i] as number;
    const b = second[i] as number;
    const toFirst = share[i] as number;
    if (target[i]) {
      part[i] = 1;
      end[i] = i;
      way[i] = onward(i);
    } else {
      part[i] =
        (a >= 0 ? toFirst * (part[a] as number) : 0) + (b >= 0 ? (1 - toFirst) * (part[b] as number) : 0);
      const on = toFirst >= 0.5 ? a : b;
      if (on >= 0 && (end[on] as number) >= 0) {
        end[i] = end[on] as number;
        way[i] = (way[on] as number) + step(i, on);
      }
    }
    area += part[i] as number;
    if ((part[i] as number) < 0.5) continue;
    if ((end[i] as number) >= 0 && (farthest < 0 || (way[i] as number) > (way[farthest] as number)))
      farthest = i;
    if (!target[i] && atBorder(i, grid)) touchesEdge = true;
  }
  const entry = farthest < 0 ? -1 : (end[farthest] as number);
  const fall = farthest < 0 ? 0 : (filled[farthest] as number) - (filled[end[farthest] as number] as number);
  return {
    part,
    area: area * grid.cell * grid.cell,
    longest: farthest < 0 ? 0 : (way[farthest] as number) - onward(entry),
    fall: Math.max(0, fall),
    entry,
    touchesEdge,
  };
}
