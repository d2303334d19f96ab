/** Distances about a strip along a centreline, and about boxes. Metres. */
import type { Bounds } from "../geometry";
import type { Nearest } from "./wall-distance";

/** Distance from a place to a box, 0 inside it: no line in the box is nearer. */
export function outsideBox(box: Bounds, x: number, y: number): number {
  const dx = Math.max(box.minX - x, 0, x - box.maxX);
  const dy = Math.max(box.minY - y, 0, y - box.maxY);
  return dx === 0 ? dy : dy === 0 ? dx : Math.sqrt(dx * dx + dy * dy);
}

/**
 * How far a place lies outside a strip about a centreline. Bends are round, the two ends are cut square, the
 * far one after going on for `runOn`.
 */
export function besideStrip(found: Nearest, distances: Float64Array, half: number, runOn = 0): number {
  const last = distances.length - 2;
  const length = (distances[found.segment + 1] as number) - (distances[found.segment] as number);
  const before = found.segment === 0 ? -found.along : 0;
  const after = found.segment === last ? found.along - length : 0;
  if (before <= 0 && after <= 0) return Math.max(0, found.distance - half);
  const past = Math.max(before, after - runOn);
  return Math.hypot(Math.max(0, Math.abs(found.across) - half), Math.max(0, past));
}

/** Distance from the centreline, taken square to it beyond its two ends. */
export function offCentre(found: Nearest, distances: Float64Array): number {
  const last = distances.length - 2;
  const length = (distances[found.segment + 1] as number) - (distances[found.segment] as number);
  const past = (found.segment === 0 && found.along < 0) || (found.segment === last && found.along > length);
  return past ? Math.abs(found.across) : found.distance;
}
