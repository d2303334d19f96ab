/** Turns what is selected about a place of one's choice: first the place, then the turn. */
import { arrangeEdits, type Edit, type Point, thingShape } from "../../../document";
import { boundsOf } from "../../../geometry";
import { formatAngle } from "../../../units";
import { outlineCentre, snapTurn, turnAbout } from "../../select/shape";
import type { Field } from "../../typed/typedEntry";
import { toScreen } from "../../view/view";
import { aim } from "../aim";
import { floating, turnWords } from "../liveMarks";
import { startDrag } from "../select/dragging";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { typedPlace } from "../typedPlace";

/** How near the press must come to the centre to take hold of it, px. */
const centreReach = { mouse: 12, touch: 22 } as const;

/** A press that moves less than this, px, is a click. */
const dragPixels = 6;

/** One figure is the angle; two lengths are the place to turn about. */
const readyFields: readonly Field[] = [{ name: "angle", kind: "angle", pair: true, first: true }];

export function turnTool(context: ToolContext): ToolState {
  const points = context.selection().flatMap((thing) => thingShape(context.project(), thing)?.points ?? []);
  return ready(context, middleOf(context, points));
}

function middleOf(context: ToolContext, points: readonly Point[]): Point {
  const [only, ...others] = context.selection();
  const outline = context.project().building?.outline;
  if (only?.kind === "building" && others.length === 0 && outline) return outlineCentre(outline);
  const { minX, minY, maxX, maxY } = boundsOf(points);
  return Number.isFinite(minX) ? [(minX + maxX) / 2, (minY + maxY) / 2] : [0, 0];
}

function leave(context: ToolContext): ToolState {
  context.setTool("select");
  return ready(context, [0, 0]);
}

/** `chosen`: the place was given; before that it is the middle of the things. */
function ready(context: ToolContext, about: Point, chosen = false, place: Point | null = null): ToolState {
  const again = () => ready(context, about, chosen);
  const fault = arrangeEdits.handFault(context.project(), context.selection());
  return {
    name: "ready",
    hint: fault ?? readyHint(chosen),
    cursor: "grab",
    fields: readyFields,
    marks: centreMarks(place ?? about),
    press: (pointer) =>
      isOn(context, about, pointer) ? movingCentre(context, pointer) : pressed(context, about, pointer),
    typed(typed) {
      if (typed.angle !== undefined) return typedTurn(context, about, typed.angle);
      return ready(context, about, chosen, typedPlace(typed)?.at ?? null);
    },
    finish() {
      if (!place) context.say(wanted);
      else context.show(place);
      return place ? ready(context, place, true) : again();
    },
    cancel: () => "leave",
    lost: again,
  };
}

const wanted =
  "Nothing is turned yet: type an angle, like 15, or the place to turn about first, like 12, 5; or drag.";

function readyHint(chosen: boolean): string {
  return chosen
    ? "Drag to turn about this place, or type an angle, clockwise, Enter; a click takes another place"
    : "Click the place to turn about, or type it (12, 5): now it is the middle; then drag, or type an angle, clockwise";
}

/** A click gives the place to turn about; a drag turns. */
function pressed(context: ToolContext, about: Point, pointer: PlanPointer): ToolState {
  const [x, y] = pointer.screen;
  return {
    name: "pressed",
    hint: "Let go to turn about this place, or drag to turn",
    cursor: "grab",
    marks: centreMarks(about),
    move(now) {
      const far = Math.hypot(now.screen[0] - x, now.screen[1] - y) > dragPixels;
      return far ? (turning(context, about, pointer).move?.(now) ?? this) : this;
    },
    release: () => ready(context, aim(context, pointer).at, true),
    cancel: () => ready(context, about),
    lost: () => ready(context, about),
  };
}

/** A tree turned about itself stands as it did: that is said, and no step of it is kept. */
function turnsNothing(
  context: ToolContext,
  args: Parameters<typeof arrangeEdits.turnThings.run>[1],
): boolean {
  const project = context.project();
  const edit: Edit = arrangeEdits.turnThings.run(project, args);
  return edit.ok && edit.project === project;
}

const nothingTurned = "Turned about itself it stands as it did. Click another place to turn about first.";

function isOn(context: ToolContext, about: Point, pointer: PlanPointer): boolean {
  const [x, y] = toScreen(context.view(), about);
  const reach = pointer.touch ? centreReach.touch : centreReach.mouse;
  return Math.hypot(x - pointer.screen[0], y - pointer.screen[1]) <= reach;
}

function centreMarks(about: Point) {
  return [
    { kind: "symbol", at: about, symbol: "ring", size: 4.4, style: "handle" },
    { kind: "symbol", at: about, symbol: "plus", size: 2.6, style: "snap-ring" },
  ] as const;
}

/** The centre under the hand: it snaps to corners, shots and lines as anything else. */
function movingCentre(context: ToolContext, pointer: PlanPointer): ToolState {
  const snap = aim(context, pointer);
  const put = () => ready(context, snap.at, true);
  return {
    name: "movingCentre",
    hint: "Let go where the things should turn about; Shift places it freely",
    cursor: "move",
    marks: centreMarks(snap.at),
    snap,
    move: (now) => movingCentre(context, now),
    release: put,
    cancel: put,
    lost: put,
  };
}

/** An angle is being typed: the turn is shown, Enter makes it. Typed angles turn clockwise, as bearings do. */
function typedTurn(context: ToolContext, about: Point, clockwise: number): ToolState {
  const args = { things: context.selection(), about, angle: -clockwise };
  context.preview(arrangeEdits.turnThings, args);
  const back = (): ToolState => {
    context.cancelPreview();
    return ready(context, about, true);
  };
  return {
    name: "typing",
    hint: `Enter turns by ${formatAngle(clockwise)} clockwise; Esc takes the angle back`,
    cursor: "grab",
    fields: readyFields,
    marks: centreMarks(about),
    typed(typed) {
      if (typed.angle !== undefined) return typedTurn(context, about, typed.angle);
      context.cancelPreview();
      return ready(context, about, true, typedPlace(typed)?.at ?? null);
    },
    finish() {
      if (turnsNothing(context, args)) {
        context.say(nothingTurned);
        return back();
      }
      context.drop(arrangeEdits.turnThings, args);
      return leave(context);
    },
    cancel: back,
    lost: back,
  };
}

function turning(context: ToolContext, about: Point, pointer: PlanPointer): ToolState {
  const things = context.selection();
  const project = context.project();
  const outline = things.some(({ kind }) => kind === "building") ? (project.building?.outline ?? []) : [];
  return startDrag(
    context,
    {
      name: "turning",
      hint: "Let go to turn; type an angle clockwise, hold Shift to turn freely",
      cursor: "grabbing",
      fields: [{ name: "angle", kind: "angle" }],
      command: arrangeEdits.turnThings,
      at(now, typed) {
        const free = turnAbout(about, pointer.at, now.at);
        const snapped = now.free ? { angle: free, word: null } : snapTurn(outline, project.lot.outline, free);
        const { angle, word } = typed.angle === undefined ? snapped : { angle: -typed.angle, word: null };
        return {
          args: { things, about, angle },
          marks: [
            { kind: "line", points: [...about, ...now.at], style: "snap-guide" },
            ...centreMarks(about),
            floating(now.at, `turned ${turnWords(angle)}${word ? `, ${word}` : ""}`),
          ],
        };
      },
    },
    pointer,
    leave,
  );
}
