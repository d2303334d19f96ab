/** The trade's words for kinds of foundation, soils and the like. */
import { hasSlab } from "./foundationMeasures";
import type { BackfillSoil, Foundation, FoundationKind, TrenchSoil } from "./schema";

export const foundationKindWords: Readonly<Record<FoundationKind, string>> = {
  "stem-wall": "stem wall on strip footing",
  "thickened-edge": "slab with thickened edge",
  posts: "posts in holes",
  "crawl-space": "crawl space",
};

export const trenchSoilWords: Readonly<Record<TrenchSoil, string>> = {
  rock: "stable rock",
  A: "A, stiff clay",
  B: "B, silt and medium clay",
  C: "C, sand, gravel, soft or wet",
};

export const backfillSoilWords: Readonly<Record<BackfillSoil, string>> = {
  "gravel-sand": "clean gravel and sand",
  silty: "silty or clayey sand and gravel, silt",
  clay: "clay",
};

/** "stem wall of poured concrete on a strip footing, slab inside". */
export function foundationWords(foundation: Foundation): string {
  const floor = hasSlab(foundation) ? "slab inside" : "no slab inside";
  if (foundation.kind === "thickened-edge") return foundationKindWords["thickened-edge"];
  if (foundation.kind === "posts") return `${foundationKindWords.posts}, ${floor}`;
  const wall = foundation.wall === "block" ? "block courses" : "poured concrete";
  if (foundation.kind === "crawl-space") return `crawl space, stem wall of ${wall}`;
  return `stem wall of ${wall} on strip footing, ${floor}`;
}
