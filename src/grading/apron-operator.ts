/**
 * The building pad with its apron and side slopes.
 *
 * Units   metres; side slopes are run for one of rise.
 * Method  The nearest wall gives distance and rules. Round corners: true distance, so slopes run round them as cones,
 *         from one side's rules to the next side's evenly with the angle; in front of inner corners rules run into each
 *         other (corner-share). Mitred: each side is its planes, which meet in hips and valleys; only the height at the wall,
 *         where sides differ in it, goes over from one side to the next as at round corners.
 * Source  First principles.
 */
import { boundsOf } from "../geometry";
import { grown } from "./boxes";
import { neighbour, rulesAbout } from "./corner-share";
import { mitredPlanes, type Planes } from "./mitre";
import { apronId, type Limits, type Operator } from "./operator";
import type { GradingPlan, SideRule } from "./plan";
import { distanceTo, type Nearest, nearestSegment, nowhere, segmentsOf } from "./wall-distance";

export function apronOperator({ footprint, pad }: Pick<GradingPlan, "footprint" | "pad">): Operator {
  const sides = footprint.walls.map((_, i) => pad.sides?.[i] ?? pad);
  const widest = Math.max(...sides.map(({ width }) => width));
  const edges = sides.map(({ edgeAboveFloor }) => edgeAboveFloor);
  const mostFall = Math.max(...sides.map(({ fall, width }) => fall * width));
  const flattest = Math.max(...sides.flatMap(({ fillSlope, cutSlope }) => [fillSlope, cutSlope]));
  const find = sideFinder({ footprint, pad }, sides);
  return {
    id: apronId,
    bounds: grown(boundsOf(footprint.ring), widest),
    // A mitred corner reaches farther than its distance tells.
    flattest: pad.corners === "mitred" ? Number.POSITIVE_INFINITY : flattest,
    ends: (low, high) => ({
      leastUpper: Math.min(...edges) - mostFall + low,
      mostLower: Math.max(...edges) + high,
    }),
    limitsAt(x, y, _existing, limits) {
      find(x, y, limits);
    },
  };
}

/** Limits relative to the floor at a distance from the wall, and so much farther beyond its side's end. */
function byDistance(distance: number, beyond: number, rule: SideRule, limits: Limits): void {
  const apron = rule.edgeAboveFloor - rule.fall * Math.min(distance, rule.width);
  const out = Math.max(0, distance - rule.width) + beyond;
  limits.lower = apron - out / rule.fillSlope;
  limits.upper = apron + out / rule.cutSlope;
  limits.share = 1;
  limits.core = out === 0;
  limits.stone = 0;
}

/**
 * By distance to the walls, or by planes. Where the nearest wall leaves the ground as it is the earth of the graded walls
 * beside it slopes off to the side, by how much farther they are, so that no cliff stands at the corner.
 */
function sideFinder(
  { footprint, pad }: Pick<GradingPlan, "footprint" | "pad">,
  rules: readonly SideRule[],
): (x: number, y: number, limits: Limits) => void {
  const { walls } = footprint;
  const all = segmentsOf(walls);
  const gradedWalls = walls.flatMap((_, i) => (pad.leave[i] ? [] : [i]));
  const graded = segmentsOf(gradedWalls.map((i) => walls[i] as (typeof walls)[number]));
  const found: Nearest = nowhere();
  if (gradedWalls.length === 0) return leaveAlone;
  const everyWall = gradedWalls.length === walls.length;
  const leftAsIs = segmentsOf(walls.filter((_, i) => pad.leave[i]));
  const about = rulesAbout(footprint, graded, gradedWalls, rules);
  const uniform = !pad.sides;
  const planes = pad.corners === "mitred" ? mitredPlanes(footprint, pad, rules) : null;
  const edge = oneEdge(rules);
  return (x, y, limits) => {
    if (planes && everyWall && edge !== null) {
      byPlanes(planes(x, y), edge, limits);
      return;
    }
    const distance = nearestSegment(all, x, y, found).distance;
    if (pad.leave[found.segment]) {
      besideLeft(distance, x, y, limits);
      return;
    }
    if (!everyWall) nearestSegment(graded, x, y, found);
    const { segment: k, along } = found;
    const wall = gradedWalls[k] as number;
    const rule = rules[wall] as SideRule;
    if (uniform && !planes) {
      byDistance(distance, 0, rule, limits);
      return;
    }
    const next = neighbour(graded, gradedWalls, walls.length, k, along);
    const here = uniform ? rule : about.at(x, y, k, found.distance, toLeft(x, y));
    const pastEnd = along < 0 || along > (graded[k * 5 + 4] as number);
    // Round the free end of a graded side the earth runs as a cone.
    if (planes && (next !== null || !pastEnd)) byPlanes(planes(x, y), here.edgeAboveFloor, limits);
    else byDistance(distance, 0, here, limits);
  };

  /** How far the nearest side is that is left as it is. */
  function toLeft(x: number, y: number): number {
    return leftAsIs.length > 0 ? nearestSegment(leftAsIs, x, y, found).distance : Number.POSITIVE_INFINITY;
  }

  /**
   * From the nearest graded side, and the others as far as they would stand over it in fill, under it in cut: the less, the
   * nearer the place is to that side's own ground, so that none reaches on in front of another.
   */
  function besideLeft(distance: number, x: number, y: number, limits: Limits) {
    const nearest = nearestSegment(graded, x, y, found).segment;
    const beyond = found.distance - distance;
    byDistance(distance, beyond, about.ofWall(nearest, x, y), limits);
    const { lower, upper, core } = limits;
    let [most, least] = [lower, upper];
    for (let k = 0; k < gradedWalls.length; k++) {
      const farther = distanceTo(graded, k, x, y) - distance;
      if (k === nearest || !(farther > 0)) continue;
      byDistance(distance, farther, about.ofWall(k, x, y), limits);
      const share = beyond / farther;
      most = Math.max(most, lower + (limits.lower - lower) * share);
      least = Math.min(least, upper + (limits.upper - upper) * share);
    }
    limits.lower = most;
    limits.upper = Math.max(most, least);
    limits.core = core;
  }
}

/** The height of the finished ground at the walls where all sides have one; else null. */
function oneEdge([first, ...others]: readonly SideRule[]): number | null {
  if (!first) return null;
  return others.every(({ edgeAboveFloor }) => edgeAboveFloor === first.edgeAboveFloor)
    ? first.edgeAboveFloor
    : null;
}

function byPlanes({ lower, upper, room }: Planes, edge: number, limits: Limits): void {
  limits.lower = edge + lower;
  limits.upper = edge + upper;
  limits.share = 1;
  limits.core = room >= 0;
  limits.stone = 0;
}

const leaveAlone = (_x: number, _y: number, limits: Limits): void => {
  limits.lower = Number.NEGATIVE_INFINITY;
  limits.upper = Number.POSITIVE_INFINITY;
  limits.share = 0;
  limits.core = false;
  limits.stone = 0;
};
