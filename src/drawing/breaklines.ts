/** Breaklines: a thin line with a dot at each place that has a height of its own, named where there is room. */
import { isClosedBreakline } from "../document";
import type { Breakline, Project } from "../document/schema";
import type { Point } from "../geometry";
import type { Results } from "../solve/results";
import { along, capOf, longestName, sizeOf } from "./beside";
import { type DrawContext, placeLabel, readable } from "./context";
import type { DrawingMark, MarkLayer } from "./marks";
import { ellipsize } from "./text-width";

const group = "breaklines";
/** Size of the dot at a place with a height of its own, mm. */
const dot = 0.9;

function lineMarks(line: Breakline, context: DrawContext): DrawingMark[] {
  const points = line.points.map(([x, y]): Point => [x, y]);
  const closed = isClosedBreakline(line.kind);
  const ring = closed ? [...points, points[0] as Point] : points;
  const off = 1 + capOf("breakline-label") / 2;
  const text = ellipsize(line.name, longestName, sizeOf("breakline-label"));
  const places =
    text === ""
      ? []
      : ring.slice(1).flatMap((to, i) => {
          const from = ring[i] as Point;
          const angle = readable(Math.atan2(to[1] - from[1], to[0] - from[0]));
          const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
          return [off, -off].map((side) => along(middle, text, "breakline-label", angle, side));
        });
  const known = line.points.filter(([, , z]) => z !== null);
  return [
    { kind: "line", points: points.flat(), closed, style: closed ? "breakline-round" : "breakline" },
    ...known.map(
      ([x, y]): DrawingMark => ({
        kind: "symbol",
        at: [x, y],
        symbol: "dot",
        size: dot,
        style: "breakline-dot",
      }),
    ),
    ...placeLabel(context, group, places),
  ];
}

/** All breaklines. */
export function drawBreaklines(project: Project, _results: Results, context: DrawContext): MarkLayer {
  context.labels.forget(group);
  return { id: "breaklines", marks: project.survey.breaklines.flatMap((line) => lineMarks(line, context)) };
}
