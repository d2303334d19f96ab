/** What is done to the ground outside the walls. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { id, metres, notNegative, pointSchema, positive } from "./schemaParts";

export const apronSchema = z.object({
  /** Wall left showing above the finished ground, m. */
  showing: notNegative.default(0.1524),
  /** Fall away from the wall, rise over run. */
  fall: positive.default(0.05),
  width: positive.default(3.048),
  /** Sides (wall indices) where the ground is left as it is. */
  leave: z.array(z.number().int().nonnegative()).default([]),
});

export const slopesSchema = z.object({
  /** Run for one of rise: 3 means 3:1. */
  fill: positive.default(3),
  cut: positive.default(2),
});

export const driveSchema = z.object({
  id,
  name: z.string().default("drive"),
  /** Centreline from the road to the door. */
  line: z.array(pointSchema).min(2),
  width: positive.default(3.6576),
  /** The door it serves; null: it ends on the ground as it is. */
  door: id.nullable().default(null),
  /** Height of the road edge; null: the ground as it is there. */
  roadHeight: metres.nullable().default(null),
  landing: z.object({ length: notNegative.default(3.6576), fall: notNegative.default(0.02) }).prefault({}),
  sideSlope: positive.default(3),
  gravel: notNegative.default(0.2032),
});

export const swaleSchema = z.object({
  id,
  name: z.string().default("swale"),
  /** Bed line from its high end to its outlet. */
  line: z.array(pointSchema).min(2),
  /** Depth of the bed below the ground as it is at the high end, m. */
  depth: notNegative.default(0.2032),
  /** Bed fall, rise over run; null: an even fall to the ground at the outlet. */
  fall: notNegative.nullable().default(null),
  bottomWidth: notNegative.default(0.6096),
  sideSlope: positive.default(3),
});

export const gradingSchema = z.object({
  apron: apronSchema.prefault({}),
  slopes: slopesSchema.prefault({}),
  drives: z.array(driveSchema).default([]),
  swales: z.array(swaleSchema).default([]),
});

export type Apron = z.infer<typeof apronSchema>;
export type Drive = z.infer<typeof driveSchema>;
export type Swale = z.infer<typeof swaleSchema>;
export type Grading = z.infer<typeof gradingSchema>;
