/**
 * What one step of the floor does to fill, cut and loads.
 *
 * Units   metres, m3 in place, loads of the user's truck.
 * Method  The difference of the curve of volumes half a step above and below the floor. Loose on the truck: sand or gravel under
 *         the slab is brought as stone is, the rest is earth, in the parts that the bill has of them.
 * Source  First principles; swell, shrink and the truck are the user's figures.
 */
import type { Project } from "../document/schema";
import type { CurvePoint, Results } from "./results";

export interface OneStep {
  readonly step: number;
  readonly fill: number;
  readonly cut: number;
  /** Loads of fill more, not rounded up: that is how loads follow the floor; null where nothing is filled. */
  readonly loads: number | null;
}

/** Cut and fill at a floor height, between the curve's points in a straight line; null outside the curve. */
export function curveAt(curve: readonly CurvePoint[], floor: number): CurvePoint | null {
  const index = curve.findIndex((point) => point.floor >= floor);
  const above = curve[index];
  const below = curve[index - 1];
  if (!above) return null;
  if (!below) return above.floor === floor ? above : null;
  const share = (floor - below.floor) / (above.floor - below.floor);
  const mix = (a: number, b: number) => a + share * (b - a);
  return { floor, cut: mix(below.cut, above.cut), fill: mix(below.fill, above.fill) };
}

/** How much more fill (or less cut) one step up of the floor needs, m3; null outside the curve. */
export function moreForOneStep(
  curve: readonly CurvePoint[],
  floor: number,
  step: number,
): { readonly fill: number; readonly cut: number } | null {
  const low = curveAt(curve, floor - step / 2);
  const high = curveAt(curve, floor + step / 2);
  return low && high ? { fill: high.fill - low.fill, cut: high.cut - low.cut } : null;
}

/** One step up from a floor; null outside the curve. */
export function oneStepUp(
  { curve, bill }: Pick<Results, "curve" | "bill">,
  { materials, truck }: Pick<Project, "materials" | "truck">,
  floor: number,
  step: number,
): OneStep | null {
  const more = moreForOneStep(curve, floor, step);
  if (!more) return null;
  const quantity = (id: string) => bill.find((item) => item.id === id)?.quantity ?? 0;
  const fill = quantity("fill");
  const brought = quantity("slab-fill-loose");
  const { swell, shrink, stoneLoose } = materials;
  const loose = brought + ((fill - brought / stoneLoose) / shrink) * swell;
  const loads = fill > 0 ? (more.fill * (loose / fill)) / truck.volume : null;
  return { step, ...more, loads };
}
