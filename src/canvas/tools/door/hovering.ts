/** Door: over a wall it shows where the door would go; a click puts it there. */
import { buildingEdits, type Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { FOOT } from "../../../units";
import { wallEnds } from "../../select/places";
import { handStep } from "../../snap/step";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { snapPixels } from "../aim";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { placeOnWall, type WallPlace } from "./wallPlace";

const fields: readonly Field[] = [{ name: "width", kind: "length" }];

/** A common overhead door: 9 ft, or 2.75 m. */
function usualWidth(project: Project): number {
  return ["ft-in", "in", "ft"].includes(project.display.length) ? 9 * FOOT : 2.75;
}

interface Hovering {
  readonly place: WallPlace | null;
  readonly pointer: PlanPointer | null;
  readonly typed: TypedValues;
}

export function hovering(
  context: ToolContext,
  now: Hovering = { place: null, pointer: null, typed: {} },
): ToolState {
  const project = context.project();
  const aimed = (pointer: PlanPointer, typed: TypedValues): Hovering => ({
    place: aimAtWall(context, pointer, typed),
    pointer,
    typed,
  });
  const put = (place: WallPlace | null): ToolState =>
    place ? putDoor(context, place, now) : hovering(context, now);
  const fault = now.place && placeFault(project, now.place);
  return {
    name: "hovering",
    hint: fault ?? hint(project, now, lengthWords(now.typed.width ?? usualWidth(project), project)),
    cursor: fault ? "not-allowed" : now.place ? "crosshair" : "default",
    fields: project.building ? fields : [],
    marks: now.place ? doorMarks(project, now.place) : [],
    snap: null,
    move: (pointer) => hovering(context, aimed(pointer, now.typed)),
    press: (pointer) => put(aimAtWall(context, pointer, now.typed)),
    typed: (typed) => hovering(context, now.pointer ? aimed(now.pointer, typed) : { ...now, typed }),
    finish: () => put(now.place),
    cancel: () => "leave",
    lost: () => hovering(context),
  };
}

function hint(project: Project, now: Hovering, width: string): string {
  if (!project.building) return "Draw the building first: a door needs a wall";
  if (!now.place) return `Point at a wall to put a door of ${width} on it, or type another width`;
  const where = now.place.centred ? "in the middle of" : "on";
  return `Click to put a door of ${width} ${where} wall ${now.place.name}`;
}

function aimAtWall(context: ToolContext, pointer: PlanPointer, typed: TypedValues): WallPlace | null {
  const { scale } = context.view();
  const project = context.project();
  return placeOnWall(project, typed.width ?? usualWidth(project), {
    at: pointer.at,
    reach: (pointer.touch ? 40 : 28) / scale,
    catches: snapPixels.mouse / scale,
    step: handStep(project.display.length, scale),
    free: pointer.free,
  });
}

/** Why a door can't go there, in the words in which a click would be refused. */
function placeFault(project: Project, { wall, offset, width }: WallPlace): string | null {
  const edit = buildingEdits.addDoor.run(project, { wall, offset, width });
  return edit.ok ? null : edit.why;
}

function putDoor(context: ToolContext, place: WallPlace, now: Hovering): ToolState {
  const { wall, offset, width } = place;
  const edit = context.run(buildingEdits.addDoor, { wall, offset, width });
  if (!edit.ok) return hovering(context, now);
  context.setTool("select");
  if (edit.made !== undefined) context.select([{ kind: "door", id: edit.made }]);
  return hovering(context);
}

/** The door, and what is left of the wall on both sides. */
export function doorMarks(project: Project, place: WallPlace): DrawingMark[] {
  const ends = project.building ? wallEnds(project.building.outline, place.wall) : null;
  if (!ends) return [];
  const [near, far] = place.edges;
  const after = place.length - place.offset - place.width;
  const rest: DrawingMark[] = [];
  if (place.offset > 0.3) rest.push(alongPiece(ends[0], near, lengthWords(place.offset, project)));
  if (after > 0.3) rest.push(alongPiece(far, ends[1], lengthWords(after, project)));
  return [
    { kind: "line", points: [...near, ...far], style: "door" },
    alongPiece(near, far, lengthWords(place.width, project), -1),
    ...rest,
  ];
}
