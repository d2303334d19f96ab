/** Rain, and what it falls on. Part of the project document; units as in `schema.ts`. */
import { z } from "zod";

import { notNegative, pointSchema, positive } from "./schemaParts";
import { ditchLiningKinds, groundCoverKinds } from "./waterCovers";

export const stormSchema = z.object({
  /** Rain of the storm that ditches must carry, m/s, from a local table; null = not yet asked. */
  intensity: positive.nullable().default(null),
  /** Rows of that table: the storm lasts so long, s, and rains so hard, m/s. With any, `intensity` doesn't count. */
  table: z.array(z.object({ duration: positive, intensity: positive })).default([]),
  /** Depth of the storm whose whole water is asked for, m; null: not asked. */
  depth: positive.nullable().default(null),
  /** Part of the rain that runs off: the rational formula's C. */
  runoff: z.number().min(0).max(1).default(0.3),
  /** Covers of the ground and their parts of it; with any, `runoff` is theirs, weighted. */
  covers: z.array(z.object({ cover: z.enum(groundCoverKinds), part: positive.max(1) })).default([]),
  /** Manning's n of the ditches' beds, s/m^(1/3). */
  roughness: positive.default(0.045),
  /** Speed that the beds bear, m/s. */
  mostSpeed: positive.default(1.2192),
  /** What the beds are lined with; null: `mostSpeed` counts, whatever their fall. */
  lining: z.enum(ditchLiningKinds).nullable().default(null),
  /** Room that stays over the water in a ditch, m: 0.3 ft, Natural Resources Conservation Service 362 for diversions. */
  freeboard: notNegative.default(0.09144),
  /** Ground uphill, beyond the shots, that drains here too, m2. */
  uphill: notNegative.default(0),
  /** The swale that its water comes to; null: the one that most ground at the edge drains to. */
  uphillTo: z.string().nullable().default(null),
  /** Longest way of water on it, m, and its fall, rise over run; 0: it adds no time. */
  uphillLength: notNegative.default(0),
  uphillFall: notNegative.default(0),
  /** Part of its rain that runs off; null: as on the rest. */
  uphillRunoff: z.number().min(0).max(1).nullable().default(null),
});

export const roofShapes = ["unknown", "gable", "gable-across", "one-way", "hip"] as const;

/** What leads water away beside the ground itself. */
export const drainageSchema = z.object({
  roof: z
    .object({
      /** `gable`: its ridge runs along the longer way; `one-way`: it falls to one wall. */
      shape: z.enum(roofShapes).default("unknown"),
      /** How far it reaches over the walls, m. */
      overhang: notNegative.default(0.3048),
      runoff: z.number().min(0).max(1).default(0.95),
      /** The wall that a one-way roof falls to. */
      lowWall: z.number().int().nonnegative().default(0),
      /** Where the downspouts of a slope side come out, by its wall; sides not named drip along their eaves. */
      outlets: z.array(z.object({ wall: z.number().int().nonnegative(), at: pointSchema })).default([]),
    })
    .prefault({}),
  /** Pipes where water crosses a drive. */
  pipe: z
    .object({
      /** A pipe takes the swale under the drive, whose earth closes over it; or the drive dips down to the swale's bed. */
      crossing: z.enum(["pipe", "dip"]).default("pipe"),
      kind: z
        .enum(["concrete-square", "concrete-groove", "metal-headwall", "metal-projecting"])
        .default("metal-projecting"),
      /** Bore, m; null: the least standard one that carries the storm. */
      bore: positive.nullable().default(null),
      /** From the top of the pipe to the top of the drive. */
      cover: notNegative.default(0.3048),
    })
    .prefault({}),
  /** How water is followed on the grid: shared between two neighbours by the steepest facet, or to the steepest neighbour alone. */
  flow: z.object({ method: z.enum(["d-infinity", "d8"]).default("d-infinity") }).prefault({}),
  /** A pipe in stone round the footing. */
  footingDrain: z.object({ on: z.boolean().default(false), fall: positive.default(0.01) }).prefault({}),
  /** Bare earth that is to be marked while the work goes on: steeper and longer than this. */
  bareEarth: z.object({ steepness: positive.default(1 / 3), length: positive.default(7.62) }).prefault({}),
});

export type Storm = z.infer<typeof stormSchema>;
export type Drainage = z.infer<typeof drainageSchema>;
export type Roof = Drainage["roof"];
