/** A line with at least one point: clicks add points, a typed length and bearing place one exactly. */
import type { Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { distance } from "../../../geometry";
import type { Snap } from "../../snap/snap";
import type { SnapTargets } from "../../snap/targets";
import type { TypedValues } from "../../typed/typedEntry";
import { aim, aimCornerBetween, allTargets, isPlaced, lengthWanted, pieceFields, withTyped } from "../aim";
import { alongPiece, ringWords } from "../liveMarks";
import type { DrawnDimension, PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import type { LineKind, LinePoint } from "./lineKind";

export interface LineNow {
  readonly points: readonly LinePoint[];
  /** Where the next point would be. */
  readonly to: Snap;
  readonly typed: TypedValues;
  /** The press that set the last point is still held: a drag draws a piece. */
  readonly held: boolean;
}

/** Two points nearer than this, px, are one. */
const samePixels = 5;
const closes = "closes the line";

export function next(context: ToolContext, kind: LineKind, now: LineNow, home: ToolStart): ToolState {
  const last = now.points.at(-1) as LinePoint;
  const laid = (at: Snap) => withTyped(at, last.at, now.typed, context.project().lot.north);
  const to = laid(now.to);
  const again = (change: Partial<LineNow>) => next(context, kind, { ...now, ...change }, home);
  const finish = (points: readonly LinePoint[]): ToolState => {
    if (points.length < kind.least) {
      context.say(tooFew(points.length, kind));
      return again({});
    }
    return kind.commit(context, points).ok ? home(context) : again({ points });
  };
  const add = (at: Snap): ToolState => {
    if (at.word === closes) return finish(now.points);
    if (isSame(context, last.at, at.at)) return again({ held: false });
    const points = [...now.points, { at: at.at, tie: at.tie }];
    if (points.length === kind.most || kind.endsAt?.(points.at(-1) as LinePoint)) return finish(points);
    return again({ points, to: at, typed: {}, held: true });
  };
  const aimed = (pointer: PlanPointer) => aimNext(context, kind, now.points, pointer);
  return {
    name: "next",
    hint: kind.hintNext(context, now.points),
    cursor: "crosshair",
    fields: pieceFields,
    locksFrom: last.at,
    marks: lineMarks(context, kind, now.points, to),
    snap: to,
    dimensions: pieceDimensions(now.points, (points) => again({ points })),
    ...(kind.choices ? { choices: kind.choices } : {}),
    move: (pointer) => again({ to: aimed(pointer) }),
    press: (pointer) => add(laid(aimed(pointer))),
    release(pointer) {
      const at = laid(aimed(pointer));
      const dragged = now.held && distance(last.at, at.at) * context.view().scale > samePixels * 3;
      return dragged ? add(at) : again({ held: false });
    },
    doublePress: () => finish(now.points),
    typed: (typed) => again({ typed }),
    finish() {
      const wanted = lengthWanted(now.typed);
      if (wanted === null) return isPlaced(now.typed) ? add(to) : finish(now.points);
      context.say(wanted);
      return this;
    },
    back: () =>
      now.points.length > 1 ? again({ points: now.points.slice(0, -1), typed: {} }) : home(context),
    cancel: () =>
      now.points.length > 1 ? again({ points: now.points.slice(0, -1), typed: {} }) : home(context),
    lost: () => again({ held: false }),
  };
}

/** What is drawn can't end yet: why, and how to go on. */
function tooFew(count: number, { least, closed }: LineKind): string {
  const has = count === 1 ? "one" : String(count);
  const what = closed ? "An outline" : "A line";
  return `${what} needs at least ${least === 2 ? "two" : String(least)} places apart from each other; this one has ${has}. Click where it goes on, or press Esc to take it back.`;
}

/** The pieces that stand: typed over, their end and all that follows move along. */
function pieceDimensions(
  points: readonly LinePoint[],
  give: (points: readonly LinePoint[]) => ToolState,
): DrawnDimension[] {
  return points.slice(1).map(({ at: b }, i) => {
    const a = (points[i] as LinePoint).at;
    const m = distance(a, b);
    const set = (to: number) => {
      const by: Point = [((b[0] - a[0]) * (to - m)) / m, ((b[1] - a[1]) * (to - m)) / m];
      return give(
        points.map((point, k) =>
          k > i ? { at: [point.at[0] + by[0], point.at[1] + by[1]], tie: null } : point,
        ),
      );
    };
    return { key: `piece ${i + 1}`, label: `piece ${i + 1}`, m, ends: [a, b], set };
  });
}

function isSame(context: ToolContext, a: Point, b: Point): boolean {
  return distance(a, b) * context.view().scale < samePixels;
}

/** Aims at the plan and at the line's own points: its first closes a ring. */
function aimNext(
  context: ToolContext,
  kind: LineKind,
  points: readonly LinePoint[],
  pointer: PlanPointer,
): Snap {
  const [start] = points;
  const targets = allTargets(context.project());
  const own = kind.closed && start && points.length >= 3 ? [{ at: start.at, word: closes }] : [];
  const from = points.at(-1)?.at;
  const options = {
    from,
    own,
    targets: { ...targets, directions: [...ownDirections(points), ...targets.directions] },
  };
  // The line that will close a ring is pulled straight too.
  if (kind.closed && start && from && points.length >= 2)
    return aimCornerBetween(context, pointer, [from, start.at], options);
  return aim(context, pointer, options);
}

/** Along and square to the piece before. */
function ownDirections(points: readonly LinePoint[]): SnapTargets["directions"] {
  const [a, b] = points.slice(-2);
  if (!a || !b) return [];
  return [{ angle: Math.atan2(b.at[1] - a.at[1], b.at[0] - a.at[0]), of: "the piece before" }];
}

function lineMarks(
  context: ToolContext,
  kind: LineKind,
  points: readonly LinePoint[],
  to: Snap,
): DrawingMark[] {
  const places = [...points.map(({ at }) => at), to.at];
  const texts = places.flatMap((a, i): DrawingMark[] => {
    const b = places[i + 1];
    return b && !isSame(context, a, b) ? [alongPiece(a, b, kind.pieceText(context, a, b))] : [];
  });
  // The place that was just set isn't another one.
  const done = places.slice(0, -1);
  const outline = isSame(context, done.at(-1) as Point, to.at) ? done : places;
  const ring = kind.closed ? ringWords(outline, context.project(), context.view()) : [];
  const closing: DrawingMark[] =
    kind.closed && places.length > 2
      ? [{ kind: "line", points: [...to.at, ...(places[0] as Point)], style: "preview" }]
      : [];
  return [
    { kind: "line", points: done.flat(), style: "preview-line" },
    { kind: "line", points: [...(done.at(-1) as Point), ...to.at], style: "preview" },
    ...closing,
    ...done.map((at): DrawingMark => ({ kind: "symbol", at, symbol: "dot", size: 1.8, style: "handle" })),
    ...(kind.extraMarks?.(context, places) ?? []),
    ...texts,
    ...ring,
  ];
}
