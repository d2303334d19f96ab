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

export interface UsualDistance {
  readonly m: number;
  /** Whose rule it is, and that it is only offered. */
  readonly source: string;
}

/** A tree's roots are kept clear of for so many thicknesses of its trunk. */
const TRUNKS = 12;

/**
 * What the trade usually keeps clear of each kind, to be typed over: a value to offer, never the rule of a place. Null
 * where nothing is usual. Sources as named; those from memory were not read again in the rule's own text.
 */
export function usualKeepClear({ kind, trunk }: Pick<Feature, "kind" | "trunk">): UsualDistance | null {
  switch (kind) {
    case "tree":
      return trunk === null
        ? { m: 3.048, source: "10 ft, or 12 trunks once the trunk's thickness is typed: common practice" }
        : { m: TRUNKS * trunk, source: "12 times the trunk's thickness: BS 5837 (from memory)" };
    case "stump":
      return { m: 1.524, source: "5 ft, its roots come out too: common practice" };
    case "well":
      return { m: 15.24, source: "50 ft from what can soil it: common in well codes; ask the health office" };
    case "septic":
      return {
        m: 6.096,
        source: "20 ft from the field, nothing driven over it: common in codes; ask the health office",
      };
    case "buried-line":
      return {
        m: 0.6096,
        source:
          "2 ft either side is dug by hand: common in call-before-you-dig laws; private lines aren't marked",
      };
    case "overhead-line":
      return { m: 3.048, source: "10 ft up to 50 kV: 29 CFR 1926.1408; ask the utility" };
    case "house":
      return { m: 3.048, source: "10 ft, room to work and for fire separation: common in codes" };
    case "water":
      return { m: 15.24, source: "50 ft of undisturbed bank: common in stream rules; ask the county" };
    case "fence":
    case "road":
    case "other":
      return null;
  }
}
