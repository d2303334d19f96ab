/** The picture that the placing tools work on, and how they end. */
import type { Underlay } from "../../../document";
import { pictureById } from "../../select/pictures";
import type { ToolContext } from "../tool";

/** The selected picture, else the one placed last; null where there is none. */
export function chosenPicture(context: ToolContext): Underlay | null {
  for (const thing of context.selection()) {
    if (thing.kind === "underlay") return pictureById(context.project(), thing.id);
  }
  return context.project().drawing.underlays.at(-1) ?? null;
}

/** Back to the select tool, with the picture selected. */
export function endPlacing(context: ToolContext, id: string): void {
  context.setTool("select");
  context.select([{ kind: "underlay", id }]);
}
