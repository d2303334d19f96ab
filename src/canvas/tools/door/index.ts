import type { ToolStart } from "../tool";
import { hovering } from "./hovering";

export const doorTool: ToolStart = (context) => hovering(context);
