/** What an arrow key means on the plan: a way, or the wall that faces it. */
import type { Point } from "../../document";
import { facingWall } from "../select/shape";
import type { XY } from "../view/view";
import type { ToolContext } from "./tool";

/** Right on the screen is east only while the plan isn't turned. */
export function wayOnPlan(context: ToolContext, [dx, dy]: XY): Point {
  const { angle } = context.view();
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [dx * c + dy * s, dy * c - dx * s];
}

/** The wall that faces the way of the key; the same key again goes to the next such wall. */
export function wallOfKey(context: ToolContext, direction: XY, present: number | null): number | null {
  const outline = context.project().building?.outline ?? [];
  return facingWall(outline, wayOnPlan(context, direction), present);
}
