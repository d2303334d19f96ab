/**
 * Lengths of lines that run beside an outline, corners counted once.
 *
 * Units   metres.
 * Method  A line moved inwards by t is shorter than the outline by t · Σ 2 tan(turn/2) over its corners.
 * Source  First principles.
 */
import { type Point, perimeter, signedArea } from "../geometry";

/** Σ tan(turn/2) over the corners, outward corners positive; 4 for a rectangle. */
export function cornerTurns(outline: readonly Point[]): number {
  const turnSign = Math.sign(signedArea(outline));
  return outline.reduce((sum, [x, y], i) => {
    const [px, py] = outline[(i + outline.length - 1) % outline.length] as Point;
    const [nx, ny] = outline[(i + 1) % outline.length] as Point;
    const cross = (x - px) * (ny - y) - (y - py) * (nx - x);
    const dot = (x - px) * (nx - x) + (y - py) * (ny - y);
    return sum + turnSign * Math.tan(Math.atan2(cross, dot) / 2);
  }, 0);
}

/** Length of the line `inwards` of the outline (negative: outside it); 0 where nothing is left. */
export function lengthInside(outline: readonly Point[], inwards: number): number {
  return Math.max(0, perimeter(outline) - 2 * inwards * cornerTurns(outline));
}

/** Area inside the line `inwards` of the outline; 0 where nothing is left. */
export function areaInside(outline: readonly Point[], inwards: number): number {
  return Math.max(
    0,
    Math.abs(signedArea(outline)) - perimeter(outline) * inwards + inwards * inwards * cornerTurns(outline),
  );
}
