/**
 * The first drag in a window runs code that never ran before, which takes several times as long. It is run a few times
 * while nobody waits for anything, by a solver of its own on the same surface.
 */
import { arrangeEdits, type Project } from "../document";
import { createSolver, type GroundSurface } from "../solve";

/** So often until the code is quick. */
const turns = 8;
/** Each turn of a larger plan would itself be felt. */
const mostShots = 50_000;

let isWarm = false;

/** `mayGoOn` is asked before each turn: a hand that moves comes first. */
export function warmUpOnce(project: Project, surface: GroundSurface, mayGoOn: () => boolean): void {
  if (isWarm || !project.building || project.survey.shots.length > mostShots) return;
  isWarm = true;
  const aside = createSolver({ surface: () => surface });
  let left = turns;
  const turn = () => {
    if (left-- === 0) return;
    if (mayGoOn()) aside.solve(moved(project, left / 100), { detail: "drag" });
    requestIdleCallback(turn);
  };
  requestIdleCallback(turn);
}

function moved(project: Project, by: number): Project {
  const edit = arrangeEdits.moveThings.run(project, { things: [{ kind: "building" }], by: [by, by] });
  return edit.ok ? edit.project : project;
}
