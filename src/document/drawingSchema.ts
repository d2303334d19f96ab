/** What is drawn on the plan beside the works, and how the plan is looked at. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { id, metres, pointSchema, positive } from "./schemaParts";

/** Words on the plan; with `pointsTo`, a thin line leads from them to that place. */
export const noteSchema = z.object({
  id,
  at: pointSchema,
  text: z.string().min(1).max(500),
  pointsTo: pointSchema.nullable().default(null),
});

/** One end of a dimension: a place, or a corner of the building that it follows. */
export const dimensionEndSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("at"), x: metres, y: metres }),
  z.object({ kind: z.literal("corner"), corner: z.number().int().nonnegative() }),
]);

export const dimensionSchema = z.object({
  id,
  from: dimensionEndSchema,
  to: dimensionEndSchema,
  /** The dimension line stands off this far, to the left of the way from → to, m. */
  offset: metres.default(0),
});

/** A line along which the ground is cut and looked at from the side. */
export const sectionLineSchema = z.object({
  id,
  name: z.string().default("section"),
  line: z.tuple([pointSchema, pointSchema]),
});

/** Characters of base64 that a picture may take in the file: some 12 MB of bytes. */
export const longestPicture = 16_000_000;

export const underlayMedia = ["image/png", "image/jpeg", "image/webp"] as const;

/** A picture under the plan (deed plat, aerial photo, sketch), placed so that its distances are true. */
export const underlaySchema = z.object({
  id,
  name: z.string().default("picture"),
  media: z.enum(underlayMedia),
  /** The picture's bytes, base64. */
  data: z.string().min(1).max(longestPicture),
  /** Its size, px. */
  width: z.number().int().positive(),
  height: z.number().int().positive(),
  /** Where the middle of the picture lies on the plan. */
  at: pointSchema,
  /** Metres on the ground for one of its pixels. */
  scale: positive,
  /** Radians counter-clockwise from upright on the plan. */
  turn: metres.default(0),
  /** 0 unseen, 1 full. */
  strength: z.number().min(0).max(1).default(0.5),
});

/** What is drawn on the plan beside the works themselves, and how the plan is looked at. */
export const drawingSchema = z.object({
  /** The plan on screen and paper is turned by this, radians counter-clockwise. */
  turn: metres.default(0),
  notes: z.array(noteSchema).default([]),
  dimensions: z.array(dimensionSchema).default([]),
  sections: z.array(sectionLineSchema).default([]),
  underlays: z.array(underlaySchema).default([]),
  /** Things that can't be changed or taken away by hand; keys as from `thingKey`. */
  locked: z.array(z.string()).default([]),
  /** Things that are neither drawn nor picked; they still count. */
  hidden: z.array(z.string()).default([]),
});

export type Note = z.infer<typeof noteSchema>;
export type DimensionEnd = z.infer<typeof dimensionEndSchema>;
export type Dimension = z.infer<typeof dimensionSchema>;
export type SectionLine = z.infer<typeof sectionLineSchema>;
export type Underlay = z.infer<typeof underlaySchema>;
export type Drawing = z.infer<typeof drawingSchema>;
