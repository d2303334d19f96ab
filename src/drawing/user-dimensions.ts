/** Dimensions that a person drew: between two places, or corners of the building that they follow. */
import type { Dimension, DimensionEnd, Project } from "../document/schema";
import { distance, type Point } from "../geometry";
import type { Results } from "../solve/results";
import { type DrawContext, onPaper, placeLabel } from "./context";
import { type DimensionLine, dimensionMarks, extensionGap, labelPlaces } from "./dimension-line";
import type { DrawingMark, MarkLayer } from "./marks";
import { reserveLines } from "./reserve";
import { dimensionText } from "./words";

const group = "user-dimensions";

/** The place of a dimension's end; null where its corner is gone. */
function endPlace(project: Project, end: DimensionEnd): Point | null {
  if (end.kind === "at") return [end.x, end.y];
  return project.building?.outline[end.corner] ?? null;
}

export interface DimensionShape {
  /** The two places that are measured. */
  readonly from: Point;
  readonly to: Point;
  /** The dimension line, stood off. */
  readonly a: Point;
  readonly b: Point;
  readonly length: number;
  /** Unit vector to the left of the way. */
  readonly left: Point;
}

/** Where a dimension lies; null where a corner is gone or both places are the same. */
export function dimensionShape(project: Project, dimension: Omit<Dimension, "id">): DimensionShape | null {
  const from = endPlace(project, dimension.from);
  const to = endPlace(project, dimension.to);
  if (!from || !to) return null;
  const length = distance(from, to);
  if (length < 1e-6) return null;
  const left: Point = [(from[1] - to[1]) / length, (to[0] - from[0]) / length];
  const off = ([x, y]: Point): Point => [x + left[0] * dimension.offset, y + left[1] * dimension.offset];
  return { from, to, a: off(from), b: off(to), length, left };
}

/** From near the measured place to just past the dimension line; none where the line stands on the places. */
function extensions(shape: DimensionShape, offset: number, context: DrawContext): DrawingMark[] {
  const reach = Math.abs(offset) / context.metresPerMm;
  if (reach < extensionGap) return [];
  const side = Math.sign(offset) * context.metresPerMm;
  return [shape.from, shape.to].map((at) => {
    const along = (mm: number) => [at[0] + shape.left[0] * side * mm, at[1] + shape.left[1] * side * mm];
    const points = [...along(Math.min(extensionGap, reach / 2)), ...along(reach + extensionGap)];
    context.labels.takeLine(group, onPaper(points, context.metresPerMm), 0.3);
    return { kind: "line", points, style: "dimension" };
  });
}

/** One dimension; its figure is always told, beside its line where that is free. */
function userDimensionMarks(
  project: Project,
  dimension: Omit<Dimension, "id">,
  context: DrawContext,
): DrawingMark[] {
  const shape = dimensionShape(project, dimension);
  if (!shape) return [];
  const text = dimensionText(shape.length, project.display, context);
  const line: DimensionLine = { from: shape.a, to: shape.b, text, style: "dimension" };
  const label = placeLabel(context, group, labelPlaces(line, context), true);
  return [...extensions(shape, dimension.offset, context), ...dimensionMarks(line, label, context, group)];
}

/** All dimensions that a person drew. */
export function drawUserDimensions(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget(group);
  reserveLines(project, results, context);
  const marks = project.drawing.dimensions.flatMap((dimension) =>
    userDimensionMarks(project, dimension, context),
  );
  return { id: "user-dimensions", marks };
}
