import type { ToolStart } from "../tool";
import { picking } from "./picking";

export const dimensionTool: ToolStart = (context) => picking(context);
