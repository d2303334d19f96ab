/** The tool that is at work, as the window's parts read it: canvas, hint, typed values, cursor. */
import { createStore } from "zustand/vanilla";
import type { Point } from "../../document";
import { endCautions, setTool } from "../../store/actions";
import { guardDrawing, keepsDrawing } from "../../store/pickTool";
import type { ToolName } from "../../store/state";
import { appStore } from "../../store/store";
import type { Lock } from "../snap/lock";
import { Machine } from "../tools/machine";
import { toolStarts } from "../tools/starts";
import type { LengthQuestion, PlanPointer, ToolState, WordsQuestion } from "../tools/tool";
import { emptyEntry, type TypedEntry } from "../typed/typedEntry";
import { planView } from "../view/planView";
import { toScreen } from "../view/view";
import { windowContext } from "./toolContext";

interface ToolRun {
  readonly state: ToolState;
  readonly entry: TypedEntry;
  /** What is being composed by an input method and isn't typed yet. */
  readonly composing: string;
  /** A direction that is held by a key. */
  readonly lock: Lock | null;
  /** A length that is asked for beside a place of the plan. */
  readonly question: LengthQuestion | null;
  /** Words that are asked for at a place of the plan. */
  readonly words: WordsQuestion | null;
}

const context = windowContext({
  ask: (question) => toolRun.setState({ question }),
  askWords: (words) => toolRun.setState({ words }),
});

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
  composing: "",
  lock: null,
  question: null,
  words: null,
}));

/** What the next act is: while a length is asked for, to type it; else what the tool says. */
export function hintOf({
  state,
  question,
}: Pick<ToolRun, "question"> & { state: Pick<ToolState, "hint"> }): string {
  if (question === null) return state.hint;
  return `Type the length asked for (${question.label}), then Enter; Esc leaves it as it is`;
}

function show(): void {
  toolRun.setState({ state: running.state(), entry: running.entry(), lock: running.lock() });
}

export function machine(): Machine {
  return running;
}

export function dropQuestion(): void {
  toolRun.setState({ question: null });
}

export function dropWords(): void {
  toolRun.setState({ words: null });
  running.lost();
}

/** Would another tool take away what is being drawn? */
export function isHalfDrawn(): boolean {
  return appStore.getState().tool !== "select" && running.halfDrawn();
}

guardDrawing({ isHalfDrawn });

/** Picks a tool that a person asked for, the one at work anew; false where what is half drawn was kept instead. */
export function pickAnew(tool: ToolName): boolean {
  if (keepsDrawing()) return false;
  endCautions();
  if (tool === appStore.getState().tool) restartTool();
  else setTool(tool);
  return true;
}

/** Begins the present tool anew: what was half drawn is given up. */
function restartTool(): void {
  running.lost();
  beginTool();
}

/** Picks a tool and the kind of thing that it draws; false where what is half drawn was kept instead. */
export function pickKind(tool: ToolName, kind: string): boolean {
  if (!pickAnew(tool)) return false;
  running.choose(kind);
  return true;
}

/** A pointer at a place of the plan, for what is done there by name. */
export function pointerAt(at: Point): PlanPointer {
  const screen = toScreen(planView.getState().view, at);
  return { at, screen, free: false, adds: false, copies: false, touch: false };
}

/** Picks a tool, and the kind where one is named, and clicks with it. */
export function beginAt(tool: ToolName, at: Point, kind?: string): void {
  if (!(kind === undefined ? pickAnew(tool) : pickKind(tool, kind))) return;
  const pointer = pointerAt(at);
  running.press(pointer);
  running.release(pointer);
}

function beginTool(): void {
  running = start();
  toolRun.setState({
    state: running.state(),
    entry: running.entry(),
    composing: "",
    lock: null,
    question: null,
    words: null,
  });
}

appStore.subscribe((state, before) => {
  // Another tool, or another project in the window: what was begun is over.
  if (state.tool === before.tool && state.file === before.file) {
    const changed = state.history !== before.history || state.selection !== before.selection;
    // Only pointing follows at once; what draws goes on from the next move of the hand.
    if (changed && state.tool === "select") running.refresh(state.pointer === null);
    return;
  }
  if (state.tool !== before.tool) running.lost();
  beginTool();
});
