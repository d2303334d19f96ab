/** The building: its outline, openings and foundation. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { foundationSchema } from "./foundationSchema";
import { id, metres, notNegative, pointSchema, positive } from "./schemaParts";

export * from "./foundationSchema";

export const doorSchema = z.object({
  id,
  name: z.string().default("door"),
  kind: z.enum(["overhead", "walk"]).default("overhead"),
  /** Wall i runs from outline[i] to outline[i + 1]. */
  wall: z.number().int().nonnegative(),
  /** From the wall's first corner to the door's near edge, m. */
  offset: notNegative,
  width: positive,
  /** How far the sill lies below the finished floor, m. */
  sillBelowFloor: notNegative.default(0),
});

export const windowSchema = z.object({
  id,
  name: z.string().default("window"),
  wall: z.number().int().nonnegative(),
  /** From the wall's first corner to the window's near edge, m. */
  offset: notNegative,
  width: positive,
  height: positive.default(0.9144),
  sillAboveFloor: metres.default(0.9144),
});

export const buildingSchema = z.object({
  name: z.string().default("building"),
  /** Outside face of the foundation wall, corners in order; corner 0 is named A. At least three. */
  outline: z.array(pointSchema).min(3),
  /** Height of the finished floor, m. */
  floor: metres,
  /** Top of wall = floor + this, m (negative: the wall stops below the floor). */
  topOfWallAboveFloor: metres.default(0),
  foundation: foundationSchema.prefault({}),
  doors: z.array(doorSchema).default([]),
  windows: z.array(windowSchema).default([]),
});

export type Door = z.infer<typeof doorSchema>;
export type Window = z.infer<typeof windowSchema>;
export type Building = z.infer<typeof buildingSchema>;
