/** Test pit: each click puts one, and its depths are there to be typed, in the inspector. */
import { pitEdits } from "../../../document";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { ToolContext, ToolStart, ToolState } from "../tool";
import { byTypedPlace, typedPlace } from "../typedPlace";

export const pitTool: ToolStart = (context) => placing(context);

function placing(context: ToolContext, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const typedAt = typedPlace(typed);
  const shown = typedAt ?? at;
  return {
    name: "placing",
    hint: "Click where a test pit was dug; or type its place; then type how deep it met what",
    cursor: "crosshair",
    marks: shown ? [{ kind: "symbol", at: shown.at, symbol: "ring", size: 2.6, style: "preview-line" }] : [],
    snap: typedAt ? null : at,
    move: (pointer) => placing(context, aim(context, pointer), typed),
    press: (pointer) => putPit(context, aim(context, pointer)),
    ...byTypedPlace(context, {
      typed,
      again: (values) => placing(context, at, values),
      take: (place) => putPit(context, place),
    }),
    cancel: () => "leave",
    lost: () => placing(context),
  };
}

function putPit(context: ToolContext, { at: [x, y] }: Snap): ToolState {
  const edit = context.run(pitEdits.addPit, { place: { kind: "at", x, y } });
  if (!edit.ok) context.say(edit.why);
  else if (edit.made !== undefined) context.select([{ kind: "pit", id: edit.made }]);
  return placing(context);
}
