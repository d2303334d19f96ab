/**
 * Concrete of a level foundation: strip footing and wall, thickened edge or pads, and the slab.
 *
 * Units   metres, m2, m3.
 * Method  Footing and wall by their centreline, corners counted once; the footing is centred under the wall. A
 *         thickened edge is a trapezoid under the slab with its inner side at 1 : 1, taken along the line of its
 *         centroid (Pappus). Openings for doors are not taken off.
 * Source  First principles; the same take-off as in NAVEDTRA 14070, chapter 5.
 */
import { hasSlab, hasStemWall } from "../document/foundationMeasures";
import type { Foundation } from "../document/schema";
import { type Point, signedArea } from "../geometry";
import { postsAlong } from "./posts";
import { areaInside, lengthInside } from "./ring-lengths";

export interface Concrete {
  readonly wall: number;
  readonly footing: number;
  readonly slab: number;
  /** Thickened edge below the slab. */
  readonly edge: number;
  /** Pads under posts. */
  readonly pads: number;
  /** Stone under the slab. */
  readonly base: number;
  /** Floor area inside the walls; the whole outline where there are none. */
  readonly floorArea: number;
}

export function concrete(outline: readonly Point[], foundation: Foundation): Concrete {
  const { wallThickness, wallHeight, footingWidth, footingThickness } = foundation;
  const walled = hasStemWall(foundation);
  const centreLine = walled ? lengthInside(outline, wallThickness / 2) : 0;
  const floorArea = walled ? areaInside(outline, wallThickness) : Math.abs(signedArea(outline));
  const edge = foundation.kind === "thickened-edge" ? thickenedEdge(foundation) : null;
  return {
    wall: centreLine * wallThickness * wallHeight,
    footing: centreLine * footingWidth * footingThickness,
    slab: hasSlab(foundation) ? floorArea * foundation.slabThickness : 0,
    edge: edge ? edge.area * lengthInside(outline, edge.centroid) : 0,
    pads: foundation.kind === "posts" ? padVolume(outline, foundation) : 0,
    base:
      foundation.kind === "crawl-space"
        ? 0
        : floorArea * foundation.baseThickness - stoneInEdge(outline, foundation),
    floorArea,
  };
}

/** Section of the edge below the slab: its area and how far its centroid lies inside the face. */
export function thickenedEdge({ edge, slabThickness }: Foundation): { area: number; centroid: number } {
  const deep = Math.max(0, edge.depth - slabThickness);
  const upright = edge.width * deep;
  const haunch = (deep * deep) / 2;
  const area = upright + haunch;
  if (area === 0) return { area: 0, centroid: 0 };
  return { area, centroid: (upright * (edge.width / 2) + haunch * (edge.width + deep / 3)) / area };
}

/** Section of the edge between two depths under the slab, and how far its middle lies inside the face. */
export function edgeBetween(
  { edge, slabThickness }: Foundation,
  from: number,
  to: number,
): { readonly area: number; readonly centroid: number } {
  const deep = Math.max(0, edge.depth - slabThickness);
  const [high, low] = [Math.min(from, deep), Math.min(to, deep)];
  const width = (depth: number) => edge.width + deep - depth;
  const area = Math.max(0, ((width(high) + width(low)) / 2) * (low - high));
  return { area, centroid: (width(high) + width(low)) / 4 };
}

/** Base stone that isn't there because the edge is, m3. */
function stoneInEdge(outline: readonly Point[], foundation: Foundation): number {
  if (foundation.kind !== "thickened-edge") return 0;
  const { insulation, baseThickness } = foundation;
  const { area, centroid } = edgeBetween(foundation, insulation, insulation + baseThickness);
  return area * lengthInside(outline, centroid);
}

function padVolume(outline: readonly Point[], { posts }: Foundation): number {
  return (
    postsAlong(outline, posts.spacing).length * (Math.PI / 4) * posts.holeDiameter ** 2 * posts.padThickness
  );
}
