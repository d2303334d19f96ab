/** Materials, the truck, the work and its prices: what turns volumes in the ground into loads, hours and money. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { id, notNegative, positive } from "./schemaParts";

/** Soft ground that is dug out and filled again with what can be compacted. */
export const undercutSchema = z.object({
  id,
  name: z.string().default("soft ground"),
  /** m2 on the plan, and depth below the stripped ground, m. */
  area: notNegative.default(0),
  depth: notNegative.default(0),
});

export const materialsSchema = z.object({
  stripDepth: notNegative.default(0.1524),
  /** Loose volume for one of bank. */
  swell: positive.default(1.25),
  /** Compacted volume for one of bank. */
  shrink: positive.default(0.9),
  /** The cut, where it is fit, makes fill: only what it doesn't make is brought, only what is left goes out. */
  cutAsFill: z.boolean().default(true),
  /** Topsoil that goes back on the finished ground where nothing is driven on or built, m. */
  respread: notNegative.default(0),
  /** Hole that a stump leaves, m. */
  stumpHole: z
    .object({ width: notNegative.default(1.2192), depth: notNegative.default(0.6096) })
    .prefault({}),
  undercuts: z.array(undercutSchema).default([]),
  /** Loose volume of stone for one that lies compacted. */
  stoneLoose: positive.default(1.15),
  /** Weights, kg/m3: earth in the bank; topsoil and stone loose. */
  weights: z
    .object({
      earth: positive.default(1602),
      topsoil: positive.default(1424),
      stone: positive.default(1631.5),
    })
    .prefault({}),
});

export const truckSchema = z.object({
  /** What one load holds, loose, m3. */
  volume: positive.default(9.174658),
  /** What it may carry, kg; null: only its volume counts. */
  payload: positive.nullable().default(null),
});

/** What machine and truck do in an hour, as the user knows it; null: not typed, so no hours are told. */
export const workSchema = z.object({
  /** Earth dug, m3 in the bank an hour. */
  dig: positive.nullable().default(null),
  /** Fill and stone placed and compacted, m3 as it lies an hour. */
  place: positive.nullable().default(null),
  /** A truck's way there and back with loading and tipping, hours. */
  turn: positive.nullable().default(null),
});

/** Prices by the bill's item, as the user typed them, for one of the item's unit (m3, m2, m, piece, hour); no item has one by itself. */
export const pricesSchema = z.record(z.string(), notNegative);

export type Prices = z.infer<typeof pricesSchema>;
export type Materials = z.infer<typeof materialsSchema>;
export type Truck = z.infer<typeof truckSchema>;
export type Work = z.infer<typeof workSchema>;
export type Undercut = z.infer<typeof undercutSchema>;
