/** Ways to do the job that were kept by name. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { buildingSchema } from "./buildingSchema";
import { gradingSchema } from "./gradingSchema";
import { id } from "./schemaParts";

/** Most options that a plan keeps: each is solved anew where they are compared. */
export const mostOptions = 12;

/** The building and what is done to the ground about it, as they stood when the option was kept. */
export const optionSchema = z.object({
  id,
  name: z.string().min(1).max(60),
  building: buildingSchema.nullable(),
  grading: gradingSchema,
});

export type Option = z.infer<typeof optionSchema>;
