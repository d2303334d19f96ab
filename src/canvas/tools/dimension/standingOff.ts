/** Dimension, both places known: the pointer, or a typed length, says how far its line stands off. */
import { type DimensionEnd, drawingEdits, type Point, type Project } from "../../../document";
import { dimensionShape } from "../../../drawing";
import type { DrawingMark } from "../../../drawing/marks";
import type { Snap } from "../../snap/snap";
import { handStep, roundTo } from "../../snap/step";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolState } from "../tool";

export interface MeasuredPlaces {
  readonly from: DimensionEnd;
  readonly to: DimensionEnd;
}

const offsetFields: readonly Field[] = [{ name: "stand-off", kind: "length" }];

/** A snapped corner of the building is followed; any other place stays where it is. */
export function endOf(snap: Snap): DimensionEnd {
  if (snap.tie?.kind === "building-corner") return { kind: "corner", corner: snap.tie.corner };
  return { kind: "at", x: snap.at[0], y: snap.at[1] };
}

/** How far a place lies to the left of the way between the two places, m; 0 where they can't be told. */
export function leftOf(project: Project, places: MeasuredPlaces, at: Point): number {
  const shape = dimensionShape(project, { ...places, offset: 0 });
  return shape ? (at[0] - shape.from[0]) * shape.left[0] + (at[1] - shape.from[1]) * shape.left[1] : 0;
}

interface Standing {
  /** Signed, to the left. */
  readonly pointed: number;
  readonly typed: TypedValues;
}

export function standingOff(
  context: ToolContext,
  places: MeasuredPlaces,
  back: () => ToolState,
  now: Standing = { pointed: 0, typed: {} },
): ToolState {
  const project = context.project();
  const offset = offsetFor(now);
  const again = (change: Partial<Standing>) => standingOff(context, places, back, { ...now, ...change });
  const pointed = (pointer: PlanPointer) => pointedOffset(context, places, pointer);
  const put = (at: Standing): ToolState => {
    const edit = context.run(drawingEdits.addDimension, { ...places, offset: offsetFor(at) });
    if (!edit.ok) return again({});
    context.setTool("select");
    if (edit.made !== undefined) context.select([{ kind: "dimension", id: edit.made }]);
    return again({});
  };
  return {
    name: "standingOff",
    hint: "Click where the dimension line goes, or type how far it stands off, on the pointer's side",
    cursor: "crosshair",
    fields: offsetFields,
    marks: standingMarks(project, places, offset),
    move: (pointer) => again({ pointed: pointed(pointer) }),
    press: (pointer) => put({ ...now, pointed: pointed(pointer) }),
    typed: (typed) => again({ typed }),
    finish: () => put(now),
    back,
    cancel: back,
    lost: () => again({}),
  };
}

/** A typed stand-off lies on the side that the pointer shows. */
function offsetFor({ pointed, typed }: Standing): number {
  const length = typed["stand-off"];
  if (length === undefined) return pointed;
  return pointed < 0 ? -length : length;
}

export function pointedOffset(context: ToolContext, places: MeasuredPlaces, pointer: PlanPointer): number {
  const project = context.project();
  const off = leftOf(project, places, pointer.at);
  return pointer.free ? off : roundTo(off, handStep(project.display.length, context.view().scale));
}

/** The dimension as it would be, with what it stands off by. */
export function standingMarks(project: Project, places: MeasuredPlaces, offset: number): DrawingMark[] {
  const shape = dimensionShape(project, { ...places, offset });
  if (!shape) return [];
  const { length } = shape;
  const [from, to, a, b] = [shape.from, shape.to, shape.a, shape.b].map(([x, y]): Point => [x, y]) as [
    Point,
    Point,
    Point,
    Point,
  ];
  return [
    { kind: "line", points: [...from, ...a], style: "preview" },
    { kind: "line", points: [...to, ...b], style: "preview" },
    { kind: "line", points: [...a, ...b], style: "preview-line" },
    alongPiece(a, b, lengthWords(length, project)),
    ...(Math.abs(offset) > 0.3
      ? [alongPiece(to, b, `stands off ${lengthWords(Math.abs(offset), project)}`, -1)]
      : []),
  ];
}
