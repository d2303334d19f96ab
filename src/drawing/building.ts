/** The building: walls, doors, diagonals, and what is written inside. */
import type { Building, Display, Door, Project } from "../document/schema";
import { between, centroid, distance, type Point, signedArea } from "../geometry";
import type { Results } from "../solve/results";
import { formatArea, formatSigned } from "../units";
import { capOf, longestName, sizeOf, stacked } from "./beside";
import { type DrawContext, placeLabel, readable, toldFromMark } from "./context";
import type { DrawingMark, MarkLayer, TextMark, XY } from "./marks";
import { reserveLines } from "./reserve";
import type { StyleName } from "./styles";
import { ellipsize } from "./text-width";
import { innerOutline, rectangleOf, type Wall, wallsOf } from "./walls";
import { lengthText } from "./words";

/** A wall thinner than this on paper, mm, is one line. */
const thinnestWall = 0.7;

type Line = { readonly text: string; readonly style: StyleName };

/** "32′" for "32′ 0″": a size over all needs no empty inches. */
function sizeText(m: number, display: Display): string {
  return lengthText(m, display).replace(/ 0″$/, "");
}

function sizeLines(building: Building, display: Display): Line[] {
  const rectangle = rectangleOf(building.outline);
  if (!rectangle) {
    const area = formatArea(Math.abs(signedArea(building.outline)), display.area);
    return [{ text: area, style: "building-sublabel" }];
  }
  const [length, width] = rectangle.sides.map((side) => sizeText(side, display));
  const [one, two] = rectangle.diagonals.map((diagonal) => lengthText(diagonal, display));
  return [
    { text: `${length} × ${width}`, style: "building-label" },
    { text: one === two ? `diagonals ${one}` : `diagonals ${one} and ${two}`, style: "building-sublabel" },
  ];
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

function innerLabel(
  project: Project,
  building: Building,
  results: Results,
  context: DrawContext,
): readonly TextMark[] {
  const middle = centroid(building.outline);
  const candidates = shorter(labelLines(project, building, results, context)).flatMap((lines) =>
    [0, 2, -2, 4, -4].map((up) => stacked(middle, lines, [0, up])),
  );
  return placeLabel(context, "building", candidates, true);
}

function doorMarks(building: Building, door: Door, display: Display, context: DrawContext): DrawingMark[] {
  const wall = wallsOf(building.outline).find((one) => one.index === door.wall);
  if (!wall) return [];
  const near = Math.min(door.offset, wall.length);
  const ends = [near, Math.min(near + door.width, wall.length)].map((reach) =>
    between(wall.from, wall.to, reach / wall.length),
  );
  const [a, b] = ends as [Point, Point];
  const line: DrawingMark = { kind: "line", points: [...a, ...b], style: "door" };
  return [line, ...doorLabel(wall, between(a, b, 0.5), distance(a, b), door, display, context)];
}

function doorLabel(
  wall: Wall,
  at: XY,
  width: number,
  door: Door,
  display: Display,
  context: DrawContext,
): readonly TextMark[] {
  const angle = readable(Math.atan2(wall.along[1], wall.along[0]));
  // "Up" in the text's own frame may point into the building or out of it.
  const inward = Math.cos(angle) * wall.outward[1] - Math.sin(angle) * wall.outward[0] > 0 ? -1 : 1;
  const name = ellipsize(door.name, longestName, sizeOf("door-label"), 600);
  const text = `${name} ${sizeText(width, display)}`;
  const candidates = [2.6, 3.6, 5].map((off): readonly TextMark[] => [
    {
      kind: "text",
      at,
      text,
      style: "door-label",
      angle,
      anchor: "middle",
      shift: [0, inward * off - capOf("door-label") / 2],
      halo: true,
    },
  ]);
  return placeLabel(context, "building", candidates);
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
  if (foundation.wallThickness / context.metresPerMm >= thinnestWall) {
    const inner = innerOutline(outline, foundation.wallThickness).flat();
    marks.push({ kind: "line", points: inner, closed: true, style: "wall-inner" });
  }
  marks.push({ kind: "line", points, closed: true, style: "wall" });
  const label = innerLabel(project, building, results, context);
  const doors = building.doors.flatMap((door) => doorMarks(building, door, display, context));
  return { id: "building", marks: [...marks, ...doors, ...label] };
}
