/** Building, nothing drawn yet: the first press is a corner, a typed size is a whole building. */
import type { Point } from "../../../document";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { lengthWords } from "../liveMarks";
import type { ToolContext, ToolStart, ToolState } from "../tool";
import { aimCorner, sizeFields } from "./aimCorner";
import { commitRectangle } from "./commit";
import { drawing } from "./drawing";
import { rectangleMarks } from "./marks";
import { draggedRectangle, type Rectangle } from "./rectangle";

/** A start over, for the states that follow. */
const home: ToolStart = (context) => ready(context);

export function ready(context: ToolContext, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const project = context.project();
  const sized = typedRectangle(context, at, typed);
  const redraws = project.building ? "Draws the building anew: p" : "P";
  const example = lengthWords(9.7536, project).replace(/ 0″$/, "");
  return {
    name: "ready",
    hint: sized
      ? "Click to put it here, or press Enter"
      : `${redraws}ress at one corner and drag to the opposite one, or type its size (${example}, Tab, the other side)`,
    cursor: "crosshair",
    fields: sizeFields,
    marks: sized ? rectangleMarks(sized, project) : [],
    snap: at,
    move: (pointer) => ready(context, aimCorner(context, pointer), typed),
    typed: (values) => ready(context, at, values),
    press(pointer) {
      const from = aimCorner(context, pointer);
      const whole = typedRectangle(context, from, typed);
      if (whole) return commitRectangle(context, whole, home);
      return drawing(context, { from: from.at, to: from, typed: {} }, home);
    },
    finish: () => (sized ? commitRectangle(context, sized, home) : ready(context, at, typed)),
    cancel: () => "leave",
    lost: () => ready(context),
  };
}

/** A size typed before any press: the low-left corner lies under the pointer, or in the middle of the view. */
function typedRectangle(context: ToolContext, at: Snap | null, typed: TypedValues): Rectangle | null {
  if (typed.width === undefined || typed.depth === undefined) return null;
  const [cx, cy] = context.view().centre;
  const from: Point = at ? at.at : [cx - typed.width / 2, cy - typed.depth / 2];
  return draggedRectangle(from, [from[0] + 1, from[1] + 1], typed);
}
