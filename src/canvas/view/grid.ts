/**
 * The grid: lines at usual lengths of the project's notation, as close as can be told apart.
 *
 * Units  metres, pixels for a metre.
 */

import type { Bounds } from "../../geometry";
import { FOOT, formatLength, type LengthNotation } from "../../units";

export interface GridStep {
  /** Between neighbouring lines, m. */
  readonly step: number;
  /** Every how manieth line is heavier: those lie at rounder lengths. */
  readonly heavyEvery: number;
  /** "5′", "0.5 m". */
  readonly text: string;
}

/** Lines nearer than this are a grey, px. */
const nearest = 9;

/** Length in the unit, and how many make the next rounder one. */
const footSteps = [
  [1 / 12, 12],
  [0.5, 2],
  [1, 10],
  [5, 10],
  [10, 10],
  [50, 10],
  [100, 10],
  [500, 10],
] as const;
const metreSteps = [
  [0.01, 10],
  [0.05, 10],
  [0.1, 10],
  [0.5, 10],
  [1, 10],
  [5, 10],
  [10, 10],
  [50, 10],
  [100, 10],
] as const;

/** The step of the grid in a notation at a scale. */
export function gridStep(notation: LengthNotation, scale: number): GridStep {
  const inFeet = notation === "ft-in" || notation === "in" || notation === "ft";
  const unit = inFeet ? FOOT : 1;
  const steps = inFeet ? footSteps : metreSteps;
  const fallback = steps[steps.length - 1] as readonly [number, number];
  const [length, heavyEvery] = steps.find(([each]) => each * unit * scale >= nearest) ?? fallback;
  const step = length * unit;
  return { step, heavyEvery, text: stepText(step, length, inFeet) };
}

function stepText(step: number, length: number, inFeet: boolean): string {
  if (inFeet) return length < 1 ? formatLength(step, "in", 1) : formatLength(step, "ft", 0);
  return length < 0.1 ? formatLength(step, "cm", 0) : formatLength(step, "m", length < 1 ? 1 : 0);
}

/** Numbers of the first and the last line across a range. */
export function gridLines(step: number, from: number, to: number): readonly [number, number] {
  return [Math.ceil(from / step - 1e-9), Math.floor(to / step + 1e-9)];
}

/** Too many lines to draw in what is seen: then none are. */
export function isTooFine(step: number, { minX, minY, maxX, maxY }: Bounds): boolean {
  return (maxX - minX + maxY - minY) / step > 2000;
}
