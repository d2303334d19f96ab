/**
 * Sets of limits: the general one, and what belongs to any set. A set holds values and switches, never what is
 * particular to one site (levels of a road or a flood) or one purse.
 */
export const generalSet = {
  name: "general",
  /** What its values come from; the source of each stands beside its rule. */
  edition: "International Residential Code, 2012, where it gives a figure; else common practice",
} as const;
