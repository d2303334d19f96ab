/** A proposed line with its stakes and the heights of the bed at them. */
import type { Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import type { Route } from "../../../solve/swale-proposal";
import { formatSlope } from "../../../units";
import { floating, lengthWords } from "../liveMarks";
import type { ToolContext } from "../tool";

export function proposalMarks(context: ToolContext, start: Point, route: Route | null): DrawingMark[] {
  const dot = (at: Point): DrawingMark => ({ kind: "symbol", at, symbol: "dot", size: 1.8, style: "handle" });
  if (!route) return [dot(start)];
  return [
    { kind: "line", points: route.line.flat(), style: route.result.drains ? "preview-line" : "preview" },
    ...route.line.map(dot),
    ...stakes(context, route),
  ];
}

/** Heights of the bed at the line's ends and corners. */
function stakes(context: ToolContext, { result, line }: Route): DrawingMark[] {
  const project = context.project();
  return line.flatMap((at, i): DrawingMark[] => {
    const station = result.stations.find((one) => Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) < 1e-6);
    if (!station) return [];
    const last = i === line.length - 1;
    const said = last ? endWords(context, result, station) : `bed ${lengthWords(station.bed, project)}`;
    return [floating(at, said, last ? [4, -6] : [3, 3])];
  });
}

function endWords(
  context: ToolContext,
  { drains, leastFall }: Route["result"],
  { bed, existing }: Route["result"]["stations"][number],
): string {
  const project = context.project();
  const height = lengthWords(bed, project);
  return drains
    ? `comes out at ${height}, falls ${formatSlope(leastFall, project.display.slope)}`
    : `bed ${height}, ${lengthWords(Math.max(0, existing - bed), project)} under the ground`;
}
