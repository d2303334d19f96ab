/**
 * The floor at which the cut just makes the fill: nothing comes in, nothing goes out.
 *
 * Units   metres, m3 (cut in the bank, fill as compacted).
 * Method  Both are reckoned once the topsoil is off. Cut falls and fill grows with the floor, so cut × compacted
 *         per bank − fill falls all the way and its zero is found by halving, on the coarse grid outside the walls
 *         and exactly within them.
 *         Sand or gravel that is brought for under the slab is left out.
 * Source  First principles; what a bank volume makes when compacted is the user's figure.
 */
import type { VolumeCurve } from "../earthwork";
import { finishHeights, type Layout, sumOutside, type Topsoil } from "../grading";
import type { BalanceResult } from "./results";

/** Fine enough for a floor, m. */
const closeness = 1e-4;

export interface BalanceInput {
  readonly coarse: Layout;
  readonly curve: VolumeCurve;
  /** From the floor down to where the earth ends under it, m. */
  readonly earthBelowFloor: number;
  readonly topsoil: Topsoil;
  /** Fill under the floor is brought sand or gravel, which no cut makes. */
  readonly broughtInside: boolean;
  /** Compacted volume for one of bank. */
  readonly shrink: number;
  /** Floors looked at. */
  readonly low: number;
  readonly high: number;
}

export function balance(input: BalanceInput): BalanceResult {
  const heights = new Float64Array(input.coarse.existing.length);
  const at = (floor: number) => moved(input, floor, heights);
  const over = ({ cut, fill }: Moved) => cut * input.shrink - fill;
  if (over(at(input.low)) < 0) return { floor: null, cut: null, fill: null, why: "fill at every floor" };
  if (over(at(input.high)) > 0) return { floor: null, cut: null, fill: null, why: "cut at every floor" };
  let { low, high } = input;
  while (high - low > closeness) {
    const middle = (low + high) / 2;
    if (over(at(middle)) > 0) low = middle;
    else high = middle;
  }
  const floor = (low + high) / 2;
  return { floor, ...at(floor), why: null };
}

interface Moved {
  readonly cut: number;
  readonly fill: number;
}

function moved(
  { coarse, curve, earthBelowFloor, topsoil, broughtInside }: BalanceInput,
  floor: number,
  heights: Float64Array,
): Moved {
  const outside = sumOutside(coarse, floor, finishHeights(coarse.prepared, floor, heights), topsoil);
  // Lowering the ground by the strip is raising the plane by it.
  const inside = curve.at(floor - earthBelowFloor + topsoil.stripDepth);
  return {
    cut: inside.cut + outside.strippedCut,
    fill: (broughtInside ? 0 : inside.fill) + outside.strippedFill,
  };
}
