/** Whether a typed value is so far from those beside it that it is asked about: it is never refused. */

export interface Doubt {
  readonly larger: boolean;
  /** How many times larger (or smaller) than the middle one of its neighbours, rounded. */
  readonly times: number;
  /** The unit slip that explains it best: what the value should be multiplied by; null where none fits. */
  readonly slip: { readonly factor: number; readonly words: string } | null;
  /** The question, in words. */
  readonly question: string;
}

/** Needed before one value can be called out of line. */
const ENOUGH = 3;
/** A hundredfold slip stays beyond this even where neighbours differ threefold among themselves. */
const MUCH = 30;
/** A slip explains a value when it brings it within this share of the middle one (twice or half). */
const NEAR = 2;

/** What a value in a wrong unit must be multiplied by. */
export const unitSlips: readonly (readonly [factor: number, words: string])[] = [
  [1 / 100, "centimetres read as metres"],
  [1 / 1000, "millimetres read as metres"],
  [0.0254 / 0.3048, "inches read as feet"],
  [0.0254, "inches read as metres"],
  [0.3048 / 100, "centimetres read as feet"],
  [0.001 / 0.3048, "millimetres read as feet"],
  [0.001 / 0.0254, "millimetres read as inches"],
  [100, "metres read as centimetres"],
  [1000, "metres read as millimetres"],
  [0.3048 / 0.0254, "feet read as inches"],
  [1 / 0.0254, "metres read as inches"],
  [304.8, "feet read as millimetres"],
];

/**
 * Compares the size of a value with the middle one of its neighbours (same unit, signs don't matter).
 * Answers null for fewer than three neighbours other than zero, for zero, and within a factor of 30.
 * Source  first principles: the usual slips between units are factors of 12 to 1000; 30 keeps honest steep ground out.
 */
export function asksAgain(value: number, neighbours: readonly number[]): Doubt | null {
  const sizes = neighbours
    .map(Math.abs)
    .filter((size) => Number.isFinite(size) && size > 0)
    .sort((a, b) => a - b);
  const size = Math.abs(value);
  if (sizes.length < ENOUGH || !(size > 0) || !Number.isFinite(size)) return null;
  const middle = sizes[sizes.length >> 1] ?? 0;
  const larger = size > middle;
  const ratio = larger ? size / middle : middle / size;
  if (ratio < MUCH) return null;
  const slip = bestSlip(size, middle);
  const times = Math.round(ratio);
  return {
    larger,
    times,
    slip,
    question:
      `This is about ${times} times ${larger ? "larger" : "smaller"} than the values beside it. ` +
      `${slip === null ? "Is its unit right, and no figure too many or too few?" : `Is it ${slip.words}?`}`,
  };
}

function bestSlip(size: number, middle: number): Doubt["slip"] {
  let best: { factor: number; words: string } | null = null;
  let nearest = NEAR;
  for (const [factor, words] of unitSlips) {
    const corrected = (size * factor) / middle;
    const off = corrected > 1 ? corrected : 1 / corrected;
    if (off >= nearest) continue;
    nearest = off;
    best = { factor, words };
  }
  return best;
}
