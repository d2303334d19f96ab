/** Water on the finished ground: which way it runs, where it stands, and the walls it runs towards. */
import type { Project } from "../document/schema";
import { centroid, containsPoint, type Point } from "../geometry";
import type { Arrow, Pond, Results } from "../solve/results";
import { along, besidePoint } from "./beside";
import { type DrawContext, placeLabel } from "./context";
import type { DrawingMark, MarkLayer } from "./marks";
import { reserveLines } from "./reserve";
import { wallsOf } from "./walls";
import { lengthText } from "./words";

/** Length of an arrow and least distance between two, mm. */
const arrowLength = 4.2;
const arrowPitch = 12;
/** A wet wall's line lies this far outside the wall, mm. */
const wetOffset = 1.3;
/** Shares of a wall below this are a splash at its end, not a wall that water runs towards. */
const leastShare = 0.02;

/** Thins arrows to one in a cell of paper and leaves out those that would cross a text or a line. */
function arrowMarks(arrows: readonly Arrow[], context: DrawContext): DrawingMark[] {
  const cells = new Set<string>();
  return arrows.flatMap((arrow): DrawingMark[] => {
    const x = arrow.x / context.metresPerMm;
    const y = arrow.y / context.metresPerMm;
    const cell = `${Math.floor(x / arrowPitch)} ${Math.floor(y / arrowPitch)}`;
    if (cells.has(cell)) return [];
    const angle = Math.atan2(arrow.dy, arrow.dx);
    const box = { x, y, width: arrowLength, height: 1.8, angle };
    if (!context.labels.fits(box)) return [];
    cells.add(cell);
    context.labels.take("water", box);
    const at = [arrow.x, arrow.y] as const;
    return [{ kind: "symbol", at, symbol: "arrow", size: arrowLength, angle, style: "arrow" }];
  });
}

/** "holds 3″ of water" beside the deepest place. */
function pondMarks(pond: Pond, project: Project, context: DrawContext): DrawingMark[] {
  const text = `holds ${lengthText(pond.depth, project.display)} of water`;
  const [ring] = pond.rings;
  const corners = ring
    ? Array.from({ length: ring.length / 2 }, (_, i): Point => [ring[2 * i] ?? 0, ring[2 * i + 1] ?? 0])
    : [];
  const middles: readonly Point[] = corners.length >= 3 ? [centroid(corners), pond.at] : [pond.at];
  const places = middles.flatMap((middle) =>
    [0, 3.4, -3.4, 6.8, -6.8].map((up) => along(middle, text, "pond-label", 0, up)),
  );
  const beside = [2, 8, 16].flatMap((off) => besidePoint(pond.at, text, "pond-label", off));
  const label = placeLabel(context, "ponds", [...places, ...beside], true);
  return [{ kind: "area", rings: pond.rings, style: "pond" }, ...label];
}

/** Ponds with their depth, and a line along each wall that water runs towards. */
export function drawPonds(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("ponds");
  reserveLines(project, results, context);
  const walls = project.building ? wallsOf(project.building.outline) : [];
  const wet = results.water.walls.flatMap((water): DrawingMark[] => {
    const wall = walls.find((one) => one.index === water.wall);
    if (!wall || water.runsTowards < leastShare) return [];
    const [ox, oy] = wall.outward.map((part) => part * wetOffset * context.metresPerMm) as [number, number];
    const points = [wall.from[0] + ox, wall.from[1] + oy, wall.to[0] + ox, wall.to[1] + oy];
    return [{ kind: "line", points, style: "wall-wet" }];
  });
  const ponds = results.water.ponds.flatMap((pond) => pondMarks(pond, project, context));
  return { id: "water", marks: [...ponds, ...wet] };
}

/** Downhill arrows on the lot, on what paper is left: draw them after every label. */
export function drawArrows(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("water");
  reserveLines(project, results, context);
  const { outline } = project.lot;
  const shown =
    outline.length < 3 ? results.arrows : results.arrows.filter(({ x, y }) => containsPoint(outline, x, y));
  return { id: "water", marks: arrowMarks(shown, context) };
}
