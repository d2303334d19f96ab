/** What is done to the ground outside the walls. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { id, metres, notNegative, pointSchema, positive } from "./schemaParts";

/** Bottom width of a swale that nobody has typed one for, m: 2 ft. */
export const usualBottomWidth = 0.6096;

export const apronSchema = z.object({
  /** Wall left showing above the finished ground, m. */
  showing: notNegative.default(0.1524),
  /** Fall away from the wall, rise over run; level is told, for water stands on it. */
  fall: notNegative.default(0.05),
  width: positive.default(3.048),
  /** Sides (wall indices) where the ground is left as it is. */
  leave: z.array(z.number().int().nonnegative()).default([]),
  /** Sides with figures of their own; what is null there is as for all sides. */
  sides: z
    .array(
      z.object({
        wall: z.number().int().nonnegative(),
        showing: notNegative.nullable().default(null),
        fall: notNegative.nullable().default(null),
        width: positive.nullable().default(null),
        fill: positive.nullable().default(null),
        cut: positive.nullable().default(null),
      }),
    )
    .default([]),
});

export const slopesSchema = z.object({
  /** Run for one of rise: 3 means 3:1. */
  fill: positive.default(3),
  cut: positive.default(2),
  /** Round corners run as far out as the sides do; at mitred ones the planes of both sides go on until they meet. */
  corners: z.enum(["round", "mitred"]).default("round"),
});

/** A place of a long section: its distance along the line from the first point, and its height. */
const breakSchema = z.object({
  at: notNegative,
  /** Null: the ground as it is there. */
  height: metres.nullable().default(null),
  /** Length of the vertical curve that rounds the break, m. */
  curve: notNegative.default(0),
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
  /** Grade of the road itself at its edge, towards the building; positive climbs. */
  roadGrade: z.number().default(0),
  landing: z
    .object({
      length: notNegative.default(3.6576),
      fall: notNegative.default(0.02),
      /** Vertical curve where the grade meets the landing, m. */
      curve: notNegative.default(0),
    })
    .prefault({}),
  breaks: z.array(breakSchema).default([]),
  /** Fall across: from the middle to both sides, or all to the left or right (looking at the building). */
  across: z
    .object({
      kind: z.enum(["level", "crown", "left", "right"]).default("level"),
      fall: notNegative.default(0.02),
    })
    .prefault({}),
  shoulder: z.object({ width: notNegative.default(0), fall: notNegative.default(0.04) }).prefault({}),
  /** Run for one of rise, in fill; in cut too where `cutSlope` is null. */
  sideSlope: positive.default(3),
  cutSlope: positive.nullable().default(null),
  gravel: notNegative.default(0.2032),
  /** Upper part of the stone that is finer, m; the rest is the coarse layer under it. */
  topLayer: notNegative.default(0),
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
  /** Heights of the bed along the line; with any, `depth` and `fall` don't count between them. */
  beds: z.array(z.object({ at: notNegative, height: metres })).default([]),
  /** Follow the ground at `depth`, but fall at least this much everywhere; null: an even fall. */
  leastFall: positive.nullable().default(null),
  /** A dish is rounded over the bottom width and runs on into the side slopes. */
  shape: z.enum(["trapezoid", "dish"]).default("trapezoid"),
  bottomWidth: notNegative.default(usualBottomWidth),
  sideSlope: positive.default(3),
});

/** A place to park or turn, or a terrace: flat, or falling one way. */
export const groundPadSchema = z.object({
  id,
  name: z.string().default("pad"),
  use: z.enum(["parking", "turning", "terrace"]).default("parking"),
  outline: z.array(pointSchema).min(3),
  /** Height at the middle of the outline; `floor` counts from the floor, `ground` is the mean of the ground at the corners. */
  level: z
    .discriminatedUnion("kind", [
      z.object({ kind: z.literal("ground") }),
      z.object({ kind: z.literal("height"), height: metres }),
      z.object({ kind: z.literal("floor"), above: metres }),
    ])
    .default({ kind: "ground" }),
  fall: notNegative.default(0.02),
  /** Where it falls to: radians anticlockwise from the x axis. */
  towards: z.number().default(0),
  fillSlope: positive.default(3),
  cutSlope: positive.default(2),
  gravel: notNegative.default(0),
});

export const bermSchema = z.object({
  id,
  name: z.string().default("berm"),
  line: z.array(pointSchema).min(2),
  /** Above the ground as it is. */
  height: positive.default(0.4572),
  topWidth: notNegative.default(0.6096),
  sideSlope: positive.default(3),
});

export const retainingWallSchema = z.object({
  id,
  name: z.string().default("retaining wall"),
  line: z.array(pointSchema).min(2),
  /** What stands behind it: fill that would run on downhill, or the ground above a cut. */
  holds: z.enum(["fill", "cut"]).default("fill"),
  /** Which side of the line, as it runs, is the lower one. */
  lowSide: z.enum(["left", "right"]).default("right"),
  /** Height that shows: the ground behind it (in front, for a cut) is held so; null: as high as the ground behind comes to. */
  exposed: positive.nullable().default(null),
  /** With a height: how far from the wall that ground is held level, before the slope goes on. */
  level: notNegative.default(0),
  /** From the lower ground down to the bottom of its footing. */
  buried: notNegative.default(0.3048),
  /** How far in front of it nothing is filled (or cut behind it). */
  reach: positive.default(30),
});

export const gradePointSchema = z.object({
  id,
  name: z.string().default("grade point"),
  at: pointSchema,
  height: metres,
  fillSlope: positive.default(3),
  cutSlope: positive.default(3),
});

/** The longest-legged vehicle that is to use the drives: what its underside clears. */
export const vehicleSchema = z.object({
  name: z.string().default("pickup truck"),
  wheelbase: positive.default(3.6),
  clearance: positive.default(0.2),
  frontOverhang: notNegative.default(0.95),
  rearOverhang: notNegative.default(1.3),
  /** Lowest part of the overhangs at their ends. */
  endClearance: positive.default(0.35),
});

export const gradingSchema = z.object({
  apron: apronSchema.prefault({}),
  slopes: slopesSchema.prefault({}),
  drives: z.array(driveSchema).default([]),
  swales: z.array(swaleSchema).default([]),
  pads: z.array(groundPadSchema).default([]),
  berms: z.array(bermSchema).default([]),
  walls: z.array(retainingWallSchema).default([]),
  points: z.array(gradePointSchema).default([]),
  vehicle: vehicleSchema.prefault({}),
  /** Ids in the order in which they shape the ground ("apron" stands for pad and apron); those not named come in the usual order. */
  order: z.array(z.string()).default([]),
});

export type Apron = z.infer<typeof apronSchema>;
export type Drive = z.infer<typeof driveSchema>;
export type Swale = z.infer<typeof swaleSchema>;
export type Grading = z.infer<typeof gradingSchema>;
export type GroundPad = z.infer<typeof groundPadSchema>;
export type Berm = z.infer<typeof bermSchema>;
export type RetainingWall = z.infer<typeof retainingWallSchema>;
export type GradePoint = z.infer<typeof gradePointSchema>;
export type Vehicle = z.infer<typeof vehicleSchema>;
export type GradeBreak = z.infer<typeof breakSchema>;
export type ApronSide = Apron["sides"][number];
