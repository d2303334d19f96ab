/** Snaps and right angles: their commands, and the person's choice, kept outside the project. */
import type { AppCommand } from "../panels/command";
import { showLayer } from "../store/layerActions";
import {
  type SnapKind,
  snapKinds,
  snappingFromText,
  snappingStore,
  snappingToText,
  toggleAllSnaps,
  toggleRightAngles,
  toggleSnap,
} from "../store/snapping";
import { onPlan } from "./whyNot";

const remembered = "drysill.snapping";

/** Brings back what was chosen, and remembers each change. */
export function startSnapping(): void {
  snappingStore.setState(snappingFromText(read()));
  snappingStore.subscribe((state) => {
    try {
      localStorage.setItem(remembered, snappingToText(state));
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

/** The grid that is snapped to is also seen. */
function toggleGrid(): void {
  toggleSnap("grid");
  showLayer("grid", snappingStore.getState().on.has("grid"));
}

const words: Readonly<Record<Exclude<SnapKind, "grid">, string>> = {
  places: "corners, doors, shots and marks",
  middles: "middles",
  crossings: "where lines cross",
  feet: "square to a line",
  tangents: "touching a circle",
  edges: "lines",
  directions: "parallel and square directions",
  extensions: "lines drawn on beyond their end",
  lengths: "round lengths",
};

export const snapCommands: readonly AppCommand[] = [
  {
    id: "snap.grid",
    name: "Snap to the grid and show it, or not",
    place: "Draw",
    keys: ["G"],
    also: "squares",
    whyNot: onPlan,
    run: toggleGrid,
  },
  {
    id: "snap.all",
    name: "Snap to nothing, or as usual",
    place: "Draw",
    also: "snaps off on free",
    whyNot: onPlan,
    run: toggleAllSnaps,
  },
  {
    id: "snap.rightAngles",
    name: "Keep right angles when a wall is pulled, or not",
    place: "Draw",
    also: "square perpendicular",
    whyNot: onPlan,
    run: toggleRightAngles,
  },
  ...snapKinds
    .filter((kind): kind is Exclude<SnapKind, "grid"> => kind !== "grid")
    .map(
      (kind): AppCommand => ({
        id: `snap.${kind}`,
        name: `Snap or not: ${words[kind]}`,
        place: "Draw",
        also: "snaps",
        whyNot: onPlan,
        run: () => toggleSnap(kind),
      }),
    ),
];
