/**
 * Forces edges into a triangulation.
 *
 * Method  The triangles that the edge passes through are taken out. What is left open on each of its two
 *         sides is a polygon all of which can be seen from the edge; such a polygon is filled by cutting ears
 *         off in one pass along it. When all edges are in, Lawson's flips make the triangles Delaunay again
 *         wherever no forced edge stands between. All decisions by exact predicates on the snapped grid.
 * Source  G. T. Toussaint, D. Avis, On a Convex Hull Algorithm for Polygons and Its Application to
 *         Triangulation Problems, Pattern Recognition 15 (1982); C. L. Lawson (see `delaunay.ts`).
 */
import { linkEdges, type Mesh, meshTurn, nextEdge, previousEdge, settleEdges } from "./mesh";

/** Indices of the two ends of an edge. */
export type Edge = readonly [number, number];

/**
 * Puts every edge into the mesh; one that runs through a point is put in in parts. The edges must not
 * cross one another between their ends (throws if they do).
 */
export function forceEdges(mesh: Mesh, edges: readonly Edge[]): void {
  const forcer = new EdgeForcer(mesh, edges);
  for (const [from, to] of edges) {
    for (let at = from; at !== to; ) at = forcer.force(at, to);
  }
  settleEdges(mesh, forcer.touched);
}

/** One side of the opening left by the triangles taken out, on the way along the chain of its corners. */
interface ChainEdge {
  /** Corner that the edge leads to, on the way along the chain. */
  to: number;
  /** Half-edge on the far side, -1 on the rim. */
  outer: number;
  readonly fixed: number;
  /** Half-edge that it was inside the opening, -1 for one made since. */
  readonly was: number;
  /** The same edge seen from its other side, where both sides lie in the opening. */
  other: ChainEdge | null;
  /** Half-edge that it has become. */
  now: number;
}

class EdgeForcer {
  /** Half-edges whose triangles were made anew. */
  readonly touched: number[] = [];
  /** A half-edge that starts at the point; -1 where not needed yet. */
  private readonly spoke: Int32Array;

  constructor(
    private readonly mesh: Mesh,
    edges: readonly Edge[],
  ) {
    const { triangles, units } = mesh;
    this.spoke = new Int32Array(units.length >> 1).fill(-1);
    const isEnd = new Uint8Array(units.length >> 1);
    for (const [from, to] of edges) {
      isEnd[from] = 1;
      isEnd[to] = 1;
    }
    for (let e = 0; e < triangles.length; e++) {
      const point = triangles[e] as number;
      if (isEnd[point]) this.spoke[point] = e;
    }
  }

  /** Forces the edge from a towards b up to the first point on it, which is returned (b itself at the latest). */
  force(a: number, b: number): number {
    const { triangles, fixed, halfedges } = this.mesh;
    const first = this.wayOut(a, b);
    const along = first.along;
    if (along < 0) return this.open(a, b, first.through);
    fixed[along] = 1;
    const twin = halfedges[along] as number;
    if (twin >= 0) fixed[twin] = 1;
    const end = triangles[along] === a ? nextEdge(along) : along;
    const point = triangles[end] as number;
    this.spoke[point] = end;
    return point;
  }

  /** How the way from a to b leaves a: along a half-edge at a, or through a triangle (by its half-edge from a). */
  private wayOut(a: number, b: number): { along: number; through: number } {
    const { triangles, halfedges, units } = this.mesh;
    const start = this.spoke[a] as number;
    let e = start;
    let turnedBack = false;
    for (;;) {
      const right = triangles[nextEdge(e)] as number;
      const left = triangles[previousEdge(e)] as number;
      const toRight = meshTurn(units, a, b, right);
      const toLeft = meshTurn(units, a, b, left);
      if (toRight === 0 && this.isAhead(a, b, right)) return { along: e, through: -1 };
      if (toLeft === 0 && this.isAhead(a, b, left)) return { along: previousEdge(e), through: -1 };
      if (toRight < 0 && toLeft > 0) return { along: -1, through: e };
      if (!turnedBack) {
        e = halfedges[previousEdge(e)] as number;
        if (e === start) break;
        if (e >= 0) continue;
        turnedBack = true;
        e = start;
      }
      const before = halfedges[e] as number;
      if (before < 0) break;
      e = nextEdge(before);
    }
    throw new Error(`no triangle at point ${a} looks towards point ${b}`);
  }

  private isAhead(a: number, b: number, point: number): boolean {
    const { units } = this.mesh;
    const [ax, ay] = [units[2 * a] as number, units[2 * a + 1] as number];
    const dx = (units[2 * b] as number) - ax;
    const dy = (units[2 * b + 1] as number) - ay;
    return ((units[2 * point] as number) - ax) * dx + ((units[2 * point + 1] as number) - ay) * dy > 0;
  }

  /** Takes out the triangles from a towards b, through the one at half-edge e first, and fills both sides. */
  private open(a: number, b: number, e: number): number {
    const { triangles, halfedges, fixed, units } = this.mesh;
    const left = [this.chainEdge(previousEdge(e), previousEdge(e))];
    const right = [this.chainEdge(e, nextEdge(e))];
    const free = [Math.floor(e / 3)];
    let crossed = nextEdge(e);
    let end = -1;
    while (end < 0) {
      if (fixed[crossed]) throw new Error(`the edge from point ${a} to ${b} crosses another forced edge`);
      const twin = halfedges[crossed] as number;
      const apexEdge = previousEdge(twin); // leads from the apex back to the left side
      const apex = triangles[apexEdge] as number;
      const side = apex === b ? 0 : meshTurn(units, a, b, apex);
      free.push(Math.floor(twin / 3));
      if (side >= 0) left.push(this.chainEdge(apexEdge, apexEdge));
      if (side <= 0) right.push(this.chainEdge(nextEdge(twin), apexEdge));
      if (side === 0) end = apex;
      crossed = side > 0 ? nextEdge(twin) : apexEdge;
    }
    pairInnerEdges([...left, ...right]);
    const leftBase = this.fill(a, left, free);
    const rightBase = this.fill(end, backwards(right, a), free);
    linkEdges(halfedges, leftBase, rightBase);
    fixed[leftBase] = 1;
    fixed[rightBase] = 1;
    return end;
  }

  /** A side of the opening by its half-edge within; the corner it leads to starts half-edge `toEdge`. */
  private chainEdge(was: number, toEdge: number): ChainEdge {
    const { triangles, halfedges, fixed } = this.mesh;
    return {
      to: triangles[toEdge] as number,
      outer: halfedges[was] as number,
      fixed: fixed[was] as number,
      was,
      other: null,
      now: -1,
    };
  }

  /**
   * Fills the polygon between the chain, which starts at a corner, and the straight line back from its end,
   * with the polygon to the right of the chain. Returns the half-edge on that line, from chain start to end.
   */
  private fill(start: number, chain: readonly ChainEdge[], free: number[]): number {
    const { units } = this.mesh;
    const open: ChainEdge[] = [];
    for (const edge of chain) {
      let last = edge;
      while (open.length > 0) {
        const before = open[open.length - 1] as ChainEdge;
        const from = open.length > 1 ? (open[open.length - 2] as ChainEdge).to : start;
        if (meshTurn(units, from, before.to, last.to) >= 0) break;
        open.pop();
        last = this.cutEar(from, before, last, free.pop() as number);
      }
      open.push(last);
    }
    return (open[0] as ChainEdge).outer;
  }

  /** Makes a triangle of two chain edges; the chain then runs along its third side. */
  private cutEar(from: number, first: ChainEdge, second: ChainEdge, slot: number): ChainEdge {
    const { triangles, fixed } = this.mesh;
    const base = 3 * slot;
    triangles[base] = from;
    triangles[base + 1] = second.to;
    triangles[base + 2] = first.to;
    fixed[base] = 0;
    this.spoke[from] = base;
    this.spoke[second.to] = base + 1;
    this.spoke[first.to] = base + 2;
    this.join(base + 1, second);
    this.join(base + 2, first);
    this.touched.push(base, base + 1, base + 2);
    return { to: second.to, outer: base, fixed: 0, was: -1, other: null, now: -1 };
  }

  private join(e: number, side: ChainEdge): void {
    const { halfedges, fixed } = this.mesh;
    fixed[e] = side.fixed;
    side.now = e;
    if (!side.other) linkEdges(halfedges, e, side.outer);
    else if (side.other.now >= 0) linkEdges(halfedges, e, side.other.now);
  }
}

/** Finds edges that hang into the opening: both their sides are in the chains. */
function pairInnerEdges(sides: readonly ChainEdge[]): void {
  const byEdge = new Map(sides.map((side) => [side.was, side]));
  for (const side of sides) side.other = byEdge.get(side.outer) ?? null;
}

/** Turns a chain round: the same edges from its end back to its start, which is the given corner. */
function backwards(chain: ChainEdge[], start: number): ChainEdge[] {
  for (let i = chain.length - 1; i >= 0; i--) {
    (chain[i] as ChainEdge).to = i > 0 ? (chain[i - 1] as ChainEdge).to : start;
  }
  return chain.reverse();
}
