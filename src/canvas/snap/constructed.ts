/**
 * Places that follow from lines and circles: where two lines cross, the foot of a line drawn square to another, where a
 * line touches a circle, and the lines' own extensions.
 *
 * Units   metres.
 * Source  first principles.
 */
import type { Point } from "../../document";
import { crossingShares, distance, nearestShare } from "../../geometry";
import { touchingPlaces } from "./rounds";
import type { SnapCircle, SnapEdge } from "./targets";

export interface Found {
  readonly at: Point;
  readonly word: string;
}

/** The place at a share of an edge. */
export function atShare({ a, b }: SnapEdge, t: number): Point {
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

/** The place of the edge that lies nearest. */
export function onEdge(edge: SnapEdge, at: Point): Point {
  return atShare(edge, nearestShare(edge.a, edge.b, at[0], at[1]));
}

/** Edges within reach, the nearest first. */
export function edgesNear(edges: readonly SnapEdge[], at: Point, reach: number): SnapEdge[] {
  const near: { edge: SnapEdge; off: number }[] = [];
  for (const edge of edges) {
    const { a, b } = edge;
    // Cheap rejection first: water's edge may have a thousand pieces.
    if (Math.min(a[0], b[0]) - reach > at[0] || Math.max(a[0], b[0]) + reach < at[0]) continue;
    if (Math.min(a[1], b[1]) - reach > at[1] || Math.max(a[1], b[1]) + reach < at[1]) continue;
    const off = distance(onEdge(edge, at), at);
    if (off < reach) near.push({ edge, off });
  }
  return near.sort((one, other) => one.off - other.off).map(({ edge }) => edge);
}

/** Where two edges within reach cross each other. */
export function nearestCrossing(near: readonly SnapEdge[], at: Point, reach: number): Found | null {
  let best: Found | null = null;
  let bestOff = reach;
  for (const [i, one] of near.entries()) {
    for (const other of near.slice(i + 1)) {
      const shares = crossingShares(one.a, one.b, other.a, other.b);
      if (!shares?.every((t) => t > -1e-9 && t < 1 + 1e-9)) continue;
      const place = atShare(one, shares[0]);
      const off = distance(place, at);
      if (off >= bestOff) continue;
      best = { at: place, word: `where ${one.of} and ${other.of} cross` };
      bestOff = off;
    }
  }
  return best;
}

/** The foot of a line from the place before that meets an edge squarely. */
export function nearestFoot(near: readonly SnapEdge[], at: Point, from: Point, reach: number): Found | null {
  for (const edge of near) {
    const [dx, dy] = [edge.b[0] - edge.a[0], edge.b[1] - edge.a[1]];
    const long = dx * dx + dy * dy;
    if (long === 0) continue;
    const t = ((from[0] - edge.a[0]) * dx + (from[1] - edge.a[1]) * dy) / long;
    const foot = atShare(edge, t);
    // A line that already starts on the edge has no foot on it.
    if (t < 0 || t > 1 || distance(foot, from) < 1e-6 || distance(foot, at) >= reach) continue;
    return { at: foot, word: `square to ${edge.of}` };
  }
  return null;
}

/** Where a line from the place before touches a circle. */
export function nearestTangent(
  circles: readonly SnapCircle[],
  at: Point,
  from: Point,
  reach: number,
): Found | null {
  let best: Found | null = null;
  let bestOff = reach;
  for (const circle of circles) {
    for (const place of touchingPlaces(circle, from)) {
      const off = distance(place, at);
      // A line that begins on the round already touches it.
      if (off >= bestOff || distance(place, from) < 1e-6) continue;
      best = { at: place, word: `touching ${circle.of}` };
      bestOff = off;
    }
  }
  return best;
}

/** The nearest place on a whole circle within reach; the lines of an arc are snapped to as lines. */
export function onNearestCircle(circles: readonly SnapCircle[], at: Point, reach: number): Found | null {
  let best: Found | null = null;
  let bestOff = reach;
  for (const { centre, radius, of, arc } of circles) {
    const far = distance(centre, at);
    const off = Math.abs(far - radius);
    if (arc || far === 0 || off >= bestOff) continue;
    const share = radius / far;
    best = {
      at: [centre[0] + (at[0] - centre[0]) * share, centre[1] + (at[1] - centre[1]) * share],
      word: `on ${of}`,
    };
    bestOff = off;
  }
  return best;
}

export interface Extension extends Found {
  /** The end from which the edge goes on. */
  readonly end: Point;
}

/** A place in line with an edge, beyond its end but not farther from it than `longest`. */
export function nearestExtension(
  edges: readonly SnapEdge[],
  at: Point,
  reach: number,
  longest: number,
): Extension | null {
  let best: Extension | null = null;
  let bestOff = reach;
  for (const edge of edges) {
    const [dx, dy] = [edge.b[0] - edge.a[0], edge.b[1] - edge.a[1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) continue;
    const off = Math.abs((at[0] - edge.a[0]) * dy - (at[1] - edge.a[1]) * dx) / length;
    if (off >= bestOff) continue;
    const t = ((at[0] - edge.a[0]) * dx + (at[1] - edge.a[1]) * dy) / (length * length);
    const beyond = (t > 1 ? t - 1 : -t) * length;
    if ((t >= 0 && t <= 1) || beyond > longest) continue;
    best = { at: atShare(edge, t), word: `in line with ${edge.of}`, end: t > 1 ? edge.b : edge.a };
    bestOff = off;
  }
  return best;
}
