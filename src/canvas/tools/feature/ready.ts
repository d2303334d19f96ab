/** Feature: its kind is chosen in the strip; places by one click, lines and areas by several. */
import {
  type Edit,
  featureForms,
  type Point,
  type Project,
  siteEdits,
  usualKeepClear,
} from "../../../document";
import { distance } from "../../../geometry";
import type { Snap } from "../../snap/snap";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { LineKind, LinePoint } from "../line/lineKind";
import { next } from "../line/next";
import { lengthWords } from "../liveMarks";
import type { RectangleKind } from "../rectangle/kind";
import { asRectangle, beginRing, isRingWay, type RingWay } from "../rectangle/ways";
import type { ToolContext, ToolState } from "../tool";
import { typedPlace } from "../typedPlace";
import { areaWord, type FeatureKind, formHint, isKind, kindChoices } from "./kinds";

/** One length is what to keep clear; two are the place. */
const fields: readonly Field[] = [{ name: "keep clear", kind: "length", pair: true, first: true }];

interface Ready {
  readonly kind: FeatureKind;
  /** How an area is drawn. */
  readonly way: RingWay;
  /** What was typed for the things before stays for the next, m. */
  readonly keepClear: number;
  readonly typed: TypedValues;
  readonly at: Snap | null;
}

/** The kind chosen last, and what was kept clear of each kind and how it was drawn last, are offered when the tool is picked again. */
let lastKind: FeatureKind = "tree";
const lastClear = new Map<FeatureKind, number>();
const lastWay = new Map<FeatureKind, RingWay>();

/** Water has no straight edges; a house and a field of pipes have. */
function wayOf(kind: FeatureKind): RingWay {
  return lastWay.get(kind) ?? (kind === "water" ? "outline" : "corners");
}

/** What is kept clear to begin with: as typed last for the kind, else the usual where there is one, else nothing, m. */
function clearOf(kind: FeatureKind): number {
  return lastClear.get(kind) ?? usualKeepClear({ kind, trunk: null })?.m ?? 0;
}

export function ready(
  context: ToolContext,
  now: Ready = { kind: lastKind, way: wayOf(lastKind), keepClear: clearOf(lastKind), typed: {}, at: null },
): ToolState {
  const keepClear = now.typed["keep clear"] ?? now.keepClear;
  const again = (change: Partial<Ready>) => ready(context, { ...now, ...change });
  const home = () => ready(context, { ...now, keepClear, typed: {}, at: null });
  const isPlace = featureForms[now.kind] === "place";
  const typedAt = typedPlace(now.typed);
  const shown = typedAt ?? now.at;
  const begin = (at: Snap, held: boolean): ToolState => {
    remember(now.kind, now.typed);
    const drawn = { kind: now.kind, way: now.way, keepClear };
    const line = lineOf(context.project(), drawn);
    if (line.closed) {
      const rectangle = rectangleOf(context.project(), drawn);
      return beginRing(context, { line, rectangle }, { way: now.way, at, held }, home);
    }
    if (!isPlace) return next(context, line, { points: [at], to: at, typed: {}, held }, home);
    putFeature(context, now.kind, [at.at], keepClear);
    return home();
  };
  return {
    name: "ready",
    hint: formHint(context, now.kind, now.way),
    cursor: "crosshair",
    fields,
    marks: shown && (isPlace || typedAt) ? placeMarks(shown, keepClear) : [],
    snap: typedAt ? null : now.at,
    choices: kindChoices(context.project(), { kind: now.kind, way: now.way, keepClear }),
    choose(value) {
      if (isRingWay(value)) {
        lastWay.set(now.kind, value);
        return again({ way: value });
      }
      if (!isKind(value)) return again({});
      lastKind = value;
      return again({ kind: value, way: wayOf(value), keepClear: clearOf(value), typed: {} });
    },
    move: (pointer) => again({ at: aim(context, pointer) }),
    press: (pointer) => begin(aim(context, pointer), true),
    typed: (typed) => again({ typed }),
    // Enter takes a typed distance for what is clicked next.
    finish() {
      if (typedAt) {
        context.show(typedAt.at);
        return begin(typedAt, false);
      }
      remember(now.kind, now.typed);
      return home();
    },
    cancel: () => "leave",
    lost: () => again({ at: null }),
  };
}

function remember(kind: FeatureKind, { "keep clear": typed }: TypedValues): void {
  if (typed !== undefined) lastClear.set(kind, typed);
}

function placeMarks({ at }: Snap, keepClear: number): NonNullable<ToolState["marks"]> {
  const circle = Array.from({ length: 96 }, (_, k) => {
    const angle = ((k >> 1) / 48) * 2 * Math.PI;
    return k % 2 === 0 ? at[0] + keepClear * Math.cos(angle) : at[1] + keepClear * Math.sin(angle);
  });
  return [
    { kind: "symbol", at, symbol: "ring", size: 2.4, style: "preview-line" },
    ...(keepClear > 0 ? [{ kind: "line", points: circle, closed: true, style: "preview" } as const] : []),
  ];
}

type Drawn = Pick<Ready, "kind" | "way" | "keepClear">;

/** How a line or an area of this kind is drawn. */
function lineOf(project: Project, drawn: Drawn): LineKind {
  const { kind, keepClear } = drawn;
  const closed = featureForms[kind] === "area";
  const hint = (context: ToolContext) => formHint(context, kind, "outline");
  return {
    closed,
    least: closed ? 3 : 2,
    choices: kindChoices(project, drawn),
    hintFirst: hint,
    hintNext: hint,
    pieceText: (context, a, b) => lengthWords(distance(a, b), context.project()),
    commit: (context, points) => putFeature(context, kind, points.map(placeOf), keepClear),
  };
}

/** An area as a rectangle. */
function rectangleOf(project: Project, drawn: Drawn): RectangleKind {
  return asRectangle(lineOf(project, drawn), areaWord(drawn.kind), (way) =>
    kindChoices(project, { ...drawn, way }),
  );
}

const placeOf = ({ at }: LinePoint): Point => [at[0], at[1]];

/** Puts it on the lot with what is to be kept clear; the tool stays for the next. */
function putFeature(
  context: ToolContext,
  kind: FeatureKind,
  points: readonly Point[],
  keepClear: number,
): Edit {
  const edit = context.run(siteEdits.addFeature, { kind, points, keepClear });
  if (edit.ok && edit.made !== undefined) context.select([{ kind: "feature", id: edit.made }]);
  return edit;
}
