/**
 * The way on a grid along which a ditch's bed stays highest, and where it can come out of the ground.
 *
 * Units   metres; falls rise over run.
 * Method  From the start, always on from the cell with the highest bed (Dijkstra): a bed lies at its depth under the
 *         ground, or lower where it must to keep falling. It comes out at a place where from one of those cells, in one of
 *         sixteen directions, it can fall straight to the ground of the place without leaving the ground before.
 * Source  First principles.
 */
import FlatQueue from "flatqueue";
import { between, containsPoint, distance, distanceToSegment, nearestOnRing, type Point } from "../geometry";

export interface RouteGrid {
  readonly x0: number;
  readonly y0: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

interface Wish {
  readonly start: Point;
  readonly outlet: Point;
  readonly off: number;
  readonly depth: number;
  readonly leastFall: number;
  /** Greatest depth of the bed under the ground. */
  readonly mostDeep: number;
}

/** What a way keeps off: the building, and a line that it doesn't cross. */
export interface RouteBounds {
  readonly ring: readonly Point[] | null;
  readonly barrier: readonly [Point, Point] | null;
}

export interface GridRoute {
  /** The way to the outlet; null where the bed can't come out there. */
  readonly to: Point[] | null;
  /** Ways to places at which it can, from the one nearest to the outlet on, each some cells from the one before. */
  readonly others: () => Generator<Point[]>;
}

/** The bed at each cell, and where it came from. */
interface Beds {
  readonly bed: Float64Array;
  readonly from: Int32Array;
}

export function gridRoute(
  grid: RouteGrid,
  height: (at: Point) => number,
  { ring, barrier }: RouteBounds,
  wish: Wish,
): GridRoute {
  const { columns, rows, cell } = grid;
  const z = new Float64Array(columns * rows);
  const shut = new Uint8Array(z.length);
  const centre = (i: number): Point => [
    grid.x0 + ((i % columns) + 0.5) * cell,
    grid.y0 + (Math.floor(i / columns) + 0.5) * cell,
  ];
  for (let i = 0; i < z.length; i++) {
    const at = centre(i);
    z[i] = height(at);
    const barred = barrier && distanceToSegment(barrier[0], barrier[1], at[0], at[1]) < 0.75 * cell;
    if (barred || !Number.isFinite(z[i]) || (ring && nearWall(ring, at, wish.off + cell / 4))) shut[i] = 1;
  }
  const cellOf = ([x, y]: Point) =>
    Math.min(rows - 1, Math.max(0, Math.floor((y - grid.y0) / cell))) * columns +
    Math.min(columns - 1, Math.max(0, Math.floor((x - grid.x0) / cell)));
  const leastFall = wish.leastFall + gridFall;
  const start = cellOf(wish.start);
  shut[start] = 0;
  const dug = (i: number, bed: number) =>
    (z[i] as number) - bed > wish.mostDeep ? Number.NEGATIVE_INFINITY : bed;
  const full = spread(grid, shut, leastFall, start, (i, falling) =>
    dug(i, Math.min((z[i] as number) - wish.depth, falling)),
  );
  const wayTo = (end: number) => {
    const from = leaves(end);
    if (from < 0) return null;
    const way = [centre(end)];
    for (let i = from; i >= 0; i = full.from[i] as number) way.unshift(centre(i));
    way[0] = wish.start;
    return way;
  };
  /** The cell from which a bed falls straight out at `end`; -1: none. */
  function leaves(end: number): number {
    if (shut[end]) return -1;
    const [x, y] = centre(end);
    for (let k = 0; k < directions; k++) {
      const angle = (2 * Math.PI * k) / directions;
      for (let t = 1; t * cell <= longestRamp; t++) {
        const at: Point = [x + t * cell * Math.cos(angle), y + t * cell * Math.sin(angle)];
        if (!isOn(grid, at)) break;
        const i = cellOf(at);
        if (shut[i]) break;
        const fall = ((full.bed[i] as number) - (z[end] as number)) / distance(centre(i), [x, y]);
        if (i === end || !(fall >= leastFall) || !Number.isFinite(fall)) continue;
        if (staysInGround(centre(i), [x, y], full.bed[i] as number, z[end] as number, height)) return i;
        break;
      }
    }
    return -1;
  }
  const outlet = cellOf(wish.outlet);
  const to = wayTo(outlet);
  if (to) {
    to[to.length - 1] = wish.outlet;
    return { to, others: function* () {} };
  }
  const highest = full.bed.reduce((a, b) => Math.max(a, b));
  function* others() {
    let last: Point | null = null;
    const away = z.map((_, i) => distance(centre(i), wish.outlet));
    const low = Uint32Array.from(z.keys()).filter((i) => !shut[i] && (z[i] as number) < highest);
    for (const end of low.sort((a, b) => (away[a] as number) - (away[b] as number))) {
      if (last && distance(last, centre(end)) < cellsApart * cell) continue;
      const way = wayTo(end);
      if (!way) continue;
      last = centre(end);
      yield way;
    }
  }
  return { to: null, others };
}

/** Of places at which a bed comes out, others so near to the last aren't looked at, cells. */
const cellsApart = 3;
/** Directions in which a bed may leave the ground, and how far before it begins to rise out of it, m. */
const directions = 16;
const longestRamp = 40;
/** Ways on the grid fall so much more than asked, for what its cells round off. */
const gridFall = 0.0005;
/** A bed so much over the ground still lies in it, m. */
const outOfGround = 0.02;

function isOn({ x0, y0, cell, columns, rows }: RouteGrid, [x, y]: Point): boolean {
  return x >= x0 && y >= y0 && x < x0 + columns * cell && y < y0 + rows * cell;
}

/** Whether a bed that falls straight from a to b lies in the ground all the way. */
function staysInGround(a: Point, b: Point, from: number, to: number, height: (at: Point) => number): boolean {
  const steps = Math.ceil(distance(a, b) / 0.5);
  return Array.from({ length: steps }, (_, k) => k / steps).every(
    (t) => from + (to - from) * t <= height(between(a, b, t)) + outOfGround,
  );
}

function nearWall(ring: readonly Point[], [x, y]: Point, off: number): boolean {
  return containsPoint(ring, x, y) || nearestOnRing(ring, x, y).distance < off;
}

/** The highest bed at each cell from one on, −∞ where none comes. */
function spread(
  { columns, rows, cell }: RouteGrid,
  shut: Uint8Array,
  leastFall: number,
  start: number,
  bedAt: (i: number, falling: number) => number,
): Beds {
  const bed = new Float64Array(columns * rows).fill(Number.NEGATIVE_INFINITY);
  const from = new Int32Array(bed.length).fill(-1);
  const done = new Uint8Array(bed.length);
  const queue = new FlatQueue(bed.length, Float64Array, Int32Array);
  bed[start] = bedAt(start, Number.POSITIVE_INFINITY);
  queue.push(start, -(bed[start] as number));
  for (let i = queue.pop(); i !== undefined; i = queue.pop()) {
    if (done[i]) continue;
    done[i] = 1;
    const column = i % columns;
    const row = (i - column) / columns;
    for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
      for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) {
        const next = r * columns + c;
        if (done[next] || shut[next]) continue;
        const run = cell * (r !== row && c !== column ? Math.SQRT2 : 1);
        const there = bedAt(next, (bed[i] as number) - leastFall * run);
        if (there <= (bed[next] as number)) continue;
        bed[next] = there;
        from[next] = i;
        queue.push(next, -there);
      }
    }
  }
  return { bed, from };
}
