/** How the hand is helped while drawing: a personal choice, kept outside the project. */
import { createStore } from "zustand/vanilla";

/** What a place under the pointer can snap to, in the order of the list that a person sees. */
export const snapKinds = [
  "places",
  "middles",
  "crossings",
  "feet",
  "tangents",
  "edges",
  "directions",
  "extensions",
  "grid",
  "lengths",
] as const;
export type SnapKind = (typeof snapKinds)[number];

export interface Snapping {
  readonly on: ReadonlySet<SnapKind>;
  /** Walls that are pulled keep the directions of their neighbours. */
  readonly rightAngles: boolean;
}

/** All but the grid, which pulls everywhere. */
export const usualSnapping: Snapping = {
  on: new Set(snapKinds.filter((kind) => kind !== "grid")),
  rightAngles: true,
};

export const snappingStore = createStore<Snapping>(() => usualSnapping);

export function toggleSnap(kind: SnapKind): void {
  const on = new Set(snappingStore.getState().on);
  if (!on.delete(kind)) on.add(kind);
  snappingStore.setState({ on });
}

/** Everything off; or, where nothing is on, what is usual. */
export function toggleAllSnaps(): void {
  const { on } = snappingStore.getState();
  snappingStore.setState({ on: on.size > 0 ? new Set() : usualSnapping.on });
}

export function toggleRightAngles(): void {
  snappingStore.setState(({ rightAngles }) => ({ rightAngles: !rightAngles }));
}

export function snappingToText({ on, rightAngles }: Snapping): string {
  return JSON.stringify({ on: [...on], rightAngles });
}

/** Reads the remembered choice; what isn't understood is left as usual. */
export function snappingFromText(text: string | null): Snapping {
  try {
    const kept: unknown = JSON.parse(text ?? "{}");
    const { on, rightAngles } = kept as { on?: unknown; rightAngles?: unknown };
    return {
      on: Array.isArray(on) ? new Set(snapKinds.filter((kind) => on.includes(kind))) : usualSnapping.on,
      rightAngles: rightAngles !== false,
    };
  } catch {
    return usualSnapping;
  }
}
