/**
 * Which side's slope stands at a place, and how far the place lies in front of it.
 *
 * Units   metres.
 * Method  Round corners: the nearest graded wall, by true distance. Mitred: the wall whose plane is built there, square to
 *         it; but round the free end of a wall beside one that is left as it is, the earth runs as a cone.
 */
import { neighbour } from "./corner-share";
import { mitredPlanes } from "./mitre";
import type { GradingPlan } from "./plan";
import { nearestSegment, nowhere, segmentsOf } from "./wall-distance";

export interface SideThere {
  readonly wall: number;
  readonly out: number;
}

/** Null where every side is left as it is. */
export function sidesAt({
  footprint,
  pad,
}: Pick<GradingPlan, "footprint" | "pad">):
  | ((x: number, y: number) => { readonly fill: SideThere; readonly cut: SideThere })
  | null {
  const { walls } = footprint;
  const gradedWalls = walls.flatMap((_, i) => (pad.leave[i] ? [] : [i]));
  if (gradedWalls.length === 0) return null;
  const graded = segmentsOf(gradedWalls.map((i) => walls[i] as (typeof walls)[number]));
  const found = nowhere();
  const rules = walls.map((_, i) => pad.sides?.[i] ?? pad);
  const planes = pad.corners === "mitred" ? mitredPlanes(footprint, pad, rules) : null;
  return (x, y) => {
    const { segment, along, distance } = nearestSegment(graded, x, y, found);
    const pastEnd = along < 0 || along > (graded[segment * 5 + 4] as number);
    const free = pastEnd && neighbour(graded, gradedWalls, walls.length, segment, along) === null;
    if (!planes || free) {
      const nearest = { wall: gradedWalls[segment] as number, out: distance };
      return { fill: nearest, cut: nearest };
    }
    const { fillWall, fillOut, cutWall, cutOut } = planes(x, y);
    return { fill: { wall: fillWall, out: fillOut }, cut: { wall: cutWall, out: cutOut } };
  };
}
