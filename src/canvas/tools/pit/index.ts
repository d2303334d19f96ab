/** Test pit: each click puts one, and its depths are there to be typed, in the inspector. */
import { pitEdits } from "../../../document";
import type { Snap } from "../../snap/snap";
import { aim } from "../aim";
import type { ToolContext, ToolStart, ToolState } from "../tool";

export const pitTool: ToolStart = (context) => placing(context);

function placing(context: ToolContext, at: Snap | null = null): ToolState {
  return {
    name: "placing",
    hint: "Click where a test pit was dug; then type how deep it met what",
    cursor: "crosshair",
    marks: at ? [{ kind: "symbol", at: at.at, symbol: "ring", size: 2.6, style: "preview-line" }] : [],
    snap: at,
    move: (pointer) => placing(context, aim(context, pointer)),
    press(pointer) {
      const [x, y] = aim(context, pointer).at;
      const edit = context.run(pitEdits.addPit, { place: { kind: "at", x, y } });
      if (!edit.ok) context.say(edit.why);
      else if (edit.made !== undefined) context.select([{ kind: "pit", id: edit.made }]);
      return placing(context);
    },
    cancel: () => "leave",
    lost: () => placing(context),
  };
}
