/** The store and its first state. React reads it through `useApp`; actions are plain functions in `actions.ts`. */
import { createStore } from "zustand/vanilla";
import type { Project } from "../document";
import { newProject, present, startHistory } from "../document";
import { createSolver } from "../solve/pipeline";
import { usualLayers } from "./layers";
import type { AppState } from "./state";

/** One solver for the window: it remembers its last answers, so a small edit costs a small solve. */
export const solver = createSolver();

function firstState(): AppState {
  const project = newProject();
  return {
    screen: "start",
    history: startHistory(project),
    saved: project,
    file: { name: null, token: null },
    preview: null,
    floorDrag: null,
    nudging: false,
    results: solver.solve(project),
    selection: [],
    tool: "select",
    step: "shots",
    ...usualLayers,
    theme: "system",
    preferences: { textSize: 1, motion: "system", opens: "start", ruleSets: [] },
    messages: [],
    dialog: null,
    term: null,
    tour: null,
    clip: null,
    nudgeStep: null,
    planMenu: null,
    goTo: null,
    pointer: null,
  };
}

export const appStore = createStore<AppState>(firstState);

/** The project to draw: the one under the hand while something is dragged, else the present one. */
export function shownProject(state: AppState): Project {
  return state.preview ?? present(state.history);
}

/** Is something moved right now, by a pointer or by keys? What is slow waits until it rests. */
export function isMoving({ preview, floorDrag, nudging }: AppState): boolean {
  return preview !== null || floorDrag !== null || nudging;
}

/** The floor to draw, m: the one under the hand while it is dragged. */
export function shownFloor(state: AppState): number | null {
  return state.floorDrag ?? shownProject(state).building?.floor ?? null;
}

export function isDirty(state: AppState): boolean {
  return present(state.history) !== state.saved;
}
