/** What came of a step of a tool: whether it was refused in words, and whether it changed the plan. */
import type { Edit } from "../../document";
import type { ToolContext } from "./tool";

export interface Outcome {
  said: boolean;
  done: boolean;
}

/** The same context, and an account of what tools do with it; set back before each step. */
export function watched(context: ToolContext): { readonly context: ToolContext; readonly outcome: Outcome } {
  const outcome: Outcome = { said: false, done: false };
  const seen = (edit: Edit): Edit => {
    if (edit.ok) outcome.done = true;
    else outcome.said = true;
    return edit;
  };
  return {
    outcome,
    context: {
      ...context,
      run: (command, args) => seen(context.run(command, args)),
      runTogether: (label, edits) => seen(context.runTogether(label, edits)),
      drop: (command, args) => seen(context.drop(command, args)),
      say: (text) => {
        outcome.said = true;
        context.say(text);
      },
    },
  };
}
