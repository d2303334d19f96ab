/** Mirrors what is selected about a wall, a lot line, or the line through two places or along a bearing. */
import { arrangeEdits, type Point } from "../../../document";
import { distance, nearestShare } from "../../../geometry";
import { type Snap, unsnapped } from "../../snap/snap";
import type { SnapEdge } from "../../snap/targets";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { aim, allTargets, snapPixels, withTyped } from "../aim";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace, typedPlaceMarks } from "../typedPlace";

export function mirrorTool(context: ToolContext): ToolState {
  return ready(context);
}

/** How far the guide runs beyond its line on both sides, as a share of it. */
const beyond = 0.6;

function guide(a: Point, b: Point) {
  const [dx, dy] = [(b[0] - a[0]) * beyond, (b[1] - a[1]) * beyond];
  return [
    { kind: "line", points: [a[0] - dx, a[1] - dy, b[0] + dx, b[1] + dy], style: "snap-guide" },
    { kind: "line", points: [...a, ...b], style: "preview-line" },
  ] as const;
}

/** The wall, lot line or other line under the pointer, unless a place on it is nearer to what was meant. */
function edgeUnder(context: ToolContext, pointer: PlanPointer): SnapEdge | null {
  if (pointer.free) return null;
  const { scale } = context.view();
  const reach = (pointer.touch ? snapPixels.touch : snapPixels.mouse) / scale;
  const { points, edges } = allTargets(context.project());
  const [x, y] = pointer.at;
  if (points.some(({ at, word }) => !word.startsWith("middle") && distance(at, pointer.at) < reach))
    return null;
  const off = ({ a, b }: SnapEdge) => {
    const t = nearestShare(a, b, x, y);
    return Math.hypot(a[0] + t * (b[0] - a[0]) - x, a[1] + t * (b[1] - a[1]) - y);
  };
  let best: SnapEdge | null = null;
  let bestOff = reach;
  for (const edge of edges) {
    const d = off(edge);
    if (d < bestOff) [best, bestOff] = [edge, d];
  }
  return best;
}

interface Ready {
  readonly pointer: PlanPointer | null;
  readonly typed: TypedValues;
}

function ready(context: ToolContext, now: Ready = nothingYet): ToolState {
  const { pointer, typed } = now;
  const typedAt = typedPlace(typed);
  const edge = pointer && !typedAt && edgeUnder(context, pointer);
  const fault = arrangeEdits.handFault(context.project(), context.selection());
  const snap = pointer && !edge && !typedAt ? aim(context, pointer) : null;
  if (edge) preview(context, edge.a, edge.b);
  else context.cancelPreview();
  return {
    name: "ready",
    hint: fault ?? (edge ? `Click to mirror about the line ${edge.word}` : firstHint),
    cursor: "crosshair",
    marks: edge ? guide(edge.a, edge.b) : typedAt ? typedPlaceMarks(typedAt) : [],
    snap,
    move: (to) => ready(context, { ...now, pointer: to }),
    ...byTypedPlace(context, {
      typed,
      again: (values) => ready(context, { ...now, typed: values }),
      take: ({ at }) => second(context, { from: at, snap: unsnapped(at), typed: {} }),
    }),
    press(to) {
      const line = edgeUnder(context, to);
      if (line) return mirrored(context, line.a, line.b);
      const { at } = aim(context, to);
      return second(context, { from: at, snap: unsnapped(at), typed: {} });
    },
    cancel() {
      context.cancelPreview();
      return "leave";
    },
    lost: () => ready(context),
  };
}

const nothingYet: Ready = { pointer: null, typed: {} };
const firstHint =
  "Click a wall or a lot line to mirror about it, or click or type (12, 5) two places; Shift takes one on a line";

function preview(context: ToolContext, a: Point, b: Point): void {
  const edit = context.preview(arrangeEdits.mirrorThings, { things: context.selection(), a, b });
  if (!edit.ok) context.cancelPreview();
}

function mirrored(context: ToolContext, a: Point, b: Point): ToolState {
  context.drop(arrangeEdits.mirrorThings, { things: context.selection(), a, b });
  context.setTool("select");
  return ready(context);
}

interface Second {
  readonly from: Point;
  /** What the pointer aims at. */
  readonly snap: Snap;
  readonly typed: TypedValues;
}

/** A figure is the line's bearing; two lengths are a second place of it. */
const secondFields: readonly Field[] = [{ name: "bearing", kind: "bearing", pair: true }];

/** Any length will do for a line that runs both ways, m. */
const alongLine = 10;

function second(context: ToolContext, now: Second): ToolState {
  const { from, typed } = now;
  const wayTyped = typed.bearing === undefined ? typed : { ...typed, length: alongLine };
  const to = withTyped(now.snap, from, wayTyped, context.project().lot.north);
  const isLine = distance(from, to.at) > 1e-3;
  if (isLine) preview(context, from, to.at);
  else context.cancelPreview();
  const again = (change: Partial<Second>) => second(context, { ...now, ...change });
  const back = () => ready(context);
  const aimed = (pointer: PlanPointer) => aim(context, pointer, { from });
  return {
    name: "second",
    hint: "Click a second place of the line to mirror about, or type it (12, 5 or @3, 4) or the line's bearing",
    cursor: "crosshair",
    fields: secondFields,
    locksFrom: from,
    marks: guide(from, to.at),
    snap: to,
    move: (pointer) => again({ snap: aimed(pointer) }),
    press(pointer) {
      const place = withTyped(aimed(pointer), from, wayTyped, context.project().lot.north).at;
      return distance(from, place) > 1e-3 ? mirrored(context, from, place) : again({});
    },
    typed: (values) => again({ typed: values }),
    finish() {
      const isTyped = Object.keys(typed).length > 0;
      if (isTyped && isLine) return mirrored(context, from, to.at);
      context.say(secondWanted);
      return this;
    },
    back,
    cancel: back,
    lost: back,
  };
}

const secondWanted =
  "There is no second place of the line yet, away from the first: click it, or type it, like 12, 5, or the line's bearing, like N 45 E.";
