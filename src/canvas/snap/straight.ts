/**
 * A corner between two places, so that the lines to both keep a direction: straight east or north, along or square to
 * something drawn. Where only one of them does so near the pointer, that one.
 *
 * Units  metres.
 */
import type { Point } from "../../document";
import { crossingShares, distance } from "../../geometry";
import { type Snap, type SnapQuery, snap } from "./snap";

const directionsOnly = new Set(["directions"] as const);

/** The place near the pointer at which the walls from `before` and `after` lie straight; null where neither does. */
export function straightCorner(query: SnapQuery, before: Point, after: Point): Snap | null {
  // Unrounded, so that each gives its own line: the step is laid on what is left free.
  const { step: _step, lock: _lock, from: _from, own: _own, ...asked } = query;
  const kept = (from: Point) => {
    const found = snap({ ...asked, from, on: directionsOnly });
    return found.word === null ? null : found;
  };
  const [one, two] = [kept(before), kept(after)];
  if (one && two) {
    const shares = crossingShares(before, one.at, after, two.at);
    const at: Point | null = shares && [
      before[0] + shares[0] * (one.at[0] - before[0]),
      before[1] + shares[0] * (one.at[1] - before[1]),
    ];
    if (at && distance(at, query.at) <= 1.5 * query.reach)
      return { at, word: `${one.word} and ${two.word}`, tie: null, guide: before };
  }
  const single = one ? before : two ? after : null;
  return (
    single && snap({ ...asked, ...(query.step && { step: query.step }), from: single, on: directionsOnly })
  );
}
