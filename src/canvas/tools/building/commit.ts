/** Puts the drawn outline into the project as the building and selects it. */
import { buildingEdits, type Edit, type Point } from "../../../document";
import type { ToolContext } from "../tool";
import { firstFloor } from "./firstFloor";

export function commitBuilding(context: ToolContext, outline: readonly Point[]): Edit {
  const floor = firstFloor(context, outline);
  const edit = context.run(buildingEdits.drawBuilding, { outline: [...outline], floor });
  if (edit.ok) {
    context.setTool("select");
    context.select([{ kind: "building" }]);
  }
  return edit;
}
