import type { ToolStart } from "../tool";
import { ready } from "./ready";

export const featureTool: ToolStart = (context) => ready(context);
