/** Heights on the axis of a chart. Metres. */
import { FOOT } from "../units";

/** Round heights for an axis: whole feet or round parts of a metre, about `count` of them. */
export function axisHeights(low: number, high: number, feet: boolean, count = 5): number[] {
  const unit = feet ? FOOT : 1;
  const steps = feet ? [0.25, 0.5, 1, 2, 5, 10, 20] : [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];
  const step = steps.find((each) => (high - low) / (each * unit) <= count) ?? steps.at(-1) ?? 1;
  const first = Math.ceil(low / (step * unit) - 1e-9);
  const last = Math.floor(high / (step * unit) + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step * unit);
}
