/**
 * The rim of a set of triangles: its way round, and flat triangles along it.
 *
 * Points taken along a straight line (a row of a turned grid, a fence) are never in line to the last digit:
 * on the outside they leave triangles without width, whose slope would be rounding noise. Those are left
 * out; no point is lost by it, the rim then runs through the points in line.
 */
import { type Mesh, nextEdge, previousEdge } from "./mesh";

/** Coordinates carry 53 bits; what is under the last few of them is rounding, not shape. */
const NOISE = 2 ** -48;

/** Half-edges of the rim in counter-clockwise order. Throws where the rim is not one closed way. */
export function rimEdges(halfedges: Int32Array): number[] {
  const start = halfedges.indexOf(-1);
  const rim: number[] = [];
  let e = start;
  do {
    rim.push(e);
    e = nextEdge(e);
    while ((halfedges[e] as number) >= 0) e = nextEdge(halfedges[e] as number);
    if (rim.length > halfedges.length) throw new Error("the rim of the triangles does not close");
  } while (e !== start);
  return rim;
}

/** The mesh without triangles on its rim that have no width in the measured coordinates; null if none is left. */
export function withoutFlatRim(mesh: Mesh, x: Float64Array, y: Float64Array): Mesh | null {
  const { triangles, halfedges } = mesh;
  const width = leastWidth(x, y);
  const gone = new Uint8Array(triangles.length / 3);
  let goneCount = 0;
  const waiting = rimEdges(halfedges);
  while (waiting.length > 0) {
    const e = waiting.pop() as number;
    const triangle = Math.floor(e / 3);
    if (gone[triangle] || !isFlatBeyond(mesh, e, x, y, width)) continue;
    gone[triangle] = 1;
    goneCount++;
    for (const side of [nextEdge(e), previousEdge(e)]) {
      const twin = halfedges[side] as number;
      if (twin >= 0) {
        halfedges[twin] = -1;
        waiting.push(twin);
      }
    }
  }
  if (goneCount === 0) return mesh;
  return goneCount === gone.length ? null : withoutTriangles(mesh, gone, goneCount);
}

function leastWidth(x: Float64Array, y: Float64Array): number {
  let greatest = 0;
  for (let i = 0; i < x.length; i++) {
    greatest = Math.max(greatest, Math.abs(x[i] as number), Math.abs(y[i] as number));
  }
  return greatest * NOISE;
}

/** Whether the third corner stands on the rim edge e, between its ends, to within the width. */
function isFlatBeyond(mesh: Mesh, e: number, x: Float64Array, y: Float64Array, width: number): boolean {
  const a = mesh.triangles[e] as number;
  const b = mesh.triangles[nextEdge(e)] as number;
  const c = mesh.triangles[previousEdge(e)] as number;
  const ux = (x[b] as number) - (x[a] as number);
  const uy = (y[b] as number) - (y[a] as number);
  const vx = (x[c] as number) - (x[a] as number);
  const vy = (y[c] as number) - (y[a] as number);
  const along = ux * vx + uy * vy;
  const lengthSquared = ux * ux + uy * uy;
  return (
    Math.abs(ux * vy - uy * vx) <= width * Math.sqrt(lengthSquared) && along > 0 && along < lengthSquared
  );
}

function withoutTriangles(mesh: Mesh, gone: Uint8Array, goneCount: number): Mesh {
  const kept = mesh.triangles.length - 3 * goneCount;
  const triangles = new Uint32Array(kept);
  const halfedges = new Int32Array(kept);
  const fixed = new Uint8Array(kept);
  const movedTo = new Int32Array(gone.length);
  for (let t = 0, to = 0; t < gone.length; t++) if (!gone[t]) movedTo[t] = to++;
  for (let e = 0; e < mesh.triangles.length; e++) {
    const t = Math.floor(e / 3);
    if (gone[t]) continue;
    const at = 3 * (movedTo[t] as number) + (e % 3);
    const twin = mesh.halfedges[e] as number;
    triangles[at] = mesh.triangles[e] as number;
    fixed[at] = mesh.fixed[e] as number;
    halfedges[at] = twin < 0 ? -1 : 3 * (movedTo[Math.floor(twin / 3)] as number) + (twin % 3);
  }
  return { units: mesh.units, triangles, halfedges, fixed };
}
