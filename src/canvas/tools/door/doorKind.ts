import { buildingEdits, type Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { FOOT } from "../../../units";
import { type OpeningKind, openingMarks } from "./hovering";
import type { WallPlace } from "./wallPlace";

/** The door, and what is left of the wall on both sides. */
export function doorMarks(project: Project, place: WallPlace): DrawingMark[] {
  const [near, far] = place.edges;
  return openingMarks(project, place, [{ kind: "line", points: [...near, ...far], style: "door" }]);
}

export const doorKind: OpeningKind = {
  word: "door",
  /** A common overhead door: 9 ft, or 2.75 m. */
  usualWidth: ({ display }) => (["ft-in", "in", "ft"].includes(display.length) ? 9 * FOOT : 2.75),
  add: buildingEdits.addDoor,
  marks: doorMarks,
};
