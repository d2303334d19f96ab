/** A line, no point yet: the next click is its first. */
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace, typedPlaceMarks } from "../typedPlace";
import type { LineKind } from "./lineKind";
import { next } from "./next";

export function first(
  context: ToolContext,
  kind: LineKind,
  at: Snap | null = null,
  typed: TypedValues = {},
): ToolState {
  const typedAt = typedPlace(typed);
  const home = (again: ToolContext) => first(again, kind);
  const begin = (start: Snap, held: boolean) =>
    next(context, kind, { points: [start], to: start, typed: {}, held }, home);
  const aimed = (pointer: PlanPointer) => aim(context, pointer);
  return {
    name: "first",
    hint: kind.hintFirst(context, typedAt ? null : at),
    cursor: "crosshair",
    marks: typedAt ? typedPlaceMarks(typedAt) : [],
    snap: typedAt ? null : at,
    move: (pointer) => first(context, kind, aimed(pointer), typed),
    ...byTypedPlace(context, {
      typed,
      again: (values) => first(context, kind, at, values),
      take: (start) => begin(start, false),
    }),
    press: (pointer) => begin(aimed(pointer), true),
    cancel: () => "leave",
    lost: () => first(context, kind),
  };
}
