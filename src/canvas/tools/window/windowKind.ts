import { type Project, windowEdits } from "../../../document";
import { windowMarks as drawnWindow } from "../../../drawing";
import type { DrawingMark } from "../../../drawing/marks";
import { FOOT } from "../../../units";
import { type OpeningKind, openingMarks } from "../door/hovering";
import type { WallPlace } from "../door/wallPlace";

/** The window, and what is left of the wall on both sides. */
export function windowMarks(project: Project, place: WallPlace): DrawingMark[] {
  const { building } = project;
  return openingMarks(project, place, building ? drawnWindow(building, place) : []);
}

export const windowKind: OpeningKind = {
  word: "window",
  /** A common window: 4 ft, or 1.2 m. */
  usualWidth: ({ display }) => (["ft-in", "in", "ft"].includes(display.length) ? 4 * FOOT : 1.2),
  add: windowEdits.addWindow,
  marks: windowMarks,
};
