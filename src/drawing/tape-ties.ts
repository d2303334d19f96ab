/** Tape distances that find the building's corners again on the lot. */
import { soundLot } from "../document/lot";
import type { Project } from "../document/schema";
import { centroid, distance, type Point } from "../geometry";
import type { Results } from "../solve/results";
import { compass } from "../units";

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
  /** While the mark has no place: from another known point instead; null where no two tapes cross well. */
  readonly instead: TapeTie | null;
  /** From the nearest other known point whose tape crosses the first well; null where there is none. */
  readonly other: TapeTie | null;
}

/** Two tapes that cross at a flatter angle than this don't fix a place, radians. */
const leastCrossing = Math.PI / 6;

/** The lot's corners by the wind they lie in; corners that share a wind have no name and are left out. */
function lotCorners({ lot }: Project): Known[] {
  const { outline } = soundLot(lot);
  if (outline.length < 3) return [];
  const middle = centroid(outline);
  const named = outline.map((at): Known => {
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

/** The shortest two tapes, taken together, that cross well at a place; null where there are none. */
function shortestPair(at: Point, points: readonly Known[]): readonly [Known, Known] | null {
  let best: readonly [Known, Known] | null = null;
  let shortest = Number.POSITIVE_INFINITY;
  for (const [i, a] of points.entries()) {
    for (const b of points.slice(i + 1)) {
      const length = distance(at, a.at) + distance(at, b.at);
      if (length >= shortest || crossing(at, a.at, b.at) < leastCrossing) continue;
      best = distance(at, a.at) <= distance(at, b.at) ? [a, b] : [b, a];
      shortest = length;
    }
  }
  return best;
}

/**
 * Two ties for each corner: from the mark, and from the nearest lot corner, other mark or corner already found. While
 * the mark has no place both are from such points.
 *
 * Units   metres, level distances.
 * Method  only tapes that cross at 30° or more are taken together, so that a slip in one length doesn't shift the
 *         corner by much more. A corner counts as found once it has two tapes itself.
 * Source  First principles.
 */
export function tapeTies(project: Project, results: Results): readonly CornerTies[] {
  const { mark } = results.survey;
  const from = mark?.at ?? null;
  const known = [...lotCorners(project), ...otherMarks(project, results)];
  return results.corners.map(({ name, x, y }): CornerTies => {
    const at: Point = [x, y];
    const tie = (point: Known): TapeTie => ({ to: point.name, length: distance(at, point.at) });
    const fromMark = mark && from ? tie({ name: mark.name, at: from }) : null;
    let pair: readonly [Known | null, Known | null] = shortestPair(at, known) ?? [null, null];
    if (from) {
      const [nearest] = known
        .filter((point) => crossing(at, from, point.at) >= leastCrossing)
        .sort((a, b) => distance(at, a.at) - distance(at, b.at));
      pair = [null, nearest ?? null];
    }
    const [instead, other] = pair;
    if (other) known.push({ name: `corner ${name}`, at });
    return {
      corner: name,
      fromMark,
      instead: instead && tie(instead),
      other: other && tie(other),
    };
  });
}
