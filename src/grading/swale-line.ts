/**
 * The bed of a swale along its line, from its high end to its outlet.
 *
 * Units   metres; falls rise over run, positive runs towards the outlet.
 * Method  The bed starts `depth` under the ground as it is and falls evenly: by the fall that was typed, or
 *         to the ground at the outlet. With a least fall it keeps `depth` under the ground, but falls that much
 *         everywhere, and rises out of the ground towards its outlet where the ground falls faster than that. Typed heights of the bed stand where they are, with even falls between them. It doesn't
 *         depend on the floor.
 * Source  First principles.
 */
import type { Swale } from "../document/schema";
import { cornerDistances, type Point, pointAlong } from "../geometry";
import { withoutRepeats } from "./drive-line";
import { type Segments, segmentsOf } from "./wall-distance";

export interface SwaleLine {
  readonly swale: Swale;
  readonly line: readonly Point[];
  readonly segments: Segments;
  readonly distances: Float64Array;
  readonly length: number;
  readonly startBed: number;
  /** Least fall of the bed, rise over run; negative runs backwards. */
  readonly fall: number;
  /** Bed where its fall changes: distances and heights. */
  readonly at: Float64Array;
  readonly bed: Float64Array;
}

export interface SwaleSite {
  /** The ground as it is at the high end and at the outlet. */
  readonly startGround: number;
  readonly outletGround: number;
  /** The ground as it is anywhere; needed only with a least fall. */
  readonly ground?: (at: Point) => number;
}

/** Distance between the places where a bed that follows the ground is worked out, m. */
const followStep = 0.5;
/** A bed so much over the ground still lies in it, m. */
const outOfGround = 0.02;

/** Lays a swale out. The line must have a length. */
export function laySwale(swale: Swale, site: SwaleSite): SwaleLine {
  const line = withoutRepeats(swale.line);
  const distances = cornerDistances(line);
  const length = distances[distances.length - 1] ?? 0;
  const { at, bed } = bedOf(swale, site, line, length);
  let fall = Number.POSITIVE_INFINITY;
  for (let i = 1; i < at.length; i++) fall = Math.min(fall, fallOf(at, bed, i));
  return {
    swale,
    line,
    segments: segmentsOf(line.slice(1).map((end, i) => ({ start: line[i] as Point, end }))),
    distances,
    length,
    startBed: bed[0] as number,
    fall,
    at,
    bed,
  };
}

function bedOf(
  swale: Swale,
  site: SwaleSite,
  line: readonly Point[],
  length: number,
): { at: Float64Array; bed: Float64Array } {
  const typed = swale.beds.filter(({ at }) => at <= length + 1e-9).sort((a, b) => a.at - b.at);
  const start = site.startGround - swale.depth;
  if (typed.length > 0) return throughTyped(swale, site, typed, start, length);
  const { ground } = site;
  if (swale.leastFall !== null && ground) return following(swale, swale.leastFall, ground, line, length);
  const fall = swale.fall ?? (start - site.outletGround) / length;
  return { at: Float64Array.of(0, length), bed: Float64Array.of(start, start - fall * length) };
}

/** Through the typed heights; before the first from the start, after the last to the outlet, as without them. */
function throughTyped(
  swale: Swale,
  site: SwaleSite,
  typed: readonly { readonly at: number; readonly height: number }[],
  start: number,
  length: number,
): { at: Float64Array; bed: Float64Array } {
  const places = typed.filter(({ at }, i) => i === 0 || at > (typed[i - 1]?.at ?? 0) + 1e-6);
  const [first, last] = [places[0], places[places.length - 1]];
  if (!first || !last) throw new RangeError("no typed height");
  if (first.at > 1e-6) places.unshift({ at: 0, height: start });
  const outlet =
    swale.fall === null ? site.outletGround : last.height - swale.fall * Math.max(0, length - last.at);
  if (last.at < length - 1e-6) places.push({ at: length, height: outlet });
  return {
    at: Float64Array.from(places, ({ at }) => at),
    bed: Float64Array.from(places, ({ height }) => height),
  };
}

/**
 * `depth` under the ground, but never flatter than the least fall; then in one fall to the ground at the outlet, from as
 * far along as that still keeps the least fall. Where it never does, or would leave the ground before, the bed stays under
 * the ground at the outlet.
 */
function following(
  swale: Swale,
  leastFall: number,
  ground: (at: Point) => number,
  line: readonly Point[],
  length: number,
): { at: Float64Array; bed: Float64Array } {
  const pieces = Math.max(1, Math.ceil(length / followStep));
  const at = Float64Array.from({ length: pieces + 1 }, (_, i) => (length * i) / pieces);
  const bed = new Float64Array(at.length);
  const step = length / pieces;
  const earth = at.map((distance) => ground(pointAlong(line, distance).at));
  earth.forEach((existing, i) => {
    const wanted = existing - swale.depth;
    bed[i] = i === 0 ? wanted : Math.min(wanted, (bed[i - 1] as number) - leastFall * step);
  });
  comeOut(at, bed, earth, leastFall);
  return { at, bed };
}

/** Lets the bed end at the ground of its outlet: one fall to there from the last place high enough for it. */
function comeOut(at: Float64Array, bed: Float64Array, earth: Float64Array, leastFall: number): void {
  const last = at.length - 1;
  const outlet = earth[last] as number;
  for (let i = last - 1; i >= 0; i--) {
    const fall = ((bed[i] as number) - outlet) / ((at[last] as number) - (at[i] as number));
    if (fall < leastFall - 1e-12) continue;
    const way = bed.map((z, k) =>
      k <= i ? z : (bed[i] as number) - fall * ((at[k] as number) - (at[i] as number)),
    );
    if (way.every((z, k) => k <= i || z <= (earth[k] as number) + outOfGround)) bed.set(way);
    return;
  }
}

function fallOf(at: Float64Array, bed: Float64Array, i: number): number {
  return ((bed[i - 1] as number) - (bed[i] as number)) / ((at[i] as number) - (at[i - 1] as number));
}

export function bedHeight({ at, bed, length }: SwaleLine, distance: number): number {
  const t = Math.min(Math.max(distance, 0), length);
  const i = pieceAt(at, t);
  const part = (t - (at[i - 1] as number)) / ((at[i] as number) - (at[i - 1] as number));
  return (bed[i - 1] as number) + ((bed[i] as number) - (bed[i - 1] as number)) * part;
}

/** Fall of the bed at a distance, rise over run, positive towards the outlet. */
export function bedFall({ at, bed, length }: SwaleLine, distance: number): number {
  return fallOf(at, bed, pieceAt(at, Math.min(Math.max(distance, 0), length)));
}

function pieceAt(at: Float64Array, t: number): number {
  let low = 1;
  let high = at.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (t <= (at[middle] as number)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Lowest and highest height of the bed. */
export function bedRange({ bed }: SwaleLine): { low: number; high: number } {
  return { low: Math.min(...bed), high: Math.max(...bed) };
}
