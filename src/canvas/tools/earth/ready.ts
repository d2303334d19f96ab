/** Nothing drawn yet: the kind is chosen in the strip, the next click begins it. */
import type { Snap } from "../../snap/snap";
import { aim } from "../aim";
import { next } from "../line/next";
import type { ToolContext, ToolState } from "../tool";
import {
  addPoint,
  chooseNew,
  type EarthKind,
  earthChoices,
  earthHint,
  earthLine,
  isEarthKind,
} from "./kinds";

interface Ready {
  readonly kind: EarthKind;
  readonly at: Snap | null;
}

/** The kind chosen last is offered when the tool is picked again. */
let lastKind: EarthKind = "parking";

export function ready(context: ToolContext, now: Ready = { kind: lastKind, at: null }): ToolState {
  const again = (change: Partial<Ready>) => ready(context, { ...now, ...change });
  const { kind } = now;
  return {
    name: "ready",
    hint: earthHint(kind),
    cursor: "crosshair",
    marks: now.at
      ? [{ kind: "symbol", at: now.at.at, symbol: "ring", size: 2.4, style: "preview-line" }]
      : [],
    snap: now.at,
    choices: earthChoices(kind),
    choose(value) {
      if (!isEarthKind(value)) return again({});
      lastKind = value;
      return again({ kind: value });
    },
    move: (pointer) => again({ at: aim(context, pointer) }),
    press(pointer) {
      const at = aim(context, pointer);
      const home = (later: ToolContext) => ready(later, { kind, at: null });
      if (kind !== "point")
        return next(context, earthLine(kind), { points: [at], to: at, typed: {}, held: true }, home);
      const edit = addPoint(context, at.at);
      chooseNew(context, kind, edit);
      return home(context);
    },
    cancel: () => "leave",
    lost: () => again({ at: null }),
  };
}
