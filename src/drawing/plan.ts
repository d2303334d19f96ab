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
import { importance, type Ranked } from "./importance";
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

type Draw = (project: Project, results: Results, context: DrawContext) => MarkLayer;

/** What sheets show, by the name that `importance` ranks it by. */
const drawers: Partial<Record<Ranked, Draw>> = {
  notes: drawNotes,
  sections: drawSectionLines,
  "user-dimensions": drawUserDimensions,
  building: drawBuilding,
  corners: drawCorners,
  squaring: drawSquaring,
  marks: drawMarks,
  windows: drawWindows,
  dimensions: drawDimensions,
  drives: drawDrives,
  swales: drawSwales,
  "ground-shapes": drawGroundShapes,
  ponds: drawPonds,
  "depth-spots": drawDepthSpots,
  pits: drawPits,
  lot: drawLot,
  setbacks: drawSetbacks,
  features: drawFeatures,
  breaklines: drawBreaklines,
  shots: drawShots,
  finished: drawFinished,
  existing: drawExisting,
  water: drawArrows,
};

/**
 * Draws everything: layers in painting order, their labels placed so that no text crosses another.
 *
 * Units  plan metres; sizes of text, symbols and lines in paper millimetres (see marks and styles).
 * Method hidden things are left out. Labels are placed in the order of `importance`.
 */
export function drawPlan(
  whole: Project,
  results: Results,
  options: DrawOptions,
  context: DrawContext = createDrawContext(options),
): readonly MarkLayer[] {
  const project = visibleProject(whole);
  const paper = context.medium === "paper";
  const drawn = new Map<Ranked, MarkLayer>();
  for (const name of importance) {
    if (name === "depth-spots" && !paper) continue;
    const layer = drawers[name]?.(project, results, context);
    if (layer) drawn.set(name, layer);
  }
  const layers = (...names: Ranked[]) => names.flatMap((name) => drawn.get(name) ?? []);
  const pick = (name: Ranked, wanted: (mark: DrawingMark) => boolean) =>
    layers(name).map((layer) => ({ ...layer, marks: layer.marks.filter(wanted) }));
  const withoutStations = (name: Ranked) => pick(name, (mark) => !isStationName(mark));
  const stations = [...pick("drives", isStationName), ...pick("swales", isStationName)];
  return [
    ...(paper ? [drawDepth(project, results)] : []),
    drawGuessed(project, results),
    ...layers("existing", "finished"),
    ...withoutStations("drives"),
    ...layers("ground-shapes", "lot", "setbacks", "features", "ponds"),
    ...withoutStations("swales"),
    ...layers("water", "building", "windows", "dimensions", "user-dimensions", "sections", "depth-spots"),
    ...layers("breaklines", "pits", "shots", "marks", "corners"),
    ...stations.filter(({ marks }) => marks.length > 0),
    ...layers("squaring", "notes"),
  ];
}
