/** Lengths are told once: while figures that can be typed over stand on the building, its drawn dimensions give way. */
import type { AppState } from "../../store/state";
import { shownProject } from "../../store/store";
import { liveDimensions } from "./liveDimensions";

export function dimensionsGiveWay(state: AppState): boolean {
  const { tool, preview, selection } = state;
  // While the building is under the hand the figures are away, and the drawn ones tell its lengths.
  if (tool !== "select" || preview !== null || selection[0]?.kind !== "building") return false;
  return liveDimensions(shownProject(state), selection).length > 0;
}
