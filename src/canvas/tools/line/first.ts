/** A line, no point yet: the next click is its first. */
import type { Snap } from "../../snap/snap";
import { aim } from "../aim";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import type { LineKind } from "./lineKind";
import { next } from "./next";

export function first(context: ToolContext, kind: LineKind, at: Snap | null = null): ToolState {
  const home = (again: ToolContext) => first(again, kind);
  const aimed = (pointer: PlanPointer) => aim(context, pointer);
  return {
    name: "first",
    hint: kind.hintFirst(context),
    cursor: "crosshair",
    snap: at,
    move: (pointer) => first(context, kind, aimed(pointer)),
    press(pointer) {
      const start = aimed(pointer);
      return next(context, kind, { points: [start], to: start, typed: {}, held: true }, home);
    },
    cancel: () => "leave",
    lost: () => first(context, kind),
  };
}
