/** Starts the tour on its demo, and remembers that it was seen: nothing else. */
import { tourDemo } from "../help";
import { setTour } from "../store/actions";
import { appStore } from "../store/store";
import { demos } from "./demos";
import type { Files } from "./files";

const remembered = "drysill.tour";

/** Opens the demo and begins; where the present plan may not go, nothing happens. */
export async function startTour(files: Pick<Files, "openDemo">): Promise<void> {
  const demo = demos.find(({ id }) => id === tourDemo);
  if (!demo) return;
  const before = appStore.getState().saved;
  await files.openDemo(demo);
  if (appStore.getState().saved === before) return;
  rememberSeen();
  setTour(0);
}

/** Whether the tour was begun on this machine; without storage (a private window) it is new each time. */
export function tourSeen(): boolean {
  try {
    return localStorage.getItem(remembered) === "seen";
  } catch {
    return false;
  }
}

function rememberSeen(): void {
  try {
    localStorage.setItem(remembered, "seen");
  } catch {
    // Nothing to do: the tour will be offered as new.
  }
}
