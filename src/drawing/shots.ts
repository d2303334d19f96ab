/** Shots as crosses with their heights, and the marks that all heights are told from. */
import type { Project } from "../document/schema";
import { distance } from "../geometry";
import type { LevelledPoint, Results } from "../solve/results";
import { besidePoint } from "./beside";
import { type DrawContext, placeLabel } from "./context";
import type { DrawingMark, MarkLayer, XY } from "./marks";
import { reserveLines } from "./reserve";
import { markTriangle, shotCross } from "./sizes";
import { heightText } from "./words";

/** A shot nearer than this to a corner or a mark, mm, is told there. */
const sameSpot = 1.2;

function spots(project: Project): readonly XY[] {
  const marks = project.survey.marks.flatMap((mark) => (mark.at ? [mark.at] : []));
  return [...(project.building?.outline ?? []), ...marks];
}

/** Crosses where the ground was shot, with the height (told from the mark) where there is room. */
export function drawShots(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("shots");
  reserveLines(project, results, context);
  const told = spots(project);
  const placed = results.survey.points.flatMap((point) => {
    const { at } = point;
    const free = at && told.every((spot) => distance(at, spot) / context.metresPerMm > sameSpot);
    return at && free ? [{ point, at }] : [];
  });
  const marks = placed.flatMap(({ point, at }) => shotMarks(point, at, project, results, context));
  return { id: "shots", marks };
}

function shotMarks(
  point: LevelledPoint,
  at: XY,
  project: Project,
  results: Results,
  context: DrawContext,
): DrawingMark[] {
  const symbol = point.kind === "turning" ? "plus" : "cross";
  if (point.height === null) return [{ kind: "symbol", at, symbol, size: shotCross, style: "shot-untied" }];
  const text = heightText(point.height, project.display, results, context);
  const label = placeLabel(context, "shots", besidePoint(at, text, "shot-label", shotCross));
  return [{ kind: "symbol", at, symbol, size: shotCross, style: "shot" }, ...label];
}

/** The marks as triangles with their names; others than the first with their height. */
export function drawMarks(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("marks");
  reserveLines(project, results, context);
  const placed = project.survey.marks.flatMap((mark) => (mark.at ? [{ mark, at: mark.at }] : []));
  const marks = placed.flatMap(({ mark, at }): DrawingMark[] => {
    const first = mark.id === results.survey.mark?.id;
    const height = heightText(mark.height.m, project.display, results, context);
    const text = first && context.heightsFrom === "mark" ? mark.name : `${mark.name}, ${height}`;
    const label = placeLabel(context, "marks", besidePoint(at, text, "mark-label", markTriangle), first);
    return [{ kind: "symbol", at, symbol: "triangle", size: markTriangle, style: "mark-symbol" }, ...label];
  });
  return { id: "marks", marks };
}
