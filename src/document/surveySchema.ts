/** The survey's part of the document: marks, set-ups of the laser, shots and their places, grids of stakes, test pits. */
import { z } from "zod";
import { id, measureSchema, metres, pointSchema, positive } from "./schemaParts";

export const markSchema = z.object({
  id,
  name: z.string(),
  /** Where it stands, so that a digger finds it. */
  at: pointSchema.nullable().default(null),
  /** Height of the mark in the project's own datum, m. */
  height: measureSchema,
  note: z.string().default(""),
});

/** How the numbers on the rod are to be taken; kept with the set-up, for it turns the sense of every reading. */
export const rodSchema = z.object({
  /** plain: tape or story pole on the ground. direct: shows heights. cut-fill: zero at grade. line: off a laser line. */
  kind: z.enum(["plain", "direct", "cut-fill", "line"]).default("plain"),
  /** down: a bigger number is lower ground. up: a bigger number is higher ground. */
  reads: z.enum(["down", "up"]).default("down"),
  /** Added to each reading: how far the receiver's line lies above the edge at which the rod is read. */
  offset: measureSchema.nullable().default(null),
});

export const bumpSchema = z.object({
  /** The check shot that found the beam moved. */
  check: id,
  /** First row that was read with the beam where it is now; null: nobody knows. */
  from: id.nullable().default(null),
});

export const setupSchema = z.object({
  id,
  name: z.string(),
  /**
   * Beam height taken as known or assumed, used when no shot ties the set-up to a mark. For a rod that reads up:
   * the height of the ground at which it would read zero.
   */
  assumedBeam: measureSchema.nullable().default(null),
  at: pointSchema.nullable().default(null),
  rod: rodSchema.prefault({}),
  /** The beam's accuracy as typed from its data sheet, and as rise over run; null: not known. */
  accuracy: z.object({ text: z.string(), ratio: positive }).nullable().default(null),
  /** Rise over run of the line of sight, up positive, taken off the readings by distance; from a two-peg check. */
  collimation: z.number().min(-0.1).max(0.1).default(0),
  bumps: z.array(bumpSchema).default([]),
});

/** A known point that a place is measured from. */
export const anchorSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("at"), x: metres, y: metres }),
  z.object({ kind: z.literal("corner"), corner: z.number().int().nonnegative() }),
  z.object({ kind: z.literal("mark"), mark: id }),
  z.object({ kind: z.literal("shot"), shot: id }),
]);

export const placeSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("at"), x: metres, y: metres }),
  /** On a corner of the building: index into building.outline. */
  z.object({ kind: z.literal("corner"), corner: z.number().int().nonnegative() }),
  /** Off a wall line: `along` from the wall's first corner towards its second, `out` away from the building. */
  z.object({
    kind: z.literal("wall"),
    wall: z.number().int().nonnegative(),
    along: measureSchema,
    out: measureSchema,
  }),
  /** Two tapes from two known points; `side` as seen from the first towards the second. */
  z.object({
    kind: z.literal("tapes"),
    from: z.tuple([anchorSchema, anchorSchema]),
    lengths: z.tuple([measureSchema, measureSchema]),
    side: z.enum(["left", "right"]),
  }),
  /** `along` a line from one known point towards another, and `right` of it (negative: left). */
  z.object({
    kind: z.literal("baseline"),
    from: anchorSchema,
    to: anchorSchema,
    along: measureSchema,
    right: measureSchema,
  }),
  /** A stake of a grid, counted from 0. */
  z.object({
    kind: z.literal("stake"),
    grid: id,
    row: z.number().int().nonnegative(),
    column: z.number().int().nonnegative(),
  }),
  /** Angle clockwise from the direction to `back`, or from the plan's y axis where that is null; radians. */
  z.object({
    kind: z.literal("polar"),
    from: anchorSchema,
    back: anchorSchema.nullable().default(null),
    angle: z.object({ text: z.string(), radians: metres }),
    distance: measureSchema,
  }),
  /** Read, but not yet placed on the plan. */
  z.object({ kind: z.literal("none") }),
]);

export const shotSchema = z.object({
  id,
  /** What the person calls the place: "NE stake", "road edge", "12". */
  name: z.string().default(""),
  setup: id,
  /**
   * What the rod showed; null while the row is still empty. Distance down from the beam (a bigger reading is lower
   * ground), unless the set-up's rod reads up.
   */
  reading: measureSchema.nullable(),
  /**
   * mark: a reading on a mark (`of` = mark id), gives the beam its height.
   * turning: on a hard point; with `of` = an earlier shot's id it ties this set-up to that shot.
   * ground: a spot of ground. check: a second look at a mark or shot (`of`), ties nothing.
   */
  kind: z.enum(["mark", "turning", "ground", "check"]).default("ground"),
  of: id.nullable().default(null),
  place: placeSchema.default({ kind: "none" }),
  note: z.string().default(""),
  /** Set aside: kept in the table, left out of every computation. */
  aside: z.boolean().default(false),
  /** Looked at and found right as it is, though it doesn't fit its neighbours: not asked about again. */
  accepted: z.boolean().default(false),
});

/** Stakes in rows and columns. Row 0 runs from `at` in the direction `turn`; further rows lie to the left of it. */
export const stakeGridSchema = z.object({
  id,
  name: z.string().default(""),
  /** Stake of row 0, column 0. */
  at: pointSchema,
  /** Direction of a row: radians counter-clockwise from the x axis. */
  turn: metres.default(0),
  rows: z.number().int().min(1).max(200),
  columns: z.number().int().min(1).max(200),
  rowSpacing: measureSchema,
  columnSpacing: measureSchema,
});

/** What a test pit showed. Depths from the ground down; null: not met (or not looked for). */
export const testPitSchema = z.object({
  id,
  name: z.string().default(""),
  place: placeSchema.default({ kind: "none" }),
  /** Depth to the bottom of sod and topsoil, m. */
  topsoil: measureSchema.nullable().default(null),
  /** Depth to the bottom of old fill, m. */
  oldFill: measureSchema.nullable().default(null),
  /** Depth to rock, m. */
  rock: measureSchema.nullable().default(null),
  /** Depth to standing water, m. */
  water: measureSchema.nullable().default(null),
  /** How deep the pit was dug, m. */
  depth: measureSchema.nullable().default(null),
  note: z.string().default(""),
});

/** Lines at which the ground bends, and closed ones round ground that the shots don't tell. */
export const breaklineKinds = [
  "ditch",
  "ridge",
  "bank-top",
  "bank-toe",
  "road-edge",
  "wall",
  /** Closed: round a pond or a house, inside which nothing was shot. */
  "hole",
  /** Closed: outside it the shots don't tell the ground. */
  "edge",
] as const;

/** A line that no triangle of the ground crosses. */
export const breaklineSchema = z.object({
  id,
  name: z.string().default(""),
  kind: z.enum(breaklineKinds).default("ridge"),
  /** Corners x, y and height in the project's datum, m; null: as high as the shots round it say. */
  points: z.array(z.tuple([metres, metres, metres.nullable()])).min(2),
});

/** How strict a run of levels is judged; the figures stand in the survey room. */
export const misclosureClassIds = [
  "site",
  "earthwork",
  "construction",
  "third-us",
  "third",
  "second-2",
  "second-1",
  "first-2",
  "first-1",
] as const;

export const surveySchema = z.object({
  marks: z.array(markSchema).default([]),
  setups: z.array(setupSchema).default([]),
  shots: z.array(shotSchema).default([]),
  grids: z.array(stakeGridSchema).default([]),
  pits: z.array(testPitSchema).default([]),
  breaklines: z.array(breaklineSchema).default([]),
  /** A triangle at the edge of the shots with a longer side than this, m, is a guess; null: none is. */
  longestEdge: positive.nullable().default(null),
  /** Correct readings for the earth's curvature and refraction, where the distance is known. */
  longSights: z.boolean().default(false),
  /** What a run that comes back to a known height may miss it by. */
  misclosureClass: z.enum(misclosureClassIds).default("site"),
});

/** A side or diagonal of the building as taped between two of its corners. */
export const tapeSchema = z.object({
  id,
  from: z.number().int().nonnegative(),
  to: z.number().int().nonnegative(),
  length: measureSchema,
  /** slope: the tape lay on the ground, not level. */
  held: z.enum(["level", "slope"]).default("level"),
});

/** How the building was laid out on the ground. */
export const stakingSchema = z.object({ tapes: z.array(tapeSchema).default([]) });

/** One course of a deed. */
export const courseSchema = z.object({
  id,
  /** Clockwise from the deed's north, radians; for a curve the bearing of its chord. */
  bearing: z.object({ text: z.string(), radians: z.number().min(-7).max(7) }),
  /** Length of the line, or along the curve. */
  distance: measureSchema,
  curve: z
    .object({ radius: measureSchema, turns: z.enum(["left", "right"]) })
    .nullable()
    .default(null),
});

export const deedSchema = z.object({
  courses: z.array(courseSchema).default([]),
  /** Where the first course begins on the plan. */
  start: pointSchema.default([0, 0]),
  /** How far the deed's north lies clockwise of true north, radians. */
  turn: metres.default(0),
  /** Spread the misclosure by the compass rule. */
  adjust: z.boolean().default(false),
});

/** How far from a piece of lot line nothing may be built: piece i runs from lot.outline[i] to the next corner. */
export const setbackSchema = z.object({
  line: z.number().int().nonnegative(),
  distance: measureSchema,
  name: z.string().default(""),
});
