/** What the next click does, in one line. */
import { useStore } from "zustand";
import { isMoving } from "../../store/store";
import { useApp } from "../../store/useApp";
import { hintId } from "../stage/hintId";
import { hintOf, toolRun } from "../stage/toolRun";
import { PlanNote } from "./EmptyPlan";
import "./working.css";

/** The direction that is held, or how to hold one. */
function Locks() {
  const lock = useStore(toolRun, (run) => run.lock);
  const can = useStore(toolRun, ({ state }) => state.locksFrom !== undefined);
  if (lock)
    return (
      <p className="plan-locks" role="status">
        <b>{lock.word}</b>: {keyWord(lock.key)} again or Esc lets go
      </p>
    );
  return can ? <p className="plan-locks locks-how">Arrows, A, P, T, K lock the direction</p> : null;
}

function keyWord(key: string): string {
  return key.startsWith("Arrow") ? "the arrow" : key.toUpperCase();
}

/**
 * What is shown of water, far slopes and limits is from before: seen only where the new takes a moment, on the line
 * between the plan and what is said of it.
 */
function Working() {
  const isWorking = useApp((state) => state.results.lagging && !isMoving(state));
  return isWorking ? (
    <div className="plan-working" role="progressbar" aria-label="Working out water, volumes and limits" />
  ) : null;
}

export function HintStrip() {
  const hint = useStore(toolRun, hintOf);
  const typed = useStore(toolRun, ({ state }) => state.choices?.typed);
  // While things are only pointed at, the hint changes too often to be read out.
  const drawing = useApp((state) => state.tool !== "select");
  return (
    <>
      <Working />
      <div className="hint-strip">
        <p className="plan-hint" id={hintId} title={hint} role={drawing ? "status" : undefined}>
          {hint}
        </p>
        {typed === undefined ? null : (
          <p className="hint-typed soft" aria-hidden="true" title={typed}>
            {typed}
          </p>
        )}
        <Locks />
        <PlanNote />
      </div>
    </>
  );
}
