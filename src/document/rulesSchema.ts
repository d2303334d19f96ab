import { z } from "zod";

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
  /** Ids of rules that are switched off. */
  off: z.array(z.string()).default([]),
});

export type Rules = z.infer<typeof rulesSchema>;
