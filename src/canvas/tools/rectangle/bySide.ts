/** A rectangle at any angle: one side from end to end, then its depth. */
import type { Point } from "../../../document";
import { distance } from "../../../geometry";
import { leastWall } from "../../select/shape";
import type { Snap } from "../../snap/snap";
import { handStep, roundTo } from "../../snap/step";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { aim, pieceFields, withTyped } from "../aim";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import type { RectangleKind } from "./kind";
import { cornerMarks, rectangleMarks } from "./marks";
import { bigEnough, type Rectangle } from "./rectangle";

interface Side {
  readonly from: Point;
  readonly to: Snap;
  readonly typed: TypedValues;
  /** The press that set the first end is still held: a drag draws the side. */
  readonly held: boolean;
}

const depthFields: readonly Field[] = [{ name: "depth", kind: "length" }];
const dragPixels = 15;

export function drawingSide(
  context: ToolContext,
  kind: RectangleKind,
  now: Side,
  home: ToolStart,
): ToolState {
  const project = context.project();
  const laid = (at: Snap) => withTyped(at, now.from, now.typed, project.lot.north);
  const to = laid(now.to);
  const again = (change: Partial<Side>) => drawingSide(context, kind, { ...now, ...change }, home);
  const aimed = (pointer: PlanPointer) =>
    aim(context, pointer, { from: now.from, ...(kind.without && { without: kind.without }) });
  const take = (at: Snap): ToolState =>
    distance(now.from, at.at) < leastWall
      ? again({ held: false })
      : drawingDepth(context, kind, { a: now.from, b: at.at, depth: 0, typed: {} }, home);
  return {
    name: "drawingSide",
    hint: "Click the other end of the side, or type its length, Tab, its bearing (clockwise from north)",
    cursor: "crosshair",
    fields: pieceFields,
    locksFrom: now.from,
    choices: kind.choices("side"),
    marks: [
      { kind: "line", points: [...now.from, ...to.at], style: "preview-line" },
      ...(distance(now.from, to.at) < leastWall
        ? cornerMarks(now.from, project)
        : [alongPiece(now.from, to.at, lengthWords(distance(now.from, to.at), project))]),
    ],
    snap: to,
    move: (pointer) => again({ to: aimed(pointer) }),
    press: (pointer) => take(laid(aimed(pointer))),
    release(pointer) {
      const at = laid(aimed(pointer));
      const dragged = now.held && distance(now.from, at.at) * context.view().scale > dragPixels;
      return dragged ? take(at) : again({ held: false });
    },
    typed: (typed) => again({ typed }),
    finish: () => take(to),
    back: () => home(context),
    cancel: () => home(context),
    lost: () => again({ held: false }),
  };
}

interface Depth {
  readonly a: Point;
  readonly b: Point;
  /** To the left of the way from a to b, m. */
  readonly depth: number;
  readonly typed: TypedValues;
}

function drawingDepth(context: ToolContext, kind: RectangleKind, now: Depth, home: ToolStart): ToolState {
  const project = context.project();
  const again = (change: Partial<Depth>) => drawingDepth(context, kind, { ...now, ...change }, home);
  const typedDepth =
    now.typed.depth === undefined ? now.depth : Math.sign(now.depth || 1) * Math.abs(now.typed.depth);
  const rectangle = onSide(now.a, now.b, typedDepth);
  const aimed = (pointer: PlanPointer) => ({ depth: depthAt(context, kind, now, pointer) });
  const commit = (depth: number): ToolState => {
    const whole = onSide(now.a, now.b, depth);
    return bigEnough(whole) && kind.commit(context, whole.outline).ok ? home(context) : again({});
  };
  const back = () =>
    drawingSide(context, kind, { from: now.a, to: plainSnap(now.b), typed: {}, held: false }, home);
  return {
    name: "drawingDepth",
    hint: `Click how deep the ${kind.what} is, to one side or the other, or type its depth`,
    cursor: "crosshair",
    fields: depthFields,
    choices: kind.choices("side"),
    marks: rectangleMarks(rectangle, project),
    move: (pointer) => again(aimed(pointer)),
    press: (pointer) => commit(now.typed.depth === undefined ? aimed(pointer).depth : typedDepth),
    release: () => again({}),
    typed: (typed) => again({ typed }),
    finish: () => commit(typedDepth),
    back,
    cancel: back,
    lost: () => again({}),
  };
}

const plainSnap = (at: Point): Snap => ({ at, word: null, tie: null, guide: null });

/** How far the pointer lies to the left of the side: to a snapped place, else a round depth. */
function depthAt(context: ToolContext, kind: RectangleKind, { a, b }: Depth, pointer: PlanPointer): number {
  const aimed = aim(context, pointer, kind.without ? { without: kind.without } : {});
  const length = distance(a, b);
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const left = ([x, y]: Point) => (y - a[1]) * ux - (x - a[0]) * uy;
  if (pointer.free || aimed.word !== null) return left(aimed.at);
  return roundTo(left(pointer.at), handStep(context.project().display.length, context.view().scale));
}

/** The rectangle on a side; corner A lies top left, as on any outline drawn here. */
export function onSide(a: Point, b: Point, depth: number): Rectangle {
  const width = distance(a, b);
  const [nx, ny] = [(-(b[1] - a[1]) / width) * depth, ((b[0] - a[0]) / width) * depth];
  const c: Point = [b[0] + nx, b[1] + ny];
  const d: Point = [a[0] + nx, a[1] + ny];
  // Clockwise from the corner that lies farthest to the top left.
  const ring: Point[] = depth > 0 ? [d, c, b, a] : [a, b, c, d];
  const rank = ([x, y]: Point) => y - x;
  const first = ring.reduce((best, at, i) => (rank(at) > rank(ring[best] as Point) + 1e-9 ? i : best), 0);
  const outline = [...ring.slice(first), ...ring.slice(0, first)];
  const [p, q] = outline as [Point, Point];
  const side = distance(p, q);
  return { outline, width: side, depth: Math.abs(side - width) < 1e-9 ? Math.abs(depth) : width };
}
