/** Note: a click is where its words stand; a drag begins at what they are about. */
import type { Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { distance } from "../../../geometry";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace, typedPlaceMarks } from "../typedPlace";
import { writeNote } from "./words";

/** A drag shorter than this, px, is a click. */
const leastLeader = 18;

export function ready(context: ToolContext, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const typedAt = typedPlace(typed);
  return {
    name: "ready",
    hint: "Click or type where the words go, or drag to there from what they are about",
    cursor: "crosshair",
    marks: typedAt ? typedPlaceMarks(typedAt) : [],
    snap: typedAt ? null : at,
    move: (pointer) => ready(context, aim(context, pointer), typed),
    ...byTypedPlace(context, {
      typed,
      again: (values) => ready(context, at, values),
      take: (place) => ask(context, [place.at[0], place.at[1]], null),
    }),
    press(pointer) {
      const snap = aim(context, pointer);
      return placing(context, { from: snap, pressed: pointer.at, to: pointer.at });
    },
    cancel: () => "leave",
    lost: () => ready(context),
  };
}

interface Placing {
  /** What the words may be about. */
  readonly from: Snap;
  readonly pressed: Point;
  readonly to: Point;
}

function placing(context: ToolContext, now: Placing): ToolState {
  const pulled = distance(now.pressed, now.to) * context.view().scale > leastLeader;
  return {
    name: "placing",
    hint: pulled ? "Let go where the words go" : "Let go to write here, or drag to where the words go",
    cursor: "crosshair",
    marks: pulled ? leaderMarks(now.from.at, now.to) : [],
    snap: now.from,
    move: (pointer: PlanPointer) => placing(context, { ...now, to: pointer.at }),
    release: (pointer: PlanPointer) => letGo(context, { ...now, to: pointer.at }),
    cancel: () => ready(context),
    lost: () => ready(context),
  };
}

function letGo(context: ToolContext, now: Placing): ToolState {
  const pulled = distance(now.pressed, now.to) * context.view().scale > leastLeader;
  const pointsTo: Point | null = pulled ? [now.from.at[0], now.from.at[1]] : null;
  return ask(context, [now.to[0], now.to[1]], pointsTo);
}

function ask(context: ToolContext, at: Point, pointsTo: Point | null): ToolState {
  writeNote(context, { at, pointsTo });
  return writing(context, at, pointsTo);
}

/** The words are being typed in their box over the plan. */
function writing(context: ToolContext, at: Point, pointsTo: Point | null): ToolState {
  return {
    name: "writing",
    hint: "Type the words: Enter keeps them, Shift+Enter begins a new line, Esc leaves them",
    cursor: "crosshair",
    marks: pointsTo ? leaderMarks(pointsTo, at) : [],
    press: (pointer) =>
      placing(context, { from: aim(context, pointer), pressed: pointer.at, to: pointer.at }),
    cancel: () => ready(context),
    lost: () => ready(context),
  };
}

function leaderMarks(from: Point, to: Point): DrawingMark[] {
  return [
    { kind: "line", points: [...from, ...to], style: "preview-line" },
    { kind: "symbol", at: from, symbol: "dot", size: 1.6, style: "handle-hot" },
  ];
}
