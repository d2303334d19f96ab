/**
 * Where a picture lies on the plan: a similarity (one scale, one turn, one move), so that distances stay true.
 *
 * Picture places are in its pixels, x to the right and y down from its top left corner; plan places are metres, x east
 * and y north. Turns are radians counter-clockwise.
 */
import { distance, type Point, turned } from "../geometry";

type Corner = [number, number];

export interface Placement {
  /** Size, px. */
  readonly width: number;
  readonly height: number;
  /** Plan place of the picture's middle. */
  readonly at: Point;
  /** Metres on the ground for one pixel. */
  readonly scale: number;
  /** Radians counter-clockwise from upright. */
  readonly turn: number;
}

/** The plan place (m) of a picture place (px). First principles. */
export function pictureToPlan(placement: Placement, [px, py]: Point): [number, number] {
  const { width, height, at, scale, turn } = placement;
  const [dx, dy] = turned([(px - width / 2) * scale, (height / 2 - py) * scale], [0, 0], turn);
  return [at[0] + dx, at[1] + dy];
}

/** The picture place (px) of a plan place (m); the inverse of `pictureToPlan`. */
export function planToPicture(placement: Placement, [x, y]: Point): [number, number] {
  const { width, height, at, scale, turn } = placement;
  const [dx, dy] = turned([x - at[0], y - at[1]], [0, 0], -turn);
  return [dx / scale + width / 2, height / 2 - dy / scale];
}

/** Plan places of the picture's corners: top left, then clockwise as one looks at the picture. */
export function cornersOnPlan(placement: Placement): [Corner, Corner, Corner, Corner] {
  const { width, height } = placement;
  return [
    pictureToPlan(placement, [0, 0]),
    pictureToPlan(placement, [width, 0]),
    pictureToPlan(placement, [width, height]),
    pictureToPlan(placement, [0, height]),
  ];
}

/** Does the picture reach over the plan place? */
export function showsPlace(placement: Placement, at: Point): boolean {
  const [x, y] = planToPicture(placement, at);
  return x >= 0 && y >= 0 && x <= placement.width && y <= placement.height;
}

/** The placement moved so that a picture place (px) lies on a plan place (m); scale and turn stay. */
export function placedByOnePoint<P extends Placement>(placement: P, picture: Point, plan: Point): P {
  const [x, y] = pictureToPlan(placement, picture);
  return { ...placement, at: [placement.at[0] + plan[0] - x, placement.at[1] + plan[1] - y] };
}

/**
 * The one placement that lays two picture places (px) on two plan places (m): scale from their distances, turn from
 * their directions, then the move of the first. First principles. Null where two of the places coincide, since no
 * scale follows from them.
 */
export function placedByTwoPoints<P extends Placement>(
  placement: P,
  first: { readonly picture: Point; readonly plan: Point },
  second: { readonly picture: Point; readonly plan: Point },
): P | null {
  const pixels = distance(first.picture, second.picture);
  const metres = distance(first.plan, second.plan);
  if (!(pixels > 0) || !(metres > 0)) return null;
  const onPicture = Math.atan2(first.picture[1] - second.picture[1], second.picture[0] - first.picture[0]);
  const onPlan = Math.atan2(second.plan[1] - first.plan[1], second.plan[0] - first.plan[0]);
  const laid = { ...placement, scale: metres / pixels, turn: withinOneTurn(onPlan - onPicture) };
  return placedByOnePoint(laid, first.picture, first.plan);
}

/** A distance between two picture places (px) that is known on the ground (m). */
export interface KnownDistance {
  readonly from: Point;
  readonly to: Point;
  readonly m: number;
}

/**
 * The placement whose scale fits the known distances best (least squares: Σ d·p / Σ p² of ground distance d and pixel
 * distance p; one distance fits exactly); the first distance's start stays where it lies, and the turn stays.
 * `misfit` is the largest share by which a distance as typed is longer (+) or shorter (−) than the picture then shows.
 * Null without a distance longer than nothing.
 */
export function byKnownDistances<P extends Placement>(
  placement: P,
  known: readonly KnownDistance[],
): { readonly placement: P; readonly misfit: number } | null {
  const pixels = known.map(({ from, to }) => distance(from, to));
  const [first] = known;
  if (!first || !known.every(({ m }, i) => m > 0 && (pixels[i] as number) > 0)) return null;
  const across = known.reduce((sum, { m }, i) => sum + m * (pixels[i] as number), 0);
  const squares = pixels.reduce((sum, p) => sum + p * p, 0);
  const scale = across / squares;
  const misfits = known.map(({ m }, i) => m / ((pixels[i] as number) * scale) - 1);
  const misfit = misfits.reduce((worst, each) => (Math.abs(each) > Math.abs(worst) ? each : worst), 0);
  const stays = pictureToPlan(placement, first.from);
  return { placement: placedByOnePoint({ ...placement, scale }, first.from, stays), misfit };
}

/** The placement made `factor` times as large about a plan place (m), which stays. */
export function scaledAbout<P extends Placement>(placement: P, about: Point, factor: number): P {
  const { at, scale } = placement;
  return {
    ...placement,
    scale: scale * factor,
    at: [about[0] + (at[0] - about[0]) * factor, about[1] + (at[1] - about[1]) * factor],
  };
}

/** The placement turned by an angle (radians counter-clockwise) about a plan place (m), which stays. */
export function turnedAbout<P extends Placement>(placement: P, about: Point, angle: number): P {
  const [x, y] = turned(placement.at, about, angle);
  return { ...placement, at: [x, y], turn: withinOneTurn(placement.turn + angle) };
}

/** The same direction, −π to π. */
function withinOneTurn(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}
