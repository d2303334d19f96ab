/** The dimensions of a foundation that are typed on its section: by name, what they are now, and the change that sets one. */
import { hasSlab, hasStemWall } from "./foundationMeasures";
import type { Foundation } from "./schema";

export const dimensionKeys = [
  "wallHeight",
  "wallThickness",
  "footingWidth",
  "footingThickness",
  "slabThickness",
  "insulation",
  "baseThickness",
  "edgeDepth",
  "edgeWidth",
  "postSize",
  "holeDiameter",
  "holeDepth",
  "padThickness",
  "clearance",
  "floorThickness",
] as const;

export type DimensionKey = (typeof dimensionKeys)[number];

export const dimensionWords: Readonly<Record<DimensionKey, string>> = {
  wallHeight: "wall height",
  wallThickness: "wall thickness",
  footingWidth: "footing width",
  footingThickness: "footing thickness",
  slabThickness: "slab",
  insulation: "insulation under the slab",
  baseThickness: "base stone",
  edgeDepth: "depth of the edge",
  edgeWidth: "width of the edge's bottom",
  postSize: "post, each side",
  holeDiameter: "hole, across",
  holeDepth: "hole into undisturbed ground",
  padThickness: "pad in the hole",
  clearance: "ground to top of wall",
  floorThickness: "floor over the wall",
};

/** As short as fits over a figure on the section. */
export const dimensionShortWords: Readonly<Record<DimensionKey, string>> = {
  wallHeight: "wall height",
  wallThickness: "wall",
  footingWidth: "footing width",
  footingThickness: "footing",
  slabThickness: "slab",
  insulation: "insulation",
  baseThickness: "stone",
  edgeDepth: "edge depth",
  edgeWidth: "edge width",
  postSize: "post",
  holeDiameter: "hole, across",
  holeDepth: "hole depth",
  padThickness: "pad",
  clearance: "to the ground",
  floorThickness: "floor",
};

/** The dimensions that this kind has. */
export function dimensionsOf(foundation: Foundation): readonly DimensionKey[] {
  const { kind } = foundation;
  const slab: DimensionKey[] = hasSlab(foundation)
    ? ["slabThickness", "insulation", "baseThickness"]
    : ["baseThickness"];
  if (kind === "thickened-edge") return ["edgeDepth", "edgeWidth", ...slab];
  if (kind === "posts") return ["postSize", "holeDiameter", "holeDepth", "padThickness", ...slab];
  if (!hasStemWall(foundation)) return slab;
  const wall: DimensionKey[] = ["wallHeight", "wallThickness", "footingWidth", "footingThickness"];
  return kind === "crawl-space" ? [...wall, "clearance", "floorThickness"] : [...wall, ...slab];
}

export function dimension(foundation: Foundation, key: DimensionKey): number {
  const { edge, posts, crawl } = foundation;
  switch (key) {
    case "edgeDepth":
      return edge.depth;
    case "edgeWidth":
      return edge.width;
    case "postSize":
      return posts.size;
    case "holeDiameter":
    case "holeDepth":
    case "padThickness":
      return posts[key];
    case "clearance":
    case "floorThickness":
      return crawl[key];
    default:
      return foundation[key];
  }
}

/** The change of the foundation that gives a dimension this length, m. */
export function withDimension(foundation: Foundation, key: DimensionKey, m: number): Partial<Foundation> {
  const { edge, posts, crawl } = foundation;
  switch (key) {
    case "edgeDepth":
      return { edge: { ...edge, depth: m } };
    case "edgeWidth":
      return { edge: { ...edge, width: m } };
    case "postSize":
      return { posts: { ...posts, size: m } };
    case "holeDiameter":
    case "holeDepth":
    case "padThickness":
      return { posts: { ...posts, [key]: m } };
    case "clearance":
    case "floorThickness":
      return { crawl: { ...crawl, [key]: m } };
    default:
      return { [key]: m };
  }
}

/** Dimensions that may be nothing. */
export function mayBeNothing(key: DimensionKey): boolean {
  return ["slabThickness", "insulation", "baseThickness", "padThickness"].includes(key);
}
