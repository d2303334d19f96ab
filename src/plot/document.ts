/** The document's tapes, deed and setbacks as the functions of this room take them. */

import type { Deed, Lot, Point, Shot, Staking, Tape } from "../document/schema";
import { closeTraverse, type DeedCall, type Traverse, traverseLines } from "./deed";
import { levelLength } from "./rightAngles";
import type { LineSetback } from "./setbacks";
import type { TapedLength } from "./squaring";

export interface LevelTape extends TapedLength {
  readonly id: string;
  /** Taped - level length: 0 for a tape that was held level. */
  readonly lost: number;
}

export interface UnleveledTape {
  readonly id: string;
  readonly why: "no-height" | "too-steep" | "no-corner";
}

/** Heights of the building's corners, from the shots that stand on them; the last one read counts. */
export function cornerHeights(
  shots: readonly Shot[],
  points: readonly { readonly shot: string; readonly height: number | null }[],
): ReadonlyMap<number, number> {
  const corner = new Map(
    shots.flatMap(({ id, place }) => (place.kind === "corner" ? [[id, place.corner] as const] : [])),
  );
  return new Map(
    points.flatMap(({ shot, height }) => {
      const at = corner.get(shot);
      return at === undefined || height === null ? [] : [[at, height] as const];
    }),
  );
}

/** Tapes turned level: what lay on the slope is shortened by the heights at its ends. `names` are the corners'. */
export function levelTapes(
  { tapes }: Staking,
  names: readonly string[],
  heights: ReadonlyMap<number, number>,
): { readonly level: readonly LevelTape[]; readonly left: readonly UnleveledTape[] } {
  const level: LevelTape[] = [];
  const left: UnleveledTape[] = [];
  for (const tape of tapes) {
    const found = levelOne(tape, names, heights);
    if (typeof found === "string") left.push({ id: tape.id, why: found });
    else level.push(found);
  }
  return { level, left };
}

function levelOne(
  { id, from, to, length, held }: Tape,
  names: readonly string[],
  heights: ReadonlyMap<number, number>,
): LevelTape | UnleveledTape["why"] {
  const [first, second] = [names[from], names[to]];
  if (first === undefined || second === undefined) return "no-corner";
  const ends = { id, from: first, to: second };
  if (held === "level") return { ...ends, distance: length.m, lost: 0 };
  const [low, high] = [heights.get(from), heights.get(to)];
  if (low === undefined || high === undefined) return "no-height";
  const level = levelLength(length.m, high - low);
  return level === null ? "too-steep" : { ...ends, distance: level, lost: length.m - level };
}

/** The deed's courses, as they are closed. */
export function deedCalls({ courses }: Deed): DeedCall[] {
  return courses.map(({ bearing, distance, curve }) => ({
    bearing: bearing.radians,
    distance: distance.m,
    curve: curve === null ? null : { radius: curve.radius.m, turns: curve.turns },
  }));
}

/**
 * The lot's corners on the plan from its deed, null while it can't be closed. `north` is the plan's: true north, radians
 * clockwise from the y axis.
 */
export function deedOutline(
  deed: Deed,
  north: Lot["north"],
): {
  readonly outline: readonly Point[];
  /** Each course: where it begins, then the places along its curve. */
  readonly lines: readonly (readonly Readonly<Point>[])[];
  readonly traverse: Traverse;
} | null {
  const calls = deedCalls(deed);
  const closed = closeTraverse(calls);
  if (!closed.ok) return null;
  const lines = traverseLines(calls, closed.traverse, {
    start: deed.start,
    turn: north + deed.turn,
    adjust: deed.adjust,
  });
  return { outline: lines.flat().map(([x, y]): Point => [x, y]), lines, traverse: closed.traverse };
}

export function lineSetbacks({ setbacks }: Lot): LineSetback[] {
  return setbacks.map(({ line, distance }) => ({ line, distance: distance.m }));
}
