import type { ToolStart } from "../tool";
import { ready } from "./ready";

export const noteTool: ToolStart = (context) => ready(context);
