import { z } from "zod";

import { notNegative, positive } from "./schemaParts";

/** Values behind the floor's limits. The source of each default stands beside its rule in `src/advice`. */
export const rulesSchema = z.object({
  leastShowing: notNegative.default(0.1524),
  aboveUphillGround: notNegative.default(0.1524),
  uphillReach: positive.default(3.048),
  steepestDrive: positive.default(0.12),
  intoUndisturbed: notNegative.default(0.3048),
  mostShowing: positive.nullable().default(null),
  leastSwaleFall: notNegative.default(0.01),
  /** Ids of rules that are switched off. */
  off: z.array(z.string()).default([]),
});

export type Rules = z.infer<typeof rulesSchema>;
