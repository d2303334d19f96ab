import type { ToolStart } from "../tool";
import { ready } from "./ready";

export const buildingTool: ToolStart = (context) => ready(context);
