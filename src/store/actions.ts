/** What a person's acts do to the window. Edits go through commands; nothing else changes the document. */
import {
  buildingEdits,
  drawingEdits,
  type Edit,
  type EditCommand,
  type History,
  hasThing,
  hiddenThings,
  jump,
  lockedRefusal,
  type Project,
  present,
  record,
  redo,
  seal,
  startHistory,
  undo,
} from "../document";
import { type Told, withMessage, withoutCautions } from "./messages";
import { prepareSurface, solveFullySoon, solveNow, solveWithNextFrame } from "./solving";
import type { AppState, OpenFile, Preferences, Selected, StepName, ThemeChoice, ToolName } from "./state";
import { arrangeTools } from "./state";
import { appStore, solver } from "./store";

const { getState: get, setState: set } = appStore;

function showHistory(history: History): void {
  if (history === get().history) return;
  const project = present(history);
  const { selection } = get();
  // What an edit (or its undoing) took away isn't selected any more.
  const left = selection.filter((thing) => hasThing(project, thing));
  const still = left.length === selection.length ? selection : left;
  set({
    history,
    preview: null,
    floorDrag: null,
    nudging: false,
    messages: withoutCautions(get().messages),
    selection: still,
    results: solveNow(project),
  });
}

// ---- edits --------------------------------------------------------------------------------------------------

/** Carries out an edit as one undo step; a refusal becomes a message. */
export function run<Args>(command: EditCommand<Args>, args: Args): Edit {
  const edit = tryRun(command, args);
  if (!edit.ok) tell({ tone: "caution", text: edit.why });
  return edit;
}

/** As `run`, but a refusal is only returned: for a field that shows it beside what was typed. */
export function tryRun<Args>(command: EditCommand<Args>, args: Args): Edit {
  const { history } = get();
  const edit = unlessLocked(present(history), command.run(present(history), args));
  if (edit.ok) showHistory(record(history, edit.project, edit.label, edit.mergeKey ?? null));
  return edit;
}

/** Several edits as one undo step, all or none. */
export function runTogether(label: string, edits: readonly ((project: Project) => Edit)[]): Edit {
  const { history } = get();
  let project = present(history);
  for (const step of edits) {
    const edit = step(project);
    if (!edit.ok) {
      tell({ tone: "caution", text: edit.why });
      return edit;
    }
    project = edit.project;
  }
  const whole = unlessLocked(present(history), { ok: true, project, label });
  if (whole.ok) showHistory(record(history, project, label));
  else tell({ tone: "caution", text: whole.why });
  return whole;
}

/** An edit, or its refusal where it moves or takes away what is locked. */
function unlessLocked(before: Project, edit: Edit): Edit {
  const why = edit.ok ? lockedRefusal(before, edit.project) : null;
  return why === null ? edit : { ok: false, why };
}

/**
 * An edit whose results take long: worked in steps with the share that is done, then one undo step. The window draws between
 * two steps; `isStopped` is asked there, and a stopped edit leaves the plan as it was. Answers why nothing was done, or null.
 */
export async function runInSteps(
  label: string,
  edits: readonly ((project: Project) => Edit)[],
  progress: { readonly tell: (share: number) => void; readonly isStopped: () => boolean },
): Promise<string | null> {
  const before = get().history;
  let project = present(before);
  progress.tell(0);
  for (const step of edits) {
    await nextDrawing();
    if (progress.isStopped()) return stoppedWords;
    const edit = step(project);
    if (!edit.ok) return edit.why;
    project = edit.project;
  }
  await nextDrawing();
  await prepareSurface(project);
  if (progress.isStopped()) return stoppedWords;
  const steps = solver.solveInSteps(project);
  for (let step = steps.next(); !step.done; step = steps.next()) {
    progress.tell(step.value);
    await nextDrawing();
    if (progress.isStopped()) return stoppedWords;
  }
  if (get().history !== before) return "The plan was changed meanwhile. Join the file once more.";
  showHistory(record(before, project, label));
  return null;
}

const stoppedWords = "It was stopped. Nothing was changed.";

/** After the window has drawn and taken what was pressed. */
function nextDrawing(): Promise<void> {
  return new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
}

/** Shows what an edit would do while a thing is under the hand. The project moves at once, the results follow. */
export function preview<Args>(command: EditCommand<Args>, args: Args): Edit {
  const edit = command.run(present(get().history), args);
  if (!edit.ok) return edit;
  set({ preview: edit.project });
  solveWithNextFrame();
  return edit;
}

/** Lets go: the previewed edit becomes one undo step; one that is refused or changes nothing leaves no trace. */
export function dropPreview<Args>(command: EditCommand<Args>, args: Args): Edit {
  const before = get().history;
  const edit = run(command, args);
  if (get().history === before) cancelPreview();
  return edit;
}

export function cancelPreview(): void {
  if (get().preview === null) return;
  set({ preview: null, nudging: false, results: solveNow(present(get().history)) });
}

/** An edit by a key that may be held: at once one undo step with those before it, and as light as a drag while keys come. */
export function nudge<Args>(command: EditCommand<Args>, args: Args): Edit {
  const { history } = get();
  const edit = unlessLocked(present(history), command.run(present(history), args));
  if (!edit.ok) {
    tell({ tone: "caution", text: edit.why });
    return edit;
  }
  const next = record(history, edit.project, edit.label, edit.mergeKey ?? null);
  if (next === history) return edit;
  const messages = withoutCautions(get().messages);
  set({ history: next, preview: null, floorDrag: null, nudging: true, messages });
  solveWithNextFrame();
  solveFullySoon("keys");
  return edit;
}

export function undoEdit(): void {
  showHistory(undo(get().history));
}

export function redoEdit(): void {
  showHistory(redo(get().history));
}

export function jumpToStep(index: number): void {
  showHistory(jump(get().history, index));
}

// ---- the floor ----------------------------------------------------------------------------------------------

/** The floor under the hand: results of what depends on it at once, the rest lags until it is let go. */
export function dragFloor(floor: number): void {
  const state = get();
  const project = present(state.history);
  if (!project.building || !Number.isFinite(floor)) return;
  set({ floorDrag: floor, results: solver.solve(project, { floor, detail: "drag" }) });
}

/** Lets the floor go: one undo step, named by `label`. */
export function dropFloor(label?: string): void {
  const { floorDrag, history } = get();
  if (floorDrag === null) return;
  const edit = buildingEdits.setFloor.run(present(history), {
    floor: floorDrag,
    ...(label === undefined ? {} : { label }),
  });
  const next = edit.ok ? record(history, edit.project, edit.label) : history;
  set({ floorDrag: null, history: next, messages: withoutCautions(get().messages) });
  solveFullySoon("hand");
}

export function cancelFloorDrag(): void {
  if (get().floorDrag === null) return;
  set({ floorDrag: null, nudging: false, results: solveNow(present(get().history)) });
}

/** A step of the floor by key: steps in a row are one undo step. */
export function nudgeFloor(by: number, label: string): void {
  const { history } = get();
  const project = present(history);
  if (!project.building) return;
  const floor = project.building.floor + by;
  const edit = buildingEdits.setFloor.run(project, { floor, label, mergeKey: "nudge floor" });
  if (!edit.ok) return;
  const next = record(history, edit.project, edit.label, edit.mergeKey ?? null);
  const messages = withoutCautions(get().messages);
  set({ history: next, floorDrag: null, messages, results: solver.solve(present(next), { detail: "drag" }) });
  solveFullySoon("keys");
}

// ---- files --------------------------------------------------------------------------------------------------

/** Puts a project into the window; its history starts here. */
export function showProject(project: Project, file: OpenFile): void {
  solver.forgetSettled();
  set({
    screen: "plan",
    history: startHistory(project),
    saved: project,
    file,
    preview: null,
    floorDrag: null,
    nudging: false,
    results: solveNow(project),
    selection: [],
    tool: "select",
    dialog: null,
    tour: null,
    step: project.building ? "floor" : "shots",
  });
}

/** Recovered or imported work: in the window, but not saved anywhere yet. */
export function showUnsavedProject(project: Project, file: OpenFile, neverSaved: Project): void {
  showProject(project, file);
  set({ saved: neverSaved });
}

export function markSaved(project: Project, file: OpenFile): void {
  set({ saved: project, file, history: seal(get().history) });
}

export function showStart(): void {
  set({ screen: "start", selection: [], tool: "select", dialog: null, tour: null });
}

// ---- view state ---------------------------------------------------------------------------------------------

/** Shows all that is hidden one by one. */
export function showHidden(): void {
  const things = hiddenThings(present(get().history));
  run(drawingEdits.hideThings, { things, hidden: false });
}

export function select(selection: readonly Selected[]): void {
  set({ selection });
}

/** The step whose panel tells about what a tool draws; what stands beside the works has none. */
const stepOfTool: Partial<Record<ToolName, StepName>> = {
  shot: "shots",
  mark: "shots",
  breakline: "shots",
  lot: "lot",
  feature: "lot",
  building: "building",
  door: "building",
  window: "building",
  drive: "drive",
  swale: "water",
  "swale-route": "water",
  earth: "drive",
  "picture-points": "lot",
  "picture-distance": "lot",
};

/** Tools that leave the selection as it is. */
const keepsSelection: readonly ToolName[] = ["select", ...arrangeTools];

/** Picks a tool, and opens the panel of what it draws. */
export function setTool(tool: ToolName): void {
  set(
    keepsSelection.includes(tool) ? { tool } : { tool, selection: [], step: stepOfTool[tool] ?? get().step },
  );
}

/** Keeps the things to paste them later. */
export function keepClip(things: readonly Selected[]): void {
  set({ clip: { from: present(get().history), things } });
}

export function setNudgeStep(nudgeStep: number | null): void {
  set({ nudgeStep });
}

export function openPlanMenu(planMenu: NonNullable<AppState["planMenu"]>): void {
  set({ planMenu });
}

export function closePlanMenu(): void {
  if (get().planMenu !== null) set({ planMenu: null });
}

export function setStep(step: StepName): void {
  set({ step });
}

export function setTheme(theme: ThemeChoice): void {
  set({ theme });
}

export function setPreferences(patch: Partial<Preferences>): void {
  set({ preferences: { ...appStore.getState().preferences, ...patch } });
}

export function openDialog(dialog: AppState["dialog"]): void {
  set({ dialog });
}

/** Opens the glossary, at a word where one is named. */
export function openGlossary(term: string | null = null): void {
  set({ dialog: "glossary", term });
}

/** Goes to a stop of the tour; null leaves it. */
export function setTour(tour: number | null): void {
  set({ tour });
}

export function goTo(at: readonly [number, number]): void {
  set({ goTo: { at } });
}

export function setPointer(pointer: readonly [number, number] | null): void {
  set({ pointer });
}

export function tell(message: Told): void {
  set({ messages: withMessage(get().messages, message) });
}

/** What was tried is given up: what was said of it is over. */
export function endCautions(): void {
  set({ messages: withoutCautions(get().messages) });
}

export function dismiss(id: number): void {
  set({ messages: get().messages.filter((message) => message.id !== id) });
}
