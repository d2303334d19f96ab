/** Place by a click: the selected shot, mark, test pit or grade point goes where the next click says. */
import { thingName, thingShape } from "../../../document";
import { sameThing } from "../../select/hit";
import type { Snap } from "../../snap/snap";
import { snapTargets } from "../../snap/targets";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import { isSpot, moveSpot, type Spot } from "../select/movingSpot";
import type { ToolContext, ToolStart, ToolState } from "../tool";
import { byTypedPlace, typedPlace } from "../typedPlace";

export const placeTool: ToolStart = (context) => {
  const [spot, ...more] = context.selection();
  return spot && more.length === 0 && isSpot(spot) ? placing(context, spot) : nothing;
};

const nothing: ToolState = {
  name: "nothing",
  hint: "Select one shot, mark, test pit or grade point first; Esc lets go",
  cursor: "default",
  cancel: () => "leave",
  lost: () => nothing,
};

function placing(
  context: ToolContext,
  spot: Spot,
  at: Snap | null = null,
  typed: TypedValues = {},
): ToolState {
  const typedAt = typedPlace(typed);
  const shown = typedAt ?? at;
  const project = context.project();
  const targets = { ...snapTargets(project, (thing) => sameThing(thing, spot)), directions: [] };
  const from = thingShape(project, spot)?.points[0];
  const ties = spot.kind === "shot" || spot.kind === "pit";
  return {
    name: "placing",
    hint: `Click where “${thingName(project, spot)}” is${ties ? "; a corner of the building counts as that corner" : ""}, Esc leaves it`,
    cursor: "crosshair",
    marks: shown
      ? [
          ...(from ? [{ kind: "line", points: [...from, ...shown.at], style: "snap-guide" } as const] : []),
          { kind: "symbol", at: shown.at, symbol: "plus", size: 3, style: "preview-line" },
        ]
      : [],
    snap: typedAt ? null : at,
    move: (pointer) => placing(context, spot, aim(context, pointer, { targets }), typed),
    press: (pointer) => put(context, spot, aim(context, pointer, { targets })),
    ...byTypedPlace(context, {
      typed,
      again: (values) => placing(context, spot, at, values),
      take: (to) => put(context, spot, to),
    }),
    cancel: () => "leave",
    lost: () => placing(context, spot),
  };
}

function put(context: ToolContext, spot: Spot, to: Snap): ToolState {
  const edit = context.run(moveSpot, { spot, to });
  if (edit.ok) context.setTool("select");
  else context.say(edit.why);
  return placing(context, spot);
}
