/**
 * Triangles as half-edges, while they are being put right. Half-edge e runs from corner e of `triangles` to
 * the next corner of the same triangle; triangles are counter-clockwise; -1 in `halfedges` is the rim.
 */
import { inCircle, turn } from "../geometry";

export interface Mesh {
  /** x0, y0, x1, y1, ... on the snapped grid. */
  readonly units: Float64Array;
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
  /** 1 for a half-edge that must stay: it lies on a breakline. */
  readonly fixed: Uint8Array;
}

export function nextEdge(e: number): number {
  return e % 3 === 2 ? e - 2 : e + 1;
}

export function previousEdge(e: number): number {
  return e % 3 === 0 ? e + 2 : e - 1;
}

/** Positive where points a, b, c of the mesh turn left; exact. */
export function meshTurn(units: Float64Array, a: number, b: number, c: number): number {
  return turn(
    units[2 * a] as number,
    units[2 * a + 1] as number,
    units[2 * b] as number,
    units[2 * b + 1] as number,
    units[2 * c] as number,
    units[2 * c + 1] as number,
  );
}

/** Positive where point d lies inside the circle through the counter-clockwise points a, b, c; exact. */
export function meshInCircle(units: Float64Array, a: number, b: number, c: number, d: number): number {
  return inCircle(
    units[2 * a] as number,
    units[2 * a + 1] as number,
    units[2 * b] as number,
    units[2 * b + 1] as number,
    units[2 * c] as number,
    units[2 * c + 1] as number,
    units[2 * d] as number,
    units[2 * d + 1] as number,
  );
}

/**
 * Swaps the diagonal of the two triangles at half-edge e for the other one. Afterwards the new diagonal is
 * half-edge previousEdge(e) with its twin previousEdge(twin).
 */
export function flipEdge(mesh: Mesh, e: number): void {
  const { triangles, halfedges, fixed } = mesh;
  const twin = halfedges[e] as number;
  const ePrevious = previousEdge(e);
  const twinPrevious = previousEdge(twin);
  fixed[e] = fixed[twinPrevious] as number;
  fixed[twin] = fixed[ePrevious] as number;
  fixed[ePrevious] = 0;
  fixed[twinPrevious] = 0;
  triangles[e] = triangles[twinPrevious] as number;
  triangles[twin] = triangles[ePrevious] as number;
  linkEdges(halfedges, e, halfedges[twinPrevious] as number);
  linkEdges(halfedges, twin, halfedges[ePrevious] as number);
  linkEdges(halfedges, ePrevious, twinPrevious);
}

/** Makes two half-edges each other's twins; -1 puts the first on the rim. */
export function linkEdges(halfedges: Int32Array | number[], e: number, twin: number): void {
  halfedges[e] = twin;
  if (twin >= 0) halfedges[twin] = e;
}

/**
 * Flips edges until none wants to be flipped, starting from the given ones (the list is used up): Lawson's flips.
 */
export function settleEdges(mesh: Mesh, waiting: number[]): void {
  while (waiting.length > 0) {
    const e = waiting.pop() as number;
    if (!wantsFlip(mesh, e)) continue;
    const twin = mesh.halfedges[e] as number;
    flipEdge(mesh, e);
    waiting.push(e, nextEdge(e), twin, nextEdge(twin));
  }
}

/**
 * Whether the edge should be flipped: the point across lies inside the circle, or on it and the other
 * diagonal ends at the westernmost (then southernmost) of the four points. The second rule makes the
 * triangles depend on the points alone, not on their order: on a square grid every square is a tie.
 */
export function wantsFlip(mesh: Mesh, e: number): boolean {
  const { units, triangles, halfedges } = mesh;
  const twin = halfedges[e] as number;
  if (twin < 0 || mesh.fixed[e]) return false;
  const from = triangles[e] as number;
  const to = triangles[nextEdge(e)] as number;
  const near = triangles[previousEdge(e)] as number;
  const far = triangles[previousEdge(twin)] as number;
  const inside = meshInCircle(units, from, to, near, far);
  if (inside !== 0) return inside > 0;
  const nearFar = comesFirst(units, near, far) ? near : far;
  const fromTo = comesFirst(units, from, to) ? from : to;
  return comesFirst(units, nearFar, fromTo);
}

function comesFirst(units: Float64Array, a: number, b: number): boolean {
  const dx = (units[2 * a] as number) - (units[2 * b] as number);
  return dx < 0 || (dx === 0 && (units[2 * a + 1] as number) < (units[2 * b + 1] as number));
}
