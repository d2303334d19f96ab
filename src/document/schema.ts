/**
 * The project document, format version 1: what a person typed, drew or shot, and nothing that can be
 * computed. Plain JSON. Lengths and heights in metres, angles in radians, slopes as rise over run.
 * Plan axes: x east, y north; z up. Every part has a default, so a small file opens as a small project.
 */
import { z } from "zod";

import { buildingSchema } from "./buildingSchema";
import { materialsSchema, pricesSchema, truckSchema, workSchema } from "./costSchema";
import { drawingSchema } from "./drawingSchema";
import { gradingSchema } from "./gradingSchema";
import { optionSchema } from "./optionsSchema";
import { rulesSchema } from "./rulesSchema";
import { id, measureSchema, notNegative, pointSchema } from "./schemaParts";
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

export * from "./buildingSchema";
export * from "./costSchema";
export * from "./drawingSchema";
export * from "./gradingSchema";
export * from "./optionsSchema";
export * from "./rulesSchema";

import { drainageSchema, stormSchema } from "./waterSchema";

export { measureSchema, pointSchema } from "./schemaParts";
export * from "./surveySchema";
export * from "./waterSchema";

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

export const titleSchema = z.object({
  owner: z.string().default(""),
  place: z.string().default(""),
  drawnBy: z.string().default(""),
  revision: z.string().default("1"),
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
  options: z.array(optionSchema).default([]),
  rules: rulesSchema.prefault({}),
  storm: stormSchema.prefault({}),
  drainage: drainageSchema.prefault({}),
  materials: materialsSchema.prefault({}),
  truck: truckSchema.prefault({}),
  work: workSchema.prefault({}),
  prices: pricesSchema.prefault({}),
  /** Where the prices come from, in the user's words. */
  pricesFrom: z.string().default(""),
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
export type Worksheet = z.infer<typeof worksheetSchema>;
export type Project = z.infer<typeof projectSchema>;
