/** Acts on the very place that the pointer's menu was opened at: on a wall, on a corner of a line, on a shot. */
import { handleAt, handleReach, handlesFor } from "../canvas/select/handles";
import { beginAt, machine, pointerAt } from "../canvas/stage/toolRun";
import { planView } from "../canvas/view/planView";
import { toScreen } from "../canvas/view/view";
import { isLocked, surveyEdits } from "../document";
import { nearestOnRing } from "../geometry";
import type { AppCommand } from "../panels/command";
import { run, setTool } from "../store/actions";
import type { AppState, ToolName } from "../store/state";
import { appStore, shownProject } from "../store/store";

type WhyNot = (state: AppState) => string | null;

const onWall: WhyNot = (state) => {
  const { building } = shownProject(state);
  const [only, ...more] = state.selection;
  const at = state.planMenu?.at;
  const fits = building && at && only?.kind === "building" && more.length === 0;
  if (!fits || isLocked(shownProject(state), only)) return "Right click a wall of the building first.";
  const { distance } = nearestOnRing(building.outline, at[0], at[1]);
  return distance * planView.getState().view.scale <= handleReach.mouse ? null : "There is no wall here.";
};

const onVertex: WhyNot = (state) => {
  const at = state.planMenu?.at;
  const { view } = planView.getState();
  const handles = handlesFor(shownProject(state), state.selection, view);
  const handle = at && handleAt(handles, view, toScreen(view, [at[0], at[1]]), handleReach.mouse);
  return handle?.kind === "vertex" ? null : "Right click a corner of a line first.";
};

const shotOf = (state: AppState) => {
  const [only, ...more] = state.selection;
  if (only?.kind !== "shot" || more.length > 0) return null;
  return shownProject(state).survey.shots.find(({ id }) => id === only.id) ?? null;
};
const onShot =
  (aside: boolean): WhyNot =>
  (state) =>
    shotOf(state)?.aside === aside ? null : "Right click a shot first.";

/** Works a tool at the place of the menu, as a click there would. */
function workHere(tool: ToolName, kind?: string): void {
  const at = appStore.getState().planMenu?.at;
  if (at) beginAt(tool, [at[0], at[1]], kind);
}

/** A double click on a place of a line takes it away. */
function removeVertex(): void {
  const at = appStore.getState().planMenu?.at;
  if (!at) return;
  setTool("select");
  machine().doublePress(pointerAt([at[0], at[1]]));
}

function setAside(aside: boolean): void {
  const shot = shotOf(appStore.getState());
  if (shot) run(surveyEdits.setAside, { id: shot.id, aside });
}

const act = (id: string, name: string, whyNot: WhyNot, does: () => void): AppCommand => ({
  id: `here.${id}`,
  name,
  place: "Edit",
  whyNot,
  run: does,
});

/** Only the pointer's menu has a place; so these stand in no other list. */
export const actsAtPlace: readonly AppCommand[] = [
  act("door", "Door here", onWall, () => workHere("door")),
  act("window", "Window here", onWall, () => workHere("window")),
  act("pull", "Pull a piece of this wall from here…", onWall, () => workHere("building", "pull")),
  act("removeCorner", "Remove this corner", onVertex, removeVertex),
  act("setAside", "Set this shot aside", onShot(false), () => setAside(true)),
  act("takeBack", "Let this shot count again", onShot(true), () => setAside(false)),
];
