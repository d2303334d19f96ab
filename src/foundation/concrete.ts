/**
 * Concrete of a strip footing, a wall on it and a slab inside the wall.
 *
 * Units   metres, m2, m3.
 * Method  A line moved inwards by t is shorter by t · Σ 2 tan(turn/2) over its corners, and encloses less by
 *         perimeter · t − t² · Σ tan(turn/2): corners are counted once. The footing is centred under the wall.
 *         Openings for doors are not taken off.
 * Source  First principles; the same take-off as in NAVEDTRA 14070, chapter 5.
 */
import type { Foundation } from "../document/schema";
import { type Point, perimeter, signedArea } from "../geometry";

export interface Concrete {
  readonly wall: number;
  readonly footing: number;
  readonly slab: number;
  /** Stone under the slab. */
  readonly base: number;
  /** Floor area inside the walls. */
  readonly floorArea: number;
}

export function concrete(outline: readonly Point[], foundation: Foundation): Concrete {
  const { wallThickness, wallHeight, footingWidth, footingThickness } = foundation;
  const turns = cornerTurns(outline);
  const outside = perimeter(outline);
  const centreLine = Math.max(0, outside - wallThickness * turns);
  const floorArea = Math.max(
    0,
    Math.abs(signedArea(outline)) - outside * wallThickness + wallThickness * wallThickness * turns,
  );
  return {
    wall: centreLine * wallThickness * wallHeight,
    footing: centreLine * footingWidth * footingThickness,
    slab: floorArea * foundation.slabThickness,
    base: floorArea * foundation.baseThickness,
    floorArea,
  };
}

/** Σ tan(turn/2) over the corners, outward corners positive; 4 for a rectangle. */
function cornerTurns(outline: readonly Point[]): number {
  const turnSign = Math.sign(signedArea(outline));
  return outline.reduce((sum, [x, y], i) => {
    const [px, py] = outline[(i + outline.length - 1) % outline.length] as Point;
    const [nx, ny] = outline[(i + 1) % outline.length] as Point;
    const cross = (x - px) * (ny - y) - (y - py) * (nx - x);
    const dot = (x - px) * (nx - x) + (y - py) * (ny - y);
    return sum + turnSign * Math.tan(Math.atan2(cross, dot) / 2);
  }, 0);
}
