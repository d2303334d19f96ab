/** Asking for a tool, from wherever: what is half drawn on the plan isn't thrown away by it. */
import { endCautions, setTool, tell } from "./actions";
import type { ToolName } from "./state";

/** The plan's part of it. */
interface Drawing {
  /** Would another tool take away what is being drawn? */
  readonly isHalfDrawn: () => boolean;
  /** What is drawn goes on: the next key is for it. */
  readonly goOn: () => void;
}

const none: Drawing = { isHalfDrawn: () => false, goOn: () => {} };
let drawing: Drawing = none;

export function guardDrawing(part: Partial<Drawing>): void {
  drawing = { ...drawing, ...part };
}

/** True where something is half drawn, which is most likely a slip: it is kept, and said how to end it. */
export function keepsDrawing(): boolean {
  if (!drawing.isHalfDrawn()) return false;
  tell({
    tone: "caution",
    text: "What you draw isn't finished. Enter ends it, Esc gives it up; then take the other tool.",
  });
  drawing.goOn();
  return true;
}

/** Picks a tool that a person asked for; false where what is half drawn was kept instead. */
export function pickTool(tool: ToolName): boolean {
  if (keepsDrawing()) return false;
  endCautions();
  setTool(tool);
  return true;
}
