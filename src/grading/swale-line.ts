/**
 * The bed of a swale along its line, from its high end to its outlet.
 *
 * Units   metres; falls rise over run, positive runs towards the outlet.
 * Method  The bed starts `depth` under the ground as it is and falls evenly: by the fall that was typed, or
 *         to the ground at the outlet. It doesn't depend on the floor.
 * Source  First principles.
 */
import type { Swale } from "../document/schema";
import { cornerDistances, type Point } from "../geometry";
import { withoutRepeats } from "./drive-line";
import { type Segments, segmentsOf } from "./wall-distance";

export interface SwaleLine {
  readonly swale: Swale;
  readonly line: readonly Point[];
  readonly segments: Segments;
  readonly distances: Float64Array;
  readonly length: number;
  readonly startBed: number;
  /** Fall of the bed, rise over run; negative runs backwards. */
  readonly fall: number;
}

export interface SwaleSite {
  /** The ground as it is at the high end and at the outlet. */
  readonly startGround: number;
  readonly outletGround: number;
}

/** Lays a swale out. The line must have a length. */
export function laySwale(swale: Swale, site: SwaleSite): SwaleLine {
  const line = withoutRepeats(swale.line);
  const distances = cornerDistances(line);
  const length = distances[distances.length - 1] ?? 0;
  const startBed = site.startGround - swale.depth;
  return {
    swale,
    line,
    segments: segmentsOf(line.slice(1).map((end, i) => ({ start: line[i] as Point, end }))),
    distances,
    length,
    startBed,
    fall: swale.fall ?? (startBed - site.outletGround) / length,
  };
}

export function bedHeight(line: SwaleLine, distance: number): number {
  return line.startBed - line.fall * Math.min(Math.max(distance, 0), line.length);
}
