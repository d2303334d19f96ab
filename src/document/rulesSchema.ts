import { z } from "zod";

import { generalSet } from "./ruleSets";
import { metres, notNegative, positive } from "./schemaParts";

/** Values behind the floor's limits. The source of each default stands beside its rule in `src/advice`. */
export const rulesSchema = z.object({
  leastShowing: notNegative.default(0.1524),
  aboveUphillGround: notNegative.default(0.1524),
  uphillReach: positive.default(3.048),
  steepestDrive: positive.default(0.12),
  intoUndisturbed: notNegative.default(0.3048),
  mostShowing: positive.nullable().default(null),
  /** Ground at the wall above a swale's bed near it, and the floor above standing water near it. */
  aboveSwale: notNegative.default(0.1524),
  aboveWater: notNegative.default(0.1524),
  /** Levels that the user learnt elsewhere, as heights of the plan; null: not asked. */
  roadLevel: metres.nullable().default(null),
  aboveRoad: notNegative.default(0.3048),
  /** Way that water goes from the building to the gutter, m; the wall stands 2 % of it higher. */
  toRoad: notNegative.default(0),
  floodLevel: metres.nullable().default(null),
  aboveFlood: notNegative.default(0.3048),
  /** Least wall out of the ground as it is, at the highest place along the walls; null: no limit. */
  leastOut: notNegative.nullable().default(null),
  leastSwaleFall: notNegative.default(0.01),
  /** Least distance of a proposed swale's bed line off the walls. */
  swaleOffWall: positive.default(3.048),
  /** Siding above the finished ground, and how far it laps down over the wall, m. */
  sidingClearance: notNegative.default(0.1524),
  sidingLap: notNegative.default(0),
  /** From the top of the footing to the top of wall at its highest; null: no limit. */
  greatestWall: positive.nullable().default(null),
  /** Fill on one side of a wall that the other doesn't balance; null: the published table for the wall. */
  mostUnbalanced: positive.nullable().default(null),
  /** Change of grade where a drive meets its landing without a vertical curve, rise over run. */
  breakAtDoor: positive.default(0.1),
  /** A door's sill above the ground outside it. */
  doorThreshold: notNegative.default(0.0127),
  /** What the priced items of the bill may come to; null: no limit. */
  costLimit: positive.nullable().default(null),
  /** Name of the set that the values were taken from. */
  set: z.string().default(generalSet.name),
  /** Ids of rules that are switched off. */
  off: z.array(z.string()).default([]),
});

export type Rules = z.infer<typeof rulesSchema>;
