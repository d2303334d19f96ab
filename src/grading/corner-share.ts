/**
 * How the rules of two sides run into each other about the corner between them.
 *
 * Units   metres.
 * Method  Round an outer corner evenly with the angle between the walls' normals; at an inner corner, and between two walls in one
 *         line, over a metre to each side.
 * Source  First principles.
 */
import { straight } from "./outline-tree";
import type { GradingPlan, SideRule } from "./plan";
import type { Nearest } from "./wall-distance";

/** At inner corners the rules of two sides run into each other over this far to each side, m. */
export const blend = 1;

/** 1 where the outside lies to the left of the walls as they run, else −1. */
export function outwardSide({ walls }: GradingPlan["footprint"]): 1 | -1 {
  const [wall] = walls;
  if (!wall) return 1;
  return wall.along[0] * wall.outward[1] - wall.along[1] * wall.outward[0] > 0 ? 1 : -1;
}

/** The graded wall round the corner that a place is nearer to, or round the end that is asked for. */
export function neighbour(
  graded: Float64Array,
  gradedWalls: readonly number[],
  count: number,
  k: number,
  along: number,
  atEnd = along > (graded[k * 5 + 4] as number) / 2,
): { segment: number; wall: number; atEnd: boolean } | null {
  const wall = ((gradedWalls[k] as number) + (atEnd ? 1 : count - 1)) % count;
  const segment = gradedWalls.indexOf(wall);
  return segment < 0 ? null : { segment, wall, atEnd };
}

/**
 * How far a place has turned from its wall (0) to the next round the corner (1). Null where the corner doesn't matter there.
 */
export function cornerShare(
  graded: Float64Array,
  k: number,
  { segment: next, atEnd }: { readonly segment: number; readonly atEnd: boolean },
  x: number,
  y: number,
  turn: 1 | -1,
  found: Nearest,
): number | null {
  const length = graded[k * 5 + 4] as number;
  const past = atEnd ? found.along - length : -found.along;
  const bend =
    Math.atan2(turnBetween(graded, k, next), dotBetween(graded, k, next)) * (atEnd ? 1 : -1) * turn;
  if (Math.abs(bend) < straight) return -past < blend ? 0.5 - 0.5 * Math.max(0, -past / blend) : null;
  const own = found.across * turn;
  // Outer corner: only beyond the wall's end, in the wedge between the two walls' normals.
  if (bend < 0) return past > 0 ? Math.min(1, Math.max(0, Math.atan2(past, own) / -bend)) : null;
  const dx = x - (graded[next * 5] as number);
  const dy = y - (graded[next * 5 + 1] as number);
  const ux = graded[next * 5 + 2] as number;
  const uy = graded[next * 5 + 3] as number;
  const other = turn * (dy * ux - dx * uy);
  const apart = other - own;
  return other < 0 || apart >= blend ? null : 0.5 - 0.5 * Math.max(0, apart / blend);
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

export function mixed(a: SideRule, b: SideRule, share: number): SideRule {
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
