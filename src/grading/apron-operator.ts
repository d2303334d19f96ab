/**
 * The building pad with its apron and side slopes.
 *
 * Units   metres; side slopes are run for one of rise.
 * Method  The nearest wall gives distance and rules. Round corners: true distance, so slopes run round them as cones,
 *         from one side's rules to the next side's evenly with the angle. Mitred: the greater of the two distances
 *         square to the walls, so slopes meet in an edge. At inner corners rules change over a metre to each side.
 * Source  First principles.
 */
import { boundsOf } from "../geometry";
import { grown } from "./boxes";
import { apronId, type Limits, type Operator } from "./operator";
import type { GradingPlan, SideRule } from "./plan";
import { type Nearest, nearestSegment, nowhere, segmentsOf } from "./wall-distance";

/** At inner corners the rules of two sides run into each other over this far to each side, m. */
const blend = 1;

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
 * Distance to the walls, and how much farther the nearest graded wall is where the nearest wall leaves the
 * ground as it is: there the earth slopes off to the side, so that no cliff stands at the corner.
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
  const turn = outwardSide(footprint);
  const uniform = !pad.sides;
  const mitred = pad.corners === "mitred";
  return (x, y, limits) => {
    let distance = nearestSegment(all, x, y, found).distance;
    let beyond = 0;
    if (!everyWall) beyond = nearestSegment(graded, x, y, found).distance - distance;
    const k = found.segment;
    const wall = gradedWalls[k] as number;
    const rule = rules[wall] as SideRule;
    if (uniform && !mitred) {
      byDistance(distance, beyond, rule, limits);
      return;
    }
    const next = neighbour(graded, gradedWalls, walls.length, k, found.along);
    const turned = next && cornerShare(graded, k, next.segment, next.atEnd, x, y, turn, found);
    if (!turned) {
      byDistance(distance, beyond, rule, limits);
      return;
    }
    if (mitred && turned.outer) distance = Math.min(distance, Math.max(turned.own, turned.other));
    byDistance(
      distance,
      beyond,
      uniform ? rule : mixed(rule, rules[next.wall] as SideRule, turned.share),
      limits,
    );
  };
}

const leaveAlone = (_x: number, _y: number, limits: Limits): void => {
  limits.lower = Number.NEGATIVE_INFINITY;
  limits.upper = Number.POSITIVE_INFINITY;
  limits.share = 0;
  limits.core = false;
  limits.stone = 0;
};

/** 1 where the outside lies to the left of the walls as they run, else −1. */
function outwardSide({ walls }: GradingPlan["footprint"]): 1 | -1 {
  const [wall] = walls;
  if (!wall) return 1;
  return wall.along[0] * wall.outward[1] - wall.along[1] * wall.outward[0] > 0 ? 1 : -1;
}

/** The graded wall round the corner that a place is nearer to. */
function neighbour(
  graded: Float64Array,
  gradedWalls: readonly number[],
  count: number,
  k: number,
  along: number,
): { segment: number; wall: number; atEnd: boolean } | null {
  const atEnd = along > (graded[k * 5 + 4] as number) / 2;
  const wall = ((gradedWalls[k] as number) + (atEnd ? 1 : count - 1)) % count;
  const segment = gradedWalls.indexOf(wall);
  return segment < 0 ? null : { segment, wall, atEnd };
}

/**
 * How far a place has turned from its wall (0) to the next round the corner (1), and its distances square to both.
 * Null where the corner doesn't matter there.
 */
function cornerShare(
  graded: Float64Array,
  k: number,
  next: number,
  atEnd: boolean,
  x: number,
  y: number,
  turn: 1 | -1,
  found: Nearest,
): { share: number; own: number; other: number; outer: boolean } | null {
  const length = graded[k * 5 + 4] as number;
  const own = found.across * turn;
  const dx = x - (graded[next * 5] as number);
  const dy = y - (graded[next * 5 + 1] as number);
  const ux = graded[next * 5 + 2] as number;
  const uy = graded[next * 5 + 3] as number;
  const other = turn * (dy * ux - dx * uy);
  const bend = turnBetween(graded, k, next) * (atEnd ? 1 : -1) * turn;
  if (bend < 0) {
    // Outer corner: only beyond the wall's end, in the wedge between the two walls' normals.
    const past = atEnd ? found.along - length : -found.along;
    if (past <= 0) return null;
    const wedge = Math.acos(Math.min(1, Math.max(-1, dotBetween(graded, k, next))));
    const angle = Math.atan2(past, own);
    return { share: wedge > 0 ? Math.min(1, Math.max(0, angle / wedge)) : 0, own, other, outer: true };
  }
  if (other < 0) return null;
  const apart = other - own;
  return apart >= blend ? null : { share: 0.5 - 0.5 * Math.max(0, apart / blend), own, other, outer: false };
}

function turnBetween(s: Float64Array, a: number, b: number): number {
  return (
    (s[a * 5 + 2] as number) * (s[b * 5 + 3] as number) - (s[a * 5 + 3] as number) * (s[b * 5 + 2] as number)
  );
}

function dotBetween(s: Float64Array, a: number, b: number): number {
  return (
    (s[a * 5 + 2] as number) * (s[b * 5 + 2] as number) + (s[a * 5 + 3] as number) * (s[b * 5 + 3] as number)
  );
}

function mixed(a: SideRule, b: SideRule, share: number): SideRule {
  if (share === 0 || a === b) return a;
  const mix = (p: number, q: number) => p + (q - p) * share;
  return {
    edgeAboveFloor: mix(a.edgeAboveFloor, b.edgeAboveFloor),
    fall: mix(a.fall, b.fall),
    width: mix(a.width, b.width),
    fillSlope: mix(a.fillSlope, b.fillSlope),
    cutSlope: mix(a.cutSlope, b.cutSlope),
  };
}
