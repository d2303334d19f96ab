/** One dimension line: ticks at its ends, its figure along it. Walls, ties and a person's own dimensions share it. */
import { between, distance } from "../geometry";
import { along, capOf, sizeOf } from "./beside";
import { type DrawContext, type LabelTexts, onPaper, readable } from "./context";
import type { DrawingMark, XY } from "./marks";
import { textWidth } from "./text-width";

/** Extension lines start and end this far from what they measure and from the dimension line, mm. */
export const extensionGap = 1.4;
const tick = 2;

export interface DimensionLine {
  readonly from: XY;
  readonly to: XY;
  readonly text: string;
  readonly style: "dimension" | "tie";
}

function ticks(line: DimensionLine): DrawingMark[] {
  const angle = Math.atan2(line.to[1] - line.from[1], line.to[0] - line.from[0]) + Math.PI / 4;
  return [line.from, line.to].map((at) => ({
    kind: "symbol",
    at,
    symbol: "tick",
    size: tick,
    angle,
    style: "dimension-tick",
  }));
}

/** Places for the text: above the middle of the line, below it, then nearer to its ends. */
export function labelPlaces(line: DimensionLine, context: DrawContext): readonly LabelTexts[] {
  const angle = readable(Math.atan2(line.to[1] - line.from[1], line.to[0] - line.from[0]));
  const length = distance(line.from, line.to) / context.metresPerMm;
  const width = textWidth(line.text, sizeOf("dimension-label"));
  const off = 0.7 + capOf("dimension-label") / 2;
  const spare = Math.max(0, 0.5 - (width / 2 + 2) / Math.max(length, 1e-9));
  return [0.5, 0.5 - spare / 2, 0.5 + spare / 2, 0.5 - spare, 0.5 + spare].flatMap((t) =>
    [off, -off].map((side) =>
      along(between(line.from, line.to, t), line.text, "dimension-label", angle, side),
    ),
  );
}

/** The line, its ticks and its placed label; other texts keep off the line from now on. */
export function dimensionMarks(
  line: DimensionLine,
  label: LabelTexts,
  context: DrawContext,
  group: string,
): DrawingMark[] {
  const points = [...line.from, ...line.to];
  context.labels.takeLine(group, onPaper(points, context.metresPerMm), 0.3);
  return [{ kind: "line", points, style: line.style }, ...ticks(line), ...label];
}
