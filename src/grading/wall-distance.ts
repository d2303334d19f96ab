/**
 * Distance from places to the nearest of some segments: walls of a building or pieces of a centreline.
 * Corners are round (the true distance), so slopes run round them as cones.
 *
 * Units  metres.
 */
import type { Point } from "../geometry";

/** Segments as flat numbers for tight loops: start x, y, unit direction x, y, length; five a segment. */
export type Segments = Float64Array;

export function segmentsOf(pieces: readonly { readonly start: Point; readonly end: Point }[]): Segments {
  const flat = new Float64Array(pieces.length * 5);
  pieces.forEach(({ start, end }, i) => {
    const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
    flat[i * 5] = start[0];
    flat[i * 5 + 1] = start[1];
    flat[i * 5 + 2] = length > 0 ? (end[0] - start[0]) / length : 1;
    flat[i * 5 + 3] = length > 0 ? (end[1] - start[1]) / length : 0;
    flat[i * 5 + 4] = length;
  });
  return flat;
}

/** What `nearestSegment` found; one object is reused so that the loop over cells makes no rubbish. */
export interface Nearest {
  distance: number;
  /** Index of the nearest segment. */
  segment: number;
  /** Along that segment from its start, not limited to its ends. */
  along: number;
  /** Square to that segment, positive to its left. */
  across: number;
}

/** Nearest segment to a place; the first one where two are equally near. */
export function nearestSegment(segments: Segments, x: number, y: number, found: Nearest): Nearest {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < segments.length; i += 5) {
    const dx = x - (segments[i] as number);
    const dy = y - (segments[i + 1] as number);
    const ux = segments[i + 2] as number;
    const uy = segments[i + 3] as number;
    const length = segments[i + 4] as number;
    const along = dx * ux + dy * uy;
    const across = dy * ux - dx * uy;
    const beyond = along < 0 ? along : along > length ? along - length : 0;
    const squared = beyond * beyond + across * across;
    if (squared < best) {
      best = squared;
      found.segment = i / 5;
      found.along = along;
      found.across = across;
    }
  }
  found.distance = Math.sqrt(best);
  return found;
}

/** Distance to one segment. */
export function distanceTo(segments: Segments, i: number, x: number, y: number): number {
  const k = i * 5;
  const dx = x - (segments[k] as number);
  const dy = y - (segments[k + 1] as number);
  const along = dx * (segments[k + 2] as number) + dy * (segments[k + 3] as number);
  const past = along - Math.min(Math.max(along, 0), segments[k + 4] as number);
  return Math.hypot(past, dy * (segments[k + 2] as number) - dx * (segments[k + 3] as number));
}

export const nowhere = (): Nearest => ({ distance: 0, segment: 0, along: 0, across: 0 });
