/** Measure: click places one after the other; the first again makes a ring. Nothing is kept in the plan. */
import type { Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { distance } from "../../../geometry";
import { formatAngle } from "../../../units";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim, isPlaced, lengthWanted, pieceFields, withTyped } from "../aim";
import { alongPiece, floating, lengthWords, ringMarks } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace, typedPlaceMarks } from "../typedPlace";
import { measured } from "./measured";
import { angleAt, readMeasured } from "./reading";

const samePixels = 5;
const dragPixels = 15;
const closes = "closes the ring";

/** Nothing measured yet. */
export function ready(context: ToolContext, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const typedAt = typedPlace(typed);
  return {
    name: "ready",
    hint: "Click the first place to measure from, or type where it is",
    cursor: "crosshair",
    marks: typedAt ? typedPlaceMarks(typedAt) : [],
    snap: typedAt ? null : at,
    move: (pointer) => ready(context, aim(context, pointer), typed),
    ...byTypedPlace(context, {
      typed,
      again: (values) => ready(context, at, values),
      take: (start) => measuring(context, { points: [start], to: start, typed: {}, held: false }),
    }),
    press: (pointer) => begin(context, pointer),
    cancel: () => "leave",
    lost: () => ready(context),
  };
}

export function begin(context: ToolContext, pointer: PlanPointer): ToolState {
  const start = aim(context, pointer);
  return measuring(context, { points: [start], to: start, typed: {}, held: true });
}

export interface Measuring {
  readonly points: readonly Snap[];
  readonly to: Snap;
  readonly typed: TypedValues;
  readonly held: boolean;
}

export function measuring(context: ToolContext, now: Measuring): ToolState {
  const project = context.project();
  const last = now.points.at(-1) as Snap;
  const laid = (snap: Snap) => withTyped(snap, last.at, now.typed, project.lot.north);
  const to = laid(now.to);
  const again = (change: Partial<Measuring>) => measuring(context, { ...now, ...change });
  const back = (): ToolState =>
    now.points.length > 1 ? again({ points: now.points.slice(0, -1), typed: {} }) : ready(context);
  const isSame = (place: Snap) => distance(last.at, place.at) * context.view().scale < samePixels;
  const finish = (closed: boolean): ToolState =>
    now.points.length < 2 ? again({ held: false }) : measured(context, { points: now.points, closed });
  const add = (place: Snap): ToolState => {
    if (place.word === closes) return finish(true);
    if (isSame(place)) return again({ held: false });
    return again({ points: [...now.points, place], to: place, typed: {}, held: true });
  };
  const aimed = (pointer: PlanPointer) => aimNext(context, now.points, pointer);
  const places = now.points.map(({ at }) => at);
  const live = isSame(to) ? places : [...places, to.at];
  const reading = readMeasured({ points: live, closed: false }, project, context.results());
  return {
    name: "measuring",
    hint: hint(now.points.length),
    cursor: "crosshair",
    fields: pieceFields,
    locksFrom: last.at,
    marks: measureMarks(context, live, false),
    snap: to,
    ...(reading ? { reading: { ...reading, live: true, act: null } } : {}),
    move: (pointer) => again({ to: aimed(pointer) }),
    press: (pointer) => add(laid(aimed(pointer))),
    release(pointer) {
      const place = laid(aimed(pointer));
      const dragged = now.held && distance(last.at, place.at) * context.view().scale > dragPixels;
      return dragged ? add(place) : again({ held: false });
    },
    doublePress: () => finish(false),
    typed: (typed) => again({ typed }),
    finish() {
      const wanted = lengthWanted(now.typed);
      if (wanted === null) return isPlaced(now.typed) ? add(to) : finish(false);
      context.say(wanted);
      return this;
    },
    back,
    cancel: back,
    lost: () => again({ held: false }),
  };
}

function hint(count: number): string {
  if (count === 1) return "Click the next place, or type a distance, Tab, a bearing (clockwise from north)";
  if (count === 2) return "Enter ends here; a third place gives the angle between";
  return "Enter ends here; the first place again closes a ring and gives its area";
}

/** Aims at the plan and at the first place, which closes a ring. */
function aimNext(context: ToolContext, points: readonly Snap[], pointer: PlanPointer): Snap {
  const [start] = points;
  const own = start && points.length >= 3 ? [{ at: start.at, word: closes }] : [];
  return aim(context, pointer, { from: points.at(-1)?.at, own });
}

/** The pieces with their lengths, and the angles between them. */
export function measureMarks(context: ToolContext, places: readonly Point[], closed: boolean): DrawingMark[] {
  const project = context.project();
  const ring = closed ? [...places, places[0] as Point] : places;
  const pieces = ring.slice(1).map((b, i) => {
    const a = ring[i] as Point;
    return alongPiece(a, b, lengthWords(distance(a, b), project));
  });
  const angles = places.slice(1, -1).flatMap((at, i): DrawingMark[] => {
    const angle = angleAt(places[i] as Point, at, places[i + 2] as Point);
    return angle === null ? [] : [floating(at, formatAngle(angle, 1))];
  });
  return [
    ...(closed
      ? ringMarks(places)
      : [{ kind: "line", points: places.flat(), style: "preview-line" } as const]),
    ...places.map((at): DrawingMark => ({ kind: "symbol", at, symbol: "dot", size: 1.8, style: "handle" })),
    ...pieces,
    ...angles,
  ];
}
