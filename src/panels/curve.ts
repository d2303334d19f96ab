/** Reading the curve of volume against floor height. Metres, cubic metres. */
import type { CurvePoint } from "../solve/results";
import { FOOT } from "../units";

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

/** Round heights for an axis: whole feet or round parts of a metre, about `count` of them. */
export function axisHeights(low: number, high: number, feet: boolean, count = 5): number[] {
  const unit = feet ? FOOT : 1;
  const steps = feet ? [0.25, 0.5, 1, 2, 5, 10, 20] : [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];
  const step = steps.find((each) => (high - low) / (each * unit) <= count) ?? steps.at(-1) ?? 1;
  const first = Math.ceil(low / (step * unit) - 1e-9);
  const last = Math.floor(high / (step * unit) + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step * unit);
}
