/** Any outline: its corners one after the other, each wall by hand or by its typed length and bearing. */
import type { Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { distance, signedArea } from "../../../geometry";
import type { LineKind } from "../line/lineKind";
import { areaWords, lengthWords } from "../liveMarks";
import type { ToolContext } from "../tool";
import { commitBuilding } from "./commit";
import { buildingChoices } from "./kinds";

export function outlineKind(context: ToolContext): LineKind {
  return {
    closed: true,
    least: 3,
    choices: buildingChoices(context.project(), "outline"),
    hintFirst: () => "Click the first corner",
    hintNext: (_context, points) =>
      points.length < 3
        ? "Click the next corner, or type the wall's length, Tab, its bearing (clockwise from north)"
        : "Click the next corner, or the first one (or Enter) to close the outline",
    pieceText: (now, a, b) => lengthWords(distance(a, b), now.project()),
    extraMarks: areaMarks,
    commit: (now, points) =>
      commitBuilding(
        now,
        points.map(({ at }): Point => [at[0], at[1]]),
      ),
  };
}

/** The area so far, in the middle of the corners. */
function areaMarks(context: ToolContext, points: readonly Point[]): DrawingMark[] {
  const area = Math.abs(signedArea(points));
  if (points.length < 3 || area < 0.1) return [];
  const sum = points.reduce<Point>(([x, y], [px, py]) => [x + px, y + py], [0, 0]);
  return [
    {
      kind: "text",
      at: [sum[0] / points.length, sum[1] / points.length],
      text: areaWords(area, context.project()),
      style: "building-sublabel",
      anchor: "middle",
      halo: true,
    },
  ];
}
