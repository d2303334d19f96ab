/** Materials and the truck: what turns volumes in the ground into loads. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { notNegative, positive } from "./schemaParts";

export const materialsSchema = z.object({
  stripDepth: notNegative.default(0.1524),
  /** Loose volume for one of bank. */
  swell: positive.default(1.25),
  /** Compacted volume for one of bank. */
  shrink: positive.default(0.9),
});

export const truckSchema = z.object({
  /** What one load holds, loose, m3. */
  volume: positive.default(9.174658),
});

/** Prices by the bill's item, as the user typed them, for one m3; no item has one by itself. */
export const pricesSchema = z.record(z.string(), notNegative);

export type Prices = z.infer<typeof pricesSchema>;
export type Materials = z.infer<typeof materialsSchema>;
