/** What shows while a rectangle is drawn: its sides, its size and its diagonals. */
import type { Point, Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { alongPiece, areaWords, floating, lengthWords, ringMarks } from "../liveMarks";
import type { DrawnDimension } from "../tool";
import { bigEnough, type Rectangle } from "./rectangle";

/** Width and depth, to be typed over. */
export function rectangleDimensions({ outline, width, depth }: Rectangle): DrawnDimension[] {
  const [a, b, c] = outline;
  if (!a || !b || !c) return [];
  return [
    { key: "width", label: "width", m: width, ends: [a, b], field: "width" },
    { key: "depth", label: "depth", m: depth, ends: [b, c], field: "depth" },
  ];
}

/** The first corner while there is no side yet: where it lies, from the plan's origin. */
export function cornerMarks(at: Point, project: Project): DrawingMark[] {
  const side = (m: number, [plus, minus]: readonly [string, string]) =>
    `${lengthWords(Math.abs(m), project)} ${m < 0 ? minus : plus}`;
  return [
    { kind: "symbol", at, symbol: "ring", size: 2.4, style: "preview-line" },
    floating(at, `${side(at[0], ["E", "W"])}, ${side(at[1], ["N", "S"])}`),
  ];
}

export function rectangleMarks(rectangle: Rectangle, project: Project): DrawingMark[] {
  const [a, b, c, d] = rectangle.outline;
  if (!a || !b || !c || !d) return [];
  if (!bigEnough(rectangle)) return ringMarks(rectangle.outline);
  const diagonal = Math.hypot(rectangle.width, rectangle.depth);
  const middle: Point = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];
  return [
    ...ringMarks(rectangle.outline),
    alongPiece(a, b, lengthWords(rectangle.width, project)),
    alongPiece(b, c, lengthWords(rectangle.depth, project)),
    {
      kind: "text",
      at: middle,
      text: `diagonals ${lengthWords(diagonal, project)}`,
      style: "building-sublabel",
      anchor: "middle",
      halo: true,
    },
    {
      kind: "text",
      at: middle,
      text: areaWords(rectangle.width * rectangle.depth, project),
      style: "building-sublabel",
      anchor: "middle",
      shift: [0, -4],
      halo: true,
    },
  ];
}
