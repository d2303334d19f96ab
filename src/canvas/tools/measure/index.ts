import type { ToolStart } from "../tool";
import { ready } from "./measuring";

export const measureTool: ToolStart = (context) => ready(context);
