/** Distances about a strip along a centreline, and about boxes. Metres. */
import type { Bounds, Point } from "../geometry";
import type { Edge } from "./operator";
import type { Nearest, Segments } from "./wall-distance";

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

/** A round bend is followed by straight pieces that turn by no more than this, rad. */
const mostTurn = Math.PI / 36;

/** The outline of a strip as `besideStrip` has it; inside a bend both sides are drawn on to their ends, within the strip. */
export function stripEdges(line: readonly Point[], half: number, runOn = 0): Edge[] {
  const edges: Edge[] = [];
  const last = line.length - 2;
  for (let i = 0; i <= last; i++) {
    const [start, drawn] = [line[i] as Point, line[i + 1] as Point];
    const angle = Math.atan2(drawn[1] - start[1], drawn[0] - start[0]);
    const end = i === last ? off(drawn, runOn, angle) : drawn;
    const [left, right] = [angle + Math.PI / 2, angle - Math.PI / 2];
    for (const side of [left, right]) edges.push([off(start, half, side), off(end, half, side)]);
    if (i === 0) edges.push([off(start, half, left), off(start, half, right)]);
    if (i === last) edges.push([off(end, half, left), off(end, half, right)]);
    else edges.push(...roundBend(drawn, angle, line[i + 2] as Point, half));
  }
  return edges;
}

/** The outer side of a bend. */
function roundBend(at: Point, angle: number, next: Point, half: number): Edge[] {
  const turn = Math.atan2(
    Math.cos(angle) * (next[1] - at[1]) - Math.sin(angle) * (next[0] - at[0]),
    Math.cos(angle) * (next[0] - at[0]) + Math.sin(angle) * (next[1] - at[1]),
  );
  const first = angle - (Math.sign(turn) * Math.PI) / 2;
  const pieces = Math.ceil(Math.abs(turn) / mostTurn);
  const on = (piece: number) => off(at, half, first + (turn * piece) / pieces);
  return Array.from({ length: pieces }, (_, i): Edge => [on(i), on(i + 1)]);
}

function off([x, y]: Point, distance: number, angle: number): Point {
  return [x + distance * Math.cos(angle), y + distance * Math.sin(angle)];
}

/** Distance from the centreline, taken square to it beyond its two ends. */
export function offCentre(found: Nearest, distances: Float64Array): number {
  const last = distances.length - 2;
  const length = (distances[found.segment + 1] as number) - (distances[found.segment] as number);
  const past = (found.segment === 0 && found.along < 0) || (found.segment === last && found.along > length);
  return past ? Math.abs(found.across) : found.distance;
}

/** A piece this much farther than the nearest, as a share of that distance, has no say any more. */
const sayUpTo = 0.5;

/**
 * Distance along a line that goes with a place beside it: its nearest place's, but inside a bend gone over from piece
 * to piece, so that heights read there have no step.
 *
 * Units  metres.
 * Method Inside a bend the nearest place jumps at the bisector. Every piece that the place lies square to, and that is
 *        nearly as near as the nearest, has a say: less the farther it is, and less the nearer its foot is to a bend.
 *        On the line, beside its straight pieces and outside its bends that is the nearest place itself.
 */
export function alongLine(
  segments: Segments,
  distances: Float64Array,
  x: number,
  y: number,
  { segment, along, distance }: Nearest,
): number {
  const first = distances[segment] as number;
  // Outside a bend the corner itself is nearest: the piece isn't read beyond it.
  const nearest = Math.min(Math.max(first + along, first), distances[segment + 1] as number);
  const zone = sayUpTo * distance;
  const last = segments.length / 5 - 1;
  if (zone === 0 || last === 0) return nearest;
  let say = 0;
  let sum = 0;
  for (let i = 0; i <= last; i++) {
    const dx = x - (segments[i * 5] as number);
    const dy = y - (segments[i * 5 + 1] as number);
    const ux = segments[i * 5 + 2] as number;
    const uy = segments[i * 5 + 3] as number;
    const length = segments[i * 5 + 4] as number;
    const across = Math.abs(dy * ux - dx * uy);
    if (across >= distance + zone) continue;
    const own = dx * ux + dy * uy;
    const fromStart = i === 0 ? length : own;
    const fromEnd = i === last ? length : length - own;
    const inset = Math.min(fromStart, fromEnd, length);
    if (inset <= 0 || (i === 0 && own < 0) || (i === last && own > length)) continue;
    const weight = inset * (1 - (across - distance) / zone);
    say += weight;
    sum += weight * ((distances[i] as number) + own);
  }
  return say > 0 ? sum / say : nearest;
}
