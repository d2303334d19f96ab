/**
 * What the building stands on: kind, dimensions, trench, steps, fill. Part of the project document; units as in
 * `schema.ts`. Sizes are the user's or their designer's: the program checks heights and counts, it sizes nothing.
 */
import { z } from "zod";

import { notNegative, positive } from "./schemaParts";

export const foundationKinds = ["stem-wall", "thickened-edge", "posts", "crawl-space"] as const;

/** Kinds of soil of 29 CFR 1926 subpart P, appendix A; "rock" is stable rock. */
export const trenchSoils = ["rock", "A", "B", "C"] as const;

/** Groups of the tables of IRC R404.1: clean gravel and sand; silty or clayey gravel and sand, silt; clay. */
export const backfillSoils = ["gravel-sand", "silty", "clay"] as const;

/** Slab poured with its edge, on a built-up pad. */
export const edgeSchema = z.object({
  /** From the top of the slab to the bottom of the edge, m. */
  depth: positive.default(0.4064),
  /** Width of its bottom, m. */
  width: positive.default(0.3048),
});

export const postsSchema = z.object({
  /** Greatest distance between posts along a wall, m. */
  spacing: positive.default(2.4384),
  /** Side of a square post, m. */
  size: positive.default(0.1397),
  holeDiameter: positive.default(0.4572),
  /** Bottom of every hole below undisturbed ground there, m. */
  holeDepth: positive.default(1.2192),
  /** Concrete pad in the bottom of the hole, m. */
  padThickness: notNegative.default(0.2032),
});

export const crawlSchema = z.object({
  /** From the top of wall, on which the joists lie, down to the earth inside, m. */
  clearance: positive.default(0.6096),
  /** Joists and deck, for the drawing: from the top of wall up to the floor, m. */
  floorThickness: positive.default(0.2667),
});

export const stepsSchema = z.object({
  /** Whether the footing steps down where a level one would lack cover. */
  on: z.boolean().default(false),
  /** One step down, m: a course of blocks, or a form's height. */
  rise: positive.default(0.2032),
  /** Shortest level piece, m. */
  leastRun: positive.default(0.6096),
  /** How far the upper footing lies over the lower, m; null: as much as NHBC's rule asks. */
  overlap: notNegative.nullable().default(null),
});

export const trenchSchema = z.object({
  soil: z.enum(trenchSoils).default("C"),
  /** "as-needed": upright below 5 ft, sloped from there. */
  sides: z.enum(["as-needed", "sloped", "benched", "shored"]).default("as-needed"),
  /** Room to work beside the footing, each side, m. */
  workingSpace: notNegative.default(0.3048),
  benchHeight: positive.default(1.2192),
  /** The spoil's foot back from the edge of the trench, m. */
  spoilBack: notNegative.default(0.6096),
});

export const slabFillSchema = z.object({
  kind: z.enum(["sand-gravel", "earth"]).default("sand-gravel"),
  /** Thickness of a layer, compacted, m. */
  lift: positive.default(0.1524),
  /** Depth that an engineer or the building office allows, m; null: the published limit. */
  approved: positive.nullable().default(null),
});

/** What the footing carries and stands on, for the table of least widths. */
export const loadSchema = z.object({
  built: z.enum(["light-frame", "veneer", "masonry"]).default("light-frame"),
  storeys: z.number().int().min(1).max(3).default(1),
  soil: z.enum(["clay", "sand", "gravel", "rock"]).default("clay"),
});

/** Counts as the user's drawing or designer has them; none until typed. */
export const steelSchema = z.object({
  /** Bars along the footing or the thickened edge. */
  footingBars: z.number().int().min(0).max(40).default(0),
  /** Rows of bars along the wall. */
  wallRows: z.number().int().min(0).max(80).default(0),
  /** Distance between upright bars, m; null: none. */
  uprightSpacing: positive.nullable().default(null),
  /** Distance between bars of the slab, both ways, m; null: none. */
  slabSpacing: positive.nullable().default(null),
  /** Added to every length for laps, a share. */
  laps: notNegative.max(1).default(0.1),
});

export const foundationSchema = z.object({
  kind: z.enum(foundationKinds).default("stem-wall"),
  /** Concrete slab inside stem walls or posts; false: a floor of stone or earth. */
  slabInside: z.boolean().default(true),
  wall: z.enum(["poured", "block"]).default("poured"),
  wallHeight: positive.default(1.2192),
  wallThickness: positive.default(0.2032),
  footingWidth: positive.default(0.4064),
  footingThickness: positive.default(0.2032),
  slabThickness: notNegative.default(0.127),
  /** Insulation under the slab, between it and the base course, m. */
  insulation: notNegative.default(0),
  baseThickness: notNegative.default(0.1016),
  /** Frost depth for the place as the user typed it; null = not yet asked. */
  frostDepth: notNegative.nullable().default(null),
  /** The ground that frost cover counts from; inspectors differ. */
  frostFrom: z.enum(["undisturbed", "finished"]).default("undisturbed"),
  load: loadSchema.prefault({}),
  edge: edgeSchema.prefault({}),
  posts: postsSchema.prefault({}),
  crawl: crawlSchema.prefault({}),
  /** A block with its joint: along the wall and up, m. */
  block: z.object({ length: positive.default(0.4064), height: positive.default(0.2032) }).prefault({}),
  steps: stepsSchema.prefault({}),
  trench: trenchSchema.prefault({}),
  slabFill: slabFillSchema.prefault({}),
  backfillSoil: z.enum(backfillSoils).default("clay"),
  steel: steelSchema.prefault({}),
  /** A drain pipe in stone beside the footing, all round. */
  drain: z.boolean().default(false),
  /** More concrete to order than the drawing holds, a share. */
  concreteWaste: notNegative.max(1).default(0.1),
});

export type FoundationKind = (typeof foundationKinds)[number];
export type TrenchSoil = (typeof trenchSoils)[number];
export type BackfillSoil = (typeof backfillSoils)[number];
export type Foundation = z.infer<typeof foundationSchema>;
