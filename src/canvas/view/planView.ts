/** The plan's view as the window knows it: one plan, one view. Gestures and buttons change it here. */
import { createStore } from "zustand/vanilla";
import type { Project } from "../../document";
import type { Bounds } from "../../geometry";
import { appStore, shownProject } from "../../store/store";
import { buildingBounds, fitPadding, planBounds } from "./planBounds";
import { fitted, held, isSeen, panBy, resized, toScreen, type View, type XY, zoomAt } from "./view";

interface PlanView {
  readonly view: View;
  /** The view is under the hand: pictures move along, they are drawn sharp when it rests. */
  readonly moving: boolean;
}

/** A view that was not changed for so long is at rest, ms. */
const restAfter = 140;
export const zoomStep = 1.5;

export const planView = createStore<PlanView>(() => ({
  view: { centre: [0, 0], scale: 12, angle: 0, width: 0, height: 0 },
  moving: false,
}));

let rest: ReturnType<typeof setTimeout> | null = null;
let shown: Bounds | null = null;
/** What the view was fitted to and still shows; null once a hand has moved it. */
let fit: "plan" | "building" | null = null;

/** How far the view may wander: measured when a gesture starts, not at each of its steps. */
function reach(): Bounds {
  if (shown === null || !planView.getState().moving) shown = planBounds(shownProject(appStore.getState()));
  return shown;
}

function moveTo(view: View): void {
  fit = null;
  const next = held(view, reach());
  planView.setState({ view: next, moving: true });
  if (rest !== null) clearTimeout(rest);
  rest = setTimeout(() => {
    rest = null;
    planView.setState({ moving: false });
  }, restAfter);
}

function jumpTo(view: View, fittedTo: typeof fit = null): void {
  fit = fittedTo;
  if (rest !== null) clearTimeout(rest);
  rest = null;
  planView.setState({ view, moving: false });
}

export function panPlan(dx: number, dy: number): void {
  moveTo(panBy(planView.getState().view, dx, dy));
}

/** Zooms about a place on the screen. */
export function zoomPlan(factor: number, at: XY): void {
  moveTo(zoomAt(planView.getState().view, at, factor));
}

/** Zooms about the middle: for buttons and keys. */
export function zoomByStep(factor: number): void {
  const { view } = planView.getState();
  jumpTo(zoomAt(view, [view.width / 2, view.height / 2], factor));
}

export function fitPlan(): void {
  const { view } = planView.getState();
  jumpTo(fitted(view, planBounds(shownProject(appStore.getState())), fitPadding(view.width)), "plan");
}

/** After an edit that made the plan larger than what is in sight (typed or pasted places), shows the whole of it. */
export function showGrowth(before: Project, now: Project): void {
  const [old, box] = [planBounds(before), planBounds(now)];
  const grew = box.minX < old.minX || box.minY < old.minY || box.maxX > old.maxX || box.maxY > old.maxY;
  if (!grew) return;
  const { view } = planView.getState();
  const corners: XY[] = [
    [box.minX, box.minY],
    [box.maxX, box.maxY],
    [box.minX, box.maxY],
    [box.maxX, box.minY],
  ];
  if (!corners.every((corner) => isSeen(view, corner, 0))) fitPlan();
}

/** The building with its apron, or everything where there is no building. */
export function fitBuilding(): void {
  const bounds = buildingBounds(shownProject(appStore.getState()));
  const { view } = planView.getState();
  if (bounds) jumpTo(fitted(view, bounds, fitPadding(view.width)), "building");
  else fitPlan();
}

/** Brings a place into sight, without moving when it is in sight already. */
export function showPlace(at: XY): void {
  const { view } = planView.getState();
  if (isSeen(view, at, 60)) return;
  const [x, y] = toScreen(view, at);
  jumpTo(panBy(view, view.width / 2 - x, view.height / 2 - y));
}

/**
 * The plan's part of the window has another size. What was fitted is fitted again, as long as nobody has moved the
 * view since; otherwise the middle stays in the middle. With a thing under the hand nothing on the screen may jump:
 * the plan's upper rim moves (the sentence above it grew by a line), so the drawing is held by its lower rim.
 */
export function resizePlan(width: number, height: number): void {
  const { view } = planView.getState();
  if (width === view.width && height === view.height) return;
  const next = resized(view, width, height);
  const { floorDrag, preview } = appStore.getState();
  if (view.width === 0) {
    planView.setState({ view: next });
    fitPlan();
  } else if (floorDrag !== null || preview !== null) {
    planView.setState({ view: panBy(next, 0, (height - view.height) / 2) });
  } else {
    planView.setState({ view: next });
    if (fit === "plan") fitPlan();
    else if (fit === "building") fitBuilding();
  }
}
