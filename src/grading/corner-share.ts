/**
 * How the rules of the sides run into each other: about the corners between them, and between sides that face each other.
 *
 * Units   metres.
 * Method  Round an outer corner evenly with the angle between the walls' normals; between two walls in one line over a metre
 *         to each side. Where a place lies in front of walls that no outer corner joins, as before an inner corner, over as far
 *         as it lies from the nearest, so that no cliff stands between them however far out: a wall weighs less the
 *         farther it is than the nearest, and the more the place lies round its end.
 * Source  First principles. How far rules run into each other is our own choice.
 */
import { straight } from "./outline-tree";
import type { GradingPlan, SideRule } from "./plan";
import { distanceTo, type Segments } from "./wall-distance";

/** The rules of two sides run into each other at least over this far to each side, m. */
export const blend = 1;

/** Beside a side that is left as it is they don't, m: just more than nothing. */
const leastOver = 1e-9;

/** 1 where the outside lies to the left of the walls as they run, else −1. */
function outwardSide({ walls }: GradingPlan["footprint"]): 1 | -1 {
  const [wall] = walls;
  if (!wall) return 1;
  return wall.along[0] * wall.outward[1] - wall.along[1] * wall.outward[0] > 0 ? 1 : -1;
}

/** The graded wall round the corner that a place is nearer to. */
export function neighbour(
  graded: Segments,
  gradedWalls: readonly number[],
  count: number,
  k: number,
  along: number,
): number | null {
  return nextWall(gradedWalls, count, k, along > (graded[k * 5 + 4] as number) / 2);
}

/** By its number among the graded ones; null where the wall at that end isn't graded. */
function nextWall(gradedWalls: readonly number[], count: number, k: number, atEnd: boolean): number | null {
  const next = gradedWalls.indexOf(((gradedWalls[k] as number) + (atEnd ? 1 : count - 1)) % count);
  return next < 0 ? null : next;
}

/** One end of a graded wall: what it meets there, and how far that turns away, radians. */
interface End {
  readonly kind: "outer" | "inner" | "straight" | "free";
  readonly next: number;
  readonly bend: number;
}

/** The rules at places about the graded walls; what is answered is written anew with each call. */
export interface RulesAbout {
  /** A wall's own rule, round an outer corner with the next one's. */
  readonly ofWall: (k: number, x: number, y: number) => SideRule;
  /**
   * From the nearest graded wall, its distance, and how far a side is that is left as it is: beside that the nearest wall's
   * rule holds.
   */
  readonly at: (x: number, y: number, nearest: number, distance: number, toLeft: number) => SideRule;
}

export function rulesAbout(
  footprint: GradingPlan["footprint"],
  graded: Segments,
  gradedWalls: readonly number[],
  rules: readonly SideRule[],
): RulesAbout {
  const turn = outwardSide(footprint);
  const count = footprint.walls.length;
  const own = gradedWalls.map((wall) => rules[wall] as SideRule);
  const ends = gradedWalls.map((_, k) =>
    [false, true].map((atEnd) => endOf(graded, gradedWalls, count, k, atEnd, turn)),
  );
  const seen = { end: { kind: "free", next: 0, bend: 0 } as End, past: 0, out: 0, share: 0 };
  /** How a place lies to a wall. */
  const look = (k: number, x: number, y: number) => {
    const dx = x - (graded[k * 5] as number);
    const dy = y - (graded[k * 5 + 1] as number);
    const ux = graded[k * 5 + 2] as number;
    const uy = graded[k * 5 + 3] as number;
    const length = graded[k * 5 + 4] as number;
    const along = dx * ux + dy * uy;
    const atEnd = along > length / 2;
    seen.end = ends[k]?.[atEnd ? 1 : 0] as End;
    seen.past = atEnd ? along - length : -along;
    seen.out = turn * (dy * ux - dx * uy);
    seen.share = shareOf(seen.end, seen.past, seen.out);
  };
  const sum = emptySum();
  const ofWall: RulesAbout["ofWall"] = (k, x, y) => {
    look(k, x, y);
    if (seen.share === 0) return own[k] as SideRule;
    clear(sum);
    add(sum, own[k] as SideRule, 1 - seen.share);
    add(sum, own[seen.end.next] as SideRule, seen.share);
    return sum;
  };
  const at: RulesAbout["at"] = (x, y, nearest, distance, toLeft) => {
    const over = Math.max(leastOver, Math.min(Math.max(blend, distance), toLeft - distance));
    clear(sum);
    let total = 0;
    for (let k = 0; k < own.length; k++) {
      const farther = (distanceTo(graded, k, x, y) - distance) / over;
      if (farther >= 1) continue;
      look(k, x, y);
      const { share } = seen;
      const weight = ((1 - farther) / (1 + farther)) * (1 - share) * inFront(seen.end, seen.past, seen.out);
      if (!(weight > 0)) continue;
      total += weight;
      add(sum, own[k] as SideRule, weight * (1 - share));
      if (share > 0) add(sum, own[seen.end.next] as SideRule, weight * share);
    }
    if (total === 0) return own[nearest] as SideRule;
    scale(sum, 1 / total);
    return sum;
  };
  return { ofWall, at };
}

type Sum = { -readonly [K in keyof SideRule]: number };

const emptySum = (): Sum => ({ edgeAboveFloor: 0, fall: 0, width: 0, fillSlope: 0, cutSlope: 0 });

function clear(sum: Sum): void {
  sum.edgeAboveFloor = sum.fall = sum.width = sum.fillSlope = sum.cutSlope = 0;
}

function add(sum: Sum, rule: SideRule, weight: number): void {
  sum.edgeAboveFloor += rule.edgeAboveFloor * weight;
  sum.fall += rule.fall * weight;
  sum.width += rule.width * weight;
  sum.fillSlope += rule.fillSlope * weight;
  sum.cutSlope += rule.cutSlope * weight;
}

function scale(sum: Sum, by: number): void {
  sum.edgeAboveFloor *= by;
  sum.fall *= by;
  sum.width *= by;
  sum.fillSlope *= by;
  sum.cutSlope *= by;
}

/** How far a place has turned from a wall (0) to the next round an outer corner, or along a straight joint (1). */
function shareOf({ kind, bend }: End, past: number, out: number): number {
  if (kind === "straight") return Math.min(1, Math.max(0, 0.5 + 0.5 * (past / blend)));
  if (kind === "outer") return past > 0 ? Math.min(1, Math.atan2(past, out) / bend) : 0;
  return 0;
}

/** How far a place lies in front of a wall, 1 to 0: round the end at an inner corner or a free one ever less. */
function inFront({ kind }: End, past: number, out: number): number {
  if (past <= 0) return out >= 0 ? 1 : 0;
  if (kind === "inner") return Math.max(0, 1 - Math.atan2(past, out) / (Math.PI / 2));
  return kind === "free" ? 1 - Math.atan2(past, out) / Math.PI : 1;
}

function endOf(
  graded: Segments,
  gradedWalls: readonly number[],
  count: number,
  k: number,
  atEnd: boolean,
  turn: 1 | -1,
): End {
  const next = nextWall(gradedWalls, count, k, atEnd);
  if (next === null) return { kind: "free", next: k, bend: 0 };
  const [ax, ay, bx, by] = [k * 5 + 2, k * 5 + 3, next * 5 + 2, next * 5 + 3].map(
    (i) => graded[i] as number,
  ) as [number, number, number, number];
  const bend = -Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * (atEnd ? 1 : -1) * turn;
  return { kind: Math.abs(bend) < straight ? "straight" : bend > 0 ? "outer" : "inner", next, bend };
}
