/** Pulling a wall or adding to it: first the wall, and the piece of it. */
import type { Point, Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { nearestOnRing, nearestShare } from "../../../geometry";
import { wallEnds, wallName } from "../../select/places";
import { handStep, roundTo } from "../../snap/step";
import type { Field, TypedValues } from "../../typed/typedEntry";
import type { XY } from "../../view/view";
import { reachOf } from "../aim";
import { wallOfKey } from "../arrowKeys";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { begunPull, pullingOut } from "./pullingOut";

export type PullKind = "pull" | "add-on";

/** A place on a wall, from its first corner. */
export interface OnWall {
  readonly wall: number;
  readonly ends: readonly [Point, Point];
  readonly length: number;
  readonly along: number;
  readonly word: string | null;
}

const startFields: readonly Field[] = [{ name: "from the corner", kind: "length" }];
const widthFields: readonly Field[] = [{ name: "width", kind: "length" }];

interface Choosing {
  readonly on: OnWall | null;
  readonly typed: TypedValues;
}

export function choosingWall(
  context: ToolContext,
  kind: PullKind,
  home: ToolStart,
  now: Choosing = { on: null, typed: {} },
): ToolState {
  const shown = now.on && startOf(now.on, now.typed);
  const again = (change: Partial<Choosing>) => {
    const { choices, choose } = home(context);
    const state = choosingWall(context, kind, home, { ...now, ...change });
    return { ...state, ...(choices ? { choices } : {}), ...(choose ? { choose } : {}) };
  };
  const take = (on: OnWall | null, held: boolean): ToolState =>
    on ? spanning(context, kind, { start: on, to: on, typed: {}, held, pointer: null }, home) : again({ on });
  return {
    name: "choosingWall",
    hint: chooseHint(context, kind, shown),
    cursor: shown ? "crosshair" : "default",
    fields: startFields,
    marks: shown ? startMarks(context, kind, shown) : [],
    snap:
      kind === "pull" && shown?.word
        ? { at: placeOn(shown, shown.along), word: shown.word, tie: null, guide: null }
        : null,
    move: (pointer) => again({ on: wallUnder(context, pointer) }),
    press(pointer) {
      const on = wallUnder(context, pointer);
      return take(on && startOf(on, now.typed), true);
    },
    typed: (typed) => again({ typed }),
    finish() {
      const all = kind === "add-on" && now.typed["from the corner"] === undefined;
      if (!shown || !all) return take(shown, false);
      const { wall, length } = shown;
      return pullingOut(context, begunPull(kind, wall, 0, length), home);
    },
    nudge: (direction) => again({ on: wallByKey(context, direction, now.on?.wall ?? null) ?? now.on }),
    cancel: () => "leave",
    lost: () => again({ on: null }),
  };
}

function startOf(on: OnWall, typed: TypedValues): OnWall {
  const along = typed["from the corner"];
  return along === undefined ? on : { ...on, along: Math.min(on.length, Math.abs(along)), word: null };
}

function chooseHint(context: ToolContext, kind: PullKind, on: OnWall | null): string {
  if (!on)
    return kind === "pull"
      ? "Point at a wall, where the piece to pull begins; an arrow key takes a wall"
      : "Point at the wall to build on to, or take one by an arrow key";
  const outline = context.project().building?.outline ?? [];
  const name = wallName(outline, on.wall);
  return kind === "pull"
    ? `Click where the piece of wall ${name} begins, or drag along it; type its distance from the wall's first corner, Enter`
    : `Click or Enter to build on to all of wall ${name}, or drag along a piece of it; type where a piece begins`;
}

function startMarks(context: ToolContext, kind: PullKind, on: OnWall): DrawingMark[] {
  const at = placeOn(on, on.along);
  const project = context.project();
  const whole: DrawingMark = { kind: "line", points: on.ends.flat(), style: "preview-line" };
  if (kind === "add-on") return [whole, alongPiece(on.ends[0], on.ends[1], lengthWords(on.length, project))];
  return [
    { ...whole, style: "preview" },
    { kind: "symbol", at, symbol: "dot", size: 2.4, style: "handle-hot" },
    ...(on.along > 0 ? [alongPiece(on.ends[0], at, lengthWords(on.along, project))] : []),
  ];
}

interface Spanning {
  readonly start: OnWall;
  readonly to: OnWall;
  readonly typed: TypedValues;
  readonly held: boolean;
  readonly pointer: PlanPointer | null;
}

const dragPixels = 12;

/** From where the piece begins to where it ends. */
function spanning(context: ToolContext, kind: PullKind, now: Spanning, home: ToolStart): ToolState {
  const project = context.project();
  const { start } = now;
  const again = (change: Partial<Spanning>) => spanning(context, kind, { ...now, ...change }, home);
  const endOf = (to: OnWall, typed: TypedValues): number => {
    if (typed.width === undefined) return to.along;
    // Towards the pointer; from a corner there is only one way to go.
    const back = to.along < start.along || (to.along === start.along && start.along > start.length - 1e-6);
    return Math.min(start.length, Math.max(0, start.along + (back ? -1 : 1) * Math.abs(typed.width)));
  };
  const end = endOf(now.to, now.typed);
  const aimed = (pointer: PlanPointer) => ({ to: alongWall(context, start, pointer), pointer });
  const pull = (from: number, to: number): ToolState => {
    const caution = shortWalls(project, start, from, to);
    if (caution) context.say(caution);
    return pullingOut(context, begunPull(kind, start.wall, from, to), home);
  };
  const take = (to: number): ToolState =>
    Math.abs(to - start.along) * context.view().scale < dragPixels
      ? again({ held: false })
      : pull(start.along, to);
  return {
    name: "spanning",
    hint: now.pointer
      ? "Click where the piece ends, or type its width"
      : "Type how wide the piece is, or Enter for the rest of the wall; or click where it ends",
    cursor: "crosshair",
    fields: widthFields,
    marks: [
      {
        kind: "line",
        points: [...placeOn(start, start.along), ...placeOn(start, end)],
        style: "preview-line",
      },
      ...(Math.abs(end - start.along) > 1e-6
        ? [
            alongPiece(
              placeOn(start, start.along),
              placeOn(start, end),
              lengthWords(Math.abs(end - start.along), project),
            ),
          ]
        : []),
    ],
    snap: now.to.word ? { at: placeOn(start, end), word: now.to.word, tie: null, guide: null } : null,
    move: (pointer) => again(aimed(pointer)),
    press: (pointer) => take(endOf(aimed(pointer).to, now.typed)),
    release(pointer) {
      const to = endOf(aimed(pointer).to, now.typed);
      if (!now.held) return again({});
      if (Math.abs(to - start.along) * context.view().scale >= dragPixels) return pull(start.along, to);
      if (kind !== "add-on") return again({ held: false });
      // A width that is typed counts from the corner nearer to the press.
      return start.along > start.length / 2 ? pull(start.length, 0) : pull(0, start.length);
    },
    typed: (typed) => again({ typed }),
    finish: () => take(now.pointer || now.typed.width !== undefined ? end : restOf(start)),
    back: () => home(context),
    cancel: () => home(context),
    lost: () => again({ held: false }),
  };
}

/** Shorter walls than this are most likely a slip of the hand, m. */
const shortWall = 0.3;

/** What the piece and what is left beside it would be, where one is a very short wall; null where none is. */
function shortWalls(project: Project, { length }: OnWall, a: number, b: number): string | null {
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  const parts = [
    ["That piece is only", to - from],
    ["That leaves a wall of only", from],
    ["That leaves a wall of only", length - to],
  ] as const;
  const short = parts.find(([, m]) => m > 1e-6 && m < shortWall);
  if (!short) return null;
  const [what, m] = short;
  return `${what} ${lengthWords(m, project)} in the building's outline. Go on if it is meant; Esc chooses the piece anew, or type where it begins and how wide it is.`;
}

/** The far end of what is left of the wall: its other corner, or the first one for a piece that begins at the last. */
function restOf({ along, length }: OnWall): number {
  return along > length - 1e-6 ? 0 : length;
}

export function placeOn({ ends: [a, b], length }: OnWall, along: number): Point {
  const share = along / length;
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** The wall that an arrow key takes, from its first corner on. */
function wallByKey(context: ToolContext, direction: XY, present: number | null): OnWall | null {
  const wall = wallOfKey(context, direction, present);
  return wall === null ? null : wholeWall(context, wall);
}

function wholeWall(context: ToolContext, wall: number): OnWall | null {
  const ends = wallEnds(context.project().building?.outline ?? [], wall);
  if (!ends) return null;
  const length = Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
  return { wall, ends, length, along: 0, word: null };
}

/** How near the wall the pointer must be, in the reach of a snap. */
const wallReaches = 1.6;

function wallUnder(context: ToolContext, pointer: PlanPointer): OnWall | null {
  const outline = context.project().building?.outline;
  if (!outline) return null;
  const nearest = nearestOnRing(outline, pointer.at[0], pointer.at[1]);
  const on = wholeWall(context, nearest.segment);
  if (!on || nearest.distance > wallReaches * reachOf(context, pointer)) return null;
  return alongWall(context, on, pointer);
}

/** The pointer's place along a wall: its ends and its middle catch, else round lengths from the nearer end. */
function alongWall(context: ToolContext, on: OnWall, pointer: PlanPointer): OnWall {
  const { ends, length } = on;
  const along = nearestShare(ends[0], ends[1], pointer.at[0], pointer.at[1]) * length;
  if (pointer.free) return { ...on, along, word: null };
  const reach = reachOf(context, pointer);
  const catches = [
    [0, "the wall's end"],
    [length, "the wall's end"],
    [length / 2, "the wall's middle"],
  ] as const;
  const caught = catches.find(([s]) => Math.abs(along - s) < reach);
  if (caught) return { ...on, along: caught[0], word: caught[1] };
  const step = handStep(context.project().display.length, context.view().scale);
  const round = along > length / 2 ? length - roundTo(length - along, step) : roundTo(along, step);
  return { ...on, along: Math.min(length, Math.max(0, round)), word: null };
}
