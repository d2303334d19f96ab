/** What makes an outline one that can be built. */
import { ringsSelfCross } from "../../geometry";
import type { Point } from "../schema";

/** Corners nearer than this are one, m. */
export const leastCorner = 0.05;

/** Why these corners are no outline, in words; null where they are one. */
export function outlineFault(outline: readonly Point[]): string | null {
  if (outline.length < 3) return "A building needs at least three corners.";
  if (!outline.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y)))
    return "A corner's place is not a number.";
  if (
    outline.some((corner, i) => distance(corner, outline[(i + 1) % outline.length] ?? corner) < leastCorner)
  )
    return "Two corners are at the same place.";
  return ringsSelfCross(outline) ? "The walls cross each other. Move a corner so that they don't." : null;
}

export function distance([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}
