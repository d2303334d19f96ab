/** How far work stays off what stands on the lot: lines round a place, along a line, outside an area. */
import { isArea } from "../document/features";
import type { Feature } from "../document/schema";
import { type Point, signedArea } from "../geometry";
import { offsetLine } from "./offset";

export interface KeepClearLine {
  /** Flat x, y, plan metres. */
  readonly points: readonly number[];
  readonly closed: boolean;
}

/** Round a place, along both sides of a line, outside an area; none where nothing is to be kept off. */
export function keepClearLines(feature: Feature): readonly KeepClearLine[] {
  const { points, keepClear: reach } = feature;
  const [at] = points;
  if (reach <= 0 || !at) return [];
  if (points.length === 1) return [{ points: circle(at, reach), closed: true }];
  if (isArea(feature)) {
    const around = [...points, at, points[1] as Point];
    const side = signedArea(points) > 0 ? -reach : reach;
    return [{ points: offsetLine(around, side).flat(), closed: false }];
  }
  return [reach, -reach].map((side) => ({ points: offsetLine(points, side).flat(), closed: false }));
}

function circle(at: Point, radius: number): number[] {
  return Array.from({ length: 48 }, (_, k) => {
    const angle = (k / 48) * 2 * Math.PI;
    return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)];
  }).flat();
}
