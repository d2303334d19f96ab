/** One corner of a rectangle is down: the rectangle follows the hand; a second click, a release after a drag or Enter ends it. */
import type { Point } from "../../../document";
import { distance } from "../../../geometry";
import type { Snap } from "../../snap/snap";
import { handStep, roundTo } from "../../snap/step";
import type { TypedValues } from "../../typed/typedEntry";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { aimCorner, sizeFields, typedCorner } from "./aimCorner";
import type { RectangleKind } from "./kind";
import { cornerMarks, rectangleDimensions, rectangleMarks } from "./marks";
import { bigEnough, draggedRectangle, missingSide, type Rectangle } from "./rectangle";

interface Drawing {
  readonly from: Point;
  readonly to: Snap;
  readonly typed: TypedValues;
}

/** A press that moved less than this, px, was a click. */
const clickReach = 6;

export function drawing(context: ToolContext, kind: RectangleKind, now: Drawing, home: ToolStart): ToolState {
  const project = context.project();
  const to = typedCorner(now.typed, now.from) ?? now.to;
  const rectangle = draggedRectangle(now.from, to.at, now.typed);
  const aimed = (pointer: PlanPointer): Drawing => ({
    ...now,
    to: roundedTo(context, kind, now.from, pointer),
  });
  const commit = (at: Drawing): ToolState => {
    const opposite = typedCorner(at.typed, at.from) ?? at.to;
    const whole = draggedRectangle(at.from, opposite.at, at.typed);
    if (!bigEnough(whole)) return refused(whole);
    return kind.commit(context, whole.outline).ok ? home(context) : state;
  };
  // What was typed stays.
  const refused = (whole: Rectangle): ToolState => {
    context.say(
      `Still missing: the ${kind.what}'s ${missingSide(whole)}. Type it, or click the opposite corner.`,
    );
    return state;
  };
  const state: ToolState = {
    name: "drawing",
    hint: "Click the opposite corner, or type the width, Tab, the depth; or a place",
    cursor: "crosshair",
    fields: sizeFields,
    choices: kind.choices("corners"),
    marks: [
      ...rectangleMarks(rectangle, project),
      ...(bigEnough(rectangle) ? [] : cornerMarks(now.from, project)),
    ],
    snap: to,
    dimensions: rectangleDimensions(rectangle),
    move: (pointer) => drawing(context, kind, aimed(pointer), home),
    press: (pointer) => commit(aimed(pointer)),
    release(pointer) {
      const at = aimed(pointer);
      const moved = distance(now.from, pointer.at) * context.view().scale;
      return moved > clickReach ? commit(at) : drawing(context, kind, at, home);
    },
    typed: (typed) => drawing(context, kind, { ...now, typed }, home),
    finish: () => commit(now),
    back: () => home(context),
    cancel: () => home(context),
    lost: () => home(context),
  };
  return state;
}

/** The opposite corner: snapped to a thing, else at round sides from the first corner. */
function roundedTo(context: ToolContext, kind: RectangleKind, from: Point, pointer: PlanPointer): Snap {
  const aimed = aimCorner(context, pointer, kind.without);
  if (aimed.word !== null || pointer.free) return aimed;
  const step = handStep(context.project().display.length, context.view().scale);
  const at: Point = [
    from[0] + roundTo(pointer.at[0] - from[0], step),
    from[1] + roundTo(pointer.at[1] - from[1], step),
  ];
  return { ...aimed, at };
}
