/** What the next click does, in one line. */
import { useStore } from "zustand";
import { useApp } from "../../store/useApp";
import { hintId } from "../stage/hintId";
import { toolRun } from "../stage/toolRun";
import { PlanNote } from "./EmptyPlan";

export function HintStrip() {
  const hint = useStore(toolRun, ({ state }) => state.hint);
  // While things are only pointed at, the hint changes too often to be read out.
  const drawing = useApp((state) => state.tool !== "select");
  return (
    <div className="hint-strip">
      <p className="plan-hint" id={hintId} role={drawing ? "status" : undefined}>
        {hint}
      </p>
      <PlanNote />
    </div>
  );
}
