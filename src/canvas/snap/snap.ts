/**
 * The one snapping service: from a place under the pointer to the place that was meant, with a word for it.
 *
 * Order   a marked place (corner, door, shot, middle) before an edge, an edge before a direction, a direction
 *         before round lengths. An edge met in a kept direction is both at once.
 * Units   metres, radians.
 */
import type { Point } from "../../document";
import { crossingShares, distance, nearestShare } from "../../geometry";
import type { SnapDirection, SnapEdge, SnapPoint, SnapTargets, SnapTie } from "./targets";

export interface SnapQuery {
  readonly at: Point;
  readonly targets: SnapTargets;
  /** How far a target reaches, m (some pixels at the present zoom). */
  readonly reach: number;
  /** The place before: gives directions and a length from it. */
  readonly from?: Point | undefined;
  /** Lengths from `from` are rounded to this, m. */
  readonly step?: number | undefined;
}

export interface Snap {
  readonly at: Point;
  /** What it snapped to, in words; null when it is just where the pointer is. */
  readonly word: string | null;
  readonly tie: SnapTie | null;
  /** Where a kept direction starts, to draw a thin guide from. */
  readonly guide: Point | null;
}

/** Directions are kept within this angle or the reach, whichever is less. */
const directionTolerance = (4 * Math.PI) / 180;

export function snap(query: SnapQuery): Snap {
  const point = nearestPoint(query);
  if (point) return { at: point.at, word: point.word, tie: point.tie ?? null, guide: null };
  const direction = nearestDirection(query);
  const edge = nearestEdge(query);
  if (edge && direction && query.from) {
    const meeting = edgeInDirection(query, query.from, direction, edge);
    if (meeting) return meeting;
  }
  if (edge) return { at: onEdge(edge, query.at), word: edge.word, tie: null, guide: null };
  if (direction && query.from) return inDirection(query, query.from, direction);
  return { at: roundLength(query), word: null, tie: null, guide: null };
}

/** No snapping: the place as it is. */
export function unsnapped(at: Point): Snap {
  return { at, word: null, tie: null, guide: null };
}

function nearestPoint({ at, targets, reach }: SnapQuery): SnapPoint | null {
  let best: SnapPoint | null = null;
  let bestDistance = reach;
  for (const point of targets.points) {
    // Cheap rejection first: a plan may have thousands of shots.
    if (Math.abs(point.at[0] - at[0]) > bestDistance || Math.abs(point.at[1] - at[1]) > bestDistance)
      continue;
    const d = distance(point.at, at);
    if (d < bestDistance) {
      best = point;
      bestDistance = d;
    }
  }
  return best;
}

function onEdge(edge: SnapEdge, at: Point): Point {
  const t = nearestShare(edge.a, edge.b, at[0], at[1]);
  return [edge.a[0] + t * (edge.b[0] - edge.a[0]), edge.a[1] + t * (edge.b[1] - edge.a[1])];
}

function nearestEdge({ at, targets, reach }: SnapQuery): SnapEdge | null {
  let best: SnapEdge | null = null;
  let bestDistance = reach;
  for (const edge of targets.edges) {
    const d = distance(onEdge(edge, at), at);
    if (d < bestDistance) {
      best = edge;
      bestDistance = d;
    }
  }
  return best;
}

interface Kept {
  /** Unit vector. */
  readonly along: Point;
  readonly word: string;
}

/** The target direction (or square to it) that the pointer nearly keeps from the place before. */
function nearestDirection({ at, from, targets, reach }: SnapQuery): Kept | null {
  if (!from) return null;
  const length = distance(from, at);
  if (length < reach) return null;
  const pointed = Math.atan2(at[1] - from[1], at[0] - from[0]);
  let best: Kept | null = null;
  let bestOff = Math.min(directionTolerance, reach / length);
  for (const direction of targets.directions) {
    for (let quarter = 0; quarter < 4; quarter++) {
      const angle = direction.angle + (quarter * Math.PI) / 2;
      const off = Math.abs(turnBetween(angle, pointed));
      if (off >= bestOff) continue;
      bestOff = off;
      best = { along: quarterTurned(direction.angle, quarter), word: directionWord(direction, quarter) };
    }
  }
  return best;
}

/** Turned by exact quarters, so that straight north has no trace of east in it. */
function quarterTurned(angle: number, quarter: number): Point {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turns: Point[] = [
    [c, s],
    [-s, c],
    [-c, -s],
    [s, -c],
  ];
  return turns[quarter % 4] as Point;
}

const compass = ["east", "north", "west", "south"] as const;

function directionWord(direction: SnapDirection, quarter: number): string {
  if (direction.of === null) return `straight ${compass[quarter % 4]}`;
  return quarter % 2 === 0 ? `parallel to ${direction.of}` : `square to ${direction.of}`;
}

/** Difference of two directions, from −π to π. */
export function turnBetween(a: number, b: number): number {
  return Math.atan2(Math.sin(b - a), Math.cos(b - a));
}

function inDirection(query: SnapQuery, from: Point, kept: Kept): Snap {
  const [c, s] = kept.along;
  const along = (query.at[0] - from[0]) * c + (query.at[1] - from[1]) * s;
  const length = rounded(along, query.step);
  return {
    at: [from[0] + c * length, from[1] + s * length],
    word: kept.word,
    tie: null,
    guide: from,
  };
}

/** Where a kept direction meets an edge, if that is within reach of the pointer. */
function edgeInDirection(query: SnapQuery, from: Point, kept: Kept, edge: SnapEdge): Snap | null {
  const ahead: Point = [from[0] + kept.along[0], from[1] + kept.along[1]];
  const shares = crossingShares(from, ahead, edge.a, edge.b);
  if (!shares || shares[1] < 0 || shares[1] > 1) return null;
  const at: Point = [
    edge.a[0] + shares[1] * (edge.b[0] - edge.a[0]),
    edge.a[1] + shares[1] * (edge.b[1] - edge.a[1]),
  ];
  if (distance(at, query.at) > query.reach * 1.5) return null;
  return { at, word: `${kept.word}, ${edge.word}`, tie: null, guide: from };
}

function roundLength({ at, from, step }: SnapQuery): Point {
  if (!from || !step) return at;
  const length = distance(from, at);
  if (length === 0) return at;
  const share = rounded(length, step) / length;
  return [from[0] + (at[0] - from[0]) * share, from[1] + (at[1] - from[1]) * share];
}

function rounded(length: number, step: number | undefined): number {
  return step ? Math.round(length / step) * step : length;
}
