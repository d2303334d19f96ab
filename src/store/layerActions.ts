/** What a person does to the layers. A change by hand leaves the step's own choice. */
import {
  hiddenInStep,
  type LayerState,
  type MapGround,
  type PlanLayer,
  usualLayers,
  withShown,
} from "./layers";
import { appStore } from "./store";

const { getState: get, setState: set } = appStore;

export function showLayer(layer: PlanLayer, shown: boolean): void {
  set({ hidden: withShown(get().hidden, layer, shown), layersFollow: false });
}

export function toggleLayer(layer: PlanLayer): void {
  showLayer(layer, get().hidden.has(layer));
}

/** 0 to 1. */
export function setLayerStrength(layer: PlanLayer, strength: number): void {
  set({ strengths: { ...get().strengths, [layer]: Math.min(1, Math.max(0, strength)) } });
}

/** The things of a locked layer are seen but not picked; what is selected of them is let go. */
export function lockLayer(layer: PlanLayer, locked: boolean): void {
  const next = new Set(get().lockedLayers);
  if (locked) next.add(layer);
  else next.delete(layer);
  set({ lockedLayers: next, ...(locked ? { selection: [] } : {}) });
}

/** The layers follow the step of the job from now on, or stay as they are. */
export function followStep(follow: boolean): void {
  set(follow ? { layersFollow: true, hidden: hiddenInStep(get().step) } : { layersFollow: false });
}

export function setMapGround(mapGround: MapGround): void {
  set({ mapGround });
}

/** Layers as they are at first. */
export function resetLayers(): void {
  set(usualLayers);
}

export function restoreLayers(layers: LayerState): void {
  const { step } = get();
  set(layers.layersFollow ? { ...layers, hidden: hiddenInStep(step) } : layers);
}

/** Another step: the layers follow, where they are to. */
appStore.subscribe((state, before) => {
  if (state.layersFollow && state.step !== before.step) set({ hidden: hiddenInStep(state.step) });
});
