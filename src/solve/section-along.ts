/** The ground as it is and finished along a line: one that a person drew, a drive, or across the building. */

import type { Project } from "../document/schema";
import { containsPoint, cornerDistances, crossingShares, type Point, pointAlong } from "../geometry";
import { readPlace } from "./read-place";
import type { Results, SectionLine } from "./results";

const samples = 240;

export interface AlongLine extends SectionLine {
  /** The line on the plan, as far as the section goes. */
  readonly line: readonly Point[];
}

/**
 * A section along a line as the strip draws it, its first place on the left.
 *
 * Units   metres: distance from where the section starts, heights.
 * Method  read at even steps the way the pointer reads a place. Where the line runs beyond the ground's reach it is cut
 *         short; null where it has none at all.
 */
export function sectionAlong(
  line: readonly Point[],
  project: Project,
  results: Results,
  floor: number | null,
): AlongLine | null {
  if (line.length < 2) return null;
  const corners = cornerDistances(line);
  const length = corners[corners.length - 1] ?? 0;
  const at = (i: number): [number, number] => {
    const [x, y] = pointAlong(line, (length * i) / (samples - 1)).at;
    return [x, y];
  };
  const readings = Array.from({ length: samples }, (_, i) => readPlace(results, project, at(i), floor));
  const first = readings.findIndex((reading) => reading !== null);
  const after = readings.findIndex((reading, i) => i > first && reading === null);
  const last = after < 0 ? samples - 1 : after - 1;
  if (first < 0 || last <= first) return null;
  const step = length / (samples - 1);
  const read = readings.slice(first, last + 1).flatMap((reading) => (reading ? [reading] : []));
  const [start, end] = [at(first), at(last)];
  const shown = partOf(line, corners, first * step, last * step);
  return {
    line: shown,
    existing: Float64Array.from(read.flatMap(({ ground }, i) => [i * step, ground])),
    finished: Float64Array.from(read.flatMap(({ ground, finished }, i) => [i * step, finished ?? ground])),
    guessed: Uint8Array.from(read, ({ guessed }) => (guessed ? 1 : 0)),
    start: [...start],
    end: [...end],
    building: through(project.building?.outline ?? [], shown),
  };
}

/** The part of a line between two distances. */
function partOf(
  line: readonly Point[],
  corners: ArrayLike<number>,
  from: number,
  to: number,
): readonly Point[] {
  const inner = line.filter((_, i) => (corners[i] as number) > from && (corners[i] as number) < to);
  return [pointAlong(line, from).at, ...inner, pointAlong(line, to).at];
}

/** Distances at which a line enters the building for the first and leaves it for the last time; null where it misses. */
function through(outline: readonly Point[], line: readonly Point[]): [number, number] | null {
  const found: number[] = [];
  const corners = cornerDistances(line);
  for (let i = 1; i < line.length; i++) {
    const [from, to] = [line[i - 1] as Point, line[i] as Point];
    const [near, far] = [corners[i - 1] as number, corners[i] as number];
    for (const [k, a] of outline.entries()) {
      const b = outline[(k + 1) % outline.length] as Point;
      const crossing = crossingShares(from, to, a, b);
      if (crossing?.every((share) => share >= 0 && share <= 1)) found.push(near + crossing[0] * (far - near));
    }
  }
  const [start, end] = [line[0] as Point, line[line.length - 1] as Point];
  if (containsPoint(outline, start[0], start[1])) found.push(0);
  if (containsPoint(outline, end[0], end[1])) found.push(corners[corners.length - 1] as number);
  const [near, far] = [Math.min(...found), Math.max(...found)];
  return far - near > 1e-9 ? [near, far] : null;
}
