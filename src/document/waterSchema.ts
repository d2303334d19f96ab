/** Rain, and what it falls on. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { notNegative, positive } from "./schemaParts";

export const stormSchema = z.object({
  /** Rain of the storm that ditches must carry, m/s, from a local table; null = not yet asked. */
  intensity: positive.nullable().default(null),
  /** Part of the rain that runs off: the rational formula's C. */
  runoff: z.number().min(0).max(1).default(0.3),
  /** Manning's n of the ditches' beds, s/m^(1/3). */
  roughness: positive.default(0.045),
  /** Speed that the beds bear, m/s. */
  mostSpeed: positive.default(1.2192),
  /** Ground uphill, beyond the shots, that drains here too, m2. */
  uphill: notNegative.default(0),
});

export type Storm = z.infer<typeof stormSchema>;
