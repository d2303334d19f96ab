/** The small parts that the schema is made of: numbers within bounds, points, typed measures. */
import { z } from "zod";

// The page forbids code generation from strings, which zod's fast path would try.
z.config({ jitless: true });

/** Far beyond any map grid; keeps products of coordinates well inside float64. */
export const metres = z.number().min(-1e8).max(1e8);
export const positive = z.number().positive();
export const notNegative = z.number().nonnegative();
export const id = z.string().min(1);

/** Plan coordinates, metres: [east, north]. */
export const pointSchema = z.tuple([metres, metres]);

/** A typed length keeps what was typed beside its value in metres. */
export const measureSchema = z.object({ text: z.string(), m: metres });
