/** Triangles of a surface cut to a footprint. */
import {
  type Bounds,
  boundsOf,
  centroid,
  clipConvexByConvex,
  convexPieces,
  type Point,
  ringsSelfCross,
} from "../geometry";
import { locate, type Tin } from "../terrain";

/** A convex part of one triangle: flat x, y corners, counter-clockwise. */
export type PieceVisitor = (polygon: readonly number[], triangle: number) => void;

/**
 * Visits the part of every triangle that lies inside the ring (simple, either way round), cut up into convex
 * pieces without overlap; with no ring, every triangle whole. Method: the ring in convex pieces, each
 * triangle clipped by each. Float64 throughout, no tolerance: the areas add up to the footprint's.
 */
export function forEachClipped(tin: Tin, ring: readonly Point[] | null, visit: PieceVisitor): void {
  if (!ring) {
    for (let t = 0; t < tin.triangles.length / 3; t++) visit(cornersOf(tin, t), t);
    return;
  }
  if (ringsSelfCross(ring)) throw new Error("the footprint crosses itself: it has no inside");
  for (const piece of convexPieces(ring)) {
    forEachNear(tin, piece, (triangle) => {
      const polygon = clipConvexByConvex(cornersOf(tin, triangle), piece);
      if (polygon.length >= 6) visit(polygon, triangle);
    });
  }
}

/**
 * Visits the triangles whose boxes reach the box of a convex ring, at least all that share area with it. From the
 * triangle at its centre they spread side by side; where its centre is off the surface all are looked through.
 */
function forEachNear(tin: Tin, ring: readonly Point[], visit: (triangle: number) => void): void {
  const box = boundsOf(ring);
  const start = locate(tin, ...centroid(ring));
  if (start < 0) {
    for (let t = 0; t < tin.triangles.length / 3; t++) if (!isBeside(tin, t, box)) visit(t);
    return;
  }
  const seen = new Uint8Array(tin.triangles.length / 3);
  const waiting = [start];
  seen[start] = 1;
  while (waiting.length > 0) {
    const triangle = waiting.pop() as number;
    visit(triangle);
    for (let e = 3 * triangle; e < 3 * triangle + 3; e++) {
      const twin = tin.halfedges[e] as number;
      const across = Math.floor(twin / 3);
      if (twin < 0 || seen[across] || isBeside(tin, across, box)) continue;
      seen[across] = 1;
      waiting.push(across);
    }
  }
}

/** Corners of a triangle, flat x, y. */
export function cornersOf({ x, y, triangles }: Tin, triangle: number): number[] {
  const a = triangles[3 * triangle] as number;
  const b = triangles[3 * triangle + 1] as number;
  const c = triangles[3 * triangle + 2] as number;
  return [x[a], y[a], x[b], y[b], x[c], y[c]] as number[];
}

function isBeside({ x, y, triangles }: Tin, triangle: number, box: Bounds): boolean {
  const a = triangles[3 * triangle] as number;
  const b = triangles[3 * triangle + 1] as number;
  const c = triangles[3 * triangle + 2] as number;
  const ax = x[a] as number;
  const bx = x[b] as number;
  const cx = x[c] as number;
  if (Math.max(ax, bx, cx) < box.minX || Math.min(ax, bx, cx) > box.maxX) return true;
  const ay = y[a] as number;
  const by = y[b] as number;
  const cy = y[c] as number;
  return Math.max(ay, by, cy) < box.minY || Math.min(ay, by, cy) > box.maxY;
}

/**
 * Heights of a surface's triangle at the corners of a polygon within it, m. They are held to the heights of
 * the triangle's own corners, so that a triangle without width gives no nonsense.
 */
export function heightsOn(tin: Tin, triangle: number, polygon: readonly number[]): number[] {
  const { x, y, z, triangles } = tin;
  const a = triangles[3 * triangle] as number;
  const b = triangles[3 * triangle + 1] as number;
  const c = triangles[3 * triangle + 2] as number;
  const ax = x[a] as number;
  const ay = y[a] as number;
  const az = z[a] as number;
  const ux = (x[b] as number) - ax;
  const uy = (y[b] as number) - ay;
  const vx = (x[c] as number) - ax;
  const vy = (y[c] as number) - ay;
  const uz = (z[b] as number) - az;
  const vz = (z[c] as number) - az;
  const twice = ux * vy - uy * vx;
  const low = Math.min(az, az + uz, az + vz);
  const high = Math.max(az, az + uz, az + vz);
  const heights: number[] = [];
  for (let i = 0; i < polygon.length; i += 2) {
    const px = (polygon[i] as number) - ax;
    const py = (polygon[i + 1] as number) - ay;
    const rise = twice === 0 ? 0 : ((px * vy - py * vx) / twice) * uz + ((ux * py - uy * px) / twice) * vz;
    heights.push(Math.min(high, Math.max(low, az + rise)));
  }
  return heights;
}

/** Visits the triangles of a convex polygon's fan round its corner 0: plan area (signed), other two corners. */
export function forEachFan(
  polygon: readonly number[],
  visit: (area: number, second: number, third: number) => void,
): void {
  const ox = polygon[0] as number;
  const oy = polygon[1] as number;
  for (let i = 2; 2 * i < polygon.length; i++) {
    const bx = (polygon[2 * i - 2] as number) - ox;
    const by = (polygon[2 * i - 1] as number) - oy;
    const cx = (polygon[2 * i] as number) - ox;
    const cy = (polygon[2 * i + 1] as number) - oy;
    const area = (bx * cy - by * cx) / 2;
    if (area !== 0) visit(area, i - 1, i);
  }
}
