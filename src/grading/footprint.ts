/**
 * The building's outline made ready for grading: its walls with directions, or why it can't be used.
 *
 * Units  metres, square metres. Wall i runs from corner i to corner i + 1; corner 0 is named A.
 */
import { distance, type Point, selfCrossing, signedArea } from "../geometry";

export interface Wall {
  /** "A-B". */
  readonly name: string;
  readonly start: Point;
  readonly end: Point;
  readonly length: number;
  /** Unit vector from start to end. */
  readonly along: Point;
  /** Unit vector pointing away from the building. */
  readonly outward: Point;
}

export interface Footprint {
  readonly ring: readonly Point[];
  readonly walls: readonly Wall[];
  readonly area: number;
  readonly perimeter: number;
}

export type FootprintFault =
  | { readonly why: "too-few"; readonly corners: readonly number[] }
  | { readonly why: "repeated"; readonly corners: readonly number[] }
  /** Both ends of the first two walls that do. */
  | { readonly why: "crosses"; readonly corners: readonly number[] }
  | { readonly why: "flat"; readonly corners: readonly number[] };

/** Shortest wall that still has a direction, m. Anything less is two corners at one place. */
const shortestWall = 1e-3;
/** Least area of a building, m2. */
const leastArea = 1e-2;

/** Name of corner i: A, B, … Z, AA, AB, … */
export function cornerName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : cornerName(Math.floor(index / 26) - 1) + letter;
}

/** The outline with its walls, whichever way round it was drawn; or what is wrong with it. */
export function footprint(
  outline: readonly Point[],
):
  | { readonly ok: true; readonly footprint: Footprint }
  | { readonly ok: false; readonly fault: FootprintFault } {
  const fault = faultOf(outline);
  if (fault) return { ok: false, fault };
  const area = signedArea(outline);
  const walls = outline.map((start, i) => wall(outline, i, start, Math.sign(area)));
  const perimeter = walls.reduce((sum, { length }) => sum + length, 0);
  return { ok: true, footprint: { ring: outline, walls, area: Math.abs(area), perimeter } };
}

function faultOf(outline: readonly Point[]): FootprintFault | null {
  if (outline.length < 3) return { why: "too-few", corners: [] };
  for (let i = 0; i < outline.length; i++) {
    const next = (i + 1) % outline.length;
    if (distance(at(outline, i), at(outline, next)) < shortestWall)
      return { why: "repeated", corners: [i, next] };
  }
  const crossing = selfCrossing(outline);
  if (crossing) {
    const [one, other] = crossing;
    const after = (i: number) => (i + 1) % outline.length;
    return { why: "crosses", corners: [one, after(one), other, after(other)] };
  }
  if (Math.abs(signedArea(outline)) < leastArea) return { why: "flat", corners: [] };
  return null;
}

function wall(outline: readonly Point[], i: number, start: Point, turn: number): Wall {
  const next = (i + 1) % outline.length;
  const end = at(outline, next);
  const length = distance(start, end);
  const along: Point = [(end[0] - start[0]) / length, (end[1] - start[1]) / length];
  return {
    name: `${cornerName(i)}-${cornerName(next)}`,
    start,
    end,
    length,
    along,
    outward: [turn * along[1], -turn * along[0]],
  };
}

/** Place on a wall, `offset` from its start, moved `out` away from the building. */
export function onWall(wall: Wall, offset: number, out = 0): Point {
  return [
    wall.start[0] + wall.along[0] * offset + wall.outward[0] * out,
    wall.start[1] + wall.along[1] * offset + wall.outward[1] * out,
  ];
}

function at(points: readonly Point[], i: number): Point {
  const point = points[i];
  if (!point) throw new RangeError(`no corner ${i} among ${points.length}`);
  return point;
}
