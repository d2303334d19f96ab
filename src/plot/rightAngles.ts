/** Aids to lay out right angles with tapes. Any one unit of length. Source: first principles (Pythagoras). */
import type { Point } from "../geometry";

export interface Diagonal {
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

/** The planned distance between every two corners that aren't neighbours. */
export function plannedDiagonals(outline: readonly Point[]): Diagonal[] {
  const n = outline.length;
  return outline.flatMap((a, from) =>
    outline.flatMap((b, to): Diagonal[] =>
      to < from + 2 || to - from === n - 1
        ? []
        : [{ from, to, length: Math.hypot(b[0] - a[0], b[1] - a[1]) }],
    ),
  );
}

export interface RightTriangle {
  readonly along: number;
  readonly across: number;
  readonly diagonal: number;
}

/**
 * The largest 3-4-5 triangle in whole multiples of `step` whose legs fit along one side and across; null where not even
 * the smallest does. The longer leg goes where more room is.
 */
export function threeFourFive(along: number, across: number, step: number): RightTriangle | null {
  const [longer, shorter] = along >= across ? [along, across] : [across, along];
  const times = Math.floor(Math.min(longer / 4, shorter / 3) / step + 1e-9);
  if (!(times >= 1)) return null;
  const [four, three] = [4 * times * step, 3 * times * step];
  return along >= across
    ? { along: four, across: three, diagonal: 5 * times * step }
    : { along: three, across: four, diagonal: 5 * times * step };
}

/** Level length of a tape that lay on the slope, by the rise between its ends; null where the rise is the longer. */
export function levelLength(slope: number, rise: number): number | null {
  return Math.abs(rise) > slope ? null : Math.sqrt((slope - rise) * (slope + rise));
}
