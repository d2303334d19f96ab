/**
 * What every act on the ground answers: how low and how high it lets the ground stand at a place.
 *
 * Units  metres. Both limits are given at a floor of 0 and rise by `share` for each metre of floor, so that nothing
 *        has to be worked out again for another floor.
 */
import type { Bounds, Point } from "../geometry";

/** Filled in by `limitsAt`; one object is reused so that the loop over cells makes no rubbish. */
export interface Limits {
  lower: number;
  upper: number;
  /** How much both limits rise with the floor, 0 to 1. */
  share: number;
  /** On the surface that the act itself makes, not on its side slopes. */
  core: boolean;
  /** Thickness of the stone laid there, m. */
  stone: number;
}

/** A straight piece of line, from its start to its end. */
export type Edge = readonly [Point, Point];

export interface Operator {
  /** Document id; "apron" for the pad with its apron. */
  readonly id: string;
  /** Box about the surface it makes, without side slopes. */
  readonly bounds: Bounds;
  /** Where its stone ends, or the ground has a step or a sharp edge: a cell that is crossed there is summed in parts. */
  readonly edges?: readonly Edge[];
  /** Flattest side slope, run for one of rise; Infinity where nothing can be said from afar. */
  readonly flattest: number;
  /** Lowest upper and highest lower limit of its own surface at these floors; for passing over far places quickly. */
  readonly ends: (low: number, high: number) => { readonly leastUpper: number; readonly mostLower: number };
  readonly limitsAt: (x: number, y: number, existing: number, limits: Limits) => void;
}

export const noLimits = (): Limits => ({
  lower: Number.NEGATIVE_INFINITY,
  upper: Number.POSITIVE_INFINITY,
  share: 0,
  core: false,
  stone: 0,
});

/** The id that stands for pad and apron in the order of acts. */
export const apronId = "apron";
