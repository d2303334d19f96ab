/**
 * Lines that run beside an outline: lengths and areas, corners counted once, and the ground that walls stand on.
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

/** The ground under each wall, from the outline so far inwards, mitred at the corners; null where the walls leave no room inside. */
export function wallStrips(outline: readonly Point[], thickness: number): Point[][] | null {
  const turn = Math.sign(signedArea(outline)) * thickness;
  const next = (i: number) => outline[(i + 1) % outline.length] as Point;
  const directions = outline.map((a, i) => direction(a, next(i)));
  const inner = outline.map(([x, y], i): Point => {
    const [ux, uy] = directions[(i + outline.length - 1) % outline.length] as Point;
    const [vx, vy] = directions[i] as Point;
    const share = turn / (1 + ux * vx + uy * vy);
    return [x - (uy + vy) * share, y + (ux + vx) * share];
  });
  const strips = outline.map((a, i): Point[] => [
    a,
    next(i),
    inner[(i + 1) % inner.length] as Point,
    inner[i] as Point,
  ]);
  const runsOn = strips.every(([, , end, start], i) => {
    const [[ux, uy], [ax, ay], [bx, by]] = [directions[i], start, end] as [Point, Point, Point];
    return (bx - ax) * ux + (by - ay) * uy > 0;
  });
  return runsOn && areaInside(outline, thickness) > 0 ? strips : null;
}

function direction([ax, ay]: Point, [bx, by]: Point): Point {
  const length = Math.hypot(bx - ax, by - ay);
  return [(bx - ax) / length, (by - ay) / length];
}
