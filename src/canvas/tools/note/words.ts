/** The words of a note, asked for in a box over the plan: of a new one, and of one that stands already. */
import { drawingEdits, type Point } from "../../../document";
import type { ToolContext } from "../tool";

const label = "Words of the note";

export function writeNote(
  context: ToolContext,
  place: { readonly at: Point; readonly pointsTo: Point | null },
): void {
  context.askWords({
    at: place.at,
    label,
    text: "",
    answer(text) {
      const edit = context.run(drawingEdits.addNote, { ...place, text });
      if (edit.ok) {
        context.setTool("select");
        if (edit.made !== undefined) context.select([{ kind: "note", id: edit.made }]);
      }
      return edit;
    },
  });
}

export function rewriteNote(context: ToolContext, id: string): void {
  const note = context.project().drawing.notes.find((each) => each.id === id);
  if (!note) return;
  context.askWords({
    at: note.at,
    label,
    text: note.text,
    answer(typed) {
      const text = typed.trim();
      return context.run(drawingEdits.changeNote, { id, patch: { text }, what: "rewrite note" });
    },
  });
}
