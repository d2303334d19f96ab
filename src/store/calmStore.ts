/**
 * The state as panels show it. While a thing is dragged across a plan with very many shots they wait until the hand
 * rests: each step costs a solve already, and the plan comes first. Anything else is there at once.
 */
import { createStore } from "zustand/vanilla";
import type { AppState } from "./state";
import { appStore, shownProject } from "./store";

/** From so many shots on panels wait. */
const manyShots = 2000;
/** A hand that hasn't moved for so long rests, ms. */
const rests = 90;

export const calmStore = createStore<AppState>(() => appStore.getState());

let later: ReturnType<typeof setTimeout> | null = null;

function follow(): void {
  later = null;
  calmStore.setState(appStore.getState(), true);
}

appStore.subscribe((state) => {
  if (later !== null) clearTimeout(later);
  const waits =
    (state.preview !== null || state.nudging) && shownProject(state).survey.shots.length >= manyShots;
  if (waits) later = setTimeout(follow, rests);
  else follow();
});
