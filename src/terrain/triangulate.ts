/**
 * Points to a triangulated surface.
 *
 * Method  Neighbours are found on a snapped copy (`snap.ts`, `delaunay.ts`); the surface keeps the measured
 *         coordinates and heights. The answer depends on the points, not on their order.
 */
import { delaunayMesh } from "./delaunay";
import type { Tin } from "./ground";
import type { Mesh } from "./mesh";
import { rimEdges, withoutFlatRim } from "./rim";
import { firstAtPlace, snapped } from "./snap";

/** A point left out because an earlier one stands at the same place (0.06 mm or less away). Input indices. */
export interface DroppedPoint {
  readonly index: number;
  readonly sameAs: number;
}

export type Triangulation =
  | { readonly ok: true; readonly tin: Tin; readonly dropped: readonly DroppedPoint[] }
  | { readonly ok: false; readonly reason: "too-few" | "in-line" };

/**
 * Delaunay surface of points, metres. Point i of the surface is point i of the input; dropped ones are
 * there too but belong to no triangle. All heights and places must be finite numbers (throws if not).
 */
export function triangulate(x: ArrayLike<number>, y: ArrayLike<number>, z: ArrayLike<number>): Triangulation {
  const points = { x: Float64Array.from(x), y: Float64Array.from(y), z: Float64Array.from(z) };
  if (points.x.length !== points.y.length || points.x.length !== points.z.length) {
    throw new Error(`${points.x.length} x, ${points.y.length} y and ${points.z.length} z do not match`);
  }
  const { units } = snapped(points.x, points.y);
  const first = firstAtPlace(units);
  const dropped = droppedPoints(first);
  if (points.x.length - dropped.length < 3) return { ok: false, reason: "too-few" };
  const mesh = distinctMesh(units, first, dropped.length);
  const sound = mesh && withoutFlatRim(mesh, points.x, points.y);
  if (!sound) return { ok: false, reason: "in-line" };
  return { ok: true, tin: tinOf(points, sound, points.x.length - dropped.length), dropped };
}

/** The points that an earlier one takes the place of. */
export function droppedPoints(first: Uint32Array): DroppedPoint[] {
  const dropped: DroppedPoint[] = [];
  for (let index = 0; index < first.length; index++) {
    const sameAs = first[index] as number;
    if (sameAs !== index) dropped.push({ index, sameAs });
  }
  return dropped;
}

/** Triangles over the points that stand alone or first at their place, in indices of all points. */
export function distinctMesh(units: Float64Array, first: Uint32Array, droppedCount: number): Mesh | null {
  if (droppedCount === 0) return delaunayMesh(units);
  const kept = first.filter((sameAs, index) => sameAs === index);
  const keptUnits = new Float64Array(2 * kept.length);
  kept.forEach((index, at) => {
    keptUnits[2 * at] = units[2 * index] as number;
    keptUnits[2 * at + 1] = units[2 * index + 1] as number;
  });
  const mesh = delaunayMesh(keptUnits);
  return mesh && { ...mesh, units, triangles: mesh.triangles.map((at) => kept[at] as number) };
}

/** Packs a mesh as a surface. Throws when points or triangles went missing: our own mistake. */
export function tinOf(
  points: { x: Float64Array; y: Float64Array; z: Float64Array },
  mesh: Pick<Mesh, "triangles" | "halfedges">,
  distinct: number,
): Tin {
  const { triangles, halfedges } = mesh;
  const hull = Uint32Array.from(rimEdges(halfedges), (e) => triangles[e] as number);
  const expected = 2 * distinct - 2 - hull.length;
  if (triangles.length / 3 !== expected) {
    throw new Error(`${triangles.length / 3} triangles over ${distinct} points, expected ${expected}`);
  }
  return { ...points, triangles, halfedges, hull };
}
