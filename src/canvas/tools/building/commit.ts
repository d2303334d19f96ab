/** Puts the drawn rectangle into the project and selects it. */
import { buildingEdits } from "../../../document";
import type { ToolContext, ToolStart, ToolState } from "../tool";
import { firstFloor } from "./firstFloor";
import type { Rectangle } from "./rectangle";

export function commitRectangle(context: ToolContext, { outline }: Rectangle, home: ToolStart): ToolState {
  const floor = firstFloor(context, outline);
  const edit = context.run(buildingEdits.drawBuilding, { outline, floor });
  if (edit.ok) {
    context.setTool("select");
    context.select([{ kind: "building" }]);
  }
  return home(context);
}
