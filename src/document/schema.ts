/**
 * The project document, format version 1: what a person typed, drew or shot, and nothing that can be
 * computed. Plain JSON. Lengths and heights in metres, angles in radians, slopes as rise over run.
 * Plan axes: x east, y north; z up. Every part has a default, so a small file opens as a small project.
 */
import { z } from "zod";

import { id, measureSchema, metres, notNegative, pointSchema, positive } from "./schemaParts";
import {
  type anchorSchema,
  type breaklineSchema,
  type bumpSchema,
  type courseSchema,
  deedSchema,
  type markSchema,
  type placeSchema,
  type rodSchema,
  setbackSchema,
  type setupSchema,
  type shotSchema,
  type stakeGridSchema,
  stakingSchema,
  surveySchema,
  type tapeSchema,
  type testPitSchema,
} from "./surveySchema";

export { measureSchema, pointSchema } from "./schemaParts";
export * from "./surveySchema";

export const lengthNotations = ["ft-in", "in", "ft", "m", "cm", "mm"] as const;

export const displaySchema = z.object({
  /** How lengths and heights are shown, and the unit of a number typed without one. */
  length: z.enum(lengthNotations).default("ft-in"),
  /** How laser readings are typed and shown: a bare number in the readings column takes this unit. */
  reading: z.enum(lengthNotations).default("in"),
  area: z.enum(["ft2", "m2"]).default("ft2"),
  volume: z.enum(["yd3", "m3"]).default("yd3"),
  slope: z.enum(["percent", "ratio", "in-per-10ft"]).default("percent"),
  /** Inch notations: smallest fraction's denominator (2 to 32). Decimal notations: number of decimals. */
  rounding: z.number().int().min(0).max(32).default(8),
  paper: z.enum(["letter", "tabloid", "a4", "a3"]).default("tabloid"),
});

export const featureSchema = z.object({
  id,
  kind: z.enum([
    "tree",
    "stump",
    "well",
    "septic",
    "buried-line",
    "overhead-line",
    "house",
    "fence",
    "road",
    "water",
    "other",
  ]),
  name: z.string().default(""),
  points: z.array(pointSchema).min(1),
  keepClear: notNegative.default(0),
  /** Thickness of a tree's trunk or of a stump, m. */
  trunk: notNegative.nullable().default(null),
});

export const lotSchema = z.object({
  /** Direction of true north on the plan: radians clockwise from the y axis. */
  north: z.number().default(0),
  /** Corners of the lot in order; closed by itself; none or at least three. */
  outline: z.array(pointSchema).default([]),
  features: z.array(featureSchema).default([]),
  /** The lot as the deed describes it; null where it was drawn. */
  deed: deedSchema.nullable().default(null),
  setbacks: z.array(setbackSchema).default([]),
});

export const foundationSchema = z.object({
  wallHeight: positive.default(1.2192),
  wallThickness: positive.default(0.2032),
  footingWidth: positive.default(0.4064),
  footingThickness: positive.default(0.2032),
  slabThickness: notNegative.default(0.127),
  baseThickness: notNegative.default(0.1016),
  /** Frost depth for the place as the user typed it; null = not yet asked. */
  frostDepth: notNegative.nullable().default(null),
});

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

export const titleSchema = z.object({
  owner: z.string().default(""),
  place: z.string().default(""),
  drawnBy: z.string().default(""),
  revision: z.string().default("1"),
});

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

/** What the person on site typed for today; everything else about the day follows from it. */
export const worksheetSchema = z.object({
  /** Today's reading on the reference mark (the first mark): gives the beam its height for the set-out. */
  markReading: measureSchema.nullable().default(null),
});

export const projectSchema = z.object({
  drysill: z.literal(1),
  name: z.string().default("Untitled plan"),
  about: z.string().default(""),
  display: displaySchema.prefault({}),
  lot: lotSchema.prefault({}),
  survey: surveySchema.prefault({}),
  staking: stakingSchema.prefault({}),
  building: buildingSchema.nullable().default(null),
  grading: gradingSchema.prefault({}),
  rules: rulesSchema.prefault({}),
  materials: materialsSchema.prefault({}),
  truck: truckSchema.prefault({}),
  worksheet: worksheetSchema.prefault({}),
  drawing: drawingSchema.prefault({}),
  title: titleSchema.prefault({}),
});

export type Point = z.infer<typeof pointSchema>;
export type Measure = z.infer<typeof measureSchema>;
export type LengthNotation = (typeof lengthNotations)[number];
export type Display = z.infer<typeof displaySchema>;
export type Feature = z.infer<typeof featureSchema>;
export type Lot = z.infer<typeof lotSchema>;
export type Mark = z.infer<typeof markSchema>;
export type Setup = z.infer<typeof setupSchema>;
export type Rod = z.infer<typeof rodSchema>;
export type Bump = z.infer<typeof bumpSchema>;
export type Anchor = z.infer<typeof anchorSchema>;
export type StakeGrid = z.infer<typeof stakeGridSchema>;
export type TestPit = z.infer<typeof testPitSchema>;
export type Breakline = z.infer<typeof breaklineSchema>;
export type Tape = z.infer<typeof tapeSchema>;
export type Staking = z.infer<typeof stakingSchema>;
export type Course = z.infer<typeof courseSchema>;
export type Deed = z.infer<typeof deedSchema>;
export type Setback = z.infer<typeof setbackSchema>;
export type Place = z.infer<typeof placeSchema>;
export type Shot = z.infer<typeof shotSchema>;
export type Survey = z.infer<typeof surveySchema>;
export type Foundation = z.infer<typeof foundationSchema>;
export type Door = z.infer<typeof doorSchema>;
export type Window = z.infer<typeof windowSchema>;
export type Building = z.infer<typeof buildingSchema>;
export type Apron = z.infer<typeof apronSchema>;
export type Drive = z.infer<typeof driveSchema>;
export type Swale = z.infer<typeof swaleSchema>;
export type Grading = z.infer<typeof gradingSchema>;
export type Rules = z.infer<typeof rulesSchema>;
export type Materials = z.infer<typeof materialsSchema>;
export type Note = z.infer<typeof noteSchema>;
export type DimensionEnd = z.infer<typeof dimensionEndSchema>;
export type Dimension = z.infer<typeof dimensionSchema>;
export type SectionLine = z.infer<typeof sectionLineSchema>;
export type Underlay = z.infer<typeof underlaySchema>;
export type Drawing = z.infer<typeof drawingSchema>;
export type Worksheet = z.infer<typeof worksheetSchema>;
export type Project = z.infer<typeof projectSchema>;
