/** Building, nothing drawn yet: how it is drawn can be chosen; the first press is a corner, a typed size a whole building. */
import type { Point } from "../../../document";
import type { Snap } from "../../snap/snap";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { next } from "../line/next";
import { lengthWords } from "../liveMarks";
import type { ToolContext, ToolStart, ToolState } from "../tool";
import { aimCorner, firstSizeFields, typedCorner } from "./aimCorner";
import { drawingSide } from "./bySide";
import { choosingWall } from "./choosingWall";
import { commitRectangle } from "./commit";
import { drawing } from "./drawing";
import { type BuildingKind, buildingChoices, isBuildingKind } from "./kinds";
import { cornerMarks, rectangleMarks } from "./marks";
import { outlineKind } from "./outlineKind";
import { draggedRectangle, type Rectangle } from "./rectangle";

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
    move: (pointer) => again({ at: aimCorner(context, pointer) }),
    typed: (typed) => again({ typed }),
    press: (pointer) => begun(context, now, aimCorner(context, pointer), true, home),
    finish() {
      if (corner) {
        context.show(corner.at);
        return begun(context, now, corner, false, home);
      }
      if (sized) return commitRectangle(context, sized, home);
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
  if (now.kind === "outline")
    return next(context, outlineKind(context), { points: [from], to: from, typed: {}, held }, home);
  if (now.kind === "side") return drawingSide(context, { from: from.at, to: from, typed: {}, held }, home);
  const whole = typedRectangle(context, { ...now, at: from });
  if (whole) return commitRectangle(context, whole, home);
  return drawing(context, { from: from.at, to: from, typed: {} }, home);
}

/** A size typed before any press: the low-left corner lies under the pointer, or in the middle of the view. */
function typedRectangle(context: ToolContext, { kind, at, typed }: Ready): Rectangle | null {
  if (kind !== "corners" || typed.width === undefined || typed.depth === undefined) return null;
  const [cx, cy] = context.view().centre;
  const from: Point = at ? at.at : [cx - typed.width / 2, cy - typed.depth / 2];
  return draggedRectangle(from, [from[0] + 1, from[1] + 1], typed);
}
