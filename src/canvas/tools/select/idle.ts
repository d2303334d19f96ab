/** Select, nothing pressed: shows what would answer, and starts everything else. */
import { drawingEdits, isLocked, type Project } from "../../../document";
import type { Selected } from "../../../store/state";
import { writtenPxPerMm } from "../../screen";
import { type Handle, handleAt, handleReach, handlesFor, linePoints } from "../../select/handles";
import { includesThing, thingAt } from "../../select/hit";
import { rewriteNote } from "../note/words";
import { renameSection } from "../section/rename";
import type { Cursor, PlanPointer, ToolContext, ToolState } from "../tool";
import { nudgeSelected } from "./nudging";
import { pressing } from "./pressing";
import { removeSelected } from "./removing";
import { leastPoints, lineWord, setLine } from "./setLine";
import { thingWord } from "./thingWord";

interface Under {
  readonly handle: Handle | null;
  readonly thing: Selected | null;
}

const nothing: Under = { handle: null, thing: null };
/** How near a thing must be to be meant, px. */
const thingReach = { mouse: 8, touch: 16 } as const;

export function idle(context: ToolContext, under: Under = nothing): ToolState {
  const again = (next: Under) => idle(context, next);
  const [only, ...others] = context.selection();
  const written = others.length === 0 && only && hasWords(only) ? only : null;
  const rewrite = (thing: Selected): ToolState => {
    askWordsOf(context, thing);
    return again(nothing);
  };
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
      const { handle, thing } = underPointer(context, pointer);
      if (handle?.kind === "vertex") removeVertex(context, handle);
      else if (handle?.kind === "leader") removeLeader(context, handle);
      else if (thing && hasWords(thing)) askWordsOf(context, thing);
      return again(nothing);
    },
    ...(written ? { finish: () => rewrite(written) } : {}),
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
  const reach = thingReach[how] / view.scale;
  return { handle, thing: thingAt(context.project(), pointer.at, reach, writtenPxPerMm() / view.scale) };
}

const handleHints: Readonly<Record<Exclude<Handle["kind"], "leader" | "door-edge">, string>> = {
  turn: "Drag to turn the building",
  wall: "Drag to pull this wall, click to type a length",
  corner: "Drag to pull this corner, right angles stay",
  "picture-turn": "Drag to turn the picture",
  "picture-corner": "Drag to make the picture larger or smaller",
  "dimension-end": "Drag to move this end; a corner of the building is followed",
  "dimension-line": "Drag to say how far the dimension stands off",
  vertex: "Drag to move this place, double-click to remove it",
  between: "Drag to add a place here",
};

function handleHint(handle: Handle): string {
  if (handle.kind === "door-edge") return `Drag to make the ${handle.of.kind} wider or narrower`;
  if (handle.kind !== "leader") return handleHints[handle.kind];
  return handle.makes
    ? "Drag to what the note is about"
    : "Drag to another place that the note is about; double-click takes the line away";
}

function hint(context: ToolContext, { handle, thing }: Under): string {
  if (handle) return handleHint(handle);
  const selection = context.selection();
  if (thing && includesThing(selection, thing)) {
    if (isLocked(context.project(), thing))
      return `The ${thingWord(context.project(), thing)} is locked; right click to unlock it`;
    if (selection.length > 1)
      return `Drag to move the ${selection.length} things, with Alt a copy; arrow keys nudge, Delete removes them`;
    if (thing.kind === "lot") return "Drag a corner to change the lot";
    if (thing.kind === "note")
      return "Drag to move the note, double-click to change its words, Delete removes it";
    if (thing.kind === "section")
      return "Drag to move the section line, double-click to name it, Delete removes it";
    return `Drag to move the ${thingWord(context.project(), thing)}, right click for more; arrow keys nudge it, Delete removes it`;
  }
  if (thing) return `Click to select the ${thingWord(context.project(), thing)}`;
  if (selection.length > 0 && selection.every((each) => isLocked(context.project(), each)))
    return `${selectedWords(context.project(), selection)} selected and locked: right click to unlock, Esc lets go`;
  return selection.length > 0
    ? `${selectedWords(context.project(), selection)} selected: drag ${selection.length === 1 ? "it" : "one"} to move, beside it to move the plan; right click for more, Esc lets go`
    : "Click a thing to select it, Shift+drag boxes several; drag to move the plan, wheel to zoom";
}

function selectedWords(project: Project, selection: readonly Selected[]): string {
  const [only] = selection;
  return only && selection.length === 1
    ? `The ${thingWord(project, only)} is`
    : `${selection.length} things are`;
}

function cursor(context: ToolContext, { handle, thing }: Under): Cursor {
  if (handle) return handle.kind === "turn" || handle.kind === "picture-turn" ? "grab" : "move";
  if (!thing) return "default";
  return includesThing(context.selection(), thing) && thing.kind !== "lot" ? "move" : "pointer";
}

const hasWords = (thing: Selected) => thing.kind === "note" || thing.kind === "section";

/** The words of a note, the name of a section line. */
function askWordsOf(context: ToolContext, thing: Selected): void {
  if (thing.kind === "note") rewriteNote(context, thing.id);
  if (thing.kind === "section") renameSection(context, thing.id);
}

function removeLeader(context: ToolContext, { id, makes }: Extract<Handle, { kind: "leader" }>): void {
  if (makes) return;
  context.run(drawingEdits.changeNote, { id, patch: { pointsTo: null }, what: "take the note's line away" });
}

function removeVertex(context: ToolContext, handle: Extract<Handle, { kind: "vertex" }>): void {
  const { points } = linePoints(context.project(), handle.line);
  const least = leastPoints(context.project(), handle.line);
  if (points.length <= least) {
    context.say(`${lineWord(context.project(), handle.line)} needs at least ${least} places.`);
    return;
  }
  const wasEnd = handle.line.kind === "drive" && handle.index === points.length - 1;
  context.run(setLine, {
    line: handle.line,
    points: points.filter((_, i) => i !== handle.index),
    what: `remove a place of ${lineWord(context.project(), handle.line)}`,
    ...(wasEnd ? { door: null } : {}),
  });
}
