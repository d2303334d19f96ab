/** Depths that follow from the kind of foundation alone. Metres; from first principles. */
import type { Building, Foundation } from "./schema";

/** Whether a concrete slab lies inside. */
export function hasSlab({ kind, slabInside, slabThickness }: Foundation): boolean {
  if (kind === "crawl-space" || slabThickness === 0) return false;
  return kind === "thickened-edge" || slabInside;
}

/** Whether a wall stands on a strip footing. */
export function hasStemWall({ kind }: Foundation): boolean {
  return kind === "stem-wall" || kind === "crawl-space";
}

/** Courses that a wall of blocks takes, the last one cut where its height asks for it; null for other walls. */
export function wholeCourses(foundation: Foundation): number | null {
  const { wall, wallHeight, block } = foundation;
  return hasStemWall(foundation) && wall === "block" ? Math.ceil(wallHeight / block.height - 1e-6) : null;
}

/** Top of wall down to the bottom of a level footing; null for posts, whose holes follow the ground. */
export function bottomBelowTop(foundation: Foundation): number | null {
  if (foundation.kind === "posts") return null;
  if (foundation.kind === "thickened-edge") return foundation.edge.depth;
  return foundation.wallHeight + foundation.footingThickness;
}

/** Finished floor down to the underside of the slab; 0 where there is none. */
export function slabDepth(foundation: Foundation): number {
  return hasSlab(foundation) ? foundation.slabThickness : 0;
}

/** Finished floor down to the earth that is brought to height inside: under the base course, or the crawl space's ground. */
export function earthBelowFloor({
  foundation,
  topOfWallAboveFloor,
}: Pick<Building, "foundation" | "topOfWallAboveFloor">): number {
  if (foundation.kind === "crawl-space") return foundation.crawl.clearance - topOfWallAboveFloor;
  const slab = hasSlab(foundation) ? foundation.slabThickness + foundation.insulation : 0;
  return slab + foundation.baseThickness;
}

/** Whether the fill under the slab is sand or gravel that is brought, not earth. */
export function fillIsBrought(foundation: Foundation): boolean {
  return hasSlab(foundation) && foundation.slabFill.kind === "sand-gravel";
}

/** Greatest fill under a slab, m: as approved, else IRC R506.2.1 (2012), 24 in of sand or gravel, 8 in of earth. */
export function mostSlabFill({ slabFill }: Foundation): number {
  if (slabFill.approved !== null) return slabFill.approved;
  return slabFill.kind === "earth" ? 0.2032 : 0.6096;
}

/** What stands under a wall, as it is drawn through: wall or edge or post, and the footing or pad under it, m. */
export interface WallSection {
  readonly thickness: number;
  readonly footingWidth: number;
  readonly footingThickness: number;
}

export function wallSection(foundation: Foundation): WallSection {
  const { kind, edge, posts, wallThickness, footingWidth, footingThickness } = foundation;
  if (kind === "thickened-edge")
    return { thickness: edge.width, footingWidth: edge.width, footingThickness: 0 };
  if (kind === "posts")
    return {
      thickness: posts.size,
      footingWidth: posts.holeDiameter,
      footingThickness: posts.padThickness,
    };
  return { thickness: wallThickness, footingWidth, footingThickness };
}
