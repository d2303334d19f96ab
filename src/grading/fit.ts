/**
 * Fitting into the space: the slope, or the wall, that makes cut or fill stop at a line.
 *
 * Units   metres; slopes run for one of rise.
 * Method  At places along the line: how far beyond the apron it lies, and how high the apron's edge stands over the
 *         ground there. Run over height is the slope that ends just there; the present slope's height over the ground
 *         is the wall that would hold it. The worst place counts.
 * Source  First principles.
 */
import { cornerDistances, type Point, pointAlong } from "../geometry";
import type { SlopeFit } from "../solve/results";
import type { HeightOfGround } from "./ground-shapes";
import type { GradingPlan } from "./plan";
import { nearestSegment, nowhere, segmentsOf } from "./wall-distance";

export interface NamedLine {
  readonly name: string;
  readonly points: readonly Point[];
}

const spacing = 0.5;
/** A slope this little over the ground at the line stops there, m. */
const stops = 0.01;

/** What would make the building's side slopes stop at a line, for fill and for cut; empty where they stop before it. */
export function fitToLine(
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
  line: NamedLine,
): SlopeFit[] {
  const { walls } = plan.footprint;
  const gradedWalls = walls.flatMap((_, i) => (plan.pad.leave[i] ? [] : [i]));
  if (gradedWalls.length === 0) return [];
  const segments = segmentsOf(gradedWalls.map((i) => walls[i] as (typeof walls)[number]));
  const found = nowhere();
  const fill = worst();
  const cut = worst();
  for (const at of placesOn(line.points)) {
    nearestSegment(segments, at[0], at[1], found);
    const rule = plan.pad.sides?.[gradedWalls[found.segment] as number] ?? plan.pad;
    const out = found.distance - rule.width;
    const over = floor + rule.edgeAboveFloor - rule.fall * Math.min(found.distance, rule.width) - ground(at);
    note(fill, at, out, over, over - Math.max(0, out) / rule.fillSlope);
    note(cut, at, out, -over, -over - Math.max(0, out) / rule.cutSlope);
  }
  return [
    ...(fill.at
      ? [{ line: line.name, what: "fill" as const, at: fill.at, slope: fill.slope, wallHeight: fill.height }]
      : []),
    ...(cut.at
      ? [{ line: line.name, what: "cut" as const, at: cut.at, slope: cut.slope, wallHeight: cut.height }]
      : []),
  ];
}

interface Worst {
  at: [number, number] | null;
  height: number;
  slope: number | null;
}

const worst = (): Worst => ({ at: null, height: stops, slope: Number.POSITIVE_INFINITY });

/** `over`: the apron's edge over the ground at the place; `height`: the slope over it. Both count downwards in cut. */
function note(so: Worst, at: Point, out: number, over: number, height: number): void {
  if (height <= stops) return;
  if (out <= 0) so.slope = null;
  else if (so.slope !== null) so.slope = Math.min(so.slope, out / over);
  if (height > so.height || !so.at) {
    so.height = height;
    so.at = [...at];
  }
}

function placesOn(points: readonly Point[]): Point[] {
  const length = cornerDistances(points)[points.length - 1] ?? 0;
  if (length === 0) return points.slice(0, 1);
  const pieces = Math.max(1, Math.ceil(length / spacing));
  return Array.from({ length: pieces + 1 }, (_, i) => pointAlong(points, (length * i) / pieces).at);
}
