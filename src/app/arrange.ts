/** Acts on what is selected: the same for the menu of the pointer, the plan's menu, the keys and the finder. */

import { isOpen } from "../canvas/select/layerOfThing";
import { gridStep } from "../canvas/view/grid";
import { planView } from "../canvas/view/planView";
import {
  allThings,
  arrangeEdits,
  drawingEdits,
  hiddenThings,
  isHidden,
  isLocked,
  type Point,
  present,
  type Thing,
  thingShape,
} from "../document";
import { boundsOf } from "../geometry";
import type { AppCommand } from "../panels/command";
import { keepClip, openDialog, run, select, showHidden } from "../store/actions";
import { pickTool } from "../store/pickTool";
import type { AppState } from "../store/state";
import { appStore, shownProject } from "../store/store";
import { onPlan } from "./whyNot";

type WhyNot = (state: AppState) => string | null;

const selected =
  (least = 1): WhyNot =>
  (state) => {
    if (onPlan(state)) return onPlan(state);
    if (state.selection.length >= least) return null;
    return least === 1 ? "Select something first." : `Select at least ${least} things first.`;
  };

const state = () => appStore.getState();
const project = () => present(state().history);
const things = () => state().selection;

/** Why these can't be changed by hand, in words. */
const changeable: WhyNot = (now) =>
  selected()(now) ?? arrangeEdits.handFault(shownProject(now), now.selection);

const turnable: WhyNot = (now) => changeable(now) ?? arrangeEdits.openingFault(now.selection);

const copyable: WhyNot = (now) => onPlan(now) ?? arrangeEdits.copyFault(now.selection);

/** A copy lies this far from what was copied, px on the screen. */
const copyShift = 28;

/** Right and down on the screen, m on the plan: whole steps of the grid. */
function aside(): Point {
  const { view } = planView.getState();
  const { step } = gridStep(shownProject(state()).display.length, view.scale);
  const by = copyShift / view.scale;
  const [c, s] = [Math.cos(view.angle), Math.sin(view.angle)];
  const round = (m: number) => Math.round(m / step) * step;
  return [round(by * c - by * s), round(-by * s - by * c)];
}

function duplicate(): void {
  const before = project();
  const edit = run(arrangeEdits.duplicateThings, { things: things(), by: aside() });
  if (edit.ok) select(arrangeEdits.copiedThings(before, edit.project));
}

/** Puts the copied things where the menu was opened or the pointer is, else beside the first ones. */
function paste(): void {
  const { clip, planMenu, pointer } = state();
  if (!clip) return;
  const at = planMenu?.at ?? pointer;
  const places = clip.things.flatMap((thing) => thingShape(clip.from, thing)?.points ?? []);
  const box = boundsOf(places);
  const by: Point =
    at && places.length > 0
      ? [at[0] - (box.minX + box.maxX) / 2, at[1] - (box.minY + box.maxY) / 2]
      : aside();
  const before = project();
  const edit = run(arrangeEdits.pasteThings, { from: clip.from, things: clip.things, by });
  if (edit.ok) select(arrangeEdits.copiedThings(before, edit.project));
}

function remove(): void {
  if (run(arrangeEdits.removeThings, { things: things() }).ok) select([]);
}

/** Everything that lies on the plan, is seen and isn't locked. */
function selectAll(): void {
  const now = project();
  select(
    allThings(now).filter(
      (thing) =>
        !isHidden(now, thing) && !isLocked(now, thing) && isOpen(thing) && thingShape(now, thing) !== null,
    ),
  );
}

function keysToThings(keys: readonly string[]): Thing[] {
  const known = new Map(
    allThings(project()).map((thing) => ["id" in thing ? `${thing.kind}:${thing.id}` : thing.kind, thing]),
  );
  return keys.flatMap((key) => known.get(key) ?? []);
}

const editActs: readonly AppCommand[] = [
  {
    id: "edit.selectAll",
    name: "Select everything",
    place: "Edit",
    keys: ["Mod+A"],
    also: "all things",
    whyNot: onPlan,
    run: selectAll,
  },
  {
    id: "edit.copy",
    name: "Copy",
    place: "Edit",
    keys: ["Mod+C"],
    also: "clipboard",
    whyNot: copyable,
    run: () => keepClip(things()),
  },
  {
    id: "edit.paste",
    name: "Paste",
    place: "Edit",
    keys: ["Mod+V"],
    also: "clipboard copied",
    whyNot: (now) => onPlan(now) ?? (now.clip ? null : "Copy something first."),
    run: paste,
  },
  {
    id: "edit.duplicate",
    name: "Duplicate",
    place: "Edit",
    keys: ["Mod+D"],
    also: "copy again",
    whyNot: copyable,
    run: duplicate,
  },
  {
    id: "edit.delete",
    name: "Delete",
    place: "Edit",
    keys: ["Delete"],
    also: "remove take away",
    whyNot: changeable,
    run: remove,
  },
  {
    id: "edit.objects",
    name: "All things of the plan…",
    place: "Edit",
    keys: ["Shift+Mod+O"],
    also: "objects tree list rename",
    whyNot: onPlan,
    run: () => openDialog("objects"),
  },
];

const alignNames = {
  left: "Line up the left edges",
  middle: "Line up the middles upright",
  right: "Line up the right edges",
  top: "Line up the top edges",
  centre: "Line up the middles level",
  bottom: "Line up the bottom edges",
  across: "Even gaps across",
  upwards: "Even gaps upwards",
} as const;

const alignActs: readonly AppCommand[] = Object.entries(alignNames).map(([to, name]) => ({
  id: `arrange.align.${to}`,
  name,
  place: "Arrange",
  also: "align distribute spread",
  whyNot: (now) => selected(to === "across" || to === "upwards" ? 3 : 2)(now) ?? changeable(now),
  run: () =>
    void run(arrangeEdits.alignThings, {
      things: things(),
      to: to as keyof typeof alignNames,
      turn: planView.getState().view.angle,
    }),
}));

const oneSpot: WhyNot = (now) => {
  const [only, ...more] = now.selection;
  return only && more.length === 0 && ["shot", "mark", "pit", "grade-point"].includes(only.kind)
    ? null
    : "Select one shot, mark, test pit or grade point.";
};
const someLocked: WhyNot = (now) =>
  selected()(now) ??
  (now.selection.some((thing) => isLocked(shownProject(now), thing)) ? null : "Nothing here is locked.");
const someLoose: WhyNot = (now) =>
  selected()(now) ??
  (now.selection.some((thing) => !isLocked(shownProject(now), thing)) ? null : "It is locked already.");

const arrangeActs: readonly AppCommand[] = [
  {
    id: "arrange.place",
    name: "Place by a click…",
    place: "Arrange",
    keys: ["Shift+P"],
    also: "put anew move shot mark pit where it was read",
    whyNot: (now) => oneSpot(now) ?? changeable(now),
    run: () => void pickTool("place"),
  },
  {
    id: "arrange.turn",
    name: "Turn about a place…",
    place: "Arrange",
    keys: ["Shift+T"],
    also: "rotate angle centre",
    whyNot: turnable,
    run: () => void pickTool("turn"),
  },
  {
    id: "arrange.mirror",
    name: "Mirror about a line…",
    place: "Arrange",
    keys: ["Shift+M"],
    also: "flip reflect",
    whyNot: turnable,
    run: () => void pickTool("mirror"),
  },
  ...alignActs,
  {
    id: "arrange.lock",
    name: "Lock",
    place: "Arrange",
    keys: ["Shift+Mod+L"],
    also: "fix protect",
    whyNot: someLoose,
    run: () => void run(drawingEdits.lockThings, { things: things(), locked: true }),
  },
  {
    id: "arrange.unlock",
    name: "Unlock",
    place: "Arrange",
    keys: ["Shift+Mod+L"],
    also: "release",
    whyNot: someLocked,
    run: () => void run(drawingEdits.lockThings, { things: unlockable(), locked: false }),
  },
  {
    id: "arrange.hide",
    name: "Hide",
    place: "Arrange",
    also: "invisible",
    whyNot: selected(),
    run: () => {
      if (run(drawingEdits.hideThings, { things: things(), hidden: true }).ok) select([]);
    },
  },
  {
    id: "arrange.showAll",
    name: "Show all that is hidden",
    place: "Arrange",
    also: "unhide visible",
    whyNot: (now) =>
      onPlan(now) ?? (hiddenThings(shownProject(now)).length > 0 ? null : "Nothing is hidden."),
    run: showHidden,
  },
  {
    id: "arrange.unlockAll",
    name: "Unlock everything",
    place: "Arrange",
    also: "release",
    whyNot: (now) =>
      onPlan(now) ?? (shownProject(now).drawing.locked.length > 0 ? null : "Nothing is locked."),
    run: () =>
      void run(drawingEdits.lockThings, { things: keysToThings(project().drawing.locked), locked: false }),
  },
];

/** A door that is locked with its building is unlocked with it. */
function unlockable(): Thing[] {
  const withBuilding = things().some(({ kind }) => kind === "door" || kind === "window");
  return withBuilding ? [...things(), { kind: "building" }] : [...things()];
}

export const arrangeCommands: readonly AppCommand[] = [...editActs, ...arrangeActs];
