/** Lines and symbols that texts keep off, taken before the first text of a drawing is placed. */
import type { Project } from "../document/schema";
import type { Point } from "../geometry";
import type { Results } from "../solve/results";
import { type DrawContext, onPaper } from "./context";
import { shownShots } from "./crowd";
import { keepClearLines } from "./keep-clear";
import type { Labels } from "./labels";
import type { XY } from "./marks";
import { offsetLine } from "./offset";
import { cornerRing, featureSymbol, markTriangle, shotCross, swaleChevron } from "./sizes";

/** What a drawing's lines were taken from, so that they are taken again only when that has changed. */
const takenFrom = new WeakMap<Labels, readonly unknown[]>();

const closed = (outline: readonly Point[]): number[] => [...outline.flat(), ...(outline[0] ?? [])];

/** A symbol's place, as a line: texts rather go elsewhere, but a text that must be shown may cross it. */
function takeSpot(context: DrawContext, at: XY, size: number, firm = false): void {
  const [x, y] = [at[0] / context.metresPerMm, at[1] / context.metresPerMm];
  context.labels.takeLine("lines", [x - size / 2, y, x + size / 2, y], size, firm);
}

function takeDrawn(project: Project, context: DrawContext): void {
  const { lot, building, grading, survey } = project;
  const take = (points: readonly number[], width: number, firm = false) =>
    context.labels.takeLine("lines", onPaper(points, context.metresPerMm), width, firm);
  take(closed(lot.outline), 0.5, true);
  if (building) take(closed(building.outline), 0.9, true);
  for (const corner of building?.outline ?? []) takeSpot(context, corner, cornerRing, true);
  for (const drive of grading.drives) {
    take(drive.line.flat(), 0.2);
    for (const side of [1, -1]) take(offsetLine(drive.line, (side * drive.width) / 2).flat(), 0.3);
  }
  for (const swale of grading.swales) take(swale.line.flat(), swaleChevron);
  for (const feature of lot.features) {
    const [first] = feature.points;
    if (feature.points.length === 1 && first) takeSpot(context, first, featureSymbol);
    else take(feature.points.flat(), 0.4);
    // Round a tree or a tank the line may run through its own name, which is longer than its reach on paper.
    if (feature.points.length > 1) for (const { points } of keepClearLines(feature)) take(points, 0.2);
  }
  for (const mark of survey.marks) if (mark.at) takeSpot(context, mark.at, markTriangle);
}

/** Takes walls, corners, lot lines, setbacks, drive edges, swales, features with what is kept clear of them, marks and shots. Cheap when nothing has changed. */
export function reserveLines(project: Project, results: Results, context: DrawContext): void {
  const { lot, building, grading, survey } = project;
  const from = [
    lot,
    building?.outline,
    grading.drives,
    grading.swales,
    survey.marks,
    results.survey,
    results.plot,
  ];
  const before = takenFrom.get(context.labels);
  if (before && from.every((part, i) => part === before[i])) return;
  takenFrom.set(context.labels, from);
  context.labels.forget("lines");
  takeDrawn(project, context);
  for (const { runs } of results.plot.setbacks) {
    for (const run of runs) {
      context.labels.takeLine("lines", onPaper(run.flat(), context.metresPerMm), 0.2);
    }
  }
  for (const { at } of shownShots(results, context)) if (at) takeSpot(context, at, shotCross);
}
