/** The name of a section line, asked for over the plan. */
import { drawingEdits, type Point } from "../../../document";
import type { ToolContext } from "../tool";

export function renameSection(context: ToolContext, id: string): void {
  const section = context.project().drawing.sections.find((each) => each.id === id);
  if (!section) return;
  const [a, b] = section.line;
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  context.askWords({
    at: middle,
    label: "Name of the section line",
    text: section.name,
    oneLine: true,
    answer(typed) {
      const name = typed.trim();
      return context.run(drawingEdits.changeSection, { id, patch: { name }, what: "name section line" });
    },
  });
}
