/** Which heights to draw contours at. */

const FOOT = 0.3048; // international foot, m

/** Most lines over the whole relief. */
const MOST_LINES = 25;

export interface ContourLevels {
  /** Height between lines, m. */
  readonly interval: number;
  /** Heights of the lines, ascending, m: whole multiples of the interval, above the lowest and up to the highest. */
  readonly levels: number[];
  /** Every how manieth line is a major one. */
  readonly majorEvery: number;
  /** For each level whether it is a major one: then it is a rounder height. */
  readonly major: boolean[];
}

/** What heights are read in: round numbers of inches and feet, of decimal feet, or of metres. */
export type ContourUnit = "inch" | "foot" | "metre";

/** Interval in feet, and how many make a rounder height: 6 x 1 in = 6 in, 4 x 3 in = 1 ft, 4 x 6 in = 2 ft. */
const INCH_STEPS: readonly (readonly [number, number])[] = [
  [1 / 12, 6],
  [3 / 12, 4],
  [6 / 12, 4],
  [1, 5],
  [2, 5],
  [5, 4],
  [10, 5],
];
/** The same in decimal feet: 5 x 0.1 = 0.5, 4 x 0.25 = 1, 4 x 0.5 = 2. */
const FOOT_STEPS: readonly (readonly [number, number])[] = [
  [0.1, 5],
  [0.25, 4],
  [0.5, 4],
  [1, 5],
  [2, 5],
  [5, 4],
  [10, 5],
];
const METRE_STEPS: readonly (readonly [number, number])[] = [
  [0.05, 4],
  [0.1, 5],
  [0.25, 4],
  [0.5, 4],
  [1, 5],
  [2, 5],
  [5, 4],
];

const scales = {
  inch: { unit: FOOT, steps: INCH_STEPS },
  foot: { unit: FOOT, steps: FOOT_STEPS },
  metre: { unit: 1, steps: METRE_STEPS },
} as const;

/**
 * Contour heights for ground between two heights, m: the smallest interval, round in what is read, that
 * gives at most 25 lines; ground of a mountain's relief gets the widest interval times ten, and so on.
 */
export function contourLevels(min: number, max: number, readIn: ContourUnit): ContourLevels {
  const { unit, steps } = scales[readIn];
  const [step, majorEvery] = stepFor((max - min) / unit, steps);
  const levels: number[] = [];
  const major: boolean[] = [];
  for (let k = Math.floor(min / (step * unit)) + 1; k * step * unit <= max; k++) {
    levels.push(k * step * unit);
    major.push(k % majorEvery === 0);
  }
  return { interval: step * unit, levels, majorEvery, major };
}

function stepFor(relief: number, steps: readonly (readonly [number, number])[]): readonly [number, number] {
  for (let tens = 1; tens < 1e9; tens *= 10) {
    for (const [step, majorEvery] of steps) {
      if (relief <= MOST_LINES * step * tens) return [step * tens, majorEvery];
    }
  }
  throw new Error(`no contour interval for a relief of ${relief}`);
}
