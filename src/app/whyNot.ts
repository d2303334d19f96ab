/** Why a command makes no sense now, for the finder and for a key that is pressed; null where it does. */
import type { AppState } from "../store/state";
import { shownProject } from "../store/store";

export const onPlan = (state: AppState): string | null =>
  state.screen === "plan" ? null : "Open or begin a plan first.";

export const withBuilding = (state: AppState): string | null =>
  onPlan(state) ?? (shownProject(state).building ? null : "Draw the building first.");
