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
import { appStore } from "../../store/store";
import type { ToolContext } from "../tools/tool";
import { panPlan, planView } from "../view/planView";

export function windowContext(asking: Pick<ToolContext, "ask" | "askWords">): ToolContext {
  return {
    project: () => present(appStore.getState().history),
    results: () => appStore.getState().results,
    view: () => planView.getState().view,
    selection: () => appStore.getState().selection,
    select,
    nudgeStep: () => appStore.getState().nudgeStep,
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
