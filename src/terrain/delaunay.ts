/**
 * Delaunay triangles of points on the snapped grid, checked and made to depend on the points alone.
 *
 * Method  Delaunator; then every edge is tested again with exact predicates and flipped where its rounding
 *         or its choice between equals went astray (Lawson's flips).
 * Source  C. L. Lawson, Software for C1 Surface Interpolation, Mathematical Software III (1977);
 *         counts: Euler's relation, 2n - 2 - k triangles for n points of which k are on the rim.
 */
import Delaunator from "delaunator";
import { type Mesh, meshTurn, settleEdges, wantsFlip } from "./mesh";
import { byFirstCorner, nearbyOrder } from "./nearby-order";
import { sweptMesh } from "./sweep";

/** From so many points on it pays to put them in order of their place first. */
const many = 25_000;

/**
 * Triangulates distinct points; null where they all lie in one line.
 * Where Delaunator loses a point to rounding or turns a triangle over, another way is taken (`sweep.ts`).
 */
export function delaunayMesh(units: Float64Array): Mesh | null {
  if (units.length < 2 * many) return settledMesh(units);
  const order = nearbyOrder(units);
  const arranged = new Float64Array(units.length);
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number;
    arranged[2 * k] = units[2 * i] as number;
    arranged[2 * k + 1] = units[2 * i + 1] as number;
  }
  const mesh = settledMesh(arranged);
  if (!mesh) return null;
  const { triangles, halfedges, fixed } = byFirstCorner(mesh);
  for (let e = 0; e < triangles.length; e++) triangles[e] = order[triangles[e] as number] as number;
  return { units, triangles, halfedges, fixed };
}

function settledMesh(units: Float64Array): Mesh | null {
  mirror(units); // Delaunator counts y downwards: mirrored points give counter-clockwise triangles
  const raw = new Delaunator(units);
  mirror(units);
  const { triangles, halfedges, hull } = raw;
  let mesh: Mesh | null = { units, triangles, halfedges, fixed: new Uint8Array(triangles.length) };
  const expected = units.length - 2 - hull.length;
  if (triangles.length !== 3 * expected || flatTriangles(mesh) > 0) mesh = sweptMesh(units);
  if (!mesh) return null;
  settle(mesh);
  return mesh;
}

function mirror(units: Float64Array): void {
  for (let i = 1; i < units.length; i += 2) units[i] = 0 - (units[i] as number);
}

function flatTriangles(mesh: Mesh): number {
  const { units, triangles } = mesh;
  let flat = 0;
  for (let e = 0; e < triangles.length; e += 3) {
    const a = triangles[e] as number;
    if (!(meshTurn(units, a, triangles[e + 1] as number, triangles[e + 2] as number) > 0)) flat++;
  }
  return flat;
}

/** Looks at every edge once; a flip looks again at those around it. */
function settle(mesh: Mesh): void {
  const { halfedges } = mesh;
  const waiting: number[] = [];
  for (let e = 0; e < halfedges.length; e++) {
    if (e > (halfedges[e] as number) || !wantsFlip(mesh, e)) continue;
    waiting.push(e);
    settleEdges(mesh, waiting);
  }
}
