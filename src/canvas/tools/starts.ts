/** Every tool by its name. */
import type { ToolName } from "../../store/state";
import { breaklineTool } from "./breakline";
import { buildingTool } from "./building";
import { dimensionTool } from "./dimension";
import { doorTool } from "./door";
import { driveTool } from "./drive";
import { earthTool } from "./earth";
import { featureTool } from "./feature";
import { lotTool } from "./lot";
import { markTool } from "./mark";
import { measureTool } from "./measure";
import { mirrorTool } from "./mirror";
import { noteTool } from "./note";
import { pictureDistanceTool } from "./picture/distance";
import { picturePointsTool } from "./picture/points";
import { pitTool } from "./pit";
import { placeTool } from "./place";
import { sectionTool } from "./section";
import { selectTool } from "./select";
import { shotTool } from "./shot";
import { stakesTool } from "./stakes";
import { swaleTool } from "./swale";
import { swaleRouteTool } from "./swale-route";
import type { ToolStart } from "./tool";
import { turnTool } from "./turn";
import { windowTool } from "./window";

export const toolStarts: Readonly<Record<ToolName, ToolStart>> = {
  select: selectTool,
  measure: measureTool,
  shot: shotTool,
  mark: markTool,
  breakline: breaklineTool,
  pit: pitTool,
  lot: lotTool,
  feature: featureTool,
  building: buildingTool,
  door: doorTool,
  window: windowTool,
  drive: driveTool,
  swale: swaleTool,
  "swale-route": swaleRouteTool,
  earth: earthTool,
  "picture-points": picturePointsTool,
  "picture-distance": pictureDistanceTool,
  note: noteTool,
  dimension: dimensionTool,
  section: sectionTool,
  turn: turnTool,
  mirror: mirrorTool,
  place: placeTool,
  stakes: stakesTool,
};
