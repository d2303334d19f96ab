import type { ToolStart } from "../tool";
import { doorKind } from "./doorKind";
import { hovering } from "./hovering";

export const doorTool: ToolStart = (context) => hovering(context, doorKind);
