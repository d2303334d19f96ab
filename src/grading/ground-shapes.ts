/**
 * Parking pads and terraces, berms, retaining walls and grade points, laid out on the ground as it is.
 *
 * Units   metres; heights are base + share · floor.
 * Source  First principles.
 */
import type { Berm, GroundPad, RetainingWall } from "../document/schema";
import { centroid, cornerDistances, type Point, pointAlong } from "../geometry";
import { withoutRepeats } from "./drive-line";
import { type Segments, segmentsOf } from "./wall-distance";

export type HeightOfGround = (at: Point) => number;

export interface PadPlane {
  readonly pad: GroundPad;
  readonly ring: readonly Point[];
  readonly segments: Segments;
  /** Height at the origin of the plan is base + share · floor; from there it rises by (gx, gy). */
  readonly base: number;
  readonly share: number;
  readonly gx: number;
  readonly gy: number;
  /** Middle of the outline, where the typed height holds. */
  readonly middle: Point;
}

/** Lays a pad out; its outline must be a simple ring with an area. */
export function layPad(pad: GroundPad, ground: HeightOfGround): PadPlane {
  const ring = pad.outline;
  const middle = centroid(ring);
  const gx = -pad.fall * Math.cos(pad.towards);
  const gy = -pad.fall * Math.sin(pad.towards);
  const { level } = pad;
  const mean = () => ring.reduce((sum, at) => sum + ground(at), 0) / ring.length;
  const atMiddle = level.kind === "height" ? level.height : level.kind === "floor" ? level.above : mean();
  return {
    pad,
    ring,
    segments: segmentsOf(ring.map((start, i) => ({ start, end: ring[(i + 1) % ring.length] as Point }))),
    base: atMiddle - gx * middle[0] - gy * middle[1],
    share: level.kind === "floor" ? 1 : 0,
    gx,
    gy,
    middle,
  };
}

interface Along {
  readonly line: readonly Point[];
  readonly segments: Segments;
  readonly distances: Float64Array;
  readonly length: number;
}

function laid(drawn: readonly Point[]): Along {
  const line = withoutRepeats(drawn);
  const distances = cornerDistances(line);
  return {
    line,
    segments: segmentsOf(line.slice(1).map((end, i) => ({ start: line[i] as Point, end }))),
    distances,
    length: distances[distances.length - 1] ?? 0,
  };
}

export interface BermLine extends Along {
  readonly berm: Berm;
  /** Height of the crest at even stations. */
  readonly crest: Float64Array;
  readonly crestAt: (distance: number) => number;
}

/** Distance between the places at which the ground under a berm or wall is looked at, m. */
const station = 0.5;

/** The crest keeps its height over the ground along the line. */
export function layBerm(berm: Berm, ground: HeightOfGround): BermLine {
  const along = laid(berm.line);
  const crest = stationHeights(along, ground).map((z) => z + berm.height);
  return { ...along, berm, crest, crestAt: (t) => between(crest, along.length, t) };
}

function stationHeights({ line, length }: Along, ground: HeightOfGround): Float64Array {
  const pieces = Math.max(1, Math.ceil(length / station));
  return Float64Array.from({ length: pieces + 1 }, (_, i) =>
    ground(pointAlong(line, (length * i) / pieces).at),
  );
}

function between(values: Float64Array, length: number, t: number): number {
  const pieces = values.length - 1;
  const place = (Math.min(Math.max(t, 0), length) / length) * pieces;
  const i = Math.min(pieces - 1, Math.floor(place));
  const a = values[i] as number;
  return a + ((values[i + 1] as number) - a) * (place - i);
}

export interface WallLine extends Along {
  readonly wall: RetainingWall;
  /** Height, along the line, of the top of what it holds up (of the foot it is cut down to); null: it follows the ground. */
  readonly heldAt: ((distance: number) => number) | null;
  /** Side slopes that go on from there, run for one of rise. */
  readonly slopes: Slopes;
}

interface Slopes {
  readonly fill: number;
  readonly cut: number;
}

/** A typed height counts from the ground along the line: up where fill is held, down where a cut is. */
export function layWall(wall: RetainingWall, ground: HeightOfGround, slopes: Slopes): WallLine {
  const along = laid(wall.line);
  return { ...along, wall, slopes, heldAt: heldAlong(wall, along, ground) };
}

function heldAlong({ exposed, holds }: RetainingWall, along: Along, ground: HeightOfGround) {
  if (exposed === null) return null;
  const over = holds === "fill" ? exposed : -exposed;
  const held = stationHeights(along, ground).map((z) => z + over);
  return (t: number) => between(held, along.length, t);
}
