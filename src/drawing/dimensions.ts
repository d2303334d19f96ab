/** Dimensions: the sides of the building, and ties from its corners to two lot lines. */
import { soundLot } from "../document/lot";
import type { Project } from "../document/schema";
import { between } from "../geometry";
import type { Results } from "../solve/results";
import { shortWind } from "../units";
import { along, sizeOf, telling } from "./beside";
import { type DrawContext, onPaper, placeLabel, readable } from "./context";
import { type DimensionLine, dimensionMarks, extensionGap, labelPlaces } from "./dimension-line";
import { type Led, ledPlaces, placeLed } from "./leader";
import type { DrawingMark, LengthTold, MarkLayer, XY } from "./marks";
import { leadsOutside, tellsOwnWall } from "./own-wall";
import { reserveLines } from "./reserve";
import { textWidth } from "./text-width";
import { chooseTies, type Tie, tieWind } from "./ties";
import { rectangleOf, type Wall, wallsOf } from "./walls";
import { dimensionText } from "./words";

/** Distance of a dimension line from its wall, mm, best first. */
const offsets = [7.5, 11, 5];
/** On the screen, where one can come nearer and the building's own figures tell it, a leader is at most so long, mm. */
const mostLeader = 7.5;

function moved(at: XY, direction: XY, distanceMm: number, context: DrawContext): XY {
  const reach = distanceMm * context.metresPerMm;
  return [at[0] + direction[0] * reach, at[1] + direction[1] * reach];
}

function extensions(wall: Wall, offset: number, context: DrawContext): DrawingMark[] {
  return [wall.from, wall.to].map((corner) => {
    const from = moved(corner, wall.outward, extensionGap + 1, context);
    const to = moved(corner, wall.outward, offset + extensionGap, context);
    context.labels.takeLine("dimensions", onPaper([...from, ...to], context.metresPerMm), 0.3);
    return { kind: "line", points: [...from, ...to], style: "dimension" };
  });
}

function sideDimension(
  wall: Wall,
  walls: readonly Wall[],
  project: Project,
  context: DrawContext,
): readonly DrawingMark[] {
  const text = dimensionText(wall.length, project.display, context);
  const wide = textWidth(text, sizeOf("dimension-label")) + 3;
  if (wall.length / context.metresPerMm < wide) return bareLength(wall, walls, text, context);
  const choices = offsets.map((offset) => {
    const line: DimensionLine = {
      from: moved(wall.from, wall.outward, offset, context),
      to: moved(wall.to, wall.outward, offset, context),
      text,
      style: "dimension",
    };
    const places = labelPlaces(line, context).filter((label) => tellsOwnWall(label, wall, walls, context));
    return { offset, line, places: telling(wallTold(text), places) };
  });
  const label = placeLabel(
    context,
    "dimensions",
    choices.flatMap((choice) => choice.places),
  );
  const chosen = choices.find((choice) => choice.places.includes(label));
  if (!chosen) return bareLength(wall, walls, text, context);
  return [
    ...extensions(wall, chosen.offset, context),
    ...dimensionMarks(chosen.line, label, context, "dimensions"),
  ];
}

/** The building's own figures tell the same. */
function wallTold(length: string): LengthTold {
  return { thing: "building", length, rest: "" };
}

/** Where a wall has no room for a dimension line its length stands along it, or at the end of a leader: it isn't lost. On the screen the figure of a rectangle tells both of its sides. */
function bareLength(
  wall: Wall,
  walls: readonly Wall[],
  text: string,
  context: DrawContext,
): readonly DrawingMark[] {
  const middle = between(wall.from, wall.to, 0.5);
  // The figure inside tells the same: over a drive or a swale it isn't told once more.
  const toldInside = context.medium === "screen" && rectangleOf(walls.map(({ from }) => from)) !== null;
  const angle = readable(Math.atan2(wall.to[1] - wall.from[1], wall.to[0] - wall.from[0]));
  const fits = textWidth(text, sizeOf("dimension-label")) < wall.length / context.metresPerMm;
  const places = fits ? [2.4, 4].map((off) => moved(middle, wall.outward, off, context)) : [];
  const beside = placeLabel(
    context,
    "dimensions",
    telling(
      wallTold(text),
      places
        .map((at) => along(at, text, "dimension-label", angle))
        .filter((label) => tellsOwnWall(label, wall, walls, context)),
    ),
    toldInside ? false : context.medium === "screen" ? "over-thin-lines" : "over-lines",
  );
  if (beside.length > 0) return beside;
  if (toldInside) return [];
  const out = Math.atan2(wall.outward[1], wall.outward[0]);
  return ledText(middle, out, text, context, (led) => leadsOutside(led, wall, walls, context));
}

/** A figure at the end of a leader; nothing where there is no room at all. */
function ledText(
  at: XY,
  out: number,
  text: string,
  context: DrawContext,
  fits: (led: Led) => boolean = () => true,
): readonly DrawingMark[] {
  const most = context.medium === "screen" ? mostLeader : Infinity;
  const led = ledPlaces(at, out, { text, style: "dimension-label" }, context, { most }).filter(fits);
  return placeLed(context, "dimensions", at, led, { style: "dimension", over: "over-lines" });
}

/** What a tie is and to which line, in full and short: a bare figure would leave open what it is taped to. */
function tieTexts(tie: Tie, project: Project, context: DrawContext): readonly string[] {
  const wind = tieWind(tie, project.lot);
  const length = dimensionText(tie.length, project.display, context);
  return [`${length} to ${wind} line`, `${length} to ${shortWind(wind)} line`];
}

function tieMarks(tie: Tie, project: Project, context: DrawContext): DrawingMark[] {
  const room = tie.length / context.metresPerMm - 4;
  const choices = tieTexts(tie, project, context)
    .filter((text) => textWidth(text, sizeOf("dimension-label")) <= room)
    .map((text) => {
      const line: DimensionLine = { from: tie.corner, to: tie.foot, text, style: "tie" };
      return { line, places: labelPlaces(line, context) };
    });
  const label = placeLabel(
    context,
    "dimensions",
    choices.flatMap(({ places }) => places),
  );
  const chosen = choices.find(({ places }) => places.includes(label));
  return chosen ? dimensionMarks(chosen.line, label, context, "dimensions") : [];
}

/** How many ties of a choice are tried, and how much longer than the first they may be: a far corner's runs past the building. */
const mostTieTries = 8;
const mostLonger = 1.5;

/** The first of the ties that has room for its figures along it; else the first, with its figures at the end of a leader. */
function firstTie(choices: readonly Tie[], project: Project, context: DrawContext): readonly DrawingMark[] {
  const [first] = choices;
  if (!first) return [];
  for (const tie of choices.slice(0, mostTieTries)) {
    if (tie.length > mostLonger * first.length) break;
    const marks = tieMarks(tie, project, context);
    if (marks.length > 0) return marks;
  }
  // On the screen one comes nearer to read it, and its line alone would only cross others.
  return context.medium === "paper" ? ledTie(first, project, context) : [];
}

function ledTie(tie: Tie, project: Project, context: DrawContext): readonly DrawingMark[] {
  const text = tieTexts(tie, project, context)[1] ?? "";
  const line: DimensionLine = { from: tie.corner, to: tie.foot, text, style: "tie" };
  const across = Math.atan2(tie.foot[1] - tie.corner[1], tie.foot[0] - tie.corner[0]) + Math.PI / 2;
  const label = ledText(between(tie.corner, tie.foot, 0.5), across, text, context);
  return label.length > 0 ? [...dimensionMarks(line, [], context, "dimensions"), ...label] : [];
}

/** Lengths of the walls outside the building, and ties to the lot. */
export function drawDimensions(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("dimensions");
  reserveLines(project, results, context);
  const { building, lot } = project;
  if (!building) return { id: "dimensions", marks: [] };
  const walls = wallsOf(building.outline);
  const sides = walls.flatMap((wall) => sideDimension(wall, walls, project, context));
  const dug = [...project.grading.drives, ...project.grading.swales].map(({ line }) => line);
  const bounds = soundLot(lot).outline;
  const ties = bounds.length >= 3 ? chooseTies(building.outline, bounds, dug) : [];
  return {
    id: "dimensions",
    marks: [...sides, ...ties.flatMap((choices) => firstTie(choices, project, context))],
  };
}
