/**
 * Posts along the walls: one at every corner, the rest at even distances.
 *
 * Units   metres.
 * Source  First principles; the spacing is the user's.
 */
import { distance, type Point } from "../geometry";

export interface PostPlace {
  readonly wall: number;
  /** From the wall's first corner. */
  readonly offset: number;
}

/** No more than this many on a wall: a slip of the unit shan't stop the work. */
const mostOnWall = 200;

export function postsAlong(outline: readonly Point[], spacing: number): PostPlace[] {
  return outline.flatMap((start, wall) => {
    const length = distance(start, outline[(wall + 1) % outline.length] as Point);
    const bays = Math.min(mostOnWall, Math.max(1, Math.ceil(length / spacing - 1e-9)));
    return Array.from({ length: bays }, (_, i) => ({ wall, offset: (length * i) / bays }));
  });
}
