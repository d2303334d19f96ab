/** What tools see of the window: the store behind the small interface that they are written against. */
import { type EditCommand, present } from "../../document";
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
import type { LengthQuestion, ToolContext } from "../tools/tool";
import { panPlan, planView } from "../view/planView";

export function windowContext(ask: (question: LengthQuestion) => void): ToolContext {
  return {
    project: () => present(appStore.getState().history),
    results: () => appStore.getState().results,
    view: () => planView.getState().view,
    selection: () => appStore.getState().selection,
    select,
    run,
    runTogether,
    preview,
    drop<Args>(command: EditCommand<Args>, args: Args) {
      const edit = command.run(present(appStore.getState().history), args);
      if (edit.ok) return dropPreview(command, args);
      // Refused: what was shown goes back to what is.
      cancelPreview();
      tell({ tone: "caution", text: edit.why });
      return edit;
    },
    cancelPreview,
    setTool,
    pan: panPlan,
    ask,
    say: (text) => tell({ tone: "caution", text }),
  };
}
