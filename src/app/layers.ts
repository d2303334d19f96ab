/** The person's choice of layers, kept outside the project. */
import { restoreLayers } from "../store/layerActions";
import { type LayerState, layersFromText, layersOf, layersToText } from "../store/layers";
import { appStore } from "../store/store";

const remembered = "drysill.layers";

/** Brings back what was chosen, and remembers each change. */
export function startLayers(): void {
  restoreLayers(layersFromText(read()));
  appStore.subscribe((state, before) => {
    const [now, was] = [layersOf(state), layersOf(before)];
    if ((Object.keys(now) as (keyof LayerState)[]).every((key) => now[key] === was[key])) return;
    try {
      localStorage.setItem(remembered, layersToText(now));
    } catch {
      // A page without storage keeps it for this window.
    }
  });
}

function read(): string | null {
  try {
    return localStorage.getItem(remembered);
  } catch {
    return null;
  }
}
