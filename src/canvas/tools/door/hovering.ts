/** Door and window: over a wall it shows where the opening would go; a click, or a typed place and Enter, puts it there. */
import type { Edit, EditCommand, Point, Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { usualNudge } from "../../../units";
import { wallEnds } from "../../select/places";
import { handStep } from "../../snap/step";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { toScreen, type XY } from "../../view/view";
import { snapPixels } from "../aim";
import { wallOfKey, wayOnPlan } from "../arrowKeys";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { placeFields, typedPlace } from "../typedPlace";
import { freeMiddle, placeOnWall, type WallPlace } from "./wallPlace";

/** The place may be typed instead of the width, or after it. */
const fields: readonly Field[] = [{ name: "width", kind: "length", pair: true, first: true }, ...placeFields];

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
  /** It was brought to its wall by keys. */
  readonly byKey?: true;
}

export function hovering(
  context: ToolContext,
  kind: OpeningKind,
  now: Hovering = { place: null, pointer: null, typed: {} },
): ToolState {
  const project = context.project();
  // A typed place holds; the pointer doesn't take it away again.
  const aimed = (pointer: PlanPointer | null, typed: TypedValues, byKey = false): Hovering => ({
    ...(byKey && { byKey }),
    place: typedPlace(typed)
      ? atTypedPlace(context, kind, typed)
      : pointer && aimAtWall(context, kind, pointer, typed),
    pointer,
    typed,
  });
  const put = (place: WallPlace | null): ToolState => {
    if (place) return putOpening(context, kind, place, now);
    context.say(noPlaceWords(project, kind, now.typed));
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
    typed: (typed) => hovering(context, kind, aimed(now.pointer, typed, now.byKey)),
    finish: () => put(now.place),
    nudge(direction, along) {
      const pointer =
        along && now.place
          ? pointerAlongWall(context, direction, now.place)
          : pointerAtWall(context, kind, direction, now);
      return hovering(context, kind, pointer ? aimed(pointer, now.typed, true) : now);
    },
    cancel: () => "leave",
    lost: () => hovering(context, kind),
  };
}

function hint(project: Project, kind: OpeningKind, now: Hovering): string {
  const { word } = kind;
  if (!project.building) return `Draw the building first: a ${word} needs a wall`;
  const width = lengthWords(widthOf(project, kind, now.typed), project);
  if (!now.place)
    return `Point at a wall to put a ${word} of ${width} on it (an arrow key takes one), or type another width, or a place: 12, 5`;
  if (typedPlace(now.typed)) return `Enter puts a ${word} of ${width} on wall ${now.place.name}`;
  const where = now.place.centred ? "in the middle of" : "on";
  if (now.byKey) {
    const from = `${lengthWords(now.place.offset, project)} from ${now.place.name.split("–")[0]}`;
    return `Enter puts a ${word} of ${width} ${where} wall ${now.place.name}, ${from}; Shift+arrows move it along the wall`;
  }
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
  return placeOnWall(project, widthOf(project, kind, typed), {
    at: pointer.at,
    reach: (pointer.touch ? 40 : 28) / scale,
    catches: snapPixels.mouse / scale,
    step: handStep(project.display.length, scale),
    free: pointer.free,
  });
}

/** On the wall nearest to the typed place, as near to it as the wall's ends allow. */
function atTypedPlace(context: ToolContext, kind: OpeningKind, typed: TypedValues): WallPlace | null {
  const project = context.project();
  const snap = typedPlace(typed);
  const exactly = { reach: Number.POSITIVE_INFINITY, catches: 0, step: 0, free: true };
  return snap && placeOnWall(project, widthOf(project, kind, typed), { at: snap.at, ...exactly });
}

function widthOf(project: Project, kind: OpeningKind, typed: TypedValues): number {
  return typed.width ?? kind.usualWidth(project);
}

/** A pointer in the middle of the wall that an arrow key takes, or of its longest free piece where that is taken. */
function pointerAtWall(
  context: ToolContext,
  kind: OpeningKind,
  direction: XY,
  now: Hovering,
): PlanPointer | null {
  const project = context.project();
  const wall = wallOfKey(context, direction, now.place?.wall ?? null);
  if (!project.building || wall === null) return null;
  const middle = pointerAt(context, project.building.outline, wall, null);
  const place = middle && aimAtWall(context, kind, middle, now.typed);
  if (!place || placeFault(project, kind, place) === null) return middle;
  const free = freeMiddle(project.building, wall, place.width);
  return free === null ? middle : pointerAt(context, project.building.outline, wall, free);
}

/** A pointer that moves the opening along its wall, by ten of the steps by which arrow keys move things. */
function pointerAlongWall(
  context: ToolContext,
  direction: XY,
  { wall, offset, width, length }: WallPlace,
): PlanPointer | null {
  const { building, display } = context.project();
  const ends = building && wallEnds(building.outline, wall);
  if (!ends) return null;
  const [[ax, ay], [bx, by]] = ends;
  const [east, north] = wayOnPlan(context, direction);
  const forward = ((bx - ax) * east + (by - ay) * north) / length;
  // Square to the wall no way is along it.
  if (Math.abs(forward) < 0.3) return null;
  const step = 10 * (context.nudgeStep() ?? usualNudge(display.length)) * Math.sign(forward);
  const middle = Math.min(length - width / 2, Math.max(width / 2, offset + width / 2 + step));
  return pointerAt(context, building.outline, wall, middle);
}

/** A pointer so far along a wall, m, exactly there; without a distance in its middle. */
function pointerAt(
  context: ToolContext,
  outline: readonly Point[],
  wall: number,
  along: number | null,
): PlanPointer | null {
  const ends = wallEnds(outline, wall);
  if (!ends) return null;
  const [a, b] = ends;
  const share = along === null ? 0.5 : along / Math.hypot(b[0] - a[0], b[1] - a[1]);
  const at: Point = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
  const screen = toScreen(context.view(), at);
  return { at, screen, free: along !== null, adds: false, copies: false, touch: false };
}

/** Why nothing can be put: what is lacking, and how to go on. */
function noPlaceWords(project: Project, kind: OpeningKind, typed: TypedValues): string {
  const { word } = kind;
  if (!project.building) return `Draw the building first: a ${word} goes on one of its walls.`;
  if (!typedPlace(typed)) return `There is no wall there: click on one, or type a place.`;
  const width = lengthWords(widthOf(project, kind, typed), project);
  return `The wall nearest to that place is shorter than a ${word} of ${width}. Type the width first, Tab, then the place; or a place on another wall.`;
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
  if (typedPlace(now.typed)) context.show(place.edges[0]);
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
