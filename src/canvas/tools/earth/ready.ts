/** Nothing drawn yet: the kind, and how an area is drawn, are chosen in the strip; the next click begins it. */
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import { next } from "../line/next";
import { aimCorner, firstSizeFields } from "../rectangle/aimCorner";
import { rectangleMarks } from "../rectangle/marks";
import { bigEnough, type Rectangle } from "../rectangle/rectangle";
import { sizedRectangle } from "../rectangle/sized";
import { beginRing, isRingWay, type RingWay } from "../rectangle/ways";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace, typedPlaceMarks } from "../typedPlace";
import {
  addPoint,
  chooseNew,
  type EarthKind,
  earthChoices,
  earthHint,
  earthLine,
  earthRectangle,
  earthWords,
  isArea,
  isEarthKind,
} from "./kinds";

interface Ready {
  readonly kind: EarthKind;
  readonly way: RingWay;
  readonly at: Snap | null;
  readonly typed: TypedValues;
}

/** The kind and the way chosen last are offered when the tool is picked again. */
let last: Pick<Ready, "kind" | "way"> = { kind: "parking", way: "corners" };

export function ready(context: ToolContext, now: Ready = { ...last, at: null, typed: {} }): ToolState {
  const again = (change: Partial<Ready>) => ready(context, { ...now, ...change });
  const { kind, way, typed } = now;
  const typedAt = typedPlace(typed);
  const shown = typedAt ?? now.at;
  const sized = typedSize(context, now);
  const aimed = (pointer: PlanPointer) => aimFirst(context, now, pointer);
  const choose = (change: Partial<typeof last>) => {
    last = { ...last, ...change };
    return again({ ...change, typed: {} });
  };
  const places = byTypedPlace(context, {
    typed,
    again: (values) => again({ typed: values }),
    take: (at) => begin(context, now, at, false),
  });
  return {
    name: "ready",
    hint: sized ? "Click to put it here, or press Enter" : earthHint(context, kind, way),
    cursor: "crosshair",
    marks: sized
      ? rectangleMarks(sized, context.project())
      : shown && (typedAt || !takesSize(now))
        ? typedPlaceMarks(shown)
        : [],
    snap: typedAt ? null : now.at,
    choices: earthChoices(kind, way),
    choose(value) {
      if (isRingWay(value)) return choose({ way: value });
      return isEarthKind(value) ? choose({ kind: value }) : again({});
    },
    move: (pointer) => again({ at: aimed(pointer) }),
    press: (pointer) => begin(context, now, aimed(pointer), true),
    ...places,
    ...(takesSize(now) && { fields: firstSizeFields }),
    finish() {
      if (sized) return put(context, now, sized);
      if (typed.width === undefined || typedAt) return places.finish();
      // What was typed stays.
      context.say(`Still missing: the ${earthWords[kind]}'s depth. Type it, or click a corner.`);
      return this;
    },
    cancel: () => "leave",
    lost: () => again({ at: null }),
  };
}

/** Its width and depth can be typed before any click. */
function takesSize({ kind, way }: Ready): boolean {
  return isArea(kind) && way === "corners";
}

/** Corners of a rectangle lie on round numbers, so that its sizes come out round too. */
function aimFirst(context: ToolContext, now: Ready, pointer: PlanPointer): Snap {
  return takesSize(now) ? aimCorner(context, pointer) : aim(context, pointer);
}

function typedSize(context: ToolContext, now: Ready): Rectangle | null {
  const sized = takesSize(now) ? sizedRectangle(context, now) : null;
  return sized && bigEnough(sized) ? sized : null;
}

function homeOf({ kind, way }: Ready) {
  return (later: ToolContext) => ready(later, { kind, way, at: null, typed: {} });
}

/** A rectangle of typed sizes is whole with one click, or with Enter. */
function put(context: ToolContext, now: Ready, { outline }: Rectangle): ToolState {
  if (now.kind !== "point") earthRectangle(now.kind).commit(context, outline);
  return homeOf(now)(context);
}

/** The first corner of a shape, `held` while its press goes on; a grade point is whole with it. */
function begin(context: ToolContext, now: Ready, at: Snap, held: boolean): ToolState {
  const { kind, way } = now;
  const home = homeOf(now);
  const sized = typedSize(context, { ...now, at });
  if (sized) return put(context, now, sized);
  if (kind !== "point") {
    const line = earthLine(kind);
    if (isArea(kind))
      return beginRing(context, { line, rectangle: earthRectangle(kind) }, { way, at, held }, home);
    return next(context, line, { points: [at], to: at, typed: {}, held }, home);
  }
  const edit = addPoint(context, at.at);
  chooseNew(context, kind, edit);
  return home(context);
}
