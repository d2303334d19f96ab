/**
 * The two-peg check: does the line of sight point up or down?
 *
 * Units   metres (any one unit); the error as rise over run.
 * Sign    error positive: the line of sight points up, so that far readings are too large.
 * Method  A reading is the true one + error x distance. Two set-ups with unlike differences of their sights give
 *         error = (difference at the second - difference at the first) / (the same of the sights). From the middle and
 *         then near one peg, or near one and then near the other (reciprocal): both are this.
 * Source  first principles; the usual school test.
 */

export interface PegSetup {
  /** Readings on peg A and on peg B. */
  readonly a: number;
  readonly b: number;
  /** From the laser to each peg. */
  readonly toA: number;
  readonly toB: number;
}

export interface PegResult {
  /** B above A, with the beam's error taken out. */
  readonly trueDifference: number;
  readonly error: number;
  /** What the pegs would read from the second set-up with a true beam. */
  readonly correct: { readonly a: number; readonly b: number };
}

/** Null where the two set-ups have the same difference of sights, which shows nothing. */
export function twoPegCheck(first: PegSetup, second: PegSetup): PegResult | null {
  const sights = second.toA - second.toB - (first.toA - first.toB);
  if (!(Math.abs(sights) > 0)) return null;
  const error = (second.a - second.b - (first.a - first.b)) / sights;
  const correct = { a: second.a - error * second.toA, b: second.b - error * second.toB };
  return { trueDifference: correct.a - correct.b, error, correct };
}

/** The mean of two set-ups, each near one bank: a beam's error and the earth's curvature cancel. B above A. */
export function reciprocalDifference(
  nearA: { readonly a: number; readonly b: number },
  nearB: { readonly a: number; readonly b: number },
): number {
  return (nearA.a - nearA.b + (nearB.a - nearB.b)) / 2;
}
