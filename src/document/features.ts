/** What kinds of features are: one place, a line, or an area. */
import type { Feature } from "./schema";

type FeatureForm = "place" | "line" | "area";

/** How each kind is drawn. A kind that is one place may still come from a file as a line. */
export const featureForms: Readonly<Record<Feature["kind"], FeatureForm>> = {
  tree: "place",
  stump: "place",
  well: "place",
  septic: "area",
  "buried-line": "line",
  "overhead-line": "line",
  house: "area",
  fence: "line",
  road: "line",
  water: "area",
  other: "place",
};

/** What a person calls each kind. */
export const featureWords: Readonly<Record<Feature["kind"], string>> = {
  tree: "tree",
  stump: "stump",
  well: "well",
  septic: "septic field",
  "buried-line": "buried line",
  "overhead-line": "overhead line",
  house: "house",
  fence: "fence",
  road: "road",
  water: "water",
  other: "other",
};

/** Does the feature cover ground, its last place joined to its first? */
export function isArea({ kind, points }: Feature): boolean {
  return featureForms[kind] === "area" && points.length >= 3;
}
