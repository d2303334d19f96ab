/** Every act of the window, once: the menu, the keys, the finder, the header and the native menu read this list. */

import { planTools } from "../canvas/tools/toolList";
import {
  fitBuilding,
  fitPlan,
  fitSelection,
  setPlanTurn,
  zoomByStep,
  zoomStep,
} from "../canvas/view/planView";
import { buildingLevel, northUp } from "../canvas/view/turnChoices";
import { redoLabel, undoLabel } from "../document";
import type { AppCommand } from "../panels/command";
import { floorStep } from "../panels/floorStep";
import { stepTitles } from "../panels/steps";
import {
  nudgeFloor,
  openDialog,
  openGlossary,
  redoEdit,
  setStep,
  setTheme,
  setTool,
  undoEdit,
} from "../store/actions";
import { followStep, toggleLayer } from "../store/layerActions";
import { type AppState, type PlanLayer, planLayers, stepNames } from "../store/state";
import { appStore, shownProject } from "../store/store";
import { arrangeCommands } from "./arrange";
import type { Files } from "./files";
import { beginImport } from "./import/importing";
import { pictureCommands } from "./pictures/commands";
import { snapCommands } from "./snapping";
import { surveyCommands } from "./surveying";
import { startTour } from "./tour";

/** Why a command makes no sense now, for the finder; null where it does. */
const onPlan = (state: AppState) => (state.screen === "plan" ? null : "Open or begin a plan first.");
const withBuilding = (state: AppState) =>
  onPlan(state) ?? (shownProject(state).building ? null : "Draw the building first.");

export function appCommands(files: Files): readonly AppCommand[] {
  return [
    ...planCommands(files),
    ...editCommands,
    ...arrangeCommands,
    ...viewCommands,
    ...drawCommands,
    ...snapCommands,
    ...pictureCommands,
    ...stepCommands,
    ...surveyCommands,
    ...helpCommands(files),
  ];
}

function planCommands(files: Files): AppCommand[] {
  return [
    {
      id: "plan.new",
      name: "New plan…",
      place: "Plan",
      keys: ["Mod+N"],
      also: "empty start fresh",
      run: () => openDialog("new"),
    },
    {
      id: "plan.open",
      name: "Open…",
      place: "Plan",
      keys: ["Mod+O"],
      also: "file load project",
      run: () => void files.open(),
    },
    {
      id: "plan.save",
      name: "Save",
      place: "Plan",
      keys: ["Mod+S"],
      also: "file keep",
      whyNot: onPlan,
      run: () => void files.save(),
    },
    {
      id: "plan.saveAs",
      name: "Save as…",
      place: "Plan",
      keys: ["Shift+Mod+S"],
      also: "copy file",
      whyNot: onPlan,
      run: () => void files.saveAs(),
    },
    {
      id: "plan.exportSitePlan",
      name: "Export site plan…",
      place: "Plan",
      keys: ["Mod+P"],
      also: "pdf print sheet paper drawing",
      whyNot: withBuilding,
      run: () => openDialog("export"),
    },
    {
      id: "plan.importGround",
      name: "Import ground…",
      place: "Plan",
      also: "points csv table dxf landxml geojson grid geotiff terrain surface survey paste",
      whyNot: onPlan,
      run: () => beginImport(),
    },
    {
      id: "plan.exportGround",
      name: "Export the ground…",
      place: "Plan",
      also: "points csv dxf landxml geojson contours triangles surface",
      whyNot: (state) =>
        onPlan(state) ??
        (shownProject(state).survey.shots.length > 0 ? null : "Shoot or import some points first."),
      run: () => openDialog("export-ground"),
    },
    {
      id: "plan.picture",
      name: "Place a picture…",
      place: "Plan",
      also: "underlay image photo pdf plat aerial sketch scan background",
      whyNot: onPlan,
      run: () => void files.placePicture(),
    },
    {
      id: "plan.start",
      name: "Start screen",
      place: "Plan",
      also: "demos recent home",
      whyNot: onPlan,
      run: () => void files.toStart(),
    },
  ];
}

const editCommands: readonly AppCommand[] = [
  {
    id: "edit.undo",
    name: "Undo",
    place: "Edit",
    keys: ["Mod+Z"],
    also: "back",
    whyNot: (state) =>
      onPlan(state) ?? (undoLabel(state.history) === null ? "There is nothing to undo." : null),
    run: undoEdit,
  },
  {
    id: "edit.redo",
    name: "Redo",
    place: "Edit",
    keys: ["Shift+Mod+Z", "Mod+Y"],
    also: "again",
    whyNot: (state) =>
      onPlan(state) ?? (redoLabel(state.history) === null ? "There is nothing to do again." : null),
    run: redoEdit,
  },
  {
    id: "edit.history",
    name: "History…",
    place: "Edit",
    keys: ["Shift+Mod+H"],
    also: "steps undo list jump back",
    whyNot: onPlan,
    run: () => openDialog("history"),
  },
  {
    id: "edit.tables",
    name: "Tables…",
    place: "Edit",
    keys: ["Shift+Mod+E"],
    also: "spreadsheet features drives swales quantities bill set-out list paste copy",
    whyNot: onPlan,
    run: () => openDialog("tables"),
  },
  {
    id: "edit.floorUp",
    name: "Floor up one step",
    place: "Edit",
    keys: ["Alt+ArrowUp"],
    also: "raise height",
    whyNot: withBuilding,
    run: () => moveFloor(1),
  },
  {
    id: "edit.floorDown",
    name: "Floor down one step",
    place: "Edit",
    keys: ["Alt+ArrowDown"],
    also: "lower height",
    whyNot: withBuilding,
    run: () => moveFloor(-1),
  },
];

function moveFloor(direction: 1 | -1): void {
  const { step, words } = floorStep(shownProject(appStore.getState()).display);
  nudgeFloor(direction * step, `floor ${direction > 0 ? "up" : "down"} ${words}`);
}

const themes = ["system", "light", "dark"] as const;

function nextTheme(): void {
  const { theme } = appStore.getState();
  setTheme(themes[(themes.indexOf(theme) + 1) % themes.length] ?? "system");
}

export const layerWords: Readonly<Record<PlanLayer, string>> = {
  existing: "contours of the ground as it is",
  finished: "contours of the finished ground",
  shots: "shots and marks",
  breaklines: "breaklines",
  arrows: "downhill arrows",
  ponds: "low places that hold water",
  depth: "depth map of cut and fill",
  heights: "map of heights",
  slopes: "map of steepness",
  building: "building",
  drives: "drives",
  swales: "swales",
  lot: "lot lines",
  features: "features of the lot",
  underlay: "pictures under the plan",
  dimensions: "dimensions",
  notes: "notes",
  sections: "section lines",
  grid: "grid",
};

/** One key turns the plan by this, radians. */
const turnStep = Math.PI / 12;

function turnBy(direction: 1 | -1): void {
  setPlanTurn(shownProject(appStore.getState()).drawing.turn + direction * turnStep);
}

const viewCommands: readonly AppCommand[] = [
  {
    id: "view.fit",
    name: "Fit everything",
    place: "View",
    keys: ["F"],
    also: "zoom all show",
    whyNot: onPlan,
    run: fitPlan,
  },
  {
    id: "view.fitBuilding",
    name: "Fit the building",
    place: "View",
    keys: ["Shift+F"],
    also: "zoom",
    whyNot: withBuilding,
    run: fitBuilding,
  },
  {
    id: "view.fitSelection",
    name: "Fit what is selected",
    place: "View",
    keys: ["Shift+S"],
    also: "zoom selection",
    whyNot: (state) => onPlan(state) ?? (state.selection.length > 0 ? null : "Select something first."),
    run: fitSelection,
  },
  {
    id: "view.northUp",
    name: "Turn the plan: north up",
    place: "View",
    also: "rotate view print",
    whyNot: onPlan,
    run: () => setPlanTurn(northUp(shownProject(appStore.getState()))),
  },
  {
    id: "view.buildingLevel",
    name: "Turn the plan: longest wall level",
    place: "View",
    also: "rotate view print building horizontal",
    whyNot: withBuilding,
    run: () => setPlanTurn(buildingLevel(shownProject(appStore.getState())) ?? 0),
  },
  {
    id: "view.asDrawn",
    name: "Turn the plan: as it was drawn",
    place: "View",
    also: "rotate view print straight reset",
    whyNot: onPlan,
    run: () => setPlanTurn(0),
  },
  {
    id: "view.turnLeft",
    name: "Turn the plan to the left",
    place: "View",
    keys: ["<"],
    also: "rotate counter-clockwise",
    whyNot: onPlan,
    run: () => turnBy(1),
  },
  {
    id: "view.turnRight",
    name: "Turn the plan to the right",
    place: "View",
    keys: [">"],
    also: "rotate clockwise",
    whyNot: onPlan,
    run: () => turnBy(-1),
  },
  {
    id: "view.zoomIn",
    name: "Zoom in",
    place: "View",
    keys: ["+", "="],
    whyNot: onPlan,
    run: () => zoomByStep(zoomStep),
  },
  {
    id: "view.zoomOut",
    name: "Zoom out",
    place: "View",
    keys: ["-"],
    whyNot: onPlan,
    run: () => zoomByStep(1 / zoomStep),
  },
  {
    id: "view.theme",
    name: "Change the theme",
    place: "View",
    also: "dark light system colours",
    run: nextTheme,
  },
  {
    id: "view.preferences",
    name: "Preferences…",
    place: "View",
    keys: ["Mod+,"],
    also: "settings options text size larger theme motion accessibility start screen arrow keys",
    run: () => openDialog("preferences"),
  },
  {
    id: "view.settings",
    name: "Units and notation…",
    place: "View",
    also: "settings preferences feet metres rounding",
    whyNot: onPlan,
    run: () => openDialog("settings"),
  },
  {
    id: "view.layersFollow",
    name: "Let the layers follow the step, or not",
    place: "View",
    also: "presets show hide",
    whyNot: onPlan,
    run: () => followStep(!appStore.getState().layersFollow),
  },
  ...planLayers.map(
    (layer): AppCommand => ({
      id: `view.layer.${layer}`,
      name: `Show or hide the ${layerWords[layer]}`,
      place: "View",
      also: "layer",
      whyNot: onPlan,
      run: () => toggleLayer(layer),
    }),
  ),
];

const drawCommands: readonly AppCommand[] = planTools.map((tool) => ({
  id: `draw.${tool.name}`,
  name: tool.name === "select" ? "Select" : `${tool.label}: ${tool.what}`,
  place: "Draw",
  keys: [tool.key],
  also: "tool",
  whyNot: onPlan,
  run: () => setTool(tool.name),
}));

const stepCommands: readonly AppCommand[] = [
  ...stepNames.map(
    (name): AppCommand => ({
      id: `step.${name}`,
      name: `Go to ${stepTitles[name].toLowerCase()}`,
      place: "Steps",
      also: "step panel",
      whyNot: onPlan,
      run: () => setStep(name),
    }),
  ),
  { id: "step.next", name: "Next step", place: "Steps", keys: ["]"], whyNot: onPlan, run: () => stepBy(1) },
  {
    id: "step.previous",
    name: "Previous step",
    place: "Steps",
    keys: ["["],
    whyNot: onPlan,
    run: () => stepBy(-1),
  },
];

function stepBy(by: number): void {
  const next = stepNames[stepNames.indexOf(appStore.getState().step) + by];
  if (next) setStep(next);
}

const helpCommands = (files: Files): readonly AppCommand[] => [
  {
    id: "help.guide",
    name: "Guide to this step",
    place: "Help",
    keys: ["F1"],
    also: "help how manual drawing",
    whyNot: onPlan,
    run: () => openDialog("guide"),
  },
  {
    id: "help.glossary",
    name: "Words of the trade",
    place: "Help",
    also: "glossary dictionary terms meaning",
    run: () => openGlossary(),
  },
  {
    id: "help.find",
    name: "Find a command…",
    place: "Help",
    keys: ["Mod+K"],
    also: "search palette",
    run: () => openDialog("commands"),
  },
  {
    id: "help.shortcuts",
    name: "Keyboard shortcuts",
    place: "Help",
    keys: ["?"],
    also: "keys help",
    run: () => openDialog("shortcuts"),
  },
  {
    id: "help.tour",
    name: "Tour on a demo",
    place: "Help",
    also: "introduction first steps show around",
    run: () => void startTour(files),
  },
];
