/** What shows while a rectangle is drawn: its sides, its size and its diagonals. */
import type { Point, Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { alongPiece, areaWords, lengthWords, ringMarks } from "../liveMarks";
import { bigEnough, type Rectangle } from "./rectangle";

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
