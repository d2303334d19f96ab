/** Nothing drawn yet: the kind is chosen in the strip, the next click begins it. */
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import { next } from "../line/next";
import type { ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace, typedPlaceMarks } from "../typedPlace";
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
  readonly typed: TypedValues;
}

/** The kind chosen last is offered when the tool is picked again. */
let lastKind: EarthKind = "parking";

export function ready(context: ToolContext, now: Ready = { kind: lastKind, at: null, typed: {} }): ToolState {
  const again = (change: Partial<Ready>) => ready(context, { ...now, ...change });
  const { kind, typed } = now;
  const typedAt = typedPlace(typed);
  const shown = typedAt ?? now.at;
  return {
    name: "ready",
    hint: earthHint(kind),
    cursor: "crosshair",
    marks: shown ? typedPlaceMarks(shown) : [],
    snap: typedAt ? null : now.at,
    choices: earthChoices(kind),
    choose(value) {
      if (!isEarthKind(value)) return again({});
      lastKind = value;
      return again({ kind: value });
    },
    move: (pointer) => again({ at: aim(context, pointer) }),
    press: (pointer) => begin(context, kind, aim(context, pointer), true),
    ...byTypedPlace(context, {
      typed,
      again: (values) => again({ typed: values }),
      take: (at) => begin(context, kind, at, false),
    }),
    cancel: () => "leave",
    lost: () => again({ at: null }),
  };
}

/** The first corner of a shape, `held` while its press goes on; a grade point is whole with it. */
function begin(context: ToolContext, kind: EarthKind, at: Snap, held: boolean): ToolState {
  const home = (later: ToolContext) => ready(later, { kind, at: null, typed: {} });
  if (kind !== "point")
    return next(context, earthLine(kind), { points: [at], to: at, typed: {}, held }, home);
  const edit = addPoint(context, at.at);
  chooseNew(context, kind, edit);
  return home(context);
}
