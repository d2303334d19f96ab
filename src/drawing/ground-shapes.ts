/** Parking pads and terraces, berms, retaining walls and grade points: outlines with what they are and how high. */
import type { Project } from "../document/schema";
import { centroid, type Point, pointAlong, polylineLength } from "../geometry";
import type { Results } from "../solve/results";
import { along, besidePoint, longestName, sizeOf } from "./beside";
import { type DrawContext, heightOrigin, type LabelTexts, placeLabel, readable } from "./context";
import type { DrawingMark, MarkLayer } from "./marks";
import { offsetLine } from "./offset";
import { reserveLines } from "./reserve";
import { ellipsize } from "./text-width";
import { gradeText, lengthText } from "./words";

const group = "ground-shapes";
const label = "ground-shape-label";
/** Ticks of a retaining wall towards its lower side: mm apart, and how long. */
const tickPitch = 4;
const tickLength = 1.4;

/** All of them. */
export function drawGroundShapes(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget(group);
  const { pads, berms, walls, points } = project.grading;
  if (pads.length + berms.length + walls.length + points.length === 0)
    return { id: "ground-shapes", marks: [] };
  reserveLines(project, results, context);
  return {
    id: "ground-shapes",
    marks: [
      ...pads.flatMap((pad) => padMarks(pad, project, results, context)),
      ...berms.flatMap((berm) => bermMarks(berm, project, context)),
      ...walls.flatMap((wall) => wallMarks(wall, project, results, context)),
      ...points.flatMap((point) => pointMarks(point, project, results, context)),
    ],
  };
}

function short(name: string): string {
  return ellipsize(name, longestName, sizeOf(label));
}

/** Heights as the plan tells them, from the mark where there is one. */
function heightText(height: number, project: Project, results: Results, context: DrawContext): string {
  return lengthText(height - heightOrigin(results, context), project.display);
}

function padMarks(
  pad: Project["grading"]["pads"][number],
  project: Project,
  results: Results,
  context: DrawContext,
): DrawingMark[] {
  const middle = centroid(pad.outline);
  const found = results.grading?.pads.find(({ id }) => id === pad.id);
  const texts = [
    ...(found ? [`${short(pad.name)} ${heightText(found.height, project, results, context)}`] : []),
    short(pad.name),
  ];
  const falls: DrawingMark[] =
    pad.fall > 0
      ? [
          {
            kind: "symbol",
            at: middle,
            symbol: "arrow",
            size: 5,
            angle: pad.towards,
            style: "ground-shape-mark",
          },
          ...placeLabel(
            context,
            group,
            besidePoint(middle, `falls ${gradeText(pad.fall, project.display)}`, label, 5),
            "over-lines",
          ),
        ]
      : [];
  return [
    { kind: "area", rings: [pad.outline.flat()], style: "ground-pad" },
    { kind: "line", points: pad.outline.flat(), closed: true, style: "drive-edge" },
    ...falls,
    ...placeLabel(
      context,
      group,
      texts.flatMap((text) => besidePoint(middle, text, label, 7)),
      "over-lines",
    ),
  ];
}

function bermMarks(
  berm: Project["grading"]["berms"][number],
  project: Project,
  context: DrawContext,
): DrawingMark[] {
  const half = berm.topWidth / 2;
  const edges = half > 0 ? [offsetLine(berm.line, half), offsetLine(berm.line, -half)] : [berm.line];
  const text = `${short(berm.name)} ${lengthText(berm.height, project.display)} high`;
  return [
    ...edges.map((line): DrawingMark => ({ kind: "line", points: line.flat(), style: "ground-berm" })),
    ...placeLabel(context, group, besideLine(berm.line, text)),
  ];
}

function wallMarks(
  wall: Project["grading"]["walls"][number],
  project: Project,
  results: Results,
  context: DrawContext,
): DrawingMark[] {
  const found = results.grading?.walls.find(({ id }) => id === wall.id);
  const high = found && found.exposed > 0 ? ` up to ${lengthText(found.exposed, project.display)}` : "";
  const length = polylineLength(wall.line);
  const count = Math.max(2, Math.round(length / context.metresPerMm / tickPitch));
  const side = wall.lowSide === "left" ? 1 : -1;
  const ticks = Array.from({ length: count }, (_, i): DrawingMark => {
    const { at, direction } = pointAlong(wall.line, (length * (i + 0.5)) / count);
    const out = tickLength * context.metresPerMm * side;
    return {
      kind: "line",
      points: [at[0], at[1], at[0] - direction[1] * out, at[1] + direction[0] * out],
      style: "ground-shape-mark",
    };
  });
  return [
    { kind: "line", points: wall.line.flat(), style: "retaining-wall" },
    ...ticks,
    ...placeLabel(context, group, besideLine(wall.line, `${short(wall.name)}${high}`)),
  ];
}

function pointMarks(
  point: Project["grading"]["points"][number],
  project: Project,
  results: Results,
  context: DrawContext,
): DrawingMark[] {
  const text = `${short(point.name)} ${heightText(point.height, project, results, context)}`;
  return [
    { kind: "symbol", at: point.at, symbol: "ring", size: 2.2, style: "ground-shape-mark" },
    { kind: "symbol", at: point.at, symbol: "dot", size: 0.8, style: "ground-shape-mark" },
    ...placeLabel(context, group, besidePoint(point.at, text, label, 2.2), "over-lines"),
  ];
}

/** Beside a line's longest piece, on either side. */
function besideLine(line: readonly Point[], text: string): readonly LabelTexts[] {
  const pieces = line.slice(1).map((to, i) => ({ from: line[i] as Point, to }));
  const longest = pieces.reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a));
  const angle = readable(Math.atan2(longest.to[1] - longest.from[1], longest.to[0] - longest.from[0]));
  return [0.5, 0.3, 0.7].flatMap((t) =>
    [2.6, -2.6].map((off) =>
      along(
        [
          longest.from[0] + (longest.to[0] - longest.from[0]) * t,
          longest.from[1] + (longest.to[1] - longest.from[1]) * t,
        ],
        text,
        label,
        angle,
        off,
      ),
    ),
  );
}

function lengthOf({ from, to }: { from: Point; to: Point }): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}
