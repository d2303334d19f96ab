/**
 * Which triangles between the shots are a guess all the same: in a hole, beyond the drawn edge, long ones along the
 * rim, and those with places far from any of their corners. They stay in the surface; they are marked.
 *
 * Units   metres.
 * Source  First principles.
 */
import { containsPoint, type Point } from "../geometry";
import { planArea } from "./areas";
import type { Tin } from "./ground";
import { nextEdge, previousEdge } from "./mesh";

export interface Doubts {
  /** Rings inside which nothing was measured. */
  readonly holes: readonly (readonly Point[])[];
  /** Rings outside all of which the points don't tell the ground; none: the points' own rim is the edge. */
  readonly edges: readonly (readonly Point[])[];
  /** A triangle on the rim with a longer side on it is a guess; null: none is. */
  readonly longestEdge: number | null;
}

/** A place is far from the points when it is farther from the nearest than this many times their spacing. */
export const farInSpacings = 2;

/** Typical spacing of a surface's points: the side of the square that each would have to itself. */
export function pointSpacing(tin: Tin): number {
  const used = new Uint8Array(tin.x.length);
  for (const i of tin.triangles) used[i] = 1;
  const count = used.reduce((sum, one) => sum + one, 0);
  return Math.sqrt(planArea(tin) / count);
}

/** 1 for each triangle that is a guess. */
export function doubtfulTriangles(tin: Tin, { holes, edges, longestEdge }: Doubts): Uint8Array {
  const doubtful = new Uint8Array(tin.triangles.length / 3);
  const far = farInSpacings * pointSpacing(tin);
  const drawn = holes.length + edges.length > 0;
  for (let t = 0; t < doubtful.length; t++) {
    if (farthestFromCorners(tin, t) > far || (drawn && isOutside(tin, t, holes, edges))) doubtful[t] = 1;
  }
  if (longestEdge !== null && longestEdge > 0) trim(tin, longestEdge, doubtful);
  return doubtful;
}

function isOutside(tin: Tin, t: number, holes: Doubts["holes"], edges: Doubts["edges"]): boolean {
  const corner = (k: number) => tin.triangles[3 * t + k] as number;
  const middle = (of: Float64Array) =>
    ((of[corner(0)] as number) + (of[corner(1)] as number) + (of[corner(2)] as number)) / 3;
  const [x, y] = [middle(tin.x), middle(tin.y)];
  if (holes.some((ring) => containsPoint(ring, x, y))) return true;
  return edges.length > 0 && !edges.some((ring) => containsPoint(ring, x, y));
}

function sideLength(tin: Tin, e: number): number {
  const a = tin.triangles[e] as number;
  const b = tin.triangles[nextEdge(e)] as number;
  return Math.hypot((tin.x[b] as number) - (tin.x[a] as number), (tin.y[b] as number) - (tin.y[a] as number));
}

/**
 * How far the farthest place of a triangle lies from the nearest of its corners: the middle of the circle through
 * them; where that lies outside, where the bisector of a short side meets the longest one.
 */
function farthestFromCorners(tin: Tin, t: number): number {
  const p = sideLength(tin, 3 * t);
  const q = sideLength(tin, 3 * t + 1);
  const r = sideLength(tin, 3 * t + 2);
  const a = Math.min(p, q, r);
  const c = Math.max(p, q, r);
  const b = Math.max(Math.min(p, q), Math.min(Math.max(p, q), r));
  if (a * a + b * b <= c * c) return Math.max(b / (2 * cosine(a, b, c)), a / (2 * cosine(b, a, c)));
  // By sides, in the order that loses least (Kahan).
  const area4 = Math.sqrt((c + (b + a)) * (a - (c - b)) * (a + (c - b)) * (c + (b - a)));
  return (a * b * c) / area4;
}

/** Cosine of the angle between `beside` and `longest`. */
function cosine(opposite: number, beside: number, longest: number): number {
  return (beside * beside + longest * longest - opposite * opposite) / (2 * beside * longest);
}

/** Takes triangles off from the rim inwards while their side on it is too long. */
function trim(tin: Tin, longest: number, doubtful: Uint8Array): void {
  const waiting: number[] = [];
  for (let e = 0; e < tin.halfedges.length; e++) if ((tin.halfedges[e] as number) < 0) waiting.push(e);
  const gone = new Uint8Array(doubtful.length);
  while (waiting.length > 0) {
    const e = waiting.pop() as number;
    const t = Math.floor(e / 3);
    if (gone[t] || sideLength(tin, e) <= longest) continue;
    gone[t] = 1;
    doubtful[t] = 1;
    for (const side of [nextEdge(e), previousEdge(e)]) {
      const twin = tin.halfedges[side] as number;
      if (twin >= 0) waiting.push(twin);
    }
  }
}

/** Rings round the marked triangles among the first `count`, marked ground on the left; flat x, y. */
export function doubtfulRings(tin: Tin, marked: Uint8Array, count = marked.length): Float64Array[] {
  const inside = (e: number) => e >= 0 && e < 3 * count && marked[Math.floor(e / 3)] === 1;
  const isBorder = (e: number) => inside(e) && !inside(tin.halfedges[e] as number);
  const done = new Uint8Array(3 * count);
  const rings: Float64Array[] = [];
  for (let start = 0; start < 3 * count; start++) {
    if (done[start] || !isBorder(start)) continue;
    const ring: number[] = [];
    let e = start;
    do {
      done[e] = 1;
      const from = tin.triangles[e] as number;
      ring.push(tin.x[from] as number, tin.y[from] as number);
      e = nextEdge(e);
      while (!isBorder(e)) e = nextEdge(tin.halfedges[e] as number);
    } while (e !== start);
    rings.push(Float64Array.from(ring));
  }
  return rings;
}
