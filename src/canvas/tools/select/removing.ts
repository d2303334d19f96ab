/** Delete: takes the selected things away as one step. */
import { arrangeEdits } from "../../../document";
import type { ToolContext } from "../tool";

export function removeSelected(context: ToolContext): void {
  const things = context.selection();
  if (things.length === 0) return;
  if (context.run(arrangeEdits.removeThings, { things }).ok) context.select([]);
}
