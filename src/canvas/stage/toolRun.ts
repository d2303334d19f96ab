/** The tool that is at work, as the window's parts read it: canvas, hint, typed values, cursor. */
import { createStore } from "zustand/vanilla";
import { appStore } from "../../store/store";
import { Machine } from "../tools/machine";
import { toolStarts } from "../tools/starts";
import type { LengthQuestion, ToolState } from "../tools/tool";
import { emptyEntry, type TypedEntry } from "../typed/typedEntry";
import { windowContext } from "./toolContext";

interface ToolRun {
  readonly state: ToolState;
  readonly entry: TypedEntry;
  /** A length that is asked for beside a place of the plan. */
  readonly question: LengthQuestion | null;
}

const context = windowContext((question) => toolRun.setState({ question }));

function start(): Machine {
  const machine = new Machine(toolStarts[appStore.getState().tool], context, () => {
    // A tool that was just left may still finish its last act.
    if (machine === running) show();
  });
  return machine;
}

let running: Machine = start();

export const toolRun = createStore<ToolRun>(() => ({
  state: running.state(),
  entry: emptyEntry([]),
  question: null,
}));

function show(): void {
  toolRun.setState({ state: running.state(), entry: running.entry() });
}

export function machine(): Machine {
  return running;
}

export function dropQuestion(): void {
  toolRun.setState({ question: null });
}

/** Begins the present tool anew: what was half drawn is given up. */
export function restartTool(): void {
  running.lost();
  beginTool();
}

function beginTool(): void {
  running = start();
  toolRun.setState({ state: running.state(), entry: running.entry(), question: null });
}

appStore.subscribe((state, before) => {
  // Another tool, or another project in the window: what was begun is over.
  if (state.tool === before.tool && state.file === before.file) return;
  if (state.tool !== before.tool) running.lost();
  beginTool();
});
