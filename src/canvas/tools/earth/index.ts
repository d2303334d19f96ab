import type { ToolStart } from "../tool";
import { ready } from "./ready";

export const earthTool: ToolStart = (context) => ready(context);
