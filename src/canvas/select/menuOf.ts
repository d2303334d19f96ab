/** Whom the menu at a place is about. */
import { type Project, thingShape } from "../../document";
import { boundsOf } from "../../geometry";
import type { Selected } from "../../store/state";
import { toScreen, type View, type XY } from "../view/view";
import { includesThing } from "./hit";

/** The plan: what is selected stays so beside it. */
export type MenuOf = "plan" | "selection";

export interface Meant {
  readonly of: MenuOf;
  readonly selection: readonly Selected[];
}

/**
 * What a press for the menu means: what lies under it, with all that is selected where that is among it. Between the
 * things of a selection it means all of them, on a picture below them too; on open ground beside them the plan.
 *
 * `screen`: the place, px; `under`: the thing there, null on open ground.
 */
export function meantByMenu(
  project: Project,
  selection: readonly Selected[],
  view: View,
  screen: XY,
  under: Selected | null,
): Meant {
  if (under && includesThing(selection, under)) return { of: "selection", selection };
  const among = selection.length > 1 && isAmong(project, selection, view, screen);
  if (among && (under === null || under.kind === "underlay")) return { of: "selection", selection };
  return under ? { of: "selection", selection: [under] } : { of: "plan", selection };
}

/** Inside the upright box round several things on the screen. */
function isAmong(project: Project, selection: readonly Selected[], view: View, [x, y]: XY): boolean {
  const places = selection.flatMap((thing) => thingShape(project, thing)?.points ?? []);
  const box = boundsOf(places.map((at) => toScreen(view, at)));
  return x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
}
