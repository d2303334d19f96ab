/** The whole plan as layers of marks, labels placed in order of what a reader needs most. */
import type { Project } from "../document/schema";
import type { Results } from "../solve/results";
import { drawBuilding } from "./building";
import { createDrawContext, type DrawContext, type DrawOptions } from "./context";
import { drawExisting, drawFinished, drawGuessed } from "./contours";
import { drawCorners } from "./corners";
import { drawDepth, drawDepthSpots } from "./depth";
import { drawDimensions } from "./dimensions";
import { drawDrives } from "./drives";
import { drawFeatures, drawLot } from "./lot";
import type { MarkLayer } from "./marks";
import { drawMarks, drawShots } from "./shots";
import { drawSwales } from "./swales";
import { drawArrows, drawPonds } from "./water";

/**
 * Draws everything: layers in painting order, their labels placed so that no text crosses another.
 *
 * Units  plan metres; sizes of text, symbols and lines in paper millimetres (see marks and styles).
 * Method labels are placed in order of rank: building, corners, mark, dimensions, drive, swale, water, depth, lot
 *        and features, shots, contours; arrows take what paper is left.
 */
export function drawPlan(
  project: Project,
  results: Results,
  options: DrawOptions,
  context: DrawContext = createDrawContext(options),
): readonly MarkLayer[] {
  const building = drawBuilding(project, results, context);
  const corners = drawCorners(project, results, context);
  const marks = drawMarks(project, results, context);
  const dimensions = drawDimensions(project, results, context);
  const drives = drawDrives(project, results, context);
  const swales = drawSwales(project, results, context);
  const ponds = drawPonds(project, results, context);
  const paper = context.medium === "paper";
  const spots = paper ? [drawDepthSpots(project, results, context)] : [];
  const lot = drawLot(project, results, context);
  const features = drawFeatures(project, results, context);
  const shots = drawShots(project, results, context);
  const finished = drawFinished(project, results, context);
  const existing = drawExisting(project, results, context);
  const arrows = drawArrows(project, results, context);
  return [
    ...(paper ? [drawDepth(project, results)] : []),
    drawGuessed(project, results),
    existing,
    finished,
    drives,
    lot,
    features,
    ponds,
    swales,
    arrows,
    building,
    dimensions,
    ...spots,
    shots,
    marks,
    corners,
  ];
}
