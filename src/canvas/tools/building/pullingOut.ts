/** A piece of a wall is chosen: how far it is pulled out, or pushed in. */
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
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import type { PullKind } from "./choosingWall";
import { buildingChoices } from "./kinds";

export interface Pulling {
  readonly kind: PullKind;
  readonly wall: number;
  readonly from: number;
  readonly to: number;
  /** Out of the building, m. */
  readonly depth: number;
  readonly typed: TypedValues;
  readonly snap?: Snap | null;
}

const depthFields: readonly Field[] = [{ name: "depth", kind: "length" }];

export function pullingOut(context: ToolContext, now: Pulling, home: ToolStart): ToolState {
  const outline = context.project().building?.outline ?? [];
  const depth = depthOf(now, now.depth);
  const again = (change: Partial<Pulling>) => pullingOut(context, { ...now, ...change }, home);
  const { wall, from, to } = now;
  const pulled = depth === 0 ? null : buildingEdits.pulledOutline(outline, { wall, from, to, depth });
  const commit = (deep: number): ToolState => {
    const args = { wall, from, to, depth: deep };
    const what = now.kind === "add-on" ? "add an add-on" : undefined;
    const edit = context.run(buildingEdits.pullOut, what === undefined ? args : { ...args, what });
    if (!edit.ok) return again({});
    context.setTool("select");
    context.select([{ kind: "building" }]);
    return home(context);
  };
  const aimed = (pointer: PlanPointer) => aimDepth(context, now, pointer);
  return {
    name: "pullingOut",
    hint: pulled && !pulled.ok ? pulled.why : hint(now, wallName(outline, wall)),
    cursor: pulled && !pulled.ok ? "not-allowed" : "move",
    fields: depthFields,
    choices: buildingChoices(context.project(), now.kind),
    marks: pulled?.ok ? pulledMarks(context, now, depth, pulled.outline) : bareMarks(outline, now),
    snap: now.snap ?? null,
    move: (pointer) => again(aimed(pointer)),
    press: (pointer) => commit(depthOf(now, aimed(pointer).depth)),
    release: () => again({}),
    typed: (typed) => again({ typed }),
    finish: () => (depth === 0 ? again({}) : commit(depth)),
    nudge(direction, large) {
      const outward = wallOutward(outline, wall) ?? [0, 0];
      const [east, north] = wayOnPlan(context, direction);
      const out = Math.sign(Math.round(10 * (east * outward[0] + north * outward[1])));
      const step = handStep(context.project().display.length, context.view().scale) * (large ? 10 : 1);
      const to = now.depth + out * step;
      return again({ depth: now.kind === "add-on" ? Math.max(0, to) : to, snap: null });
    },
    back: () => home(context),
    cancel: () => home(context),
    lost: () => again({}),
  };
}

function hint({ kind }: Pulling, name: string): string {
  return kind === "add-on"
    ? `Click how far the add-on stands out from wall ${name}, or type its depth`
    : `Pull the piece of wall ${name} out or in and click, or type how far; arrow keys push it too`;
}

/** A typed depth goes the pointer's way; an add-on only stands out. */
function depthOf({ kind, typed }: Pulling, pointed: number): number {
  const deep = typed.depth === undefined ? Math.abs(pointed) : Math.abs(typed.depth);
  return kind === "add-on" || pointed >= 0 ? deep : -deep;
}

/** How far the pointer pulls: to a snapped place, else a round depth. */
function aimDepth(context: ToolContext, now: Pulling, pointer: PlanPointer): Pick<Pulling, "depth" | "snap"> {
  const outline = context.project().building?.outline ?? [];
  const ends = wallEnds(outline, now.wall);
  const outward = wallOutward(outline, now.wall);
  if (!ends || !outward) return { depth: 0, snap: null };
  const out = ([x, y]: Point) => (x - ends[0][0]) * outward[0] + (y - ends[0][1]) * outward[1];
  const aimed = aim(context, pointer, { without: ({ kind }) => kind === "building" });
  if (pointer.free || aimed.word !== null)
    return { depth: out(aimed.at), snap: aimed.word === null ? null : aimed };
  const step = handStep(context.project().display.length, context.view().scale);
  return { depth: roundTo(out(pointer.at), step), snap: null };
}

function piece(
  outline: readonly Point[],
  { wall, from, to }: Pulling,
  out: number,
): readonly [Point, Point] | null {
  const ends = wallEnds(outline, wall);
  const outward = wallOutward(outline, wall);
  if (!ends || !outward) return null;
  const length = Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
  const [ux, uy] = [(ends[1][0] - ends[0][0]) / length, (ends[1][1] - ends[0][1]) / length];
  const at = (s: number): Point => [
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
    alongPiece(front[0], front[1], lengthWords(now.to - now.from, project)),
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
