/** Outlines that several tests stand on, m. */
import type { Point } from "../../src/geometry";

/** 6 by 7 with a leg 2 wide: 20 m2, 26 m round. */
export const narrowEll: readonly Point[] = [
  [0, 0],
  [6, 0],
  [6, 3],
  [2, 3],
  [2, 7],
  [0, 7],
];

/** 12 by 12 with a notch 7 by 7 in its north-east: walls south, east, notch's south, notch's west, north, west. */
export const notchedSquare: readonly Point[] = [
  [0, 0],
  [12, 0],
  [12, 5],
  [5, 5],
  [5, 12],
  [0, 12],
];
