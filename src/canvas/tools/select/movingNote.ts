/** A note under the hand: its words, or the end of its leader. */
import { drawingEdits, type Point } from "../../../document";
import { aim } from "../aim";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";

/** Moves the words; what they point to stays. */
export function movingNote(
  context: ToolContext,
  id: string,
  from: Point,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const note = context.project().drawing.notes.find((each) => each.id === id);
  if (!note) return home(context);
  return startDrag(
    context,
    {
      name: "movingNote",
      hint: "Moves the words of the note; what they point to stays",
      cursor: "move",
      command: drawingEdits.changeNote,
      at({ at: [x, y] }) {
        const at: Point = [note.at[0] + x - from[0], note.at[1] + y - from[1]];
        return { args: { id, patch: { at }, what: "move note" } };
      },
    },
    pointer,
    home,
  );
}

/** Moves what the note points to; a note without a leader gets one. */
export function movingLeader(
  context: ToolContext,
  id: string,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  return startDrag(
    context,
    {
      name: "movingLeader",
      hint: "Let go at what the note is about; Shift places it freely",
      cursor: "move",
      command: drawingEdits.changeNote,
      at(now) {
        const snap = aim(context, now);
        const pointsTo: Point = [snap.at[0], snap.at[1]];
        return { args: { id, patch: { pointsTo }, what: "point the note" }, snap };
      },
    },
    pointer,
    home,
  );
}
