/** Undo as a value: whole projects that share what didn't change, each with the name of the edit that made it. */
import type { Project } from "./schema";

export interface Step {
  readonly project: Project;
  /** What the person did: "floor up 1″". The first step has none. */
  readonly label: string;
  /** Edits in a row with the same key become one step (typing, nudging). */
  readonly mergeKey: string | null;
}

export interface History {
  readonly steps: readonly Step[];
  /** Index of the present step. */
  readonly now: number;
}

/** Steps kept; shared structure makes one cost little more than the part that changed. */
export const longestHistory = 200;

export function startHistory(project: Project): History {
  return { steps: [{ project, label: "", mergeKey: null }], now: 0 };
}

export function present(history: History): Project {
  return stepAt(history, history.now).project;
}

/** Adds an edit; what was undone before it is dropped, and so is the oldest step beyond the limit. */
export function record(
  history: History,
  project: Project,
  label: string,
  mergeKey: string | null = null,
): History {
  if (project === present(history)) return history;
  const last = stepAt(history, history.now);
  const merges = mergeKey !== null && last.mergeKey === mergeKey && history.now === history.steps.length - 1;
  const kept = history.steps.slice(0, merges ? history.now : history.now + 1);
  const steps = [...kept, { project, label, mergeKey }].slice(-longestHistory);
  return { steps, now: steps.length - 1 };
}

/** Ends a run of merging edits: what comes next is a step of its own, so that undo can stop here (after a save). */
export function seal(history: History): History {
  const last = stepAt(history, history.now);
  if (last.mergeKey === null) return history;
  const steps = history.steps.slice();
  steps[history.now] = { ...last, mergeKey: null };
  return { ...history, steps };
}

export function undo(history: History): History {
  return jump(history, history.now - 1);
}

export function redo(history: History): History {
  return jump(history, history.now + 1);
}

/** Goes to step `index`; outside the list nothing changes. */
export function jump(history: History, index: number): History {
  return index >= 0 && index < history.steps.length && index !== history.now
    ? { ...history, now: index }
    : history;
}

/** Name of the edit that undo would take back, or null. */
export function undoLabel(history: History): string | null {
  return history.now > 0 ? stepAt(history, history.now).label : null;
}

/** Name of the edit that redo would do again, or null. */
export function redoLabel(history: History): string | null {
  return history.now < history.steps.length - 1 ? stepAt(history, history.now + 1).label : null;
}

function stepAt(history: History, index: number): Step {
  const step = history.steps[index];
  if (!step) throw new Error(`history has ${history.steps.length} steps, none at ${index}`);
  return step;
}
