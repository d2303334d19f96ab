import type { ToolStart } from "../tool";
import { placing } from "./placing";

export const shotTool: ToolStart = (context) => placing(context);
