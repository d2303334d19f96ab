/** Mirrors what is selected about a wall, a lot line, or the line through two places. */
import { arrangeEdits, type Point } from "../../../document";
import { distance, nearestShare } from "../../../geometry";
import type { SnapEdge } from "../../snap/targets";
import { aim, allTargets, snapPixels } from "../aim";
import type { PlanPointer, ToolContext, ToolState } from "../tool";

export function mirrorTool(context: ToolContext): ToolState {
  return ready(context, null);
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

function ready(context: ToolContext, pointer: PlanPointer | null): ToolState {
  const edge = pointer && edgeUnder(context, pointer);
  const fault = arrangeEdits.handFault(context.project(), context.selection());
  const snap = pointer && !edge ? aim(context, pointer) : null;
  const reset = () => {
    context.cancelPreview();
    return ready(context, null);
  };
  if (edge) preview(context, edge.a, edge.b);
  else context.cancelPreview();
  return {
    name: "ready",
    hint:
      fault ??
      (edge
        ? `Click to mirror about the line ${edge.word}`
        : "Click a wall or a lot line to mirror about it, or two places; Shift takes a place on a line"),
    cursor: "crosshair",
    marks: edge ? guide(edge.a, edge.b) : [],
    snap,
    move: (now) => ready(context, now),
    press(now) {
      const line = edgeUnder(context, now);
      if (line) return mirrored(context, line.a, line.b);
      return second(context, aim(context, now).at, now);
    },
    cancel() {
      context.cancelPreview();
      return "leave";
    },
    lost: reset,
  };
}

function preview(context: ToolContext, a: Point, b: Point): void {
  const edit = context.preview(arrangeEdits.mirrorThings, { things: context.selection(), a, b });
  if (!edit.ok) context.cancelPreview();
}

function mirrored(context: ToolContext, a: Point, b: Point): ToolState {
  context.drop(arrangeEdits.mirrorThings, { things: context.selection(), a, b });
  context.setTool("select");
  return ready(context, null);
}

function second(context: ToolContext, from: Point, pointer: PlanPointer): ToolState {
  const snap = aim(context, pointer, { from });
  if (distance(from, snap.at) > 1e-3) preview(context, from, snap.at);
  const back = (): ToolState => {
    context.cancelPreview();
    return ready(context, null);
  };
  return {
    name: "second",
    hint: "Click a second place of the line to mirror about; Shift lets go of directions",
    cursor: "crosshair",
    marks: guide(from, snap.at),
    snap,
    move: (now) => second(context, from, now),
    press: (now) => {
      const to = aim(context, now, { from }).at;
      return distance(from, to) > 1e-3 ? mirrored(context, from, to) : second(context, from, now);
    },
    back,
    cancel: back,
    lost: back,
  };
}
