/** Open ground under the hand: the plan moves along. */
import type { XY } from "../../view/view";
import type { ToolContext, ToolStart, ToolState } from "../tool";

export function panning(context: ToolContext, last: XY, home: ToolStart): ToolState {
  return {
    name: "panning",
    hint: "Moves the plan",
    cursor: "grabbing",
    move(pointer) {
      context.pan(pointer.screen[0] - last[0], pointer.screen[1] - last[1]);
      return panning(context, pointer.screen, home);
    },
    release: () => home(context),
    cancel: () => home(context),
    lost: () => home(context),
  };
}
