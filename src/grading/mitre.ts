/**
 * Mitred corners: each side is its planes, the apron's and beyond it the slope's, and they meet in hips and valleys.
 *
 * Units   metres; heights over the finished ground at the wall; side slopes are run for one of rise.
 * Method  The earth stands within the planes of all sides that meet at outer corners, and of any at inner ones: in fill
 *         the lowest (inner: highest) plane is built. In cut the banks are it the other way round, and the aprons
 *         stand as in fill between them.
 * Source  First principles.
 */
import { blend } from "./corner-share";
import { type Footprint, onWall } from "./footprint";
import { type OutlineTree, outlineTree } from "./outline-tree";
import type { PadRule, SideRule } from "./plan";

/** What the planes of some sides make of a place. */
export interface Planes {
  /** Top of fill and bottom of cut. */
  lower: number;
  upper: number;
  /** How far the place lies within the aprons; negative beyond them. */
  room: number;
  /** The walls whose planes fill and cut are, and how far the place lies in front of them. */
  fillWall: number;
  fillOut: number;
  cutWall: number;
  cutOut: number;
}

interface Work extends Planes {
  /** Nothing is known of the place: all these sides leave it as it is. */
  none: boolean;
  /** The apron's own plane, as if it went on beyond its width. */
  apron: number;
}

type Weigh = (x: number, y: number) => Work;

/** Works out the planes at a place; what it answers is written anew with each call. */
export function mitredPlanes(
  footprint: Footprint,
  pad: Pick<PadRule, "leave">,
  rules: readonly SideRule[],
): (x: number, y: number) => Planes {
  const weigh = weigherOf(outlineTree(footprint), footprint, pad.leave, rules);
  return (x, y) => {
    const all = weigh(x, y);
    // A place just inside the walls, such as the middle of a sliver of a cell, is taken for one at them.
    all.lower = Math.min(0, all.lower);
    all.upper = Math.max(Math.min(0, all.apron), all.upper, all.lower);
    return all;
  };
}

function weigherOf(
  tree: OutlineTree,
  footprint: Footprint,
  leave: Uint8Array,
  rules: readonly SideRule[],
  within = false,
): Weigh {
  if (tree.kind === "side") return sideWeigher(tree.walls, footprint, leave, rules);
  const parts = tree.parts.map((part) => weigherOf(part, footprint, leave, rules, true));
  const join = tree.kind === "all" ? 1 : -1;
  // What stands within an inward stretch makes nothing where one of its own sides is left as it is.
  const strict = within && tree.kind === "all";
  const all = nothing();
  return (x, y) => {
    all.none = true;
    for (const weigh of parts) {
      const part = weigh(x, y);
      if (!part.none) add(all, part, join);
      else if (strict) {
        all.none = true;
        return all;
      }
    }
    return all;
  };
}

const nothing = (): Work => ({
  none: true,
  lower: 0,
  upper: 0,
  apron: 0,
  room: 0,
  fillWall: 0,
  fillOut: 0,
  cutWall: 0,
  cutOut: 0,
});

/** Joins what one part makes of a place to what the others do: the least fill (1), or the most (-1). */
function add(all: Work, part: Work, join: 1 | -1): void {
  const first = all.none;
  all.none = false;
  if (first || join * (part.lower - all.lower) < 0) {
    all.lower = part.lower;
    all.fillWall = part.fillWall;
    all.fillOut = part.fillOut;
  }
  if (first || join * (part.upper - all.upper) > 0) {
    all.upper = part.upper;
    all.cutWall = part.cutWall;
    all.cutOut = part.cutOut;
  }
  if (first || join * (part.apron - all.apron) < 0) all.apron = part.apron;
  if (first || join * (part.room - all.room) < 0) all.room = part.room;
}

/** Walls in one line, each with its own planes in front of it; they run into each other about the ends between them. */
function sideWeigher(
  walls: readonly number[],
  footprint: Footprint,
  leave: Uint8Array,
  rules: readonly SideRule[],
): Weigh {
  const own = walls.map((wall) => wallWeigher(wall, footprint, leave[wall] === 1, rules[wall] as SideRule));
  const only = own[0] as Weigh;
  if (own.length === 1) return only;
  const starts = walls.map((i) => (footprint.walls[i] as Footprint["walls"][number]).start);
  const [ux, uy] = (footprint.walls[walls[0] as number] as Footprint["walls"][number]).along;
  const [x0, y0] = starts[0] as (typeof starts)[number];
  const along = starts.map(([x, y]) => (x - x0) * ux + (y - y0) * uy);
  const mixed = nothing();
  return (x, y) => {
    const at = (x - x0) * ux + (y - y0) * uy;
    let k = own.length - 1;
    while (k > 0 && at < (along[k] as number)) k--;
    const toStart = at - (along[k] as number);
    const toEnd = (along[k + 1] ?? Number.POSITIVE_INFINITY) - at;
    const made = (own[k] as Weigh)(x, y);
    const near = Math.min(k > 0 ? toStart : Number.POSITIVE_INFINITY, toEnd);
    if (near >= blend || made.none) return made;
    const other = (own[toEnd === near ? k + 1 : k - 1] as Weigh)(x, y);
    return other.none ? made : mix(made, other, 0.5 - near / (2 * blend), mixed);
  };
}

function mix(a: Work, b: Work, share: number, out: Work): Work {
  Object.assign(out, a);
  // Places behind the walls have no bound height where a side is left as it is.
  if (!Number.isFinite(a.lower) || !Number.isFinite(b.lower)) return out;
  out.lower += (b.lower - a.lower) * share;
  out.upper += (b.upper - a.upper) * share;
  out.apron += (b.apron - a.apron) * share;
  out.room += (b.room - a.room) * share;
  return out;
}

function wallWeigher(wall: number, { walls }: Footprint, left: boolean, rule: SideRule): Weigh {
  const side = walls[wall] as (typeof walls)[number];
  const [x0, y0] = onWall(side, 0);
  const [nx, ny] = side.outward;
  const { fall, width, fillSlope, cutSlope } = rule;
  const rim = -fall * width;
  const made: Work = { ...nothing(), none: false, fillWall: wall, cutWall: wall };
  return (x, y) => {
    const out = (x - x0) * nx + (y - y0) * ny;
    made.none = left && out > 0;
    made.fillOut = out;
    made.cutOut = out;
    made.apron = left ? Number.POSITIVE_INFINITY : -fall * out;
    made.lower = left || out <= width ? made.apron : rim - (out - width) / fillSlope;
    made.upper = left ? Number.NEGATIVE_INFINITY : rim + (out - width) / cutSlope;
    made.room = left ? Number.POSITIVE_INFINITY : width - out;
    return made;
  };
}
