/** What lies over the plan: the selection with its handles, the thing under the pointer, and the tool's marks. */
import type { Project } from "../../document";
import type { DrawingMark, TextMark } from "../../drawing/marks";
import { waterRun } from "../../solve/water-run";
import { stakeGridStore } from "../../store/stakeGrid";
import type { AppState } from "../../store/state";
import { appStore, shownProject } from "../../store/store";
import { rimOf, textOnScreen, writtenBoxes } from "../scene/written";
import { writtenPxPerMm } from "../screen";
import { sectionSpot } from "../section/sectionOnPlan";
import { handleMarks, handlesFor } from "../select/handles";
import { includesThing } from "../select/hit";
import { liveDimensions } from "../select/liveDimensions";
import { outlineMarks } from "../select/outlineMarks";
import { isFloating, snapMarks } from "../tools/liveMarks";
import type { Box } from "../view/freeArea";
import { planView } from "../view/planView";
import { takenBoxes } from "../view/slots";
import type { View } from "../view/view";
import { toolRun } from "./toolRun";

/** In the water step the way of a drop from the pointer is shown while nothing is being drawn. */
export function followsDrop({ step, tool, hidden }: AppState): boolean {
  return step === "water" && tool === "select" && !hidden.has("runs");
}

export function interactionMarks(): DrawingMark[] {
  const state = appStore.getState();
  const tool = toolRun.getState().state;
  const project = shownProject(state);
  const { view } = planView.getState();
  const metresPerMm = writtenPxPerMm() / view.scale;
  const selected = state.selection.flatMap((thing) => outlineMarks(project, thing, "selected", metresPerMm));
  const hovers = tool.hovered && !includesThing(state.selection, tool.hovered);
  const hovered = hovers && tool.hovered ? outlineMarks(project, tool.hovered, "hovered", metresPerMm) : [];
  const handles = tool.handles
    ? handleMarks(handlesFor(project, state.selection, view), tool.hot ?? null)
    : [];
  const drop = followsDrop(state) && state.pointer ? waterRun(state.results, [...state.pointer]) : null;
  const run: DrawingMark[] = drop ? [{ kind: "line", points: drop, style: "run-drop" }] : [];
  const { at } = sectionSpot.getState();
  const spot: DrawingMark[] = at ? [{ kind: "symbol", at, symbol: "ring", size: 3, style: "snap-ring" }] : [];
  return [
    ...run,
    ...stakeMarks(stakeGridStore.getState().stakes),
    ...spot,
    ...hovered,
    ...selected,
    ...(tool.handles && state.preview === null ? tieLines(project, state.selection) : []),
    ...(tool.marks ?? []).map((mark) => (isFloating(mark) ? clearOfWords(mark, view) : mark)),
    ...handles,
    ...snapMarks(tool.snap).map((mark) => (mark.kind === "text" ? clearOfWindow(mark, view) : mark)),
  ];
}

/** What the figures to the lot lines measure: the plan's own dimensions give way to them. */
function tieLines(project: Project, selection: AppState["selection"]): DrawingMark[] {
  return liveDimensions(project, selection)
    .filter(({ to }) => to !== undefined)
    .map(
      ({ ends: [[ax, ay], [bx, by]] }): DrawingMark => ({
        kind: "line",
        points: [ax, ay, bx, by],
        style: "tie",
      }),
    );
}

/** Where a word beside the pointer may stand, mm right and up: below on the right first, then on the left, then above. */
const besides = [
  ["start", 4, -5],
  ["end", -4, -5],
  ["start", 4, 4],
  ["end", -4, 4],
] as const;

/** A word beside the pointer, off the buttons and inside the plan. */
function clearOfWindow(mark: TextMark, view: View): TextMark {
  const taken = takenBoxes();
  const places = besides.map(([anchor, right, up]): TextMark => ({ ...mark, anchor, shift: [right, up] }));
  const isClear = (one: TextMark) => {
    const { x, y, width, height } = textOnScreen(one, view);
    const [left, top, right, bottom] = [x - width / 2, y - height / 2, x + width / 2, y + height / 2];
    if (left < 0 || top < 0 || right > view.width || bottom > view.height) return false;
    return taken.every((box) => right < box.left || left > box.right || bottom < box.top || top > box.bottom);
  };
  return places.find(isClear) ?? mark;
}

/** A word that floats beside the thing in hand: it keeps off what the plan writes there, and off the window's tools. */
export function clearOfWords(mark: TextMark, view: View): TextMark {
  const own = rimOf(textOnScreen(mark, view));
  const reach = 2 * (own.right - own.left) + 60;
  const words = writtenBoxes(view).filter(
    ({ x, y }) => Math.abs(x - own.left) < reach && Math.abs(y - own.top) < reach,
  );
  const taken = [...words.map(rimOf), ...takenBoxes()];
  const covers = (one: TextMark) => {
    const rim = rimOf(textOnScreen(one, view));
    const across = (box: Box) => Math.max(0, Math.min(rim.right, box.right) - Math.max(rim.left, box.left));
    const down = (box: Box) => Math.max(0, Math.min(rim.bottom, box.bottom) - Math.max(rim.top, box.top));
    return taken.reduce((sum, box) => sum + across(box) * down(box), 0);
  };
  return leastCovering([mark, ...floatingPlaces(mark)], covers);
}

/** Round the place that the word floats by, mm right and up: nearest first. */
function floatingPlaces(mark: TextMark): readonly TextMark[] {
  return [4, 9, 14].flatMap((off) =>
    (
      [
        ["start", 4, off],
        ["end", -4, off],
        ["start", 4, -off - 1],
        ["end", -4, -off - 1],
      ] as const
    ).map(([anchor, right, up]): TextMark => ({ ...mark, anchor, shift: [right, up] })),
  );
}

function leastCovering(places: readonly TextMark[], covers: (one: TextMark) => number): TextMark {
  let best: { readonly place: TextMark; readonly covered: number } | null = null;
  for (const place of places) {
    const covered = covers(place);
    if (covered === 0) return place;
    if (best === null || covered < best.covered) best = { place, covered };
  }
  return (best?.place ?? places[0]) as TextMark;
}

/** More stakes than this are told by their line alone. */
const mostNumbered = 60;

/** Stakes that are to be laid, in the order they are walked: the first and the last by their number, of few each. */
export function stakeMarks(stakes: readonly (readonly [number, number])[]): DrawingMark[] {
  if (stakes.length === 0) return [];
  const numbered = (i: number) => stakes.length <= mostNumbered || i === 0 || i === stakes.length - 1;
  return [
    { kind: "line", points: stakes.flat(), style: "snap-guide" },
    ...stakes.map(
      (at): DrawingMark => ({ kind: "symbol", at, symbol: "plus", size: 2.6, style: "preview-line" }),
    ),
    ...stakes.flatMap((at, i): DrawingMark[] =>
      numbered(i)
        ? [{ kind: "text", at, text: String(i + 1), style: "preview-label", shift: [1.4, 1.2], halo: true }]
        : [],
    ),
  ];
}
