/** A wall under the hand: pulled out or in, its neighbours keep their directions, so right angles stay. */
import { buildingEdits, type Point, type Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { distance } from "../../../geometry";
import { formatSigned, roundingFor } from "../../../units";
import { cornerName, wallEnds, wallName } from "../../select/places";
import { pullForLength, pullWall, wallOutward } from "../../select/shape";
import type { Snap } from "../../snap/snap";
import { handStep, roundTo } from "../../snap/step";
import { type SnapDirection, snapTargets } from "../../snap/targets";
import { aim } from "../aim";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { type DragStep, startDrag } from "./dragging";

interface OutlineArgs {
  readonly outline: readonly Point[];
  readonly what?: string;
}

export function pullingWall(
  context: ToolContext,
  wall: number,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const project = context.project();
  const outline = project.building?.outline ?? [];
  const reach = pullReach(context, wall);
  const nextWall = (wall + 1) % outline.length;
  return startDrag(
    context,
    {
      name: "pullingWall",
      hint: `Pulls wall ${wallName(outline, wall)}; type the new length of wall ${wallName(outline, nextWall)}, hold Shift for any length, Alt to let the right angles go`,
      cursor: "move",
      fields: [{ name: "length", kind: "length" }],
      command: buildingEdits.setOutline,
      at(now, typed) {
        if (typed.length === undefined && skews(context, now)) return skewed(context, wall, now);
        const by = typed.length === undefined ? reach(now) : pullForLength(outline, wall, typed.length);
        const pulled = pullWall(outline, wall, by);
        if (!pulled) return null;
        return {
          args: { outline: pulled, what: "pull a wall" },
          marks: sideMarks(project, pulled, wall, by),
        };
      },
    },
    pointer,
    home,
  );
}

/** Alt is the other way round than the person's choice. */
export function skews(context: ToolContext, pointer: PlanPointer): boolean {
  return context.snapping().rightAngles === pointer.copies;
}

/** The wall is carried along as it is, wherever the pointer goes; its neighbours swing with it. */
function skewed(context: ToolContext, wall: number, pointer: PlanPointer): DragStep<OutlineArgs> | null {
  const project = context.project();
  const outline = project.building?.outline ?? [];
  const ends = wallEnds(outline, wall);
  if (!ends) return null;
  const step = handStep(project.display.length, context.view().scale);
  const round = (m: number) => (pointer.free ? m : roundTo(m, step));
  const middle: Point = [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2];
  const kept = alongNeighbours(context, outline, wall, middle, pointer);
  const [dx, dy]: Point = kept
    ? [kept.at[0] - middle[0], kept.at[1] - middle[1]]
    : [round(pointer.at[0] - middle[0]), round(pointer.at[1] - middle[1])];
  const next = (wall + 1) % outline.length;
  const carried = outline.map(([x, y], i): Point => (i === wall || i === next ? [x + dx, y + dy] : [x, y]));
  const n = carried.length;
  const texts = [next, (wall + n - 1) % n].flatMap((side): DrawingMark[] => {
    const at = wallEnds(carried, side);
    return at ? [alongPiece(at[0], at[1], lengthWords(distance(at[0], at[1]), project))] : [];
  });
  return { args: { outline: carried, what: "move a wall" }, marks: texts, snap: kept };
}

/** A wall that is carried goes straight, or along a neighbour, which then keeps its direction; null where it isn't near that. */
function alongNeighbours(
  context: ToolContext,
  outline: readonly Point[],
  wall: number,
  from: Point,
  pointer: PlanPointer,
): Snap | null {
  const n = outline.length;
  const lot = snapTargets(context.project(), ({ kind }) => kind === "building");
  const own = [(wall + n - 1) % n, (wall + 1) % n].flatMap((side): SnapDirection[] => {
    const at = wallEnds(outline, side);
    if (!at) return [];
    const angle = Math.atan2(at[1][1] - at[0][1], at[1][0] - at[0][0]);
    return [{ angle, of: `wall ${wallName(outline, side)}` }];
  });
  const targets = { points: [], edges: [], circles: [], directions: [...own, ...lot.directions] };
  const aimed = aim(context, pointer, { from, targets });
  return aimed.guide === from ? aimed : null;
}

/** How far the pointer pulls a wall out, m: to a snapped place, else so that the neighbour's length is round. */
function pullReach(context: ToolContext, wall: number): (pointer: PlanPointer) => number {
  const project = context.project();
  const outline = project.building?.outline ?? [];
  const outward = wallOutward(outline, wall) ?? [0, 1];
  const ends = wallEnds(outline, wall);
  const next = wallEnds(outline, (wall + 1) % outline.length);
  if (!ends || !next) return () => 0;
  const length = Math.hypot(next[1][0] - next[0][0], next[1][1] - next[0][1]);
  const targets = snapTargets(project, ({ kind }) => kind === "building");
  const step = handStep(project.display.length, context.view().scale);
  const off = ([x, y]: Point) => (x - ends[0][0]) * outward[0] + (y - ends[0][1]) * outward[1];
  return (pointer) => {
    const aimed = aim(context, pointer, { targets: { ...targets, directions: [] } });
    if (pointer.free || aimed.word !== null) return off(aimed.at);
    return roundTo(length + off(pointer.at), step) - length;
  };
}

/** The new lengths of the two walls that grow or shrink, and by how much. */
function sideMarks(project: Project, pulled: readonly Point[], wall: number, by: number): DrawingMark[] {
  const n = pulled.length;
  const { display } = project;
  const change = formatSigned(by, display.length, roundingFor(display.length, display));
  const sides = [(wall + 1) % n, (wall + n - 1) % n];
  const pulledEnds = wallEnds(pulled, wall);
  const texts = sides.flatMap((side, i): DrawingMark[] => {
    const ends = wallEnds(pulled, side);
    if (!ends) return [];
    const length = lengthWords(Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]), project);
    return [alongPiece(ends[0], ends[1], i === 0 ? `${length} (${change})` : length)];
  });
  return [
    ...(pulledEnds
      ? [{ kind: "line", points: pulledEnds.flat(), style: "preview-line" } satisfies DrawingMark]
      : []),
    ...texts,
  ];
}

/** Length of the wall after this one: what a click on this wall's handle asks for. */
export function neighbourLength(outline: readonly Point[], wall: number): { name: string; m: number } | null {
  const next = (wall + 1) % outline.length;
  const ends = wallEnds(outline, next);
  if (!ends) return null;
  return {
    name: `wall ${cornerName(next)}–${cornerName((next + 1) % outline.length)}`,
    m: Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]),
  };
}
