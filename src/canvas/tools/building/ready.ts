/** Building, nothing drawn yet: how it is drawn can be chosen; the first press is a corner, a typed size a whole building. */
import type { Snap } from "../../snap/snap";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { lengthWords } from "../liveMarks";
import { aimCorner, firstSizeFields, typedCorner } from "../rectangle/aimCorner";
import { cornerMarks, rectangleMarks } from "../rectangle/marks";
import type { Rectangle } from "../rectangle/rectangle";
import { sizedRectangle } from "../rectangle/sized";
import { beginRing, isRingWay } from "../rectangle/ways";
import type { ToolContext, ToolStart, ToolState } from "../tool";
import { choosingWall } from "./choosingWall";
import { type BuildingKind, buildingChoices, isBuildingKind } from "./kinds";
import { outlineKind } from "./outlineKind";
import { notItself, rectangleKind } from "./rectangleKind";

export interface Ready {
  readonly kind: BuildingKind;
  readonly at: Snap | null;
  readonly typed: TypedValues;
}

/** The first corner of an outline or a side can be typed as a place of the plan. */
const cornerFields: readonly Field[] = [{ name: "east, north", kind: "place" }];

const start: Ready = { kind: "corners", at: null, typed: {} };

export function ready(context: ToolContext, now: Ready = start): ToolState {
  const project = context.project();
  const home: ToolStart = (again) => ready(again, { ...start, kind: now.kind });
  const choose = (value: string) =>
    ready(context, { ...start, kind: isBuildingKind(value) ? value : now.kind });
  const choices = buildingChoices(project, now.kind);
  if (project.building && (now.kind === "pull" || now.kind === "add-on"))
    return { ...choosingWall(context, now.kind, home), choices, choose };
  const sized = typedRectangle(context, now);
  const corner = typedCorner(now.typed, null);
  const again = (change: Partial<Ready>) => ready(context, { ...now, ...change });
  const { width } = now.typed;
  const state: ToolState = {
    name: "ready",
    hint: sized ? "Click to put it here, or press Enter" : hint(context, now.kind),
    cursor: "crosshair",
    fields: now.kind === "corners" ? firstSizeFields : cornerFields,
    marks: sized ? rectangleMarks(sized, project) : corner ? cornerMarks(corner.at, project) : [],
    snap: corner ? null : now.at,
    choices,
    choose,
    move: (pointer) => again({ at: aimCorner(context, pointer, notItself) }),
    typed: (typed) => again({ typed }),
    press: (pointer) => begun(context, now, aimCorner(context, pointer, notItself), true, home),
    finish() {
      if (corner) {
        context.show(corner.at);
        return begun(context, now, corner, false, home);
      }
      if (sized) return commit(context, sized, home);
      if (width === undefined) return again({});
      // What was typed stays.
      context.say("Still missing: the building's depth. Type it, or click a corner.");
      return state;
    },
    cancel: () => "leave",
    lost: () => again({ at: null, typed: {} }),
  };
  return state;
}

function hint(context: ToolContext, kind: BuildingKind): string {
  const redraws = context.project().building ? "Draws the building anew: " : "";
  const [long, deep] = [9.7536, 7.3152].map((m) => lengthWords(m, context.project()).replace(/ 0″$/, ""));
  const words = {
    corners: `press at one corner and drag to the opposite one, or type a size (${long}, Tab, ${deep}) or a corner's place`,
    side: "click one end of a side, or type where it is",
    outline: "click the first corner, or type where it is",
  };
  const text = words[kind === "side" || kind === "outline" ? kind : "corners"];
  return redraws === "" ? text.charAt(0).toUpperCase() + text.slice(1) : redraws + text;
}

/** From its first corner on; `held` while the press that set it goes on. */
function begun(context: ToolContext, now: Ready, from: Snap, held: boolean, home: ToolStart): ToolState {
  const whole = typedRectangle(context, { ...now, at: from });
  if (whole) return commit(context, whole, home);
  const kinds = { line: outlineKind(context), rectangle: rectangleKind(context) };
  const way = isRingWay(now.kind) ? now.kind : "corners";
  return beginRing(context, kinds, { way, at: from, held }, home);
}

function typedRectangle(context: ToolContext, { kind, at, typed }: Ready): Rectangle | null {
  return kind === "corners" ? sizedRectangle(context, { at, typed }) : null;
}

function commit(context: ToolContext, { outline }: Rectangle, home: ToolStart): ToolState {
  rectangleKind(context).commit(context, outline);
  return home(context);
}
