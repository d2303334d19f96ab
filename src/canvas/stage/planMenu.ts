/** Asks for the menu of what lies at a place of the plan: by the right button, a resting finger or the menu key. */
import { present, thingShape } from "../../document";
import { boundsOf } from "../../geometry";
import { openPlanMenu, select, setTool } from "../../store/actions";
import { appStore } from "../../store/store";
import { writtenPxPerMm } from "../screen";
import { thingAt } from "../select/hit";
import { type MenuOf, meantByMenu } from "../select/menuOf";
import { planView } from "../view/planView";
import { toScreen, toWorld, type XY } from "../view/view";
import { machine } from "./toolRun";

/** How near a thing must be to be meant, px. */
const reach = { mouse: 8, touch: 16 } as const;

/** Selects what is meant there; half-drawn things keep the hand. */
export function menuAt(element: HTMLElement, screen: XY, touch: boolean): void {
  if (!isFree()) return;
  const { view } = planView.getState();
  const { history, selection } = appStore.getState();
  const at = toWorld(view, screen);
  const how = touch ? "touch" : "mouse";
  const thing = thingAt(present(history), at, reach[how] / view.scale, writtenPxPerMm() / view.scale);
  const meant = meantByMenu(present(history), selection, view, screen, thing);
  if (meant.selection !== selection) select(meant.selection);
  open(element, screen, at, meant.of);
}

/** The menu of what is selected, in its middle; without a selection that of the open ground. */
export function menuByKey(element: HTMLElement): void {
  if (!isFree()) return;
  const { view } = planView.getState();
  const { history, selection } = appStore.getState();
  const places = selection.flatMap((thing) => thingShape(present(history), thing)?.points ?? []);
  const box = boundsOf(places.map((at) => toScreen(view, at)));
  const screen: XY =
    places.length > 0
      ? [within((box.minX + box.maxX) / 2, view.width), within((box.minY + box.maxY) / 2, view.height)]
      : [view.width / 2, view.height / 2];
  open(element, screen, toWorld(view, screen), selection.length > 0 ? "selection" : "plan");
}

function within(at: number, size: number): number {
  return Math.max(0, Math.min(size, at));
}

function isFree(): boolean {
  if (machine().begun()) return false;
  if (appStore.getState().tool !== "select") setTool("select");
  return true;
}

function open(element: HTMLElement, screen: XY, at: XY, of: MenuOf): void {
  const box = element.getBoundingClientRect();
  openPlanMenu({ x: box.left + screen[0], y: box.top + screen[1], at, of });
}
