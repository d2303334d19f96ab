/** What tools see of the window: the store behind the small interface that they are written against. */
import { type Project, present } from "../../document";
import type { Results } from "../../solve/results";
import {
  cancelPreview,
  dropPreview,
  nudge,
  preview,
  run,
  runTogether,
  select,
  setTool,
  tell,
} from "../../store/actions";
import { snappingStore } from "../../store/snapping";
import { appStore, solver } from "../../store/store";
import type { ToolContext } from "../tools/tool";
import { gridStep } from "../view/grid";
import { panPlan, planView, showDrawn } from "../view/planView";

function snapping(): ReturnType<ToolContext["snapping"]> {
  const choice = snappingStore.getState();
  const { length } = present(appStore.getState().history).display;
  const grid = choice.on.has("grid") ? gridStep(length, planView.getState().view.scale).step : null;
  return { ...choice, grid };
}

/** With more shots the limits that are found by trying floors take longer than a hand waits. */
const mostShots = 2000;

function bandOf(project: Project): Results["band"] {
  const detail = project.survey.shots.length > mostShots ? "drag" : "band";
  return solver.solve(project, { detail }).band;
}

export function windowContext(asking: Pick<ToolContext, "ask" | "askWords">): ToolContext {
  return {
    project: () => present(appStore.getState().history),
    results: () => appStore.getState().results,
    bandOf,
    view: () => planView.getState().view,
    selection: () => appStore.getState().selection,
    select,
    nudgeStep: () => appStore.getState().nudgeStep,
    snapping,
    run,
    nudge,
    runTogether,
    preview,
    drop: dropPreview,
    cancelPreview,
    setTool,
    pan: panPlan,
    show: showDrawn,
    ...asking,
    say: (text) => tell({ tone: "caution", text }),
  };
}
