/**
 * Who solves: the window's own solver answers at once with what each frame needs, and a thread of its own works out the long rest.
 * Without such a thread (in tests, or where it can't start) the window's solver does it all.
 */
import type { Project } from "../document";
import { present } from "../document";
import type { Late, Results, Solver } from "../solve";
import { searchInTurns } from "../solve/search";
import type { Finding, Search } from "../solve/thread-messages";
import { appStore, shownProject, solver } from "./store";
import type { SolvingThread } from "./thread";
import { warmUpOnce } from "./warmUp";

const { getState: get, setState: set } = appStore;

let thread: SolvingThread | null = null;

export function solveInThread(given: SolvingThread): void {
  thread = given;
}

/** From then on all is solved here. */
function withoutThread(): void {
  thread?.terminate();
  thread = null;
}

let pendingFull: ReturnType<typeof setTimeout> | null = null;
let pendingPreview: number | null = null;

/** Results of a project that stays: all of them, or what a frame needs with the rest on its way. */
export function solveNow(project: Project): Results {
  if (pendingFull !== null) clearTimeout(pendingFull);
  pendingFull = null;
  if (!thread || solver.isSettled(project)) return solver.solve(project);
  // The thread works while the window does; only a plan that nobody has seen yet is first drawn.
  if (solver.hasSettled()) askLate(thread, project);
  else
    afterDrawing(() => {
      if (thread && present(get().history) === project) askLate(thread, project);
    });
  return solver.solve(project, { detail: "drag" });
}

/** What a person sees first of a plan comes first: the thread shares the machine with the window. */
function afterDrawing(act: () => void): void {
  requestAnimationFrame(() => setTimeout(act));
}

function askLate(from: SolvingThread, project: Project): void {
  const take = (late: Late) => {
    if (present(get().history) !== project) return from.forgetLayout("plan");
    const results = solver.solve(project, { late });
    // A thing under the hand goes on from what is known now; letting go shows it.
    if (!isHeld()) set({ nudging: false, results });
  };
  from.late("plan", project, solver.surface(project), take).then(
    (late) => {
      if (!late) return;
      take(late);
      const surface = solver.surface(project);
      warmUpOnce(project, surface, {
        mayGoOn: () => !isHeld(),
        inThread: (moved) => thread?.warmUp({ project: moved, surface }),
      });
    },
    () => {
      withoutThread();
      finish();
    },
  );
}

function isHeld(): boolean {
  const { preview, floorDrag } = get();
  return preview !== null || floorDrag !== null;
}

function finish(): void {
  if (!isHeld()) set({ nudging: false, results: solveNow(present(get().history)) });
}

/** How long a hand rests before what lagged behind it is computed, ms. */
const handRests = 60;
/** As long as a held key waits before it repeats, and a little more: no long solve comes in between. */
const keysRest = 700;

/** What lagged behind a drag or behind keys is computed once they have rested a moment; a thread of its own keeps no hand waiting. */
export function solveFullySoon(after: "hand" | "keys"): void {
  if (pendingFull !== null) clearTimeout(pendingFull);
  pendingFull = setTimeout(
    () => {
      pendingFull = null;
      finish();
    },
    after === "keys" ? keysRest : thread ? 0 : handRests,
  );
}

/** What is moved is solved once a frame, however often it moves between two of them. */
export function solveWithNextFrame(): void {
  if (pendingPreview !== null) return;
  pendingPreview = requestAnimationFrame(() => {
    pendingPreview = null;
    const state = get();
    if (state.preview !== null || state.nudging)
      set({ results: solver.solve(shownProject(state), { detail: "drag" }) });
  });
}

/** All results of a project beside the plan, by a solver of its own that shares nothing with the window's. */
export async function solveAside(own: Solver, project: Project): Promise<Results | null> {
  const from = thread;
  if (!from) return own.solve(project);
  own.solve(project, { detail: "drag" });
  try {
    const late = await from.late("options", project, own.surface(project));
    return late && own.solve(project, { late });
  } catch {
    return own.solve(project);
  }
}

/** The ground of a crowd of points, made by the thread where there is one. */
export async function prepareSurface(project: Project): Promise<void> {
  const work = solver.surfaceWork(project);
  if (!thread || !work) return;
  try {
    solver.learnSurface(work, await thread.surface(work));
  } catch {
    // It is made here then, with the next solve.
  }
}

export interface Listener {
  found(finding: Finding): void;
  end(): void;
}

/** Looks for changes of the plan; the answer gives the search up. */
export function lookFor(search: Search, project: Project, { found, end }: Listener): () => void {
  if (!thread) return searchHere(search, project, { found, end });
  let stopHere: (() => void) | null = null;
  const stopThere = thread.search(search, { project, surface: solver.surface(project) }, found, (why) => {
    if (why === null) end();
    else stopHere = searchHere(search, project, { found, end });
  });
  return () => (stopHere ?? stopThere)();
}

/** In short turns, so that the window goes on answering. */
function searchHere(search: Search, project: Project, { found, end }: Listener): () => void {
  const steps = searchInTurns(search, project);
  let timer = setTimeout(turn, 30);
  return () => clearTimeout(timer);

  function turn() {
    const { value, done } = steps.next();
    if (value) found(value);
    if (done) end();
    else timer = setTimeout(turn);
  }
}
