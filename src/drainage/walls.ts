/**
 * Does the finished ground fall away from the walls?
 *
 * Units   metres.
 * Method  Square to each wall, at places along it, the finished ground is read from the wall outwards; the fall
 *         is from the wall to the lowest ground within 10 ft; where that is at the wall itself, the ground rises, and the fall is
 *         that to the end, below nothing. Where another wall stands nearer, the rule's
 *         slope holds up to there.
 * Source  International Residential Code R401.3: 6 in within the first 10 ft; paving within 10 ft at 2 %.
 */
import { nearestOnRing, type Point } from "../geometry";
import {
  finishHeights,
  type GradingPlan,
  onDrive,
  onWall,
  type Places,
  type Prepared,
  placesAt,
  type Wall,
} from "../grading";
import type { WallFall } from "../solve/results";

/** 10 ft, m. */
const run = 3.048;
/** 6 in within 10 ft. */
const earthFall = 0.05;
const drivenFall = 0.02;
/** How near the wall water must already run away from it, m. */
const near = 0.9144;
const stepsOut = 20;
/** Earth isn't graded closer than this, m (⅛ in): 5 % on an apron of 3 m counts as 6 in within 10 ft. */
const buildable = 0.003;
const source = "International Residential Code R401.3 (2012 and later)";

interface Normal {
  readonly wall: number;
  /** First of its places and how many, from the wall outwards. */
  readonly first: number;
  readonly count: number;
  /** How far from the wall each place lies, and the last of them. */
  readonly outs: readonly number[];
  readonly reach: number;
  readonly driven: boolean;
}

/** Places to read, square to the walls. They don't depend on the floor. */
export interface WallNormals {
  readonly places: Places;
  readonly normals: readonly Normal[];
  readonly walls: readonly Wall[];
}

export function wallNormals(plan: GradingPlan, groundHeight: (at: Point) => number): WallNormals {
  const { walls, ring } = plan.footprint;
  const points: Point[] = [];
  const normals: Normal[] = [];
  const outs = distancesOut(plan.pad.width);
  walls.forEach((wall, index) => {
    const count = Math.max(3, Math.ceil(wall.length));
    for (let k = 0; k < count; k++) {
      const offset = (wall.length * (k + 0.5)) / count;
      const line = outwards(wall, offset, outs, ring);
      normals.push({
        wall: index,
        first: points.length,
        count: line.length,
        outs,
        reach: outs[line.length - 1] ?? 0,
        driven: line.some((at) => onDrive(plan, at)),
      });
      points.push(...line);
    }
  });
  return { places: placesAt(points, groundHeight), normals, walls };
}

/** Distances from the wall at which the ground is read: the apron's edge, where it turns up or down, among them. */
function distancesOut(apron: number): number[] {
  const even = Array.from({ length: stepsOut + 1 }, (_, step) => (run * step) / stepsOut);
  return apron < run ? [...even, apron].sort((a, b) => a - b) : even;
}

/** Places from the wall outwards, up to 10 ft or to where another wall of the building is nearer. */
function outwards(wall: Wall, offset: number, outs: readonly number[], ring: readonly Point[]): Point[] {
  const line: Point[] = [];
  for (const out of outs) {
    const at = onWall(wall, offset, out);
    // In an inner corner the other wall takes over: water there runs along the valley between the two.
    if (nearestOnRing(ring, at[0], at[1]).distance < out - 1e-6) break;
    line.push(at);
  }
  return line;
}

/** Each wall at a floor height; `prepared` belongs to `normals.places`. */
export function wallWater(normals: WallNormals, prepared: Prepared, floor: number): WallFall[] {
  const z = finishHeights(prepared, floor, new Float64Array(prepared.existing.length));
  return normals.walls.map((wall, index) => {
    const own = normals.normals.filter((normal) => normal.wall === index && normal.count > 1);
    const read = own.map((normal) => readNormal(normal, z));
    const worst = worstOf(read);
    const towards = read.filter((one) => one.towards).length;
    return {
      name: wall.name,
      wall: index,
      fallAway: worst.fall,
      needed: worst.needed,
      within: worst.within,
      paved: worst.driven,
      fallsEnough: worst.fall >= worst.needed - buildable,
      runsTowards: read.length > 0 ? towards / read.length : 0,
      rule: worst.driven
        ? "2 % away from the wall on a drive or paving"
        : "6 in of fall within 10 ft of the wall",
      source,
    };
  });
}

/** A wall with another wall right in front of it: nothing to ask. */
const unread = { fall: 0, needed: 0, within: 0, towards: false, driven: false };

/** What misses its fall by most; where none does, the one read farthest out with the least to spare. */
function worstOf(read: readonly (typeof unread)[]): typeof unread {
  const spare = ({ fall, needed }: typeof unread) => fall - needed;
  const failing = read.filter((one) => spare(one) < -buildable);
  const reach = Math.max(...read.map(({ within }) => within));
  const asked = failing.length > 0 ? failing : read.filter(({ within }) => within > reach - 1e-6);
  return asked.reduce((a, b) => (spare(b) < spare(a) ? b : a), asked[0] ?? unread);
}

function readNormal(normal: Normal, z: Float64Array): typeof unread {
  const atWall = z[normal.first] as number;
  let lowest = atWall;
  for (let k = 1; k < normal.count; k++) lowest = Math.min(lowest, z[normal.first + k] as number);
  const beyondNear = normal.outs.findIndex((out) => out >= near);
  const nearStep = Math.min(normal.count - 1, beyondNear);
  return {
    fall:
      atWall > lowest
        ? atWall - lowest
        : Math.min(0, atWall - (z[normal.first + normal.count - 1] as number)),
    needed: (normal.driven ? drivenFall : earthFall) * normal.reach,
    within: normal.reach,
    towards: (z[normal.first + nearStep] as number) > atWall + 1e-6,
    driven: normal.driven,
  };
}
