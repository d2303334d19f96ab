/** Windows: a clear gap in the wall's line, closed at both sides, with name and width. */
import type { Building, Project, Window } from "../document/schema";
import type { Results } from "../solve/results";
import { type DrawContext, onPaper } from "./context";
import type { DrawingMark, MarkLayer } from "./marks";
import { openingLabel, openingPiece } from "./openings";
import { reserveLines } from "./reserve";
import { overAllText } from "./words";

/** The stroke across the wall at each side of a window, mm. */
const jamb = 1.9;

/** The window on its wall, without its label. */
export function windowMarks(
  building: Building,
  window: Pick<Window, "wall" | "offset" | "width">,
): DrawingMark[] {
  const piece = openingPiece(building, window);
  if (!piece) return [];
  const { a, b, wall } = piece;
  const angle = Math.atan2(wall.outward[1], wall.outward[0]);
  const points = [...a, ...b];
  return [
    { kind: "line", points, style: "window" },
    { kind: "line", points, style: "window-glass" },
    ...[a, b].map(
      (at): DrawingMark => ({ kind: "symbol", at, symbol: "tick", size: jamb, angle, style: "window-jamb" }),
    ),
  ];
}

/** All windows of the building. */
export function drawWindows(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("windows");
  reserveLines(project, results, context);
  const { building, display } = project;
  if (!building) return { id: "windows", marks: [] };
  const labels = building.windows.flatMap((window) => {
    const piece = openingPiece(building, window);
    if (!piece) return [];
    context.labels.takeLine("windows", onPaper([...piece.a, ...piece.b], context.metresPerMm), jamb);
    const size = overAllText(piece.width, display);
    const of = { kind: "window", id: window.id, name: window.name } as const;
    return openingLabel(piece, of, size, "window-label", context, "windows");
  });
  return {
    id: "windows",
    marks: [...building.windows.flatMap((window) => windowMarks(building, window)), ...labels],
  };
}
