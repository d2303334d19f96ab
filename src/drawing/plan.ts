/** The whole plan as layers of marks, labels placed in order of what a reader needs most. */
import type { Project } from "../document/schema";
import { visibleProject } from "../document/visible";
import type { Results } from "../solve/results";
import { drawBreaklines } from "./breaklines";
import { drawBuilding } from "./building";
import { createDrawContext, type DrawContext, type DrawOptions } from "./context";
import { drawExisting, drawFinished, drawGuessed } from "./contours";
import { drawCorners } from "./corners";
import { drawDepth, drawDepthSpots } from "./depth";
import { drawDimensions } from "./dimensions";
import { drawDrives } from "./drives";
import { drawGroundShapes } from "./ground-shapes";
import { drawFeatures, drawLot } from "./lot";
import type { DrawingMark, MarkLayer } from "./marks";
import { drawNotes } from "./notes";
import { drawPits } from "./pits";
import { drawSectionLines } from "./section-lines";
import { drawSetbacks } from "./setbacks";
import { drawMarks, drawShots } from "./shots";
import { drawSquaring } from "./squaring";
import { drawSwales } from "./swales";
import { drawUserDimensions } from "./user-dimensions";
import { drawArrows, drawPonds } from "./water";
import { drawWindows } from "./windows";

/** Names of stations lie over walls and floor: the tables lean on them. */
function isStationName(mark: DrawingMark): boolean {
  return mark.kind === "text" && mark.style === "station-label";
}

/**
 * Draws everything: layers in painting order, their labels placed so that no text crosses another.
 *
 * Units  plan metres; sizes of text, symbols and lines in paper millimetres (see marks and styles).
 * Method hidden things are left out. Labels are placed in order of rank: what a person put at its place (notes,
 *        section lines, dimensions), then building, corners, mark, windows, dimensions, drive, swale, earth shapes, water, depth, pits,
 *        lot, setbacks and features, breaklines, shots, contours; arrows take what paper is left.
 */
export function drawPlan(
  whole: Project,
  results: Results,
  options: DrawOptions,
  context: DrawContext = createDrawContext(options),
): readonly MarkLayer[] {
  const project = visibleProject(whole);
  const notes = drawNotes(project, results, context);
  const sections = drawSectionLines(project, results, context);
  const userDimensions = drawUserDimensions(project, results, context);
  const building = drawBuilding(project, results, context);
  const corners = drawCorners(project, results, context);
  const squaring = drawSquaring(project, results, context);
  const marks = drawMarks(project, results, context);
  const windows = drawWindows(project, results, context);
  const dimensions = drawDimensions(project, results, context);
  const drives = drawDrives(project, results, context);
  const swales = drawSwales(project, results, context);
  const shapes = drawGroundShapes(project, results, context);
  const ponds = drawPonds(project, results, context);
  const paper = context.medium === "paper";
  const spots = paper ? [drawDepthSpots(project, results, context)] : [];
  const pits = drawPits(project, results, context);
  const lot = drawLot(project, results, context);
  const setbacks = drawSetbacks(project, results, context);
  const features = drawFeatures(project, results, context);
  const breaklines = drawBreaklines(project, results, context);
  const shots = drawShots(project, results, context);
  const finished = drawFinished(project, results, context);
  const existing = drawExisting(project, results, context);
  const arrows = drawArrows(project, results, context);
  return [
    ...(paper ? [drawDepth(project, results)] : []),
    drawGuessed(project, results),
    existing,
    finished,
    { ...drives, marks: drives.marks.filter((mark) => !isStationName(mark)) },
    shapes,
    lot,
    setbacks,
    features,
    ponds,
    { ...swales, marks: swales.marks.filter((mark) => !isStationName(mark)) },
    arrows,
    building,
    windows,
    dimensions,
    userDimensions,
    sections,
    ...spots,
    breaklines,
    pits,
    shots,
    marks,
    corners,
    ...[drives, swales].flatMap((layer) => {
      const names = layer.marks.filter(isStationName);
      return names.length > 0 ? [{ ...layer, marks: names }] : [];
    }),
    squaring,
    notes,
  ];
}
