/** Which layers of marks the plan has, what each is made from, and on which canvas it lies. */
import type { Project } from "../../document";
import {
  type DrawContext,
  drawArrows,
  drawBreaklines,
  drawBuilding,
  drawCorners,
  drawDimensions,
  drawDrives,
  drawExisting,
  drawFeatures,
  drawFinished,
  drawGathered,
  drawGroundShapes,
  drawGuessed,
  drawLot,
  drawMarks,
  drawNotes,
  drawPits,
  drawPonds,
  drawSectionLines,
  drawSetbacks,
  drawShots,
  drawSquaring,
  drawSwales,
  drawUserDimensions,
  drawWindows,
  type MarkLayer,
} from "../../drawing";
import { importance, type Ranked } from "../../drawing/importance";
import type { Results } from "../../solve/results";
import type { PlanLayer, StepName } from "../../store/state";
import { type CutInView, endsGroup, type SectionOnPlan, sectionOnPlan } from "../section/sectionOnPlan";

/** Canvases by their rhythm: the ground changes with the survey, the design with each edit and floor. */
export type CanvasName = "ground" | "design" | "shots";

export interface LayerSpec {
  /** Also the name by which its label places are given back. */
  readonly name: Ranked;
  readonly canvas: CanvasName;
  /** Switched off with this part of the plan; none: always shown. */
  readonly part?: PlanLayer;
  /** Drawn in these steps of the job alone; none: in all. */
  readonly steps?: readonly StepName[];
  /** Drawn again when one of these is another object. */
  inputs(project: Project, results: Results, section: CutInView | null): readonly unknown[];
  /** While something is under the hand only these count: the rest of its inputs waits until the hand lets go. */
  underHand?(project: Project, results: Results): readonly unknown[];
  draw(project: Project, results: Results, context: DrawContext, section: CutInView | null): MarkLayer;
}

/** The shown section's line lies under all, its ends on top: they are found once. */
const sectionsFound = new WeakMap<DrawContext, SectionOnPlan>();

function inputsOfEnds({ lot }: Project, _results: Results, section: CutInView | null): readonly unknown[] {
  return section ? [section, lot.north] : [];
}

const specs: readonly LayerSpec[] = [
  {
    name: "notes",
    canvas: "shots",
    part: "notes",
    inputs: ({ drawing }) => [drawing.notes, drawing.turn],
    draw: drawNotes,
  },
  {
    name: "sections",
    canvas: "design",
    part: "sections",
    inputs: ({ drawing }) => [drawing.sections],
    draw: drawSectionLines,
  },
  {
    name: "user-dimensions",
    canvas: "design",
    part: "dimensions",
    inputs: ({ drawing, building, display }) => [drawing.dimensions, building?.outline, display],
    draw: drawUserDimensions,
  },
  {
    name: "building",
    canvas: "design",
    part: "building",
    inputs: ({ building, display }) => [building?.outline, building?.doors, building?.foundation, display],
    draw: drawBuilding,
  },
  {
    name: "corners",
    canvas: "design",
    part: "building",
    inputs: ({ building, display }, { corners }) => [corners, building?.outline, display],
    draw: drawCorners,
  },
  {
    name: "squaring",
    canvas: "design",
    part: "building",
    steps: ["building", "setout"],
    inputs: ({ display }, { plot }) => [plot.moves, display],
    draw: drawSquaring,
  },
  {
    name: "marks",
    canvas: "shots",
    inputs: ({ survey, display }, results) => [survey.marks, results.survey.mark, display],
    draw: drawMarks,
  },
  {
    name: "windows",
    canvas: "design",
    part: "building",
    inputs: ({ building, display }) => [building?.outline, building?.windows, display],
    draw: drawWindows,
  },
  {
    name: "dimensions",
    canvas: "design",
    part: "dimensions",
    inputs: ({ building, lot, display }) => [building?.outline, lot.outline, lot.north, display],
    draw: drawDimensions,
  },
  {
    name: endsGroup,
    canvas: "design",
    inputs: inputsOfEnds,
    draw: (project, _results, context, section) => {
      const found = section ? sectionOnPlan(section, project, context) : { line: [], ends: [] };
      sectionsFound.set(context, found);
      return { id: "section-ends", marks: found.ends };
    },
  },
  {
    name: "section-shown",
    canvas: "ground",
    inputs: inputsOfEnds,
    draw: (_project, _results, context) => ({
      id: "section-shown",
      marks: sectionsFound.get(context)?.line ?? [],
    }),
  },
  {
    name: "drives",
    canvas: "design",
    part: "drives",
    inputs: ({ grading, display }, { drives }) => [grading.drives, drives, display],
    draw: drawDrives,
  },
  {
    name: "swales",
    canvas: "design",
    part: "swales",
    inputs: ({ grading, display }, { water }) => [
      grading.swales,
      water.swales,
      display,
      water.pipes.length > 0 ? water.pipes : null,
      water.footingDrain,
    ],
    underHand: ({ grading, display }, { water }) => [grading.swales, water.swales, display],
    draw: drawSwales,
  },
  {
    name: "ground-shapes",
    canvas: "design",
    part: "drives",
    inputs: ({ grading, display }, results) => [
      grading.pads,
      grading.berms,
      grading.walls,
      grading.points,
      results.grading,
      results.survey.mark,
      display,
    ],
    draw: drawGroundShapes,
  },
  {
    name: "ponds",
    canvas: "design",
    part: "ponds",
    inputs: ({ building, display }, { water }) => [water.ponds, water.walls, building?.outline, display],
    draw: drawPonds,
  },
  {
    name: "pits",
    canvas: "shots",
    part: "shots",
    inputs: ({ survey, building, display }) => [
      survey.pits,
      survey.shots,
      survey.marks,
      building?.outline,
      display,
    ],
    draw: drawPits,
  },
  {
    name: "lot",
    canvas: "design",
    part: "lot",
    inputs: ({ lot, display }) => [lot.outline, lot.north, display],
    draw: drawLot,
  },
  {
    name: "setbacks",
    canvas: "design",
    part: "lot",
    inputs: ({ lot, display }, { plot }) => [plot.setbacks, lot, display],
    draw: drawSetbacks,
  },
  {
    name: "features",
    canvas: "design",
    part: "features",
    inputs: ({ lot, display }) => [lot.features, display],
    draw: drawFeatures,
  },
  {
    name: "breaklines",
    canvas: "shots",
    part: "breaklines",
    inputs: ({ survey }) => [survey.breaklines],
    draw: drawBreaklines,
  },
  {
    name: "shots",
    canvas: "shots",
    part: "shots",
    inputs: ({ survey, building, drawing, display }, results) => [
      results.survey.points,
      drawing.hidden,
      results.survey.mark,
      survey.marks,
      building?.outline,
      display,
    ],
    // A crowd of shots isn't placed anew about a building that is on its way.
    underHand: ({ survey, drawing, display }, results) => [
      results.survey.points,
      drawing.hidden,
      results.survey.mark,
      survey.marks,
      display,
    ],
    draw: drawShots,
  },
  {
    name: "finished",
    canvas: "design",
    part: "finished",
    inputs: ({ display }, results) => [
      results.finishedContours,
      results.daylight,
      results.survey.mark,
      display,
    ],
    draw: drawFinished,
  },
  {
    name: "existing",
    canvas: "ground",
    part: "existing",
    inputs: ({ display }, results) => [
      results.existingContours,
      results.ground,
      results.survey.mark,
      display,
    ],
    draw: drawExisting,
  },
  {
    name: "water",
    canvas: "design",
    part: "arrows",
    inputs: ({ lot }, { arrows }) => [arrows, lot.outline],
    draw: drawArrows,
  },
  {
    name: "runs",
    canvas: "ground",
    part: "runs",
    steps: ["water"],
    inputs: (_project, { water }) => [water.gathered, water.bareEarth],
    draw: drawGathered,
  },
  {
    name: "guessed",
    canvas: "ground",
    part: "existing",
    inputs: ({ lot }, { ground }) => [ground, lot.outline],
    draw: drawGuessed,
  },
];

/** In order of rank: the first place their labels first. */
export const layersByRank: readonly LayerSpec[] = importance.flatMap((name) =>
  specs.filter((spec) => spec.name === name),
);

/** In order of painting: the last lies on top. */
export const paintingOrder: Readonly<Record<CanvasName, readonly string[]>> = {
  ground: ["guessed", "existing", "runs", "section-shown"],
  design: [
    "finished",
    "drives",
    "ground-shapes",
    "lot",
    "setbacks",
    "features",
    "ponds",
    "swales",
    "water",
    "building",
    "windows",
    "dimensions",
    "user-dimensions",
    "sections",
    "section-ends",
    "corners",
    "squaring",
  ],
  shots: ["breaklines", "pits", "shots", "marks", "notes"],
};

/** These follow the floor under the hand, or trail behind it; the others change only with an edit. */
export const followsFloor: ReadonlySet<string> = new Set([
  "corners",
  "drives",
  "swales",
  "ponds",
  "finished",
  "water",
]);

/** These follow the view as it is pushed about: they look for room among what stands there already. */
export const followsView: ReadonlySet<string> = new Set(["section-ends", "section-shown"]);
