/** A box over the plan: what it touches is selected when it is let go. */
import type { Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import type { Selected } from "../../../store/state";
import { writtenPxPerMm } from "../../screen";
import { thingsInBox } from "../../select/box";
import { includesThing } from "../../select/hit";
import { outlineMarks } from "../../select/outlineMarks";
import { toWorld, type View, type XY } from "../../view/view";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";

export function boxing(
  context: ToolContext,
  start: PlanPointer,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const project = context.project();
  const view = context.view();
  const found = thingsInBox(project, view, start.screen, pointer.screen);
  const leave = () => home(context);
  return {
    name: "boxing",
    hint: `${countWords(found)} Let go to select; with Ctrl held they are added to the selection`,
    cursor: "crosshair",
    marks: [
      ...found.flatMap((thing) => outlineMarks(project, thing, "hovered", writtenPxPerMm() / view.scale)),
      ...boxMarks(view, start.screen, pointer.screen),
    ],
    move: (now) => boxing(context, start, now, home),
    release(now) {
      const things = thingsInBox(project, view, start.screen, now.screen);
      const kept = start.adds || now.adds ? context.selection() : [];
      context.select([...kept, ...things.filter((thing) => !includesThing(kept, thing))]);
      return leave();
    },
    cancel: leave,
    lost: leave,
  };
}

function countWords({ length }: readonly Selected[]): string {
  if (length === 0) return "The box touches nothing yet.";
  return length === 1 ? "The box touches one thing." : `The box touches ${length} things.`;
}

function boxMarks(view: View, [left, top]: XY, [right, bottom]: XY): DrawingMark[] {
  const corners: XY[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  const points = corners.flatMap((at): Point => [...toWorld(view, at)] as Point);
  return [{ kind: "line", points, closed: true, style: "preview" }];
}
