/** Shots as crosses with their heights, and the marks that all heights are told from. */
import { placeResolver } from "../document/places";
import type { Project } from "../document/schema";
import { thingKey } from "../document/thing";
import { containsPoint, distance } from "../geometry";
import type { LevelledPoint, Results } from "../solve/results";
import { besidePoint, longestName, sizeOf } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel } from "./context";
import { shownShots } from "./crowd";
import { ledPlaces, placeLed } from "./leader";
import type { DrawingMark, MarkLayer, XY } from "./marks";
import { reserveLines } from "./reserve";
import { markTriangle, shotCross } from "./sizes";
import { ellipsize } from "./text-width";
import { heightText } from "./words";
import { isClearOfWorks } from "./works";

/** On the screen at most one shot's height is told in so much of the plan, mm wide and high: nearer by there is room for more. */
const toldIn = { wide: 15, high: 7 } as const;
/** A shot nearer than this to a corner or a mark, mm, is told there. */
const sameSpot = 1.2;

function spots(project: Project): readonly XY[] {
  const marks = project.survey.marks.flatMap((mark) => (mark.at ? [mark.at] : []));
  return [...(project.building?.outline ?? []), ...marks];
}

/**
 * Crosses where the ground was shot, with the height (told from the mark) where there is room. Under the building
 * there are no heights, and on paper no crosses: the floor's own figures stand there.
 */
export function drawShots(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("shots");
  reserveLines(project, results, context);
  const told = spots(project);
  const outline = project.building?.outline ?? [];
  const hidden = new Set(project.drawing.hidden);
  const crowded = sparingly(context);
  const marks = shownShots(results, context).flatMap((point) => {
    const { at } = point;
    if (hidden.has(thingKey({ kind: "shot", id: point.shot }))) return [];
    if (!at || told.some((spot) => distance(at, spot) / context.metresPerMm <= sameSpot)) return [];
    const under = containsPoint(outline, at[0], at[1]);
    if (under && context.medium === "paper") return [];
    const text = under || crowded(at) ? null : shotText(point, project, results, context);
    return shotMarks(point, at, text, context);
  });
  return { id: "shots", marks: [...asideMarks(project, hidden, context), ...marks] };
}

/** Answers whether a height was told near a place already, and takes the place where none was. Paper tells all that fit. */
function sparingly({ medium, metresPerMm }: DrawContext): (at: XY) => boolean {
  const taken = new Set<string>();
  return ([x, y]) => {
    if (medium === "paper") return false;
    const square = `${Math.floor(x / metresPerMm / toldIn.wide)} ${Math.floor(y / metresPerMm / toldIn.high)}`;
    if (taken.has(square)) return true;
    taken.add(square);
    return false;
  };
}

/** Shots set aside stay in sight on the screen, grey and without a height. */
function asideMarks(
  { survey, building }: Project,
  hidden: ReadonlySet<string>,
  context: DrawContext,
): DrawingMark[] {
  const aside = survey.shots.filter((shot) => shot.aside);
  if (context.medium === "paper" || aside.length === 0) return [];
  const placed = placeResolver(survey, building?.outline ?? []);
  return aside.flatMap((shot): DrawingMark[] => {
    const { at } = placed(shot.place);
    if (!at || hidden.has(thingKey({ kind: "shot", id: shot.id }))) return [];
    return [{ kind: "symbol", at, symbol: "cross", size: shotCross, style: "shot-untied" }];
  });
}

function shotText(
  point: LevelledPoint,
  project: Project,
  results: Results,
  context: DrawContext,
): string | null {
  return point.height === null ? null : heightText(point.height, project.display, results, context);
}

/** To the right of its cross wherever that goes: left of one, it would be taken for its neighbour's. */
function rightOf(at: XY, text: string): readonly LabelTexts[] {
  const places = besidePoint(at, text, "shot-label", shotCross);
  const left = (texts: LabelTexts) => texts[0]?.anchor === "end";
  return [...places.filter((one) => !left(one)), ...places.filter(left)];
}

function shotMarks(point: LevelledPoint, at: XY, text: string | null, context: DrawContext): DrawingMark[] {
  const symbol = point.kind === "turning" ? "plus" : "cross";
  const style = point.height === null ? "shot-untied" : "shot";
  if (isWrittenOver(at, context)) return [];
  const label = text === null ? [] : placeLabel(context, "shots", rightOf(at, text));
  return [{ kind: "symbol", at, symbol, size: shotCross, style }, ...label];
}

/** On the screen a cross gives way to a text that found no other place: nearer by both have room. */
function isWrittenOver([x, y]: XY, { labels, medium, metresPerMm, turn }: DrawContext): boolean {
  const heart = { width: shotCross / 2, height: shotCross / 2, angle: -turn };
  return medium === "screen" && labels.written({ x: x / metresPerMm, y: y / metresPerMm, ...heart });
}

/** The marks as triangles with their names; others than the first with their height. */
export function drawMarks(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("marks");
  reserveLines(project, results, context);
  const placed = project.survey.marks.flatMap((mark) => (mark.at ? [{ mark, at: mark.at }] : []));
  const marks = placed.flatMap(({ mark, at }): DrawingMark[] => {
    const first = mark.id === results.survey.mark?.id;
    const height = heightText(mark.height.m, project.display, results, context);
    const name = ellipsize(mark.name, longestName, sizeOf("mark-label"), 600);
    const text = first && context.heightsFrom === "mark" ? name : `${name}, ${height}`;
    const label = markLabel(at, text, first, project, context);
    return [{ kind: "symbol", at, symbol: "triangle", size: markTriangle, style: "mark-symbol" }, ...label];
  });
  return { id: "marks", marks };
}

/** A leader to a mark's name is so long, mm. */
const markLeader = { least: 5, most: 13 } as const;

/** Beside its triangle. The name of the first, which all heights are told from, rather at the end of a leader than not at all. */
function markLabel(
  at: XY,
  text: string,
  first: boolean,
  project: Project,
  context: DrawContext,
): readonly DrawingMark[] {
  const places = besidePoint(at, text, "mark-label", markTriangle);
  const beside = placeLabel(context, "marks", places, first ? "over-thin-lines" : false);
  if (beside.length > 0 || !first) return beside;
  const led = ledPlaces(at, Math.PI / 4, { text, style: "mark-label" }, context, markLeader);
  const from = markTriangle / 2;
  const clear = led.filter(({ texts }) => isClearOfWorks(texts, project, context));
  const far = placeLed(context, "marks", at, clear, { from, style: "note-leader", over: "over-lines" });
  return far.length > 0 || context.medium === "screen" ? far : placeLabel(context, "marks", places, true);
}
