/** The plan's view as the window knows it: one plan, one view. Gestures and buttons change it here. */
import { createStore } from "zustand/vanilla";
import { drawingEdits, type Project, present } from "../../document";
import { type Bounds, boundsOf } from "../../geometry";
import { run } from "../../store/actions";
import { appStore, shownProject } from "../../store/store";
import { type Box, freePadding } from "./freeArea";
import { boundsOfThings, buildingPlaces, cornersOf, planBounds, planPlaces } from "./planBounds";
import { takenBoxes } from "./slots";
import { fittedTo, held, isSeen, panBy, resized, toScreen, turnAt, type View, type XY, zoomAt } from "./view";

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
/** What the view was fitted to and still shows; null once a hand has moved it. "drawn": it went after figures typed. */
let fit: "plan" | "building" | "drawn" | null = null;

/** What a tool is drawing: not on the plan yet, but to be seen with it. */
let drawnPlaces: () => readonly XY[] = () => [];

export function placesDrawnBy(source: () => readonly XY[]): void {
  drawnPlaces = source;
}

/** How far the view may wander: measured when a gesture starts, not at each of its steps; what is drawn leads it on. */
function reach(): Bounds {
  if (shown === null || !planView.getState().moving) shown = planBounds(shownProject(appStore.getState()));
  const drawn = drawnPlaces();
  return drawn.length === 0
    ? shown
    : boundsOf([...(shown.minX <= shown.maxX ? cornersOf(shown) : []), ...drawn]);
}

function moveTo(view: View): void {
  fit = null;
  const next = held(view, reach());
  planView.setState({ view: next, moving: true });
  if (rest !== null) clearTimeout(rest);
  rest = setTimeout(() => {
    rest = null;
    planView.setState({ moving: false });
    keepTurn();
  }, restAfter);
}

function jumpTo(view: View, fittedTo: typeof fit = null): void {
  fit = fittedTo;
  if (rest !== null) clearTimeout(rest);
  rest = null;
  planView.setState({ view, moving: false });
  keepTurn();
}

/** Less than this is only rounding, radians. */
function sameTurn(a: number, b: number): boolean {
  return Math.abs(Math.sin((a - b) / 2)) < 1e-9;
}

/** A turn by hand becomes part of the plan, so that paper shows it the same way; turns in a row are one undo step. */
function keepTurn(): void {
  const state = appStore.getState();
  const { angle } = planView.getState().view;
  if (state.screen !== "plan" || sameTurn(present(state.history).drawing.turn, angle)) return;
  run(drawingEdits.turnPlan, { turn: angle });
}

export function panPlan(dx: number, dy: number): void {
  moveTo(panBy(planView.getState().view, dx, dy));
}

/** Zooms about a place on the screen. */
export function zoomPlan(factor: number, at: XY): void {
  moveTo(zoomAt(planView.getState().view, at, factor));
}

/** Turns the plan about a place on the screen, radians counter-clockwise. */
export function turnPlan(by: number, at: XY): void {
  if (by !== 0) moveTo(turnAt(planView.getState().view, at, by));
}

/** Shows the plan at a turn, radians counter-clockwise; what was fitted is fitted again. */
export function setPlanTurn(angle: number): void {
  const { view } = planView.getState();
  if (sameTurn(angle, view.angle)) return;
  const middle: XY = [view.width / 2, view.height / 2];
  const was = fit;
  planView.setState({ view: turnAt(view, middle, angle - view.angle) });
  if (was === "plan") fitPlan();
  else if (was === "building") fitBuilding();
  else jumpTo(planView.getState().view);
}

/** Zooms about the middle: for buttons and keys. */
export function zoomByStep(factor: number): void {
  const { view } = planView.getState();
  jumpTo(zoomAt(view, [view.width / 2, view.height / 2], factor));
}

export function fitPlan(): void {
  jumpTo(fitBetween([...planPlaces(shownProject(appStore.getState())), ...drawnPlaces()]), "plan");
}

/** What lay over the plan when it was fitted. */
let between: readonly Box[] = [];

/** What lies over the plan in the fitted view; null once a hand has moved it. */
export function coveredByWindow(): readonly Box[] | null {
  return fit === null ? null : between;
}

/** The view in which places stand as large as can be between what lies over the plan. */
function fitBetween(places: readonly XY[]): View {
  const { view } = planView.getState();
  between = takenBoxes();
  const words = appStore.getState().preferences.textSize;
  return fittedTo(view, places, (span) => freePadding(view, between, span, words));
}

/** Something over the plan grew (a key came with the first results): what was fitted and is still seen so is fitted anew. */
export function slotsChanged(): void {
  const { floorDrag, preview, tool } = appStore.getState();
  if (fit === null || floorDrag !== null || preview !== null || tool !== "select") return;
  const within = (a: Box, b: Box) =>
    a.left >= b.left - 1 && a.top >= b.top - 1 && a.right <= b.right + 1 && a.bottom <= b.bottom + 1;
  if (takenBoxes().every((box) => between.some((before) => within(box, before)))) return;
  if (fit === "plan") fitPlan();
  else if (fit === "building") fitBuilding();
}

/** After an edit that made the plan larger than what is in sight (typed or pasted places), shows the whole of it. */
export function showGrowth(before: Project, now: Project): void {
  // What the view went after is on the plan now: it is shown there.
  if (fit === "drawn" && appStore.getState().tool !== "select") {
    fitPlan();
    return;
  }
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

/** Shows the whole plan where some of these places lie out of sight, or below what lies over the plan. */
export function showWhole(places: readonly XY[]): void {
  if (places.some((place) => isHidden(place, 0))) fitPlan();
}

/** Out of sight, nearer to the rim than a margin, px, or below what lies over the plan. */
function isHidden(place: XY, margin: number): boolean {
  const { view } = planView.getState();
  const [x, y] = toScreen(view, place);
  return (
    !isSeen(view, place, margin) ||
    takenBoxes().some(({ left, right, top, bottom }) => x > left && x < right && y > top && y < bottom)
  );
}

/** What is drawn on from a fitted view still has this share of it to go. */
const roomToGo = 0.8;

/**
 * Brings a place that was drawn by figures into sight, with all that was drawn before it: the view goes along and zooms
 * out as far as that takes, never in. It stays where the place is in sight already.
 */
export function showDrawn(at: XY): void {
  if (!isHidden(at, 40)) return;
  const places = [...drawnPlaces(), at];
  const { scale } = planView.getState().view;
  const whole = fitBetween(places);
  const factor = Math.min(whole.scale * roomToGo, scale) / whole.scale;
  jumpTo(zoomAt(whole, middleOf(places.map((place) => toScreen(whole, place))), factor), "drawn");
}

function middleOf(places: readonly XY[]): XY {
  const { minX, minY, maxX, maxY } = boundsOf(places.map(([x, y]): [number, number] => [x, y]));
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/** The building with its near surroundings, or everything where there is no building. */
export function fitBuilding(): void {
  const places = buildingPlaces(shownProject(appStore.getState()), planView.getState().view.angle);
  if (places) jumpTo(fitBetween(places), "building");
  else fitPlan();
}

/** What is selected, with room round it; everything where nothing is. */
export function fitSelection(): void {
  const state = appStore.getState();
  const bounds = boundsOfThings(shownProject(state), state.selection);
  if (bounds) jumpTo(fitBetween(cornersOf(bounds)));
  else fitPlan();
}

/** Brings a place into sight, without moving when it is in sight already. */
export function showPlace(at: XY): void {
  const { view } = planView.getState();
  if (isSeen(view, at, 60)) return;
  const [x, y] = toScreen(view, at);
  jumpTo(panBy(view, view.width / 2 - x, view.height / 2 - y));
}

/** The plan's upper left corner in the window, px. */
let corner: XY = [0, 0];

/**
 * The plan's part of the window has another size. What was fitted is fitted again, as long as nobody has moved the
 * view since; otherwise the middle stays in the middle. While a tool draws or a thing is under the hand nothing on the
 * screen may jump, whichever rim of the plan moved (the sentence above it grew, the dock below opened): the drawing is
 * held where it is in the window. `at`: the plan's upper left corner in the window, px.
 */
export function resizePlan(width: number, height: number, at: XY): void {
  const { view } = planView.getState();
  const [left, top] = [corner[0] - at[0], corner[1] - at[1]];
  corner = at;
  if (width === view.width && height === view.height) return;
  const next = resized(view, width, height);
  const { floorDrag, preview, tool } = appStore.getState();
  if (view.width === 0) {
    planView.setState({ view: next });
    fitPlan();
  } else if (floorDrag !== null || preview !== null || tool !== "select") {
    const held = panBy(next, left + (view.width - width) / 2, top + (view.height - height) / 2);
    if (tool === "select") planView.setState({ view: held });
    else jumpTo(held);
  } else {
    planView.setState({ view: next });
    if (fit === "plan") fitPlan();
    else if (fit === "building") fitBuilding();
  }
}
