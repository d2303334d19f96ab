/** A piece of a wall is chosen: how far it is pulled out, or pushed in; its width can still be typed. */
import { buildingEdits, type Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { signedArea } from "../../../geometry";
import { wallEnds, wallName } from "../../select/places";
import { outlineCentre, wallOutward } from "../../select/shape";
import type { Snap } from "../../snap/snap";
import { handStep, roundTo } from "../../snap/step";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import { wayOnPlan } from "../arrowKeys";
import { alongPiece, areaWords, lengthWords, ringMarks } from "../liveMarks";
import { skews } from "../select/pullingWall";
import type { DrawnDimension, PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import type { PullKind } from "./choosingWall";
import { buildingChoices } from "./kinds";

export interface Pulling {
  readonly kind: PullKind;
  readonly wall: number;
  /** Where the piece begins and ends, along the wall from its first corner; a typed width counts from the beginning. */
  readonly from: number;
  readonly to: number;
  /** Out of the building, m. */
  readonly depth: number;
  /** Along the wall, while right angles are let go, m. */
  readonly slide: number;
  readonly typed: TypedValues;
  readonly snap?: Snap | null;
}

const sizeFields: readonly Field[] = [
  { name: "depth", kind: "length" },
  { name: "width", kind: "length" },
];

export function begunPull(kind: PullKind, wall: number, from: number, to: number): Pulling {
  return { kind, wall, from, to, depth: 0, slide: 0, typed: {} };
}

export function pullingOut(context: ToolContext, now: Pulling, home: ToolStart): ToolState {
  const outline = context.project().building?.outline ?? [];
  const depth = depthOf(now, now.depth);
  const again = (change: Partial<Pulling>) => pullingOut(context, { ...now, ...change }, home);
  const { wall } = now;
  const piece = pieceOf(now, lengthOf(outline, wall));
  const sized = { ...now, ...piece };
  const pulled =
    depth === 0 ? null : buildingEdits.pulledOutline(outline, { wall, ...piece, depth, slide: now.slide });
  const commit = (deep: number, slide: number): ToolState => {
    const args = { wall, ...piece, depth: deep, slide };
    const what = now.kind === "add-on" ? "add an add-on" : undefined;
    const edit = context.run(buildingEdits.pullOut, what === undefined ? args : { ...args, what });
    if (!edit.ok) return again({});
    context.setTool("select");
    context.select([{ kind: "building" }]);
    return home(context);
  };
  const aimed = (pointer: PlanPointer) => aimPull(context, sized, pointer);
  return {
    name: "pullingOut",
    hint: pulled && !pulled.ok ? pulled.why : hint(now, wallName(outline, wall)),
    cursor: pulled && !pulled.ok ? "not-allowed" : "move",
    fields: sizeFields,
    choices: buildingChoices(context.project(), now.kind),
    marks: pulled?.ok ? pulledMarks(context, sized, depth, pulled.outline) : bareMarks(outline, sized),
    dimensions: drawnDimensions(context, outline, sized, depth),
    snap: now.snap ?? null,
    move: (pointer) => again(aimed(pointer)),
    press(pointer) {
      const at = aimed(pointer);
      return commit(depthOf(now, at.depth), at.slide);
    },
    release: () => again({}),
    typed: (typed) => again({ typed }),
    finish: () => (depth === 0 ? again({}) : commit(depth, now.slide)),
    nudge(direction, large) {
      const outward = wallOutward(outline, wall) ?? [0, 0];
      const [east, north] = wayOnPlan(context, direction);
      const out = Math.sign(Math.round(10 * (east * outward[0] + north * outward[1])));
      const step = handStep(context.project().display.length, context.view().scale) * (large ? 10 : 1);
      const to = now.depth + out * step;
      return again({ depth: now.kind === "add-on" ? Math.max(0, to) : to, slide: 0, snap: null });
    },
    back: () => home(context),
    cancel: () => home(context),
    lost: () => again({}),
  };
}

function hint({ kind }: Pulling, name: string): string {
  return kind === "add-on"
    ? `Click how far the add-on stands out from wall ${name}, or type its depth, Tab, its width; Alt lets its right angles go`
    : `Pull the piece of wall ${name} out or in and click, or type how far, Tab, how wide; arrow keys push it too, Alt lets its right angles go`;
}

/** A typed depth goes the pointer's way; an add-on only stands out. */
function depthOf({ kind, typed }: Pulling, pointed: number): number {
  const deep = typed.depth === undefined ? Math.abs(pointed) : Math.abs(typed.depth);
  return kind === "add-on" || pointed >= 0 ? deep : -deep;
}

function lengthOf(outline: readonly Point[], wall: number): number {
  const ends = wallEnds(outline, wall);
  return ends ? Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]) : 0;
}

/** The piece with a typed width: from where it began, as far as the wall goes. */
function pieceOf(
  { from, to, typed }: Pulling,
  length: number,
): { readonly from: number; readonly to: number } {
  const end = typed.width === undefined ? to : from + (to < from ? -1 : 1) * Math.abs(typed.width);
  const kept = Math.max(0, Math.min(length, end));
  return { from: Math.min(from, kept), to: Math.max(from, kept) };
}

/** How far the pointer pulls: to a snapped place, else a round depth; along the wall too where right angles are let go. */
function aimPull(
  context: ToolContext,
  now: Pulling,
  pointer: PlanPointer,
): Pick<Pulling, "depth" | "slide" | "snap"> {
  const outline = context.project().building?.outline ?? [];
  const ends = wallEnds(outline, now.wall);
  const outward = wallOutward(outline, now.wall);
  if (!ends || !outward) return { depth: 0, slide: 0, snap: null };
  const length = lengthOf(outline, now.wall);
  const way: Point = [(ends[1][0] - ends[0][0]) / length, (ends[1][1] - ends[0][1]) / length];
  const off = ([x, y]: Point, [ux, uy]: Point) => (x - ends[0][0]) * ux + (y - ends[0][1]) * uy;
  const aimed = aim(context, pointer, { without: ({ kind }) => kind === "building" });
  const fixed = pointer.free || aimed.word !== null;
  const step = handStep(context.project().display.length, context.view().scale);
  const round = (m: number) => (fixed ? m : roundTo(m, step));
  const at = fixed ? aimed.at : pointer.at;
  // The middle of the piece goes to the pointer.
  const slide = skews(context, pointer) ? round(off(at, way) - (now.from + now.to) / 2) : 0;
  return { depth: round(off(at, outward)), slide, snap: aimed.word === null ? null : aimed };
}

/** So far, px, the figures keep from the pointer: a click there is meant for the piece. */
const clearOfPointer = 36;

/** Depth and width, to be typed over; the width at the wall, since the pointer is at the piece's front. */
function drawnDimensions(
  context: ToolContext,
  outline: readonly Point[],
  now: Pulling,
  depth: number,
): DrawnDimension[] {
  const base = piece(outline, now, 0);
  const front = piece(outline, now, depth);
  const isClear = Math.abs(depth) * context.view().scale > clearOfPointer;
  if (!base || !front || !isClear) return [];
  const of = now.kind === "add-on" ? "of the add-on" : "of the piece";
  return [
    { key: "width", label: `width ${of}`, m: now.to - now.from, ends: base, field: "width" },
    { key: "depth", label: `depth ${of}`, m: Math.abs(depth), ends: [base[1], front[1]], field: "depth" },
  ];
}

function piece(
  outline: readonly Point[],
  { wall, from, to, slide }: Pulling,
  out: number,
): readonly [Point, Point] | null {
  const ends = wallEnds(outline, wall);
  const outward = wallOutward(outline, wall);
  if (!ends || !outward) return null;
  const length = lengthOf(outline, wall);
  const [ux, uy] = [(ends[1][0] - ends[0][0]) / length, (ends[1][1] - ends[0][1]) / length];
  const aside = out === 0 ? 0 : slide;
  const at = (along: number, s = along + aside): Point => [
    ends[0][0] + ux * s + outward[0] * out,
    ends[0][1] + uy * s + outward[1] * out,
  ];
  return [at(from), at(to)];
}

function bareMarks(outline: readonly Point[], now: Pulling): DrawingMark[] {
  const ends = piece(outline, now, 0);
  return ends ? [{ kind: "line", points: ends.flat(), style: "preview-line" }] : [];
}

/** The outline as it would be, the piece's width and depth, what it adds and what the building comes to. */
function pulledMarks(
  context: ToolContext,
  now: Pulling,
  depth: number,
  pulled: readonly Point[],
): DrawingMark[] {
  const project = context.project();
  const outline = project.building?.outline ?? [];
  const base = piece(outline, now, 0);
  const front = piece(outline, now, depth);
  if (!base || !front) return [];
  const change = areaWords((now.to - now.from) * Math.abs(depth), project);
  const total = areaWords(Math.abs(signedArea(pulled)), project);
  return [
    ...ringMarks(pulled),
    alongPiece(base[0], base[1], lengthWords(now.to - now.from, project)),
    alongPiece(base[1], front[1], lengthWords(Math.abs(depth), project)),
    {
      kind: "text",
      at: outlineCentre(outline),
      text: `${depth > 0 ? "adds" : "takes"} ${change}, in all ${total}`,
      style: "building-sublabel",
      anchor: "middle",
      halo: true,
    },
  ];
}
