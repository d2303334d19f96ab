import { hovering } from "../door/hovering";
import type { ToolStart } from "../tool";
import { windowKind } from "./windowKind";

export const windowTool: ToolStart = (context) => hovering(context, windowKind);
