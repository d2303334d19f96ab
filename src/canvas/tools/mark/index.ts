import type { ToolStart } from "../tool";
import { placing } from "./placing";

export const markTool: ToolStart = (context) => placing(context);
