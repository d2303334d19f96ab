/**
 * A direction that is held by a key while something is drawn: what is drawn next keeps to it, wherever the pointer goes.
 *
 * Keys   an arrow: that way along the plan's axes; A: along the line under the pointer; P: perpendicular to it;
 *        T: along the line that touches the round under the pointer; K: keep the present direction. The same key again, or Esc, lets go.
 * Units  metres; radians counter-clockwise.
 */
import type { Point } from "../../document";
import { distance } from "../../geometry";
import { type Round, touchingPlaces } from "./rounds";
import type { SnapEdge } from "./targets";

export interface Lock {
  /** The key that set it and lets it go. */
  readonly key: string;
  /** Unit vector. */
  readonly along: Point;
  /** It goes only this way, not the other. */
  readonly oneWay: boolean;
  /** "locked east". */
  readonly word: string;
  /** A place on the way that catches, and its word. */
  readonly at?: { readonly place: Point; readonly word: string };
}

export const lockKeys = ["ArrowRight", "ArrowUp", "ArrowLeft", "ArrowDown", "a", "p", "t", "k"] as const;
export type LockKey = (typeof lockKeys)[number];

export function isLockKey(key: string): key is LockKey {
  return (lockKeys as readonly string[]).includes(key);
}

export interface LockQuery {
  readonly from: Point;
  /** Where the next place would be now. */
  readonly to: Point;
  /** The line under the pointer; null where there is none. */
  readonly edge: SnapEdge | null;
  /** The round under the pointer, and where the pointer is; null where there is none. */
  readonly circle: { readonly circle: Round; readonly at: Point } | null;
  /** The plan is seen turned by this. */
  readonly turn: number;
}

const axes: readonly { readonly along: Point; readonly word: string }[] = [
  { along: [1, 0], word: "east" },
  { along: [0, 1], word: "north" },
  { along: [-1, 0], word: "west" },
  { along: [0, -1], word: "south" },
];

/** The lock of a key, or what to do first, in words. */
export function lockFor(key: LockKey, { from, to, edge, circle, turn }: LockQuery): Lock | string {
  const quarter = lockKeys.indexOf(key);
  if (quarter < 4) {
    // On a turned plan an arrow means the axis that points most nearly its way on the screen.
    const axis = axes[(((quarter - Math.round(turn / (Math.PI / 2))) % 4) + 4) % 4] as (typeof axes)[number];
    return { key, along: axis.along, oneWay: true, word: `locked ${axis.word}` };
  }
  if (key === "k") {
    const far = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (far < 1e-9) return "Point in a direction first, then press K to keep it.";
    return {
      key,
      along: [(to[0] - from[0]) / far, (to[1] - from[1]) / far],
      oneWay: true,
      word: "direction kept",
    };
  }
  if (key === "t")
    return circle
      ? touching(from, circle)
      : "Point at something round first, like a tree's clear circle or a curve of the lot, then press T.";
  const long = edge ? Math.hypot(edge.b[0] - edge.a[0], edge.b[1] - edge.a[1]) : 0;
  if (!edge || long === 0)
    return `Point at a wall, a lot line or another line first, then press ${key.toUpperCase()}.`;
  const [ux, uy] = [(edge.b[0] - edge.a[0]) / long, (edge.b[1] - edge.a[1]) / long];
  return key === "a"
    ? { key, along: [ux, uy], oneWay: false, word: `locked parallel to ${edge.of}` }
    : { key, along: [-uy, ux], oneWay: false, word: `locked square to ${edge.of}` };
}

/** Along the line that touches a round, on the side of it that is pointed at. */
function touching(from: Point, { circle, at }: NonNullable<LockQuery["circle"]>): Lock | string {
  const { centre, radius, of } = circle;
  const places = touchingPlaces(circle, from);
  const [first] = places;
  if (!first)
    return distance(centre, from) < radius
      ? `From inside ${of} no line touches it. Begin outside it.`
      : `From there no line touches ${of}. Begin elsewhere, or point at another round.`;
  const word = `locked touching ${of}`;
  if (distance(first, from) < 1e-6) {
    // On the round itself: straight on along it, either way.
    const [rx, ry] = [(from[0] - centre[0]) / radius, (from[1] - centre[1]) / radius];
    return { key: "t", along: [-ry, rx], oneWay: false, word };
  }
  const place = places.reduce((best, each) => (distance(each, at) < distance(best, at) ? each : best));
  const far = distance(place, from);
  return {
    key: "t",
    along: [(place[0] - from[0]) / far, (place[1] - from[1]) / far],
    oneWay: true,
    word,
    at: { place, word: "where it touches" },
  };
}
