/** Contours: the ground as it is (dashed), what is guessed of it, and the finished ground (solid). */
import { soundLot } from "../document/lot";
import type { Project } from "../document/schema";
import type { Point } from "../geometry";
import type { Contour, Results } from "../solve/results";
import { doubtfulRings, type Ground, groundAt } from "../terrain";
import type { DrawContext } from "./context";
import { type Gradient, labelContour } from "./contour-labels";
import { drawingBounds } from "./extent";
import { beyondHull, splitAtHull } from "./hull";
import type { DrawingMark, MarkLayer } from "./marks";
import type { StyleName } from "./styles";
import { heightText } from "./words";

interface ContourLook {
  readonly minor: StyleName;
  readonly major: StyleName;
  readonly label: StyleName;
  readonly group: "existing" | "finished";
}

const existingLook: ContourLook = {
  minor: "contour-existing",
  major: "contour-existing-major",
  label: "contour-label",
  group: "existing",
};
const finishedLook: ContourLook = {
  minor: "contour-finished",
  major: "contour-finished-major",
  label: "contour-finished-label",
  group: "finished",
};

function contourMarks(
  contour: Contour,
  lines: readonly Float64Array[],
  look: ContourLook,
  text: string,
  context: DrawContext,
  gradient: Gradient,
): DrawingMark[] {
  const style = contour.major ? look.major : look.minor;
  return lines.flatMap((points): DrawingMark[] => {
    if (!contour.major) return [{ kind: "line", points, style }];
    const label = { text, style: look.label, group: look.group };
    const { pieces, labels } = labelContour(points, label, context, gradient);
    return [...pieces.map((piece) => ({ kind: "line", points: piece, style }) as const), ...labels];
  });
}

/** Contours of the existing ground, broken under their heights; beyond the shots as guessed lines. */
export function drawExisting(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("existing");
  const { ground } = results;
  if (!ground) return { id: "existing", marks: [] };
  const gradient: Gradient = (x, y) => {
    const here = groundAt(ground, x, y);
    return here && [here.gx, here.gy];
  };
  const marks = results.existingContours.flatMap((contour): DrawingMark[] => {
    const splits = contour.lines.map((line) => splitAtHull(line, ground.hull));
    const text = heightText(contour.height, project.display, results, context);
    const inside = splits.flatMap((split) => split.inside);
    const beyond = splits.flatMap((split) => split.outside);
    return [
      ...[...beyond, ...(contour.guessed ?? [])].map(
        (points) => ({ kind: "line", points, style: "contour-guessed" }) as const,
      ),
      ...contourMarks(contour, inside, existingLook, text, context, gradient),
    ];
  });
  return { id: "existing", marks };
}

/** Contours of the finished ground, and where cut and fill end. */
export function drawFinished(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("finished");
  const nowhere: Gradient = () => null;
  const ends = results.daylight.map((points) => ({ kind: "line", points, style: "daylight" }) as const);
  const marks = results.finishedContours.flatMap((contour) => {
    const text = heightText(contour.height, project.display, results, context);
    return contourMarks(contour, contour.lines, finishedLook, text, context, nowhere);
  });
  return { id: "finished", marks: [...ends, ...marks] };
}

/**
 * Hatches the ground that no shot stands behind: the lot (or, without one, the drawing) beyond the shots' hull, and
 * what is a guess within it: holes, long triangles at the edge, places far from any shot.
 */
export function drawGuessed(project: Project, results: Results): MarkLayer {
  const { ground } = results;
  if (!ground) return { id: "guessed", marks: [] };
  const hull: DrawingMark = { kind: "line", points: ground.hull, closed: true, style: "guessed-edge" };
  const { outline } = soundLot(project.lot);
  const whole = outline.length >= 3 ? outline : boundsRing(project, results);
  const rings = beyondHull(whole, ground.hull);
  const gaps = gapMarks(ground);
  if (rings.length === 0) return { id: "guessed", marks: gaps };
  return { id: "guessed", marks: [{ kind: "area", rings, style: "guessed-hatch" }, hull, ...gaps] };
}

/** Guessed ground within the hull, hatched and edged. */
function gapMarks({ tin, guessed, measuredTriangles }: Ground): DrawingMark[] {
  const rings = doubtfulRings(tin, guessed, measuredTriangles);
  if (rings.length === 0) return [];
  const edges = rings.map(
    (points): DrawingMark => ({ kind: "line", points, closed: true, style: "guessed-edge" }),
  );
  return [{ kind: "area", rings, style: "guessed-hatch" }, ...edges];
}

function boundsRing(project: Project, results: Results): Point[] {
  const bounds = drawingBounds(project, results);
  if (!bounds) return [];
  return [
    [bounds.minX, bounds.minY],
    [bounds.maxX, bounds.minY],
    [bounds.maxX, bounds.maxY],
    [bounds.minX, bounds.maxY],
  ];
}
