/**
 * Any triangulation of distinct points on the snapped grid, by exact decisions alone: for the few sets of points on
 * which Delaunator's rounding loses one.
 *
 * Method  Points from west to east; each is joined to all sides of the rim that it sees. The points in line at the
 *         start wait for the first that isn't.
 * Source  First principles.
 */
import { linkEdges, type Mesh, meshTurn } from "./mesh";

/** Triangles over all points; null where they lie in one line. They are not Delaunay yet. */
export function sweptMesh(units: Float64Array): Mesh | null {
  const order = fromWestToEast(units);
  const [a, b] = order as [number, number];
  const turnAt = (k: number) => meshTurn(units, a, b, order[k] as number);
  let off = 2;
  while (off < order.length && turnAt(off) === 0) off++;
  if (off >= order.length) return null;
  const sweep = new Sweep(units);
  sweep.begin(order.slice(0, off), order[off] as number, turnAt(off) > 0);
  for (let k = off + 1; k < order.length; k++) sweep.add(order[k] as number, order[k - 1] as number);
  return sweep.mesh();
}

function fromWestToEast(units: Float64Array): number[] {
  const order = Array.from({ length: units.length >> 1 }, (_, i) => i);
  return order.sort(
    (p, q) =>
      (units[2 * p] as number) - (units[2 * q] as number) ||
      (units[2 * p + 1] as number) - (units[2 * q + 1] as number),
  );
}

class Sweep {
  private readonly triangles: number[] = [];
  private readonly twins: number[] = [];
  /** The rim, counter-clockwise: the point after and before each of its points, and the half-edge that starts there. */
  private readonly after: Int32Array;
  private readonly before: Int32Array;
  private readonly side: Int32Array;

  constructor(private readonly units: Float64Array) {
    const count = units.length >> 1;
    this.after = new Int32Array(count);
    this.before = new Int32Array(count);
    this.side = new Int32Array(count);
  }

  mesh(): Mesh {
    const triangles = Uint32Array.from(this.triangles);
    return {
      units: this.units,
      triangles,
      halfedges: Int32Array.from(this.twins),
      fixed: new Uint8Array(triangles.length),
    };
  }

  /** A fan from the apex over points in line; the apex lies to the left of their way or to its right. */
  begin(line: readonly number[], apex: number, left: boolean): void {
    const way = left ? line : [...line].reverse();
    let open = -1;
    for (let i = 1; i < way.length; i++) {
      const base = this.push(way[i - 1] as number, way[i] as number, apex);
      this.join(way[i - 1] as number, way[i] as number, base);
      if (open >= 0) this.link(base + 2, open);
      else this.join(apex, way[0] as number, base + 2);
      open = base + 1;
    }
    this.join(way[way.length - 1] as number, apex, open);
  }

  /** Adds a point east of all others, from a point of the rim that it sees: the one added last. */
  add(point: number, seen: number): void {
    let left = seen;
    let right = seen;
    let fromPoint = -1;
    let toPoint = -1;
    while (this.sees(point, right)) {
      const next = this.after[right] as number;
      const base = this.push(right, point, next);
      this.link(base + 2, this.side[right] as number);
      if (fromPoint >= 0) this.link(base, fromPoint);
      else toPoint = base;
      fromPoint = base + 1;
      right = next;
    }
    while (this.sees(point, this.before[left] as number)) {
      const from = this.before[left] as number;
      const base = this.push(from, point, left);
      this.link(base + 2, this.side[from] as number);
      if (toPoint >= 0) this.link(base + 1, toPoint);
      else fromPoint = base + 1;
      toPoint = base;
      left = from;
    }
    this.join(left, point, toPoint);
    this.join(point, right, fromPoint);
  }

  private sees(point: number, from: number): boolean {
    return meshTurn(this.units, from, this.after[from] as number, point) < 0;
  }

  private push(a: number, b: number, c: number): number {
    this.triangles.push(a, b, c);
    this.twins.push(-1, -1, -1);
    return this.triangles.length - 3;
  }

  private link(e: number, twin: number): void {
    linkEdges(this.twins, e, twin);
  }

  private join(from: number, to: number, side: number): void {
    this.after[from] = to;
    this.before[to] = from;
    this.side[from] = side;
  }
}
