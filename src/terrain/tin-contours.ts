/**
 * Contour lines of a triangulated surface: exact, since each triangle is a plane.
 *
 * Method  A point counts as above a level when its height is at or over it; then no line ever ends at a
 *         point or runs along an edge, and level ground needs no special case. Lines are followed from
 *         triangle to triangle, the higher ground on the left.
 * Source  First principles.
 */
import type { Tin } from "./ground";
import { LineBuffer } from "./line-buffer";
import { nextEdge } from "./mesh";

/** Lines of one level. */
export type ContourLines = Float64Array[];

/** A line with the triangle under each of its pieces: piece k runs from place k to place k + 1. */
export interface TracedLine {
  readonly points: Float64Array;
  readonly triangles: readonly number[];
}

/**
 * Contours at each level, in the order of the levels: flat x, y lines, joined. A closed line ends with the
 * place it starts from; an open one starts and ends on the rim.
 */
export function tinContours(tin: Tin, levels: readonly number[]): ContourLines[] {
  return tracedContours(tin, levels).map((lines) => lines.map((line) => line.points));
}

/** As tinContours, with the triangles that the lines cross. */
export function tracedContours(tin: Tin, levels: readonly number[]): TracedLine[][] {
  const { starts, crossed } = crossedTriangles(tin, levels);
  const done = new Int32Array(tin.triangles.length / 3); // number of the level a triangle was last crossed by
  const tracer = new Tracer(tin, done);
  return levels.map((level, k) => {
    const lines: TracedLine[] = [];
    const from = starts[k] as number;
    const to = starts[k + 1] as number;
    tracer.begin(level, k + 1);
    for (const onlyFromRim of [true, false]) {
      for (let i = from; i < to; i++) {
        const triangle = crossed[i] as number;
        if (done[triangle] === k + 1) continue;
        const entry = tracer.entryOf(triangle);
        if (onlyFromRim && (tin.halfedges[entry] as number) >= 0) continue;
        const line = tracer.follow(entry);
        if (line) lines.push(line);
      }
    }
    return lines;
  });
}

/** Triangles that each level crosses: those of level k are crossed[starts[k]] up to crossed[starts[k + 1]]. */
function crossedTriangles(tin: Tin, levels: readonly number[]) {
  const order = levels.map((_, k) => k).sort((a, b) => (levels[a] as number) - (levels[b] as number));
  const sorted = Float64Array.from(order, (k) => levels[k] as number);
  const above = levelsAtOrBelow(tin.z, sorted);
  const counts = new Uint32Array(levels.length);
  forEachCrossing(tin, above, (k) => {
    counts[order[k] as number] = (counts[order[k] as number] as number) + 1;
  });
  const starts = new Uint32Array(levels.length + 1);
  for (let k = 0; k < levels.length; k++) starts[k + 1] = (starts[k] as number) + (counts[k] as number);
  const filled = starts.slice();
  const crossed = new Uint32Array(starts[levels.length] as number);
  forEachCrossing(tin, above, (k, triangle) => {
    const at = filled[order[k] as number] as number;
    crossed[at] = triangle;
    filled[order[k] as number] = at + 1;
  });
  return { starts, crossed };
}

/** For each height how many of the ascending levels it reaches. */
export function levelsAtOrBelow(heights: Float64Array, sorted: Float64Array): Uint16Array {
  const reached = new Uint16Array(heights.length);
  let count = 0;
  for (let i = 0; i < heights.length; i++) {
    const z = heights[i] as number;
    // Neighbours in the array are mostly neighbours on the ground: start from the last answer.
    while (count < sorted.length && (sorted[count] as number) <= z) count++;
    while (count > 0 && (sorted[count - 1] as number) > z) count--;
    reached[i] = count;
  }
  return reached;
}

function forEachCrossing(tin: Tin, above: Uint16Array, visit: (level: number, triangle: number) => void) {
  const { triangles } = tin;
  for (let e = 0; e < triangles.length; e += 3) {
    const a = above[triangles[e] as number] as number;
    const b = above[triangles[e + 1] as number] as number;
    const c = above[triangles[e + 2] as number] as number;
    if (a === b && b === c) continue;
    const most = Math.max(a, b, c);
    for (let k = Math.min(a, b, c); k < most; k++) visit(k, e / 3);
  }
}

class Tracer {
  private level = 0;
  private stamp = 0;
  private readonly buffer = new LineBuffer();

  constructor(
    private readonly tin: Tin,
    private readonly done: Int32Array,
  ) {}

  begin(level: number, stamp: number): void {
    this.level = level;
    this.stamp = stamp;
  }

  private above(corner: number): boolean {
    return (this.tin.z[this.tin.triangles[corner] as number] as number) >= this.level;
  }

  /** The side by which a line enters a crossed triangle: the one that leads from above to below. */
  entryOf(triangle: number): number {
    return this.side(triangle, true);
  }

  private side(triangle: number, startsAbove: boolean): number {
    for (let e = 3 * triangle; e < 3 * triangle + 3; e++) {
      if (this.above(e) === startsAbove && this.above(nextEdge(e)) !== startsAbove) return e;
    }
    throw new Error(`triangle ${triangle} is not crossed at ${this.level}`);
  }

  /** The line that enters by a side, up to the rim or round to where it began; null if it has no length. */
  follow(entry: number): TracedLine | null {
    const { buffer, tin } = this;
    const triangles: number[] = [];
    buffer.clear();
    this.addCrossing(entry);
    let triangle = Math.floor(entry / 3);
    for (;;) {
      this.done[triangle] = this.stamp;
      const exit = this.side(triangle, false);
      if (this.addCrossing(exit)) triangles.push(triangle);
      const across = tin.halfedges[exit] as number;
      if (across < 0 || across === entry) break;
      triangle = Math.floor(across / 3);
    }
    return buffer.count < 2 ? null : { points: buffer.line(), triangles };
  }

  /** Adds where the level crosses a side, reckoned from its lower end, so that both its triangles agree. */
  private addCrossing(e: number): boolean {
    const { x, y, z, triangles } = this.tin;
    const from = triangles[e] as number;
    const to = triangles[nextEdge(e)] as number;
    const upwards = (z[to] as number) >= this.level;
    const low = upwards ? from : to;
    const high = upwards ? to : from;
    const t = (this.level - (z[low] as number)) / ((z[high] as number) - (z[low] as number));
    if (t === 1) return this.buffer.add(x[high] as number, y[high] as number);
    const lx = x[low] as number;
    const ly = y[low] as number;
    return this.buffer.add(lx + t * ((x[high] as number) - lx), ly + t * ((y[high] as number) - ly));
  }
}
