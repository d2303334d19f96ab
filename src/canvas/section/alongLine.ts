/** The ground as it is and finished along a section line that a person drew. */

import type { Point, Project } from "../../document";
import { containsPoint, crossingShares } from "../../geometry";
import type { Results, SectionLine } from "../../solve/results";
import { readPlace } from "../overlays/readPlace";

const samples = 240;

/**
 * A section line as the strip draws it, its first place on the left.
 *
 * Units   metres: distance from the line's first place, heights.
 * Method  read at even steps the way the pointer reads a place. Where the line runs beyond the ground's reach it is cut
 *         short; null where it has none at all.
 */
export function sectionAlong(
  [from, to]: readonly [Point, Point],
  project: Project,
  results: Results,
  floor: number | null,
): SectionLine | null {
  const at = (i: number): Point => {
    const share = i / (samples - 1);
    return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
  };
  const readings = Array.from({ length: samples }, (_, i) => readPlace(results, project, at(i), floor));
  const first = readings.findIndex((reading) => reading !== null);
  const after = readings.findIndex((reading, i) => i > first && reading === null);
  const last = after < 0 ? samples - 1 : after - 1;
  if (first < 0 || last <= first) return null;
  const step = Math.hypot(to[0] - from[0], to[1] - from[1]) / (samples - 1);
  const read = readings.slice(first, last + 1).flatMap((reading) => (reading ? [reading] : []));
  const [start, end] = [at(first), at(last)];
  return {
    existing: Float64Array.from(read.flatMap(({ ground }, i) => [i * step, ground])),
    finished: Float64Array.from(read.flatMap(({ ground, finished }, i) => [i * step, finished ?? ground])),
    guessed: Uint8Array.from(read, ({ guessed }) => (guessed ? 1 : 0)),
    start: [...start],
    end: [...end],
    building: through(project.building?.outline ?? [], start, end),
  };
}

/** Distances at which the line enters the building for the first and leaves it for the last time; null where it misses. */
function through(outline: readonly Point[], start: Point, end: Point): [number, number] | null {
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const shares = outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length] as Point;
    const crossing = crossingShares(start, end, a, b);
    return crossing && crossing[0] >= 0 && crossing[0] <= 1 && crossing[1] >= 0 && crossing[1] <= 1
      ? [crossing[0]]
      : [];
  });
  if (containsPoint(outline, start[0], start[1])) shares.push(0);
  if (containsPoint(outline, end[0], end[1])) shares.push(1);
  const [near, far] = [Math.min(...shares), Math.max(...shares)];
  return far - near > 1e-9 ? [near * length, far * length] : null;
}
