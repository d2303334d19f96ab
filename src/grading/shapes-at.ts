/**
 * Which shapes of the plan, beside the building's pad, change the ground at a place.
 *
 * Units   metres.
 * Method  Each act works on the ground as it is, alone. One that does at least half of what all together come to, and the
 *         same way, is named; so where several come to a place each is. A place where nothing ends up changed has none.
 * Source  First principles; the half is our own choice.
 */
import type { Point } from "../geometry";
import type { HeightOfGround } from "./ground-shapes";
import { apronId, noLimits } from "./operator";
import { operatorsOf } from "./operators";
import type { GradingPlan } from "./plan";

/** This share of the whole change makes a shape one that is named. */
const named = 0.5;

/**
 * Ids of the shapes, in the order of work, from a place and its finished over its existing height; the building's own
 * pad with its slopes goes by `apronId`.
 */
export function shapesAt(
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
): (at: Point, depth: number) => string[] {
  const operators = operatorsOf(plan);
  const limits = noLimits();
  return (at, depth) => {
    const existing = ground(at);
    const ids = operators.flatMap((operator) => {
      operator.limitsAt(at[0], at[1], existing, limits);
      const rise = limits.share * floor;
      const alone = Math.min(Math.max(existing, limits.lower + rise), limits.upper + rise) - existing;
      return alone * Math.sign(depth) > named * Math.abs(depth) ? [operator.id] : [];
    });
    return [...new Set(ids)];
  };
}

/** As `shapesAt`, without the building's own pad. */
export function othersAt(
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
): (at: Point, depth: number) => string[] {
  const shapes = shapesAt(plan, ground, floor);
  return (at, depth) => shapes(at, depth).filter((id) => id !== apronId);
}
