/** Tape distances that find the building's corners again on the lot. */
import type { Project } from "../document/schema";
import { centroid, distance, type Point } from "../geometry";
import type { Results } from "../solve/results";
import { compass } from "./compass";

export interface Known {
  readonly name: string;
  readonly at: Point;
}

export interface TapeTie {
  readonly to: string;
  readonly length: number;
}

export interface CornerTies {
  readonly corner: string;
  /** From the reference mark; null while it has no place on the plan. */
  readonly fromMark: TapeTie | null;
  /** From the nearest other known point whose tape crosses well; null where there is none. */
  readonly other: TapeTie | null;
}

/** Two tapes that cross at a flatter angle than this don't fix a place, radians. */
const leastCrossing = Math.PI / 6;

/** The lot's corners by the wind they lie in; corners that share a wind have no name and are left out. */
function lotCorners({ lot }: Project): Known[] {
  if (lot.outline.length < 3) return [];
  const middle = centroid(lot.outline);
  const named = lot.outline.map((at): Known => {
    const wind = compass([at[0] - middle[0], at[1] - middle[1]], lot.north);
    return { name: `${wind} lot corner`, at };
  });
  return named.filter((one) => named.filter(({ name }) => name === one.name).length === 1);
}

function otherMarks(project: Project, results: Results): Known[] {
  return project.survey.marks.flatMap(({ id, name, at }) =>
    at && id !== results.survey.mark?.id ? [{ name, at }] : [],
  );
}

/** Angle between the ways from a place to two known points, folded to a quarter turn. */
function crossing(at: Point, a: Point, b: Point): number {
  const [ax, ay, bx, by] = [a[0] - at[0], a[1] - at[1], b[0] - at[0], b[1] - at[1]];
  const turn = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
  return Math.min(turn, Math.PI - turn);
}

/**
 * Two ties for each corner: from the mark, and from the nearest lot corner, other mark or corner already found.
 *
 * Units   metres, level distances.
 * Method  of the second points only those are taken whose tape crosses the first at 30° or more, so that a slip in one
 *         length doesn't shift the corner by much more.
 * Source  First principles.
 */
export function tapeTies(project: Project, results: Results): readonly CornerTies[] {
  const mark = results.survey.mark;
  const known = [...lotCorners(project), ...otherMarks(project, results)];
  return results.corners.map(({ name, x, y }, i): CornerTies => {
    const at: Point = [x, y];
    const found = results.corners.slice(0, i).map((one): Known => {
      return { name: `corner ${one.name}`, at: [one.x, one.y] };
    });
    const tie = (point: Known): TapeTie => ({ to: point.name, length: distance(at, point.at) });
    const from = mark?.at ?? null;
    const crossingWell = [...known, ...found].filter(
      (point) => from === null || crossing(at, from, point.at) >= leastCrossing,
    );
    const [nearest] = crossingWell.map(tie).sort((a, b) => a.length - b.length);
    return {
      corner: name,
      fromMark: mark && from ? tie({ name: mark.name, at: from }) : null,
      other: nearest ?? null,
    };
  });
}
