/** Every tool by its name. */
import type { ToolName } from "../../store/state";
import { buildingTool } from "./building";
import { doorTool } from "./door";
import { driveTool } from "./drive";
import { lotTool } from "./lot";
import { markTool } from "./mark";
import { selectTool } from "./select";
import { shotTool } from "./shot";
import { swaleTool } from "./swale";
import type { ToolStart } from "./tool";

export const toolStarts: Readonly<Record<ToolName, ToolStart>> = {
  select: selectTool,
  shot: shotTool,
  mark: markTool,
  lot: lotTool,
  building: buildingTool,
  door: doorTool,
  drive: driveTool,
  swale: swaleTool,
};
