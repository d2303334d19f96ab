/** Round lengths that a hand can hit: the smallest usual step that is at least some pixels on the screen. */
import { FOOT, INCH, type LengthNotation } from "../../units";

const inchSteps = [
  INCH / 4,
  INCH / 2,
  INCH,
  3 * INCH,
  6 * INCH,
  FOOT,
  2 * FOOT,
  5 * FOOT,
  10 * FOOT,
  50 * FOOT,
];
const footSteps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 50].map((feet) => feet * FOOT);
const metreSteps = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10, 50];

export function usualSteps(notation: LengthNotation): readonly number[] {
  if (notation === "ft-in" || notation === "in") return inchSteps;
  return notation === "ft" ? footSteps : metreSteps;
}

/** Step for drawing by hand, m, at a scale in pixels for a metre. */
export function handStep(notation: LengthNotation, scale: number, leastPixels = 5): number {
  const steps = usualSteps(notation);
  return steps.find((step) => step * scale >= leastPixels) ?? (steps.at(-1) as number);
}

/** A usual step times a whole number, near enough to m. */
export function roundTo(m: number, step: number): number {
  return Math.round(m / step) * step;
}
