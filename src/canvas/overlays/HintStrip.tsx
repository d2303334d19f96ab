/** What the next click does, in one line. */
import { useStore } from "zustand";
import { toolRun } from "../stage/toolRun";
import { PlanNote } from "./EmptyPlan";

export function HintStrip() {
  const hint = useStore(toolRun, ({ state }) => state.hint);
  return (
    <div className="hint-strip">
      <p className="plan-hint" role="status">
        {hint}
      </p>
      <PlanNote />
    </div>
  );
}
