/** Select, nothing pressed: shows what would answer, and starts everything else. */
import type { Selected } from "../../../store/state";
import { type Handle, handleAt, handleReach, handlesFor, linePoints } from "../../select/handles";
import { includesThing, thingAt } from "../../select/hit";
import type { Cursor, PlanPointer, ToolContext, ToolState } from "../tool";
import { nudgeSelected } from "./nudging";
import { pressing } from "./pressing";
import { removeSelected } from "./removing";
import { leastPoints, lineWord, setLine } from "./setLine";

interface Under {
  readonly handle: Handle | null;
  readonly thing: Selected | null;
}

const nothing: Under = { handle: null, thing: null };
/** How near a thing must be to be meant, px. */
const thingReach = { mouse: 8, touch: 16 } as const;

export function idle(context: ToolContext, under: Under = nothing): ToolState {
  const again = (next: Under) => idle(context, next);
  return {
    name: "idle",
    hint: hint(context, under),
    cursor: cursor(context, under),
    handles: true,
    hot: under.handle,
    hovered: under.handle ? null : under.thing,
    move: (pointer) => again(underPointer(context, pointer)),
    press: (pointer) => pressing(context, { pointer, ...underPointer(context, pointer) }, home),
    doublePress(pointer) {
      const { handle } = underPointer(context, pointer);
      if (handle?.kind === "vertex") removeVertex(context, handle);
      return again(nothing);
    },
    remove() {
      removeSelected(context);
      return again(nothing);
    },
    nudge(direction, large) {
      nudgeSelected(context, direction, large);
      return again(under);
    },
    cancel() {
      context.select([]);
      return again(nothing);
    },
    lost: () => again(nothing),
  };
}

const home = (context: ToolContext): ToolState => idle(context);

function underPointer(context: ToolContext, pointer: PlanPointer): Under {
  const view = context.view();
  const handles = handlesFor(context.project(), context.selection(), view);
  const how = pointer.touch ? "touch" : "mouse";
  const handle = handleAt(handles, view, pointer.screen, handleReach[how]);
  return { handle, thing: thingAt(context.project(), pointer.at, thingReach[how] / view.scale) };
}

const handleHints: Readonly<Record<Handle["kind"], string>> = {
  turn: "Drag to turn the building",
  wall: "Drag to pull this wall, click to type a length",
  corner: "Drag to pull this corner, right angles stay",
  "picture-turn": "Drag to turn the picture",
  "picture-corner": "Drag to make the picture larger or smaller",
  "door-edge": "Drag to make the door wider or narrower",
  vertex: "Drag to move this place, double-click to remove it",
  between: "Drag to add a place here",
};

function hint(context: ToolContext, { handle, thing }: Under): string {
  if (handle) return handleHints[handle.kind];
  const selection = context.selection();
  if (thing && includesThing(selection, thing)) {
    if (thing.kind === "lot") return "Drag a corner to change the lot";
    return `Drag to move the ${thingWord(thing)}; arrow keys nudge it, Delete removes it`;
  }
  if (thing) return `Click to select the ${thingWord(thing)}`;
  return selection.length > 0
    ? "Drag to move the plan, wheel to zoom; Esc lets go of what is selected"
    : "Click a thing to select it; drag to move the plan, wheel to zoom";
}

export function thingWord(thing: Selected): string {
  if (thing.kind === "underlay") return "picture";
  return thing.kind === "lot" ? "lot line" : thing.kind;
}

function cursor(context: ToolContext, { handle, thing }: Under): Cursor {
  if (handle) return handle.kind === "turn" || handle.kind === "picture-turn" ? "grab" : "move";
  if (!thing) return "default";
  return includesThing(context.selection(), thing) && thing.kind !== "lot" ? "move" : "pointer";
}

function removeVertex(context: ToolContext, handle: Extract<Handle, { kind: "vertex" }>): void {
  const { points } = linePoints(context.project(), handle.line);
  if (points.length <= leastPoints(handle.line)) {
    context.say(`${lineWord(handle.line)} needs at least ${leastPoints(handle.line)} places.`);
    return;
  }
  const wasEnd = handle.line.kind === "drive" && handle.index === points.length - 1;
  context.run(setLine, {
    line: handle.line,
    points: points.filter((_, i) => i !== handle.index),
    what: `remove a place of ${lineWord(handle.line)}`,
    ...(wasEnd ? { door: null } : {}),
  });
}
