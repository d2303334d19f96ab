/** Door and window: over a wall it shows where the opening would go; a click puts it there. */
import type { Edit, EditCommand, Point, Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { wallEnds } from "../../select/places";
import { handStep } from "../../snap/step";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { toScreen, type XY } from "../../view/view";
import { snapPixels } from "../aim";
import { wallOfKey } from "../arrowKeys";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { placeOnWall, type WallPlace } from "./wallPlace";

const fields: readonly Field[] = [{ name: "width", kind: "length" }];

/** What doors and windows differ in. */
export interface OpeningKind {
  readonly word: "door" | "window";
  /** A common width, m. */
  usualWidth(project: Project): number;
  readonly add: EditCommand<{ wall: number; offset: number; width: number }>;
  marks(project: Project, place: WallPlace): DrawingMark[];
}

interface Hovering {
  readonly place: WallPlace | null;
  readonly pointer: PlanPointer | null;
  readonly typed: TypedValues;
}

export function hovering(
  context: ToolContext,
  kind: OpeningKind,
  now: Hovering = { place: null, pointer: null, typed: {} },
): ToolState {
  const project = context.project();
  const aimed = (pointer: PlanPointer, typed: TypedValues): Hovering => ({
    place: aimAtWall(context, kind, pointer, typed),
    pointer,
    typed,
  });
  const put = (place: WallPlace | null): ToolState => {
    if (place) return putOpening(context, kind, place, now);
    context.say(
      project.building
        ? `There is no wall there. A ${kind.word} goes on a wall of the building: click on one.`
        : `Draw the building first: a ${kind.word} goes on one of its walls.`,
    );
    return hovering(context, kind, now);
  };
  const fault = now.place && placeFault(project, kind, now.place);
  return {
    name: "hovering",
    hint: fault ?? hint(project, kind, now),
    cursor: fault ? "not-allowed" : now.place ? "crosshair" : "default",
    fields: project.building ? fields : [],
    marks: now.place ? kind.marks(project, now.place) : [],
    snap: null,
    move: (pointer) => hovering(context, kind, aimed(pointer, now.typed)),
    press: (pointer) => put(aimAtWall(context, kind, pointer, now.typed)),
    typed: (typed) => hovering(context, kind, now.pointer ? aimed(now.pointer, typed) : { ...now, typed }),
    finish: () => put(now.place),
    nudge(direction) {
      const pointer = pointerAtWall(context, direction, now.place?.wall ?? null);
      return pointer ? hovering(context, kind, aimed(pointer, now.typed)) : hovering(context, kind, now);
    },
    cancel: () => "leave",
    lost: () => hovering(context, kind),
  };
}

function hint(project: Project, kind: OpeningKind, now: Hovering): string {
  const { word } = kind;
  if (!project.building) return `Draw the building first: a ${word} needs a wall`;
  const width = lengthWords(now.typed.width ?? kind.usualWidth(project), project);
  if (!now.place)
    return `Point at a wall to put a ${word} of ${width} on it (an arrow key takes one), or type another width`;
  const where = now.place.centred ? "in the middle of" : "on";
  return `Click to put a ${word} of ${width} ${where} wall ${now.place.name}`;
}

function aimAtWall(
  context: ToolContext,
  kind: OpeningKind,
  pointer: PlanPointer,
  typed: TypedValues,
): WallPlace | null {
  const { scale } = context.view();
  const project = context.project();
  return placeOnWall(project, typed.width ?? kind.usualWidth(project), {
    at: pointer.at,
    reach: (pointer.touch ? 40 : 28) / scale,
    catches: snapPixels.mouse / scale,
    step: handStep(project.display.length, scale),
    free: pointer.free,
  });
}

/** A pointer in the middle of the wall that an arrow key takes. */
function pointerAtWall(context: ToolContext, direction: XY, present: number | null): PlanPointer | null {
  const outline = context.project().building?.outline ?? [];
  const view = context.view();
  const wall = wallOfKey(context, direction, present);
  const ends = wall === null ? null : wallEnds(outline, wall);
  if (!ends) return null;
  const at: Point = [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2];
  return { at, screen: toScreen(view, at), free: false, adds: false, copies: false, touch: false };
}

/** Why it can't go there, in the words in which a click would be refused. */
function placeFault(project: Project, kind: OpeningKind, { wall, offset, width }: WallPlace): string | null {
  const edit = kind.add.run(project, { wall, offset, width });
  return edit.ok ? null : edit.why;
}

function putOpening(context: ToolContext, kind: OpeningKind, place: WallPlace, now: Hovering): ToolState {
  const { wall, offset, width } = place;
  const edit: Edit = context.run(kind.add, { wall, offset, width });
  if (!edit.ok) return hovering(context, kind, now);
  context.setTool("select");
  if (edit.made !== undefined) context.select([{ kind: kind.word, id: edit.made }]);
  return hovering(context, kind);
}

/** The opening's own marks, its width, and what is left of the wall on both sides. */
export function openingMarks(project: Project, place: WallPlace, own: readonly DrawingMark[]): DrawingMark[] {
  const ends = project.building ? wallEnds(project.building.outline, place.wall) : null;
  if (!ends) return [];
  const [near, far] = place.edges;
  const after = place.length - place.offset - place.width;
  const rest: DrawingMark[] = [];
  if (place.offset > 0.3) rest.push(alongPiece(ends[0], near, lengthWords(place.offset, project)));
  if (after > 0.3) rest.push(alongPiece(far, ends[1], lengthWords(after, project)));
  return [...own, alongPiece(near, far, lengthWords(place.width, project), -1), ...rest];
}
