/**
 * The first drag in a window runs code that never ran before, which takes several times as long. It is run a few times
 * while nobody waits for anything, by a solver of its own on the same surface.
 */
import { arrangeEdits, type Project } from "../document";
import { createSolver, type GroundSurface } from "../solve";

/** So often until the code is quick, here and in the solving thread. */
const turns = 8;
const turnsInThread = 2;
/** Each turn of a larger plan would itself be felt. */
const mostShots = 50_000;

let isWarm = false;

export interface WarmUp {
  /** Asked before each turn: a hand that moves comes first. */
  mayGoOn(): boolean;
  /** Has the thread work one out that nobody waits for. */
  inThread(project: Project): void;
}

export function warmUpOnce(project: Project, surface: GroundSurface, { mayGoOn, inThread }: WarmUp): void {
  if (isWarm || !project.building || project.survey.shots.length > mostShots) return;
  isWarm = true;
  const aside = createSolver({ surface: () => surface });
  let left = turns;
  const turn = () => {
    if (left-- === 0) return;
    if (left < turnsInThread && mayGoOn()) inThread(moved(project, left / 100));
    if (mayGoOn()) aside.solve(moved(project, left / 100), { detail: "drag" });
    requestIdleCallback(turn);
  };
  requestIdleCallback(turn);
}

function moved(project: Project, by: number): Project {
  const edit = arrangeEdits.moveThings.run(project, { things: [{ kind: "building" }], by: [by, by] });
  return edit.ok ? edit.project : project;
}
