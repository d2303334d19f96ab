/** Nothing clicked yet: the next click is where the swale starts. */
import { type Snap, unsnapped } from "../../snap/snap";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { ToolContext, ToolState } from "../tool";
import { aiming } from "./aiming";

export const placeField: readonly Field[] = [{ name: "east, north", kind: "place" }];

/** The place that was typed; null while it isn't whole. */
export function typedPlace({ east, north }: TypedValues): Snap | null {
  return east === undefined || north === undefined ? null : unsnapped([east, north]);
}

export function ready(context: ToolContext, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const given = typedPlace(typed);
  return {
    name: "ready",
    hint: "Click where the swale starts, uphill of the building",
    cursor: "crosshair",
    fields: placeField,
    marks: given ? [{ kind: "symbol", at: given.at, symbol: "ring", size: 2.4, style: "preview-line" }] : [],
    snap: given ? null : at,
    move: (pointer) => ready(context, aim(context, pointer), typed),
    press: (pointer) => aiming(context, aim(context, pointer)),
    typed: (values) => ready(context, at, values),
    finish: () => (given ? aiming(context, given) : ready(context, at, typed)),
    cancel: () => "leave",
    lost: () => ready(context),
  };
}
