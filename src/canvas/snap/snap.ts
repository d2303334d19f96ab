/**
 * The one snapping service: from a place under the pointer to the place that was meant, with a word for it.
 *
 * Order   a place (corner, door, shot, mark, middle), then where two lines cross, then the foot of a line drawn square to
 *         another and where a line touches a circle, then a line or circle itself, then a direction, then a line's
 *         extension, then the grid, then round lengths. A line met in a kept direction is both at once. Of several of
 *         one rank the nearest wins. A locked direction is kept whatever else is near.
 * Units   metres, radians.
 */
import type { Point } from "../../document";
import { crossingShares, distance } from "../../geometry";
import type { SnapKind } from "../../store/snapping";
import {
  atShare,
  edgesNear,
  type Found,
  nearestCrossing,
  nearestExtension,
  nearestFoot,
  nearestTangent,
  onEdge,
  onNearestCircle,
} from "./constructed";
import type { Lock } from "./lock";
import { nearestOf } from "./nearby";
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
  /** Places that only the present act knows: the start of the line that is drawn. */
  readonly own?: readonly SnapPoint[] | undefined;
  /** What can be snapped to; missing: everything but the grid. */
  readonly on?: ReadonlySet<SnapKind> | undefined;
  /** Between the lines of the grid, m. */
  readonly grid?: number | undefined;
  /** A direction that is held. */
  readonly lock?: Lock | undefined;
}

export interface Snap {
  readonly at: Point;
  /** What it snapped to, in words; null when it is just where the pointer is. */
  readonly word: string | null;
  readonly tie: SnapTie | null;
  /** Where a kept direction starts, to draw a thin guide from. */
  readonly guide: Point | null;
  /** The guide is drawn on by this to both sides of the place, m. */
  readonly beyond?: Point;
}

const gridWord = "on the grid";

/** Is it on a thing of the plan, not only in a direction or on the grid? */
export function isOnThing({ word, guide }: Snap): boolean {
  return word !== null && word !== gridWord && guide === null;
}

/** Directions are kept within this angle or the reach, whichever is less. */
const directionTolerance = (4 * Math.PI) / 180;
/** Extensions are seen up to this many reaches from the line's end, a held direction's guide as well. */
const extensionReaches = 20;
const guideReaches = 150;

export function snap(query: SnapQuery): Snap {
  if (query.lock && query.from) return locked(query, query.lock, query.from);
  const point = nearestPoint(query);
  if (point) return { at: point.at, word: point.word, tie: point.tie ?? null, guide: null };
  const near = edgesNear(query.targets.edges, query.at, query.reach);
  const built = constructed(query, near);
  if (built) return { ...plain(built), guide: query.from ?? null };
  const direction = nearestDirection(query);
  const edge = isOn(query, "edges") ? near[0] : undefined;
  if (edge && direction && query.from) {
    const meeting = edgeInDirection(query, query.from, direction, edge);
    if (meeting) return meeting;
  }
  if (edge) return plain({ at: onEdge(edge, query.at), word: edge.word });
  const circle = isOn(query, "edges") && onNearestCircle(query.targets.circles, query.at, query.reach);
  if (circle) return plain(circle);
  if (direction && query.from) return inDirection(query, query.from, direction);
  return extended(query) ?? onGrid(query) ?? unsnapped(roundLength(query));
}

/** No snapping: the place as it is. */
export function unsnapped(at: Point): Snap {
  return { at, word: null, tie: null, guide: null };
}

function plain({ at, word }: Found): Snap {
  return { at, word, tie: null, guide: null };
}

function isOn({ on }: SnapQuery, kind: SnapKind): boolean {
  return on ? on.has(kind) : kind !== "grid";
}

function nearestPoint(query: SnapQuery): SnapPoint | null {
  const { at, reach, targets } = query;
  const [places, middles] = [isOn(query, "places"), isOn(query, "middles")];
  const wanted = (point: SnapPoint) => (point.middle ? middles : places);
  const own = nearestOf(query.own ?? [], at, reach, () => true);
  return own ?? nearestOf(targets.points, at, reach, wanted);
}

function constructed(query: SnapQuery, near: readonly SnapEdge[]): Found | null {
  const { at, from, reach, targets } = query;
  const crossing = isOn(query, "crossings") ? nearestCrossing(near, at, reach) : null;
  if (crossing || !from) return crossing;
  const foot = isOn(query, "feet") ? nearestFoot(near, at, from, reach) : null;
  return foot ?? (isOn(query, "tangents") ? nearestTangent(targets.circles, at, from, reach) : null);
}

function extended(query: SnapQuery): Snap | null {
  if (!isOn(query, "extensions")) return null;
  const { at, reach, targets } = query;
  const found = nearestExtension(targets.edges, at, reach, extensionReaches * reach);
  return found && { ...plain(found), guide: found.end };
}

function onGrid(query: SnapQuery): Snap | null {
  const { at, grid } = query;
  if (!grid || !isOn(query, "grid")) return null;
  return plain({ at: [rounded(at[0], grid), rounded(at[1], grid)], word: gridWord });
}

/** In a held direction: across from a place, where it meets a line, or at a round length. */
function locked(query: SnapQuery, { along, oneWay, word, at: catches }: Lock, from: Point): Snap {
  const reached = ([x, y]: Point) => (x - from[0]) * along[0] + (y - from[1]) * along[1];
  const least = query.step || 1e-6;
  const far = reached(query.at);
  // Never no length at all: what is typed next needs a way to go.
  const length = oneWay ? Math.max(least, far) : Math.abs(far) < least ? Math.sign(far || 1) * least : far;
  const [c, s] = [along[0] * guideReaches * query.reach, along[1] * guideReaches * query.reach];
  const put = (t: number, words: string, tie: SnapTie | null = null): Snap => ({
    at: [from[0] + along[0] * t, from[1] + along[1] * t],
    word: words,
    tie,
    guide: from,
    beyond: [c, s],
  });
  const point = nearestPoint(query);
  if (point && (reached(point.at) > 0 || !oneWay) && distance(point.at, from) > 1e-9) {
    const foot = put(reached(point.at), `${word}, across from ${point.word}`);
    if (distance(foot.at, point.at) > 1e-6) return foot;
    const words = query.own?.includes(point) ? point.word : `${word}, ${point.word}`;
    return put(reached(point.at), words, point.tie ?? null);
  }
  if (catches && Math.abs(reached(catches.place) - far) < query.reach)
    return put(reached(catches.place), `${word}, ${catches.word}`);
  const ahead: Point = [from[0] + along[0], from[1] + along[1]];
  for (const edge of isOn(query, "edges") ? edgesNear(query.targets.edges, query.at, query.reach) : []) {
    const shares = crossingShares(from, ahead, edge.a, edge.b);
    const meets = shares && shares[1] > -1e-9 && shares[1] < 1 + 1e-9;
    if (meets && (shares[0] > 1e-9 || (!oneWay && shares[0] < -1e-9)))
      return put(shares[0], `${word}, ${edge.word}`);
  }
  return put(rounded(length, query.step) || length, word);
}

interface Kept {
  /** Unit vector. */
  readonly along: Point;
  readonly word: string;
}

/** The target direction (or square to it) that the pointer nearly keeps from the place before. */
function nearestDirection(query: SnapQuery): Kept | null {
  const { at, from, targets, reach } = query;
  if (!from || !isOn(query, "directions")) return null;
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
  const at = atShare(edge, shares[1]);
  if (distance(at, query.at) > query.reach * 1.5) return null;
  return { at, word: `${kept.word}, ${edge.word}`, tie: null, guide: from };
}

function roundLength(query: SnapQuery): Point {
  const { at, from, step } = query;
  if (!from || !step || !isOn(query, "lengths")) return at;
  const length = distance(from, at);
  if (length === 0) return at;
  const share = rounded(length, step) / length;
  return [from[0] + (at[0] - from[0]) * share, from[1] + (at[1] - from[1]) * share];
}

function rounded(length: number, step: number | undefined): number {
  return step ? Math.round(length / step) * step : length;
}
