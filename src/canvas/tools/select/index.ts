import type { ToolStart } from "../tool";
import { idle } from "./idle";

export const selectTool: ToolStart = (context) => idle(context);
