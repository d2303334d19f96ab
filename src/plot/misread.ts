/**
 * Taped lengths that contradict each other by more than taping does: one of them was misread, and no corner is to be moved
 * for it. Which one, where it can be told.
 *
 * Units   any one unit of length, the same in and out.
 * Method  Impossible is a tape longer than two others that join its ends. Else the test of standardized residuals ("data
 *         snooping"): leaving a tape out takes w² σ² off the sum of squared residuals; |w| over 3.29 is a blunder at a
 *         level of 0.1 %. With one spare measure all tapes have the same |w|: then the one counts without which the building
 *         comes out nearest to its plan (or to right angles), if it does so clearly.
 * Source  W. Baarda, A testing procedure for use in geodetic networks, 1968; also in textbooks of adjustment, e.g. Ghilani
 *         (both from memory). A tape good to 1 in 2,500 of the longest length: ordinary taping (common practice).
 */
import type { Point } from "../geometry";
import { outOfSquare } from "./outOfSquare";
import { type Squared, squareUp, type TapedLength } from "./squaring";

export interface Suspect {
  /** Which measure. */
  readonly tape: number;
  /** Taped - what the others make of it. */
  readonly by: number;
  /** The corners by the others; residuals of all measures, this one's too. */
  readonly without: Squared;
}

export interface Misread {
  /** A measure longer than two others that join its ends, and those two. */
  readonly impossible: { readonly tape: number; readonly other: readonly [number, number] } | null;
  /** The one that doesn't fit; null where any of `among` may be it. */
  readonly suspect: Suspect | null;
  readonly among: readonly number[];
}

/** Taping is good to this share of the longest length. */
const TAPING = 1 / 2500;
/** Of a standardized residual: 0.1 % of good measures lie beyond. */
const CRITICAL = 3.29;
/** Clearly nearer to the plan than the next: so many times. */
const CLEARLY = 3;

/** Null where the tapes fit each other as tapes do. `planned` gives the planned corners of a solution, where there is a plan. */
export function misreadTape(
  tapes: readonly TapedLength[],
  planned: (squared: Squared) => readonly Point[] | undefined = () => undefined,
): Misread | null {
  const impossible = impossibleTape(tapes);
  const whole = squareUp(tapes);
  const limit = CRITICAL * TAPING * Math.max(...tapes.map(({ distance }) => distance));
  const misfit = whole.ok ? squares(whole.squared) : Number.POSITIVE_INFINITY;
  if (impossible === null && (!whole.ok || Math.sqrt(misfit) <= limit)) return null;
  const each = tapes.map((_, tape) => withoutTape(tapes, tape)).filter((suspect) => suspect !== null);
  const fitting = each.filter(({ tape, without }) => {
    const rest = misfitOfOthers(without, tape);
    return Math.sqrt(misfit - rest) > limit && Math.sqrt(rest) <= limit;
  });
  // Taped twice, the better pull alone would make the bad one look good: what leaves no contradiction counts.
  return {
    impossible,
    suspect: clearest(fitting, planned),
    among: (fitting.length > 0 ? fitting : each).map(({ tape }) => tape),
  };
}

/** The others' solution, with the residual of the tape left out beside theirs; null where they don't fix the corners. */
function withoutTape(tapes: readonly TapedLength[], tape: number): Suspect | null {
  const others = tapes.filter((_, i) => i !== tape);
  if (impossibleTape(others) !== null) return null;
  const found = squareUp(others);
  const left = tapes[tape];
  if (!found.ok || left === undefined) return null;
  const { corners, residuals } = found.squared;
  const [a, b] = [left.from, left.to].map((name) => corners.find((corner) => corner.name === name));
  if (!a || !b) return null;
  const adjusted = Math.hypot(b.x - a.x, b.y - a.y);
  const by = left.distance - adjusted;
  const own = { ...left, adjusted, residual: by };
  const all = [...residuals.slice(0, tape), own, ...residuals.slice(tape)];
  return { tape, by, without: { ...found.squared, residuals: all } };
}

function squares({ residuals }: Squared): number {
  return residuals.reduce((sum, { residual }) => sum + residual * residual, 0);
}

function misfitOfOthers({ residuals }: Squared, tape: number): number {
  return residuals.reduce((sum, { residual }, i) => (i === tape ? sum : sum + residual * residual), 0);
}

function clearest(
  suspects: readonly Suspect[],
  planned: (squared: Squared) => readonly Point[] | undefined,
): Suspect | null {
  const [best, next] = suspects
    .map((suspect) => {
      const out = outOfSquare(suspect.without.corners, planned(suspect.without));
      return { suspect, off: out?.most ?? Number.POSITIVE_INFINITY };
    })
    .sort((a, b) => a.off - b.off);
  if (best === undefined || !Number.isFinite(best.off))
    return suspects.length === 1 ? (suspects[0] ?? null) : null;
  return next === undefined || CLEARLY * best.off < next.off ? best.suspect : null;
}

/** The measure that is longest beside two others that join its ends; null where every three can make a triangle. */
function impossibleTape(tapes: readonly TapedLength[]): Misread["impossible"] {
  let worst: Misread["impossible"] = null;
  let most = 0;
  const joins = (one: TapedLength, end: string) =>
    one.from === end ? one.to : one.to === end ? one.from : null;
  tapes.forEach(({ from, to, distance }, tape) => {
    tapes.forEach((one, i) => {
      const middle = joins(one, from);
      if (i === tape || middle === null || middle === to) return;
      tapes.forEach((other, k) => {
        if (joins(other, to) !== middle || k === tape || k === i) return;
        const over = distance - one.distance - other.distance;
        if (over <= TAPING * distance || over <= most) return;
        most = over;
        worst = { tape, other: [i, k] };
      });
    });
  });
  return worst;
}
