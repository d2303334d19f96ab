/** Arrow keys: the selected things move by a set step; steps in a row are one undo step. */
import { arrangeEdits, type Point, type Project, thingKey } from "../../../document";
import { usualNudge } from "../../../units";
import type { XY } from "../../view/view";
import { wayOnPlan } from "../arrowKeys";
import type { ToolContext } from "../tool";

/** The person's own step, else one inch or 10 mm; ten times that with Shift. */
export function nudgeStep(project: Project, own: number | null, large: boolean): number {
  const small = own ?? usualNudge(project.display.length);
  return large ? small * 10 : small;
}

export function nudgeSelected(context: ToolContext, direction: XY, large: boolean): void {
  const things = context.selection();
  if (things.length === 0) return;
  const step = nudgeStep(context.project(), context.nudgeStep(), large);
  const [east, north] = wayOnPlan(context, direction);
  const by: Point = [east * step, north * step];
  const mergeKey = `nudge ${things.map(thingKey).join(" ")}`;
  context.nudge(arrangeEdits.moveThings, { things, by, mergeKey });
}
