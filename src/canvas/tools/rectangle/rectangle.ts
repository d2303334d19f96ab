/** The rectangle that a drag and typed sizes make. Corner A is top left, as on any outline drawn here. */
import type { Point } from "../../../document";
import { leastWall } from "../../select/shape";
import type { TypedValues } from "../../typed/typedEntry";

export interface Rectangle {
  readonly outline: Point[];
  readonly width: number;
  readonly depth: number;
}

/** From one corner towards the pointer; a typed side keeps its length, the pointer says only the way. */
export function draggedRectangle(from: Point, to: Point, typed: TypedValues): Rectangle {
  const right = to[0] >= from[0] ? 1 : -1;
  const up = to[1] >= from[1] ? 1 : -1;
  const width = Math.abs(typed.width ?? Math.abs(to[0] - from[0]));
  const depth = Math.abs(typed.depth ?? Math.abs(to[1] - from[1]));
  const [x0, x1] = right > 0 ? [from[0], from[0] + width] : [from[0] - width, from[0]];
  const [y0, y1] = up > 0 ? [from[1], from[1] + depth] : [from[1] - depth, from[1]];
  return {
    outline: [
      [x0, y1],
      [x1, y1],
      [x1, y0],
      [x0, y0],
    ],
    width,
    depth,
  };
}

/** Which of its sides a rectangle that isn't big enough has yet to get. */
export function missingSide({ width, depth }: Rectangle): string {
  if (width >= leastWall) return "depth";
  return depth >= leastWall ? "width" : "width and depth";
}

export function bigEnough({ width, depth }: Rectangle): boolean {
  return width >= leastWall && depth >= leastWall;
}
