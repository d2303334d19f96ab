/** What a drawing must hold: the lot, or without one everything that was placed. */
import type { Project } from "../document/schema";
import { type Bounds, boundsOf, type Point, turned } from "../geometry";
import type { Results } from "../solve/results";
import { dimensionShape } from "./user-dimensions";

/** What a person wrote and drew beside the works. */
function added(project: Project): Point[] {
  const { notes, dimensions, sections } = project.drawing;
  return [
    ...notes.flatMap(({ at, pointsTo }) => (pointsTo ? [at, pointsTo] : [at])),
    ...sections.flatMap(({ line }) => line),
    ...dimensions.flatMap((dimension) => {
      const shape = dimensionShape(project, dimension);
      return shape ? [shape.from, shape.to, shape.a, shape.b] : [];
    }),
  ];
}

function drawn(project: Project): Point[] {
  const { lot, building, grading } = project;
  return [
    ...lot.outline,
    ...(building?.outline ?? []),
    ...grading.drives.flatMap((drive) => drive.line),
    ...grading.swales.flatMap((swale) => swale.line),
    ...lot.features.flatMap((feature) => feature.points),
    ...added(project),
  ];
}

function shot(results: Results): Point[] {
  return results.survey.points.flatMap((point) => (point.at && point.height !== null ? [point.at] : []));
}

/** Bounds of all that was drawn and shot, plan metres; null for an empty project. */
export function drawingBounds(project: Project, results: Results): Bounds | null {
  const marks = project.survey.marks.flatMap((mark) => (mark.at ? [mark.at] : []));
  const points = [...drawn(project), ...shot(results), ...marks];
  return points.length > 0 ? boundsOf(points) : null;
}

/**
 * Bounds of what a sheet must show: lot, building, drives, swales, notes, the mark; shots only when there is no lot.
 * Taken as the plan is turned: right and up on the sheet, about the plan's own origin.
 */
export function sheetBounds(project: Project, results: Results): Bounds | null {
  const { at } = results.survey.mark ?? { at: null };
  const shots = project.lot.outline.length > 0 ? [] : shot(results);
  const origin: Point = [0, 0];
  const points = [...drawn(project), ...shots, ...(at ? [at] : [])].map((point) =>
    turned(point, origin, project.drawing.turn),
  );
  return points.length > 0 ? boundsOf(points) : null;
}
