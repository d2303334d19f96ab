/** Places that are asked for one by one rather than on a grid: corners, sections, normals of walls. */
import type { Point } from "../geometry";
import type { Places } from "./operators";

export function placesAt(
  points: readonly Point[],
  groundHeight: (at: Point) => number,
  covered: Uint8Array = new Uint8Array(points.length),
): Places {
  return {
    x: Float64Array.from(points, ([x]) => x),
    y: Float64Array.from(points, ([, y]) => y),
    existing: Float64Array.from(points, groundHeight),
    covered,
  };
}
