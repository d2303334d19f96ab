/** A dimension under the hand: how far it stands off, or one of its ends. */
import { drawingEdits } from "../../../document";
import { aim } from "../aim";
import { endOf, pointedOffset, standingMarks } from "../dimension/standingOff";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";

export function movingDimension(
  context: ToolContext,
  id: string,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const dimension = context.project().drawing.dimensions.find((each) => each.id === id);
  if (!dimension) return home(context);
  return startDrag(
    context,
    {
      name: "movingDimension",
      hint: "Says how far the dimension stands off; type the distance",
      cursor: "move",
      fields: [{ name: "stand-off", kind: "length" }],
      command: drawingEdits.changeDimension,
      at(now, typed) {
        const pointed = pointedOffset(context, dimension, now);
        const length = typed["stand-off"];
        const offset = length === undefined ? pointed : Math.sign(pointed || 1) * length;
        return {
          args: { id, patch: { offset }, what: "move dimension" },
          marks: standingMarks(context.project(), dimension, offset),
        };
      },
    },
    pointer,
    home,
  );
}

export function movingDimensionEnd(
  context: ToolContext,
  id: string,
  end: "from" | "to",
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const dimension = context.project().drawing.dimensions.find((each) => each.id === id);
  if (!dimension) return home(context);
  return startDrag(
    context,
    {
      name: "movingDimensionEnd",
      hint: "Moves this end; on a corner of the building it follows that corner, Shift places it freely",
      cursor: "move",
      command: drawingEdits.changeDimension,
      at(now) {
        const snap = aim(context, now);
        const patch = { [end]: endOf(snap) };
        return {
          args: { id, patch, what: "move an end of the dimension" },
          marks: standingMarks(context.project(), { ...dimension, ...patch }, dimension.offset),
          snap,
        };
      },
    },
    pointer,
    home,
  );
}
