/** A crowd of shots is thinned out: at each scale as many are drawn as can be told apart, and only where one looks. */
import type { LevelledPoint, Results } from "../solve/results";
import type { DrawContext } from "./context";

/** Fewer shots than this are all drawn. */
export const crowdFrom = 5000;
/** Shots of a crowd lie at least about this far apart on paper, mm. */
const apart = 2.4;
/** What lies this far beyond what is seen may come into sight by a small move, share of its size. */
const beyond = 0.35;

interface Thinned {
  readonly from: readonly LevelledPoint[];
  readonly left: readonly LevelledPoint[];
}

/** By the drawing in work, so that each of its layers sees the same shots. */
const known = new WeakMap<DrawContext, Thinned>();

/**
 * The shots to draw: of a crowd the first in each square of about 2.4 mm of paper, within what is seen.
 *
 * Method  squares are counted from the plan's origin, so that the same shots stay while one pans.
 */
export function shownShots(results: Results, context: DrawContext): readonly LevelledPoint[] {
  const { points } = results.survey;
  if (points.length < crowdFrom || context.medium === "paper") return points;
  const before = known.get(context);
  if (before?.from === points) return before.left;
  const left = thinned(points, context);
  known.set(context, { from: points, left });
  return left;
}

function thinned(points: readonly LevelledPoint[], { metresPerMm, seen }: DrawContext): LevelledPoint[] {
  const square = apart * metresPerMm;
  const roomX = seen ? (seen.maxX - seen.minX) * beyond : 0;
  const roomY = seen ? (seen.maxY - seen.minY) * beyond : 0;
  const taken = new Set<number>();
  return points.filter(({ at, kind }) => {
    if (!at) return false;
    const [x, y] = at;
    const unseen =
      seen &&
      (x < seen.minX - roomX || x > seen.maxX + roomX || y < seen.minY - roomY || y > seen.maxY + roomY);
    if (unseen) return false;
    // Few shots are of another kind, and those matter.
    if (kind !== "ground") return true;
    const key = Math.floor(y / square) * 4_194_304 + Math.floor(x / square);
    if (taken.has(key)) return false;
    taken.add(key);
    return true;
  });
}
