/** Something is pressed: a move makes it a drag, a release a click. */

import { arrangeEdits, buildingEdits } from "../../../document";
import type { Selected } from "../../../store/state";
import type { Handle } from "../../select/handles";
import { includesThing } from "../../select/hit";
import { pullForLength, pullWall } from "../../select/shape";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { boxing } from "./boxing";
import { movingDimension, movingDimensionEnd } from "./movingDimension";
import { movingLeader, movingNote } from "./movingNote";
import { movingSpot } from "./movingSpot";
import { movingThings } from "./movingThings";
import { movingVertex } from "./movingVertex";
import { panning } from "./panning";
import { movingPicture, pullingPicture, turningPicture } from "./picture";
import { pullingCorner } from "./pullingCorner";
import { neighbourLength, pullingWall } from "./pullingWall";
import { pullingDoorEdge, slidingDoor } from "./slidingDoor";
import { turning } from "./turning";

export interface Pressed {
  readonly pointer: PlanPointer;
  readonly handle: Handle | null;
  readonly thing: Selected | null;
}

/** A hand isn't still: less than this, px, is a click. */
const clickReach = { mouse: 4, touch: 9 } as const;

export function pressing(context: ToolContext, pressed: Pressed, home: ToolStart): ToolState {
  const { pointer: start, handle, thing } = pressed;
  const drags = handle !== null || (thing !== null && includesThing(context.selection(), thing));
  return {
    name: "pressing",
    hint: drags ? "Drag to move it" : start.free ? "Drag a box round things" : "Drag to move the plan",
    cursor: drags ? "move" : "pointer",
    handles: true,
    hot: handle,
    hovered: thing,
    move(pointer) {
      const off = Math.hypot(pointer.screen[0] - start.screen[0], pointer.screen[1] - start.screen[1]);
      if (off < (pointer.touch ? clickReach.touch : clickReach.mouse))
        return pressing(context, pressed, home);
      if (handle) return pullHandle(context, handle, start, pointer, home);
      if (thing && drags) return dragSelected(context, thing, start, pointer, home);
      if (start.free) return boxing(context, start, pointer, home);
      context.pan(pointer.screen[0] - start.screen[0], pointer.screen[1] - start.screen[1]);
      return panning(context, pointer.screen, home);
    },
    release() {
      if (handle) clickHandle(context, handle);
      else clickThing(context, thing, start.adds || start.free);
      return home(context);
    },
    cancel: () => home(context),
    lost: () => home(context),
  };
}

function pullHandle(
  context: ToolContext,
  handle: Handle,
  start: PlanPointer,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  switch (handle.kind) {
    case "turn":
      return turning(context, start.at, pointer, home);
    case "wall":
      return pullingWall(context, handle.wall, pointer, home);
    case "corner":
      return pullingCorner(context, handle.corner, pointer, home);
    case "picture-turn":
      return turningPicture({ context, id: handle.id, pointer, home }, start.at);
    case "picture-corner":
      return pullingPicture({ context, id: handle.id, pointer, home }, handle.corner);
    case "door-edge":
      return pullingDoorEdge(context, handle.of, handle.edge, pointer, home);
    case "leader":
      return movingLeader(context, handle.id, pointer, home);
    case "dimension-end":
      return movingDimensionEnd(context, handle.id, handle.end, pointer, home);
    case "dimension-line":
      return movingDimension(context, handle.id, pointer, home);
    case "vertex":
      return movingVertex(context, { line: handle.line, index: handle.index, makes: false }, pointer, home);
    case "between":
      return movingVertex(context, { line: handle.line, index: handle.index, makes: true }, pointer, home);
  }
}

function dragSelected(
  context: ToolContext,
  thing: Selected,
  start: PlanPointer,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const things = context.selection();
  const fault = arrangeEdits.handFault(context.project(), things);
  if (fault) {
    context.say(fault);
    return panning(context, pointer.screen, home);
  }
  return things.length > 1 || start.copies
    ? movingThings(context, things, start, pointer, home)
    : dragThing(context, thing, start, pointer, home);
}

function dragThing(
  context: ToolContext,
  thing: Selected,
  start: PlanPointer,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  switch (thing.kind) {
    case "door":
    case "window":
      return slidingDoor(context, { kind: thing.kind, id: thing.id }, start.at, pointer, home);
    case "note":
      return movingNote(context, thing.id, start.at, pointer, home);
    case "dimension":
      return movingDimension(context, thing.id, pointer, home);
    case "underlay":
      return movingPicture({ context, id: thing.id, pointer, home }, start.at);
    case "shot":
    case "mark":
    case "pit":
    case "grade-point":
      return movingSpot(context, { kind: thing.kind, id: thing.id }, pointer, home);
    case "lot":
      // A lot line never moves as a whole by a slip of the hand; its corners can be pulled.
      return panning(context, pointer.screen, home);
    default:
      return movingThings(context, [thing], start, pointer, home);
  }
}

/** A click on a wall's handle asks for the length that pulling it would change. */
function clickHandle(context: ToolContext, handle: Handle): void {
  const outline = context.project().building?.outline;
  if (handle.kind !== "wall" || !outline) return;
  const side = neighbourLength(outline, handle.wall);
  if (!side) return;
  context.ask({
    at: handle.at,
    label: side.name,
    m: side.m,
    answer(m) {
      const pulled = pullWall(outline, handle.wall, pullForLength(outline, handle.wall, m));
      return context.run(buildingEdits.setOutline, {
        outline: pulled ?? outline,
        what: `${side.name} by its length`,
      });
    },
  });
}

function clickThing(context: ToolContext, thing: Selected | null, adds: boolean): void {
  const selection = context.selection();
  if (!thing) {
    if (!adds) context.select([]);
    return;
  }
  if (!adds) context.select([thing]);
  else if (includesThing(selection, thing))
    context.select(selection.filter((each) => !includesThing([thing], each)));
  else context.select([...selection, thing]);
}
