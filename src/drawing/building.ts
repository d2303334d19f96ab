/** The building: walls, doors, diagonals, and what is written inside. */
import { wallSection } from "../document/foundationMeasures";
import type { Building, Display, Door, Project } from "../document/schema";
import { centroid, type Point, signedArea } from "../geometry";
import type { Results } from "../solve/results";
import { formatArea, formatSigned } from "../units";
import { along as onLine, stacked } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel, readable, toldFromMark } from "./context";
import { ledPlaces, placeLed } from "./leader";
import type { DrawingMark, MarkLayer } from "./marks";
import { openingLabel, openingPiece } from "./openings";
import { reserveLines } from "./reserve";
import type { StyleName } from "./styles";
import { innerOutline, rectangleOf, wallsOf } from "./walls";
import { lengthText, overAllText, withoutUnit } from "./words";

/** A wall thinner than this on paper, mm, is one line. */
const thinnestWall = 0.7;
/** A footing that reaches less beyond the wall, mm, would be lost in the wall's line. */
const thinnestTrench = 0.5;

/** A hole for a post is drawn at least this wide, mm. */
const smallestHole = 1.1;

/** A leader from the middle is at least so long, mm: it must come out of the walls. */
const leastLeader = 10;

type Line = { readonly text: string; readonly style: StyleName };

function sizeLines(building: Building, display: Display): Line[] {
  const rectangle = rectangleOf(building.outline);
  if (!rectangle) {
    const area = formatArea(Math.abs(signedArea(building.outline)), display.area);
    return [{ text: area, style: "building-sublabel" }];
  }
  const [length, width] = rectangle.sides.map((side) => overAllText(side, display));
  const [one, two] = rectangle.diagonals.map((diagonal) => lengthText(diagonal, display));
  return [
    { text: `${length} × ${width}`, style: "building-label" },
    { text: one === two ? `diagonals ${one}` : `diagonals ${one} and ${two}`, style: "building-sublabel" },
  ];
}

/** The size where it finds no room in full, its unit once: in one line, along the longer side, in two lines; the same in small words. */
function tighterSizes(building: Building, { display }: Project): readonly LabelTexts[] {
  const rectangle = rectangleOf(building.outline);
  const middle = centroid(building.outline);
  if (!rectangle) return sideways(building, sizeLines(building, display)[0] as Line);
  const [length, width] = rectangle.sides.map((side) => overAllText(side, display)) as [string, string];
  const short = `${withoutUnit(length)} × ${width}`;
  return (["building-label", "building-sublabel"] as const).flatMap((style) => {
    const [full, bare] = [`${length} × ${width}`, short].map((text) => ({ text, style })) as [Line, Line];
    const inTwo = [`${length} ×`, width].map((text) => ({ text, style }));
    const sides = [...sideways(building, full), ...sideways(building, bare)];
    return [...about(middle, [full]), ...about(middle, [bare]), ...sides, ...about(middle, inTwo)];
  });
}

/** Places about the middle of the building: up and down, then aside. */
function about(middle: Point, lines: readonly Line[]): readonly LabelTexts[] {
  return [0, 3, -3].flatMap((right) => [0, 2, -2, 4, -4].map((up) => stacked(middle, lines, [right, up])));
}

/** One line along the building's longest side, about its middle. */
function sideways({ outline }: Building, { text, style }: Line): readonly LabelTexts[] {
  const walls = wallsOf(outline);
  const [first] = walls;
  if (!first) return [];
  const long = walls.reduce((best, wall) => (wall.length > best.length + 1e-9 ? wall : best), first);
  const angle = readable(Math.atan2(long.along[1], long.along[0]));
  return [0, 2, -2, 4, -4].map((off) => onLine(centroid(outline), text, style, angle, off));
}

/** On paper the floor's height leads; on screen the rod shows it. */
function labelLines(project: Project, building: Building, results: Results, context: DrawContext): Line[] {
  const { display } = project;
  const size = sizeLines(building, display);
  const { floor, survey } = results;
  if (context.medium === "screen" || floor === null) return size;
  const told = toldFromMark(results, context) && survey.mark;
  const height = told
    ? `mark ${formatSigned(floor - told.height, display.length, display.rounding)}`
    : lengthText(floor, display);
  const plain = size.map((line) => ({ ...line, style: "building-sublabel" as const }));
  return [
    { text: "finished floor", style: "building-sublabel" },
    { text: height, style: "building-label" },
    ...plain,
  ];
}

/** Lines to leave out where there is no room, one after another: the height (or the size) stays to the last. */
function shorter(lines: readonly Line[]): readonly (readonly Line[])[] {
  const main = lines.findIndex((line) => line.style === "building-label");
  const fewer = [lines, lines.slice(0, -1), lines.slice(Math.max(main, 0), -1), lines.slice(main, main + 1)];
  return fewer.filter((list) => list.length > 0);
}

/** A building smaller than its figure: that stands outside, at the end of a leader; on paper, where nothing is free, over the walls. */
function outerLabel(middle: Point, { text, style }: Line, context: DrawContext): readonly DrawingMark[] {
  // Away from the walls a bare height would be taken for the ground's.
  const told: Line =
    context.medium === "paper" ? { text: `floor ${text}`, style } : { text, style: "building-sublabel" };
  const led = ledPlaces(middle, Math.PI / 4, told, context, { least: leastLeader });
  const far = placeLed(context, "building", middle, led, { style: "note-leader", over: "over-thin-lines" });
  if (far.length > 0 || context.medium === "screen") return far;
  return placeLabel(context, "building", [stacked(middle, [{ text, style }])], true);
}

function innerLabel(
  project: Project,
  building: Building,
  results: Results,
  context: DrawContext,
): readonly DrawingMark[] {
  const middle = centroid(building.outline);
  const lists = shorter(labelLines(project, building, results, context));
  const whole = lists.flatMap((lines) => [0, 2, -2, 4, -4].map((up) => stacked(middle, lines, [0, up])));
  const tighter = context.medium === "screen" ? tighterSizes(building, project) : [];
  for (const places of [whole, tighter]) {
    const inside = placeLabel(context, "building", places, "over-thin-lines");
    if (inside.length > 0) return inside;
  }
  const [main] = lists[lists.length - 1] ?? [];
  return main ? outerLabel(middle, main, context) : [];
}

function doorMarks(building: Building, door: Door, display: Display, context: DrawContext): DrawingMark[] {
  const piece = openingPiece(building, door);
  if (!piece) return [];
  const size = overAllText(piece.width, display);
  const label = openingLabel(
    piece,
    { kind: "door", id: door.id, name: door.name },
    size,
    "door-label",
    context,
    "building",
  );
  return [{ kind: "line", points: [...piece.a, ...piece.b], style: "door" }, ...label];
}

/** The footing's edge outside the walls, on paper, where it clears them: the trench is dug at least that wide. */
function trenchMarks({ outline, foundation }: Building, context: DrawContext): DrawingMark[] {
  const { thickness, footingWidth } = wallSection(foundation);
  const beyond = (footingWidth - thickness) / 2;
  if (foundation.kind === "posts" || beyond <= 0) return [];
  if (context.medium === "screen" || beyond / context.metresPerMm < thinnestTrench) return [];
  return [
    { kind: "line", points: innerOutline(outline, -beyond).flat(), closed: true, style: "trench" },
    {
      kind: "line",
      points: innerOutline(outline, thickness + beyond).flat(),
      closed: true,
      style: "trench",
    },
  ];
}

/** Holes for posts, at their size where that can be seen. */
function postMarks(
  { posts }: Building["foundation"],
  { foundation }: Results,
  { metresPerMm }: DrawContext,
): DrawingMark[] {
  if (!foundation) return [];
  const { holeDiameter } = posts;
  return foundation.posts.map(({ at }) => ({
    kind: "symbol",
    at,
    symbol: "ring",
    size: Math.max(smallestHole, holeDiameter / metresPerMm),
    style: "station",
  }));
}

/** Walls, diagonals, doors, and size (on paper also the floor's height) inside. */
export function drawBuilding(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("building");
  const { building, display } = project;
  if (!building) return { id: "building", marks: [] };
  const { outline, foundation } = building;
  const points = outline.flat();
  reserveLines(project, results, context);
  const marks: DrawingMark[] = [{ kind: "area", rings: [points], style: "floor" }];
  if (rectangleOf(outline)) {
    for (const i of [0, 1]) {
      const diagonal = [...(outline[i] ?? []), ...(outline[i + 2] ?? [])];
      marks.push({ kind: "line", points: diagonal, style: "diagonal" });
    }
  }
  const { thickness } = wallSection(foundation);
  if (thickness / context.metresPerMm >= thinnestWall) {
    const inner = innerOutline(outline, thickness).flat();
    marks.push({ kind: "line", points: inner, closed: true, style: "wall-inner" });
  }
  marks.push(
    { kind: "line", points, closed: true, style: "wall" },
    ...trenchMarks(building, context),
    ...postMarks(foundation, results, context),
  );
  const label = innerLabel(project, building, results, context);
  const doors = building.doors.flatMap((door) => doorMarks(building, door, display, context));
  return { id: "building", marks: [...marks, ...doors, ...label] };
}
