/** What lies within a convex hull and what beyond it: the measured ground and the guess around it. */
import { clipConvexByHalfPlane, convexPieces, type Point } from "../geometry";

export interface Split {
  readonly inside: readonly Float64Array[];
  readonly outside: readonly Float64Array[];
}

/** The share of a segment that lies in a counter-clockwise convex hull (Cyrus and Beck); null for none. */
function shareInside(
  hull: ArrayLike<number>,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): [number, number] | null {
  let low = 0;
  let high = 1;
  const n = hull.length;
  for (let i = 0; i < n; i += 2) {
    const ax = hull[i] ?? 0;
    const ay = hull[i + 1] ?? 0;
    const ex = (hull[(i + 2) % n] ?? 0) - ax;
    const ey = (hull[(i + 3) % n] ?? 0) - ay;
    const start = ex * (y0 - ay) - ey * (x0 - ax);
    const end = ex * (y1 - ay) - ey * (x1 - ax);
    if (start < 0 && end < 0) return null;
    if (start < 0) low = Math.max(low, start / (start - end));
    else if (end < 0) high = Math.min(high, start / (start - end));
  }
  return high > low ? [low, high] : null;
}

/**
 * Cuts an open line at a convex hull.
 *
 * Units  any; flat x, y. The hull is counter-clockwise and not repeated at its end.
 */
export function splitAtHull(line: ArrayLike<number>, hull: ArrayLike<number>): Split {
  const runs = { inside: [] as number[][], outside: [] as number[][] };
  const add = (side: "inside" | "outside", x0: number, y0: number, x1: number, y1: number) => {
    const last = runs[side][runs[side].length - 1];
    if (last && last[last.length - 2] === x0 && last[last.length - 1] === y0) last.push(x1, y1);
    else runs[side].push([x0, y0, x1, y1]);
  };
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [x0, y0, x1, y1] = [line[i] ?? 0, line[i + 1] ?? 0, line[i + 2] ?? 0, line[i + 3] ?? 0];
    const at = (t: number): [number, number] =>
      t === 0 ? [x0, y0] : t === 1 ? [x1, y1] : [x0 + (x1 - x0) * t, y0 + (y1 - y0) * t];
    if (x0 === x1 && y0 === y1) continue;
    const share = shareInside(hull, x0, y0, x1, y1);
    if (!share) {
      add("outside", x0, y0, x1, y1);
      continue;
    }
    if (share[0] > 0) add("outside", x0, y0, ...at(share[0]));
    add("inside", ...at(share[0]), ...at(share[1]));
    if (share[1] < 1) add("outside", ...at(share[1]), x1, y1);
  }
  const typed = (list: number[][]) => list.map((run) => Float64Array.from(run));
  return { inside: typed(runs.inside), outside: typed(runs.outside) };
}

/**
 * The parts of a polygon beyond a convex hull, as convex rings that don't overlap.
 *
 * Method  a convex piece is cut by one hull edge after another; what lies beyond an edge is kept, what lies
 *         within goes on to the next edge.
 */
export function beyondHull(outline: readonly Point[], hull: ArrayLike<number>): readonly Float64Array[] {
  const kept: Float64Array[] = [];
  for (const piece of convexPieces(outline)) {
    let rest: ArrayLike<number> = Float64Array.from(piece.flat());
    for (let i = 0; i < hull.length && rest.length >= 6; i += 2) {
      const a: Point = [hull[i] ?? 0, hull[i + 1] ?? 0];
      const b: Point = [hull[(i + 2) % hull.length] ?? 0, hull[(i + 3) % hull.length] ?? 0];
      const beyond = clipConvexByHalfPlane(rest, b, a);
      if (beyond.length >= 6) kept.push(Float64Array.from(beyond));
      rest = clipConvexByHalfPlane(rest, a, b);
    }
  }
  return kept;
}
