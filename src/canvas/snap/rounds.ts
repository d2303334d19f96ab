/**
 * Rounds of the plan, and the lines that touch them: what a tree or well keeps clear, a curve of the lot.
 *
 * Units   metres; radians counter-clockwise.
 * Method  a line from outside touches at right angles to the radius, at acos(radius / distance) to both sides of the
 *         centre's direction; from a place on the round itself the line along it touches.
 * Source  first principles.
 */
import type { Point } from "../../document";
import { distance } from "../../geometry";

/** A circle, or the arc of one. */
export interface Round {
  readonly centre: Point;
  readonly radius: number;
  /** "what the oak keeps clear". */
  readonly of: string;
  /** Only this part of it is there: from an angle on, by so much, counter-clockwise where positive. */
  readonly arc?: { readonly from: number; readonly sweep: number };
}

/** Places on a round are known to this, m: a curve's ends are reckoned from its deed. */
const onRound = 1e-4;

/** The arc through three places in their order; null where they lie in a line. */
export function arcOf(a: Point, b: Point, c: Point, of: string): Round | null {
  const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]];
  const twice = 2 * (bx * cy - by * cx);
  if (Math.abs(twice) < 1e-9) return null;
  const [bb, cc] = [bx * bx + by * by, cx * cx + cy * cy];
  const centre: Point = [a[0] + (cy * bb - by * cc) / twice, a[1] + (bx * cc - cx * bb) / twice];
  const angle = ([x, y]: Point) => Math.atan2(y - centre[1], x - centre[0]);
  const [from, to] = [angle(a), angle(c)];
  const sweep = twice > 0 ? turned(to - from) : -turned(from - to);
  return { centre, radius: distance(centre, a), of, arc: { from, sweep } };
}

/** Is the place of a circle on the part of it that is there? */
export function isOnArc({ centre, radius, arc }: Round, at: Point): boolean {
  if (!arc) return true;
  const angle = Math.atan2(at[1] - centre[1], at[0] - centre[0]);
  const slip = onRound / radius;
  const along = arc.sweep > 0 ? turned(angle - arc.from + slip) : turned(arc.from - angle + slip);
  return along <= Math.abs(arc.sweep) + 2 * slip;
}

/** Where lines from a place touch the round: two, one or none; the place itself where it lies on the round. */
export function touchingPlaces(round: Round, from: Point): Point[] {
  const { centre, radius } = round;
  const far = distance(centre, from);
  if (far < 1e-9 || radius <= 0) return [];
  if (Math.abs(far - radius) < onRound) return isOnArc(round, from) ? [from] : [];
  if (far < radius) return [];
  const towards = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const open = Math.acos(radius / far);
  return [towards + open, towards - open]
    .map((angle): Point => [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)])
    .filter((place) => isOnArc(round, place));
}

/** The round that is pointed at: a whole one anywhere within it, an arc at its line. The nearest line wins. */
export function roundUnder(rounds: readonly Round[], at: Point, reach: number): Round | null {
  let best: Round | null = null;
  let bestOff = Number.POSITIVE_INFINITY;
  for (const round of rounds) {
    const far = distance(round.centre, at);
    const off = Math.abs(far - round.radius);
    const isPointedAt = round.arc ? off < reach && isOnArc(round, at) : far < round.radius + reach;
    if (!isPointedAt || off >= bestOff) continue;
    [best, bestOff] = [round, off];
  }
  return best;
}

function turned(angle: number): number {
  const full = 2 * Math.PI;
  return ((angle % full) + full) % full;
}
