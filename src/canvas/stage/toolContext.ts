/** What tools see of the window: the store behind the small interface that they are written against. */
import { present } from "../../document";
import {
  cancelPreview,
  dropPreview,
  preview,
  run,
  runTogether,
  select,
  setTool,
  tell,
} from "../../store/actions";
import { snappingStore } from "../../store/snapping";
import { appStore } from "../../store/store";
import { handStep } from "../snap/step";
import type { ToolContext } from "../tools/tool";
import { panPlan, planView } from "../view/planView";

/** Lines of the grid stand at least so far apart, px. */
const gridPixels = 9;

function snapping(): ReturnType<ToolContext["snapping"]> {
  const choice = snappingStore.getState();
  const { length } = present(appStore.getState().history).display;
  const grid = choice.on.has("grid") ? handStep(length, planView.getState().view.scale, gridPixels) : null;
  return { ...choice, grid };
}

export function windowContext(asking: Pick<ToolContext, "ask" | "askWords">): ToolContext {
  return {
    project: () => present(appStore.getState().history),
    results: () => appStore.getState().results,
    view: () => planView.getState().view,
    selection: () => appStore.getState().selection,
    select,
    nudgeStep: () => appStore.getState().nudgeStep,
    snapping,
    run,
    runTogether,
    preview,
    drop: dropPreview,
    cancelPreview,
    setTool,
    pan: panPlan,
    ...asking,
    say: (text) => tell({ tone: "caution", text }),
  };
}
