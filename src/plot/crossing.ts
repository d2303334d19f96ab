/** Starts for squaring: corners placed one after the other where two tapes cross. */
import { circlesMeet, type Point } from "../geometry";
import type { SquaringFault, TapedLength } from "./squaring";

export type Places = Map<string, Point>;

/** One way of placing the corners: at each crossing of two tapes there are two places to choose from. */
interface Placing {
  readonly places: Places;
  /** How far the tapes so far miss. */
  readonly misfit: number;
}

/** Ways kept at each corner, the best fitting first; and of those, how many are adjusted to see which is right. */
const WAYS = 64;
const TRIED = 12;
/** Tapes that cross more aslant than this (sine) fix no corner. */
const TOO_ASLANT = 0.02;

/** One corner after the other where two tapes from placed corners cross, beginning at the first tape that leads to all. */
export function placeByCrossing(
  tapes: readonly TapedLength[],
  names: readonly string[],
): { readonly ok: true; readonly ways: readonly Places[] } | ({ readonly ok: false } & SquaringFault) {
  let farthest: Places = new Map();
  for (const base of tapes) {
    let ways: readonly Placing[] = [{ places: placedBase(base), misfit: 0 }];
    while (ways[0] !== undefined && ways[0].places.size < names.length) {
      if (ways[0].places.size > farthest.size) farthest = ways[0].places;
      const next = ways.flatMap((way) => placeNext(way, tapes, names));
      ways = next.sort((a, b) => a.misfit - b.misfit).slice(0, WAYS);
    }
    if (ways.length > 0)
      return { ok: true, ways: ways.slice(0, TRIED).map(({ places }) => framed(places, tapes[0] ?? base)) };
  }
  return { ok: false, ...unheld(farthest, names) };
}

function placedBase({ from, to, distance }: TapedLength): Places {
  return new Map<string, Point>([
    [from, [0, 0]],
    [to, [distance, 0]],
  ]);
}

/** Turned so that the first tape lies on the x axis from its start; mirrored so that the rest lies to the left of it. */
function framed(places: Places, { from, to }: TapedLength): Places {
  const [ox, oy] = places.get(from) as Point;
  const [tx, ty] = places.get(to) as Point;
  const length = Math.hypot(tx - ox, ty - oy) || 1;
  const [cos, sin] = [(tx - ox) / length, (ty - oy) / length];
  const turned = new Map<string, Point>();
  let above = 0;
  for (const [name, [x, y]] of places) {
    const [dx, dy] = [x - ox, y - oy];
    const side = dy * cos - dx * sin;
    above += side;
    turned.set(name, [dx * cos + dy * sin, side]);
  }
  if (above >= 0) return turned;
  return new Map([...turned].map(([name, [x, y]]) => [name, [x, -y]]));
}

function unheld(places: Places, names: readonly string[]): SquaringFault {
  const loose = names.filter((name) => !places.has(name));
  const one = loose.length === 1;
  return {
    what: `Corner${one ? "" : "s"} ${loose.join(", ")} ${one ? "isn't" : "aren't"} held by two tapes from corners that are: sides alone can swing like a gate.`,
    how: "Measure a diagonal too.",
  };
}

/** Places the corner that most tapes hold, and of those the one whose tapes cross most squarely, at both crossings. */
function placeNext(
  { places, misfit }: Placing,
  tapes: readonly TapedLength[],
  names: readonly string[],
): Placing[] {
  let best: { name: string; held: readonly Held[]; at: readonly Point[]; score: number } | null = null;
  for (const name of names) {
    if (places.has(name)) continue;
    const held = tapesTo(name, tapes, places);
    const cross = squarestCrossing(held);
    if (cross === null || held.length + cross.square <= (best?.score ?? 0)) continue;
    best = { name, held, at: cross.at, score: held.length + cross.square };
  }
  if (best === null) return [];
  const { name, held, at } = best;
  // All on one line so far: the other side would only be the mirror image.
  const choices = places.size === 2 ? at.filter(([, y]) => y >= 0) : at;
  return choices.map((point) => ({
    places: new Map(places).set(name, point),
    misfit: misfit + missOf(point, held),
  }));
}

function squarestCrossing(
  held: readonly Held[],
): { readonly at: readonly Point[]; readonly square: number } | null {
  let best: { at: readonly Point[]; square: number } | null = null;
  held.forEach((one, i) => {
    for (const other of held.slice(i + 1)) {
      const at = crossings(one, other);
      const square = at[0] === undefined ? 0 : squareness(at[0], one.from, other.from);
      if (square > (best?.square ?? TOO_ASLANT)) best = { at, square };
    }
  });
  return best;
}

interface Held {
  readonly from: Point;
  readonly distance: number;
}

function tapesTo(name: string, tapes: readonly TapedLength[], places: Places): Held[] {
  return tapes.flatMap(({ from, to, distance }): Held[] => {
    const other = from === name ? to : to === name ? from : null;
    const at = other === null ? undefined : places.get(other);
    return at === undefined ? [] : [{ from: at, distance }];
  });
}

/** Both crossings, the left one first; where tapes fall short of each other by a slip, the place between. */
function crossings(one: Held, other: Held): Point[] {
  const meet = circlesMeet(one.from, one.distance, other.from, other.distance);
  if (meet) return [meet.left, meet.right];
  const d = Math.hypot(other.from[0] - one.from[0], other.from[1] - one.from[1]);
  if (d === 0) return [];
  const share = one.distance / (one.distance + other.distance);
  return [
    [
      one.from[0] + (other.from[0] - one.from[0]) * share,
      one.from[1] + (other.from[1] - one.from[1]) * share,
    ],
  ];
}

/** Sine of the angle at which two tapes cross. */
function squareness(at: Point, a: Point, b: Point): number {
  const [ax, ay, bx, by] = [a[0] - at[0], a[1] - at[1], b[0] - at[0], b[1] - at[1]];
  return Math.abs(ax * by - ay * bx) / (Math.hypot(ax, ay) * Math.hypot(bx, by) || 1);
}

function missOf(at: Point, held: readonly Held[]): number {
  return held.reduce(
    (sum, { from, distance }) => sum + Math.abs(Math.hypot(at[0] - from[0], at[1] - from[1]) - distance),
    0,
  );
}
