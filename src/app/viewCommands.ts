/** The commands of the view: fitting, turning, zooming, layers, looks. */
import {
  fitBuilding,
  fitPlan,
  fitSelection,
  setPlanTurn,
  zoomByStep,
  zoomStep,
} from "../canvas/view/planView";
import { buildingLevel, northUp } from "../canvas/view/turnChoices";
import type { AppCommand } from "../panels/command";
import { openDialog, setPreferences, setTheme } from "../store/actions";
import { followStep, toggleLayer } from "../store/layerActions";
import { type PlanLayer, planLayers, textSizes } from "../store/state";
import { appStore, shownProject } from "../store/store";
import { onPlan, withBuilding } from "./whyNot";

const themes = ["system", "light", "dark"] as const;

function nextTheme(): void {
  const { theme } = appStore.getState();
  setTheme(themes[(themes.indexOf(theme) + 1) % themes.length] ?? "system");
}

const layerWords: Readonly<Record<PlanLayer, string>> = {
  existing: "contours of the ground as it is",
  finished: "contours of the finished ground",
  shots: "shots and marks",
  breaklines: "breaklines",
  arrows: "downhill arrows",
  ponds: "low places that hold water",
  runs: "runs of water",
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

/** Other words for some of them. */
const layerAlso: Readonly<Partial<Record<PlanLayer, string>>> = {
  existing: "elevation lines natural ground topography",
  finished: "elevation lines grading graded",
  shots: "points spot heights elevations survey laser",
  breaklines: "ditch ridge bank edge",
  arrows: "slope flow drainage direction water runs",
  ponds: "puddle hollow standing water drainage",
  runs: "flow drainage stream rain",
  depth: "earthwork heat colours dig",
  heights: "elevation colours relief",
  slopes: "slope slopes grade gradient steep per cent",
  lot: "property boundary",
  features: "trees stumps wells fence septic",
  underlay: "image photo plat background",
  dimensions: "sizes lengths measurements",
  sections: "profile cut",
};

/** One key turns the plan by this, radians. */
const turnStep = Math.PI / 12;

function turnBy(direction: 1 | -1): void {
  setPlanTurn(shownProject(appStore.getState()).drawing.turn + direction * turnStep);
}

export const viewCommands: readonly AppCommand[] = [
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
    also: "dark light mode system colours night",
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
  ...textSizes.map(
    (textSize): AppCommand => ({
      id: `view.text.${Math.round(textSize * 100)}`,
      name: `Text at ${Math.round(textSize * 100)} %`,
      place: "View",
      also: "size words font letters bigger larger smaller zoom read accessibility",
      run: () => setPreferences({ textSize }),
    }),
  ),
  {
    id: "view.settings",
    name: "Units and notation…",
    place: "View",
    also: "settings preferences feet inches metres meters metric imperial rounding fractions decimals slope per cent",
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
      also: `layer ${layerAlso[layer] ?? ""}`,
      whyNot: onPlan,
      run: () => toggleLayer(layer),
    }),
  ),
];
