/** Every act of the window, once: the menu, the keys, the finder, the header and the native menu read this list. */

import { planTools } from "../canvas/tools/toolList";
import { redoLabel, undoLabel } from "../document";
import type { AppCommand } from "../panels/command";
import { floorStep } from "../panels/floorStep";
import { tableTitles } from "../panels/table/tables";
import { nudgeFloor, openDialog, openGlossary, redoEdit, undoEdit } from "../store/actions";
import { pickTool } from "../store/pickTool";
import { appStore, shownProject } from "../store/store";
import { arrangeCommands } from "./arrange";
import { exportBill, exportFoundation } from "./exportPlan";
import type { Files } from "./files";
import { beginImport } from "./import/importing";
import { kindCommands } from "./kinds";
import { pictureCommands } from "./pictures/commands";
import { regionCommands } from "./regions";
import { snapCommands } from "./snapping";
import { stepCommands } from "./stepCommands";
import { surveyCommands } from "./surveying";
import { startTour } from "./tour";
import { viewCommands } from "./viewCommands";
import { onPlan, withBuilding } from "./whyNot";

export function appCommands(files: Files): readonly AppCommand[] {
  return [
    ...planCommands(files),
    ...editCommands,
    ...arrangeCommands,
    ...viewCommands,
    ...regionCommands,
    ...drawCommands,
    ...kindCommands,
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
      id: "plan.exportFoundation",
      name: "Export foundation sheet",
      place: "Plan",
      also: "pdf print paper drawing elevations sections concrete footing",
      whyNot: withBuilding,
      run: () => void exportFoundation(files),
    },
    {
      id: "plan.exportBill",
      name: "Export the bill",
      place: "Plan",
      also: "csv spreadsheet quantities prices cost order list volumes materials",
      whyNot: withBuilding,
      run: () => void exportBill(files),
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
    also: `spreadsheet ${Object.values(tableTitles).join(" ")} bill stakes list paste copy`,
    whyNot: onPlan,
    run: () => openDialog("tables"),
  },
  {
    id: "edit.options",
    name: "Options side by side…",
    place: "Edit",
    keys: ["Shift+Mod+B"],
    also: "compare alternatives keep variants snapshot choose",
    whyNot: withBuilding,
    run: () => openDialog("options"),
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

const drawCommands: readonly AppCommand[] = planTools.map((tool) => ({
  id: `draw.${tool.name}`,
  name: tool.name === "select" ? "Select" : `${tool.label}: ${tool.what}`,
  place: "Draw",
  keys: [tool.key],
  also: `tool ${tool.also ?? ""}`,
  whyNot: onPlan,
  run: () => void pickTool(tool.name),
}));

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
    id: "help.answers",
    name: "What people ask, answered",
    place: "Help",
    also: "questions answers how high how deep how much fill steep slope grade frost steps cost digger permit balance",
    whyNot: onPlan,
    run: () => openDialog("answers"),
  },
  {
    id: "help.glossary",
    name: "Words of the trade",
    place: "Help",
    also: "glossary dictionary terms meaning definition",
    run: () => openGlossary(),
  },
  {
    id: "help.signs",
    name: "What the colours and signs mean",
    place: "Help",
    also: "legend key symbols hatch lines colors brown green blue red grey",
    run: () => openDialog("signs"),
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
    also: "introduction first steps show around tutorial learn beginner demo example",
    run: () => void startTour(files),
  },
];
