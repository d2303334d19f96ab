/** A line, no point yet: the next click is its first. */
import { type Snap, unsnapped } from "../../snap/snap";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import type { LineKind } from "./lineKind";
import { next } from "./next";

const fields: readonly Field[] = [{ name: "east, north", kind: "place" }];

export function first(
  context: ToolContext,
  kind: LineKind,
  at: Snap | null = null,
  typed: TypedValues = {},
): ToolState {
  const { east, north } = typed;
  const typedAt = east === undefined || north === undefined ? null : unsnapped([east, north]);
  const home = (again: ToolContext) => first(again, kind);
  const aimed = (pointer: PlanPointer) => aim(context, pointer);
  return {
    name: "first",
    hint: kind.hintFirst(context),
    cursor: "crosshair",
    fields,
    marks: typedAt
      ? [{ kind: "symbol", at: typedAt.at, symbol: "ring", size: 2.4, style: "preview-line" }]
      : [],
    snap: typedAt ? null : at,
    move: (pointer) => first(context, kind, aimed(pointer), typed),
    typed: (values) => first(context, kind, at, values),
    finish: () =>
      typedAt
        ? next(context, kind, { points: [typedAt], to: typedAt, typed: {}, held: false }, home)
        : first(context, kind, at, typed),
    press(pointer) {
      const start = aimed(pointer);
      return next(context, kind, { points: [start], to: start, typed: {}, held: true }, home);
    },
    cancel: () => "leave",
    lost: () => first(context, kind),
  };
}
