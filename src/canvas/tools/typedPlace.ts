/** A place typed where the next click would give one: what every tool that waits for a single place shares. */
import type { DrawingMark } from "../../drawing/marks";
import { type Snap, unsnapped } from "../snap/snap";
import type { Field, TypedValues } from "../typed/typedEntry";
import type { ToolContext, ToolState } from "./tool";

/** Two lengths from the plan's origin. */
export const placeFields: readonly Field[] = [{ name: "east, north", kind: "place" }];

/** The place that was typed; null where none was, or not all of it yet. */
export function typedPlace({ east, north }: TypedValues): Snap | null {
  return east === undefined || north === undefined ? null : unsnapped([east, north]);
}

/** The typed place, as it shows on the plan. */
export function typedPlaceMarks({ at }: Snap): DrawingMark[] {
  return [{ kind: "symbol", at, symbol: "ring", size: 2.4, style: "preview-line" }];
}

/** How a state that waits for one place goes on. */
export interface Waiting {
  readonly typed: TypedValues;
  /** The same state with what is typed now. */
  again(typed: TypedValues): ToolState;
  /** A click's act, at the typed place. */
  take(at: Snap): ToolState;
}

/** The fields and answers by which the place can be typed; Enter without one says what to do. */
export function byTypedPlace(
  context: ToolContext,
  { typed, again, take }: Waiting,
): Required<Pick<ToolState, "fields" | "typed" | "finish">> {
  return {
    fields: placeFields,
    typed: again,
    finish: () => takeTyped(context, { typed, again, take }),
  };
}

/** Enter: the act at the typed place, brought into sight; without one it is said what a place is typed like. */
export function takeTyped(context: ToolContext, { typed, again, take }: Waiting): ToolState {
  const at = typedPlace(typed);
  if (at) {
    const next = take(at);
    // Where it goes on from there the machine brings it into sight.
    if (!next.locksFrom) context.show(at.at);
    return next;
  }
  context.say("There is no place yet: click it, or type it from the plan's origin, like 12, 5.");
  return again(typed);
}
