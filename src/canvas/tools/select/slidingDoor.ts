/** A door or a window under the hand: slid along its wall, or made wider or narrower by one of its edges. */
import {
  buildingEdits,
  type Door,
  type EditCommand,
  type Point,
  type Project,
  type Window,
  windowEdits,
} from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { nearestShare } from "../../../geometry";
import type { OpeningRef } from "../../select/handles";
import { findOpening, wallEnds, wallName } from "../../select/places";
import { handStep, roundTo } from "../../snap/step";
import { snapPixels } from "../aim";
import { doorMarks } from "../door/doorKind";
import { slidTo, type WallPlace } from "../door/wallPlace";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { windowMarks } from "../window/windowKind";
import { startDrag } from "./dragging";

interface OnWall {
  readonly ends: readonly [Point, Point];
  readonly length: number;
  readonly name: string;
}

function wallOf(context: ToolContext, door: Door | Window): OnWall | null {
  const outline = context.project().building?.outline;
  const ends = outline && wallEnds(outline, door.wall);
  if (!outline || !ends) return null;
  const length = Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
  return { ends, length, name: wallName(outline, door.wall) };
}

type Change = EditCommand<{ id: string; patch: { offset?: number; width?: number } }>;

/** What differs between the two. */
const openings: Readonly<
  Record<OpeningRef["kind"], { change: Change; marks(project: Project, place: WallPlace): DrawingMark[] }>
> = {
  door: { change: buildingEdits.changeDoor, marks: doorMarks },
  window: { change: windowEdits.changeWindow, marks: windowMarks },
};

const alongWall = (wall: OnWall, [x, y]: Point) =>
  nearestShare(wall.ends[0], wall.ends[1], x, y) * wall.length;

export function slidingDoor(
  context: ToolContext,
  of: OpeningRef,
  from: Point,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const { id } = of;
  const { change, marks } = openings[of.kind];
  const door = findOpening(context.project(), of);
  const wall = door && wallOf(context, door);
  if (!door || !wall) return home(context);
  const held = alongWall(wall, from) - (door.offset + door.width / 2);
  const { scale } = context.view();
  return startDrag(
    context,
    {
      name: "slidingDoor",
      hint: `Slides the ${door.name} along wall ${wall.name}; type its distance from the wall's first corner`,
      cursor: "move",
      fields: [{ name: "offset", kind: "length" }],
      command: change,
      at(now, typed) {
        const step = handStep(context.project().display.length, scale);
        const aimAt = { catches: snapPixels.mouse / scale, step, free: now.free };
        const middle =
          typed.offset === undefined ? alongWall(wall, now.at) - held : typed.offset + door.width / 2;
        const free = now.free || typed.offset !== undefined;
        const slid = slidTo(wall.ends, wall.length, door.width, middle, { ...aimAt, free });
        const place: WallPlace = { ...slid, wall: door.wall, name: wall.name };
        return { args: { id, patch: { offset: place.offset } }, marks: marks(context.project(), place) };
      },
    },
    pointer,
    home,
  );
}

/** Narrower than this nobody walks through, m. */
const narrowest = 0.3;

export function pullingDoorEdge(
  context: ToolContext,
  of: OpeningRef,
  edge: 0 | 1,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const { id } = of;
  const { change, marks } = openings[of.kind];
  const door = findOpening(context.project(), of);
  const wall = door && wallOf(context, door);
  if (!door || !wall) return home(context);
  const fixed = edge === 0 ? door.offset + door.width : door.offset;
  return startDrag(
    context,
    {
      name: "pullingDoorEdge",
      hint: `Makes the ${door.name} wider or narrower; type its width`,
      cursor: "move",
      fields: [{ name: "width", kind: "length" }],
      command: change,
      at(now, typed) {
        const step = handStep(context.project().display.length, context.view().scale);
        const room = edge === 0 ? fixed : wall.length - fixed;
        const pulled = Math.abs(alongWall(wall, now.at) - fixed);
        const width = typed.width ?? (now.free ? pulled : roundTo(pulled, step));
        const clear = Math.min(room, Math.max(narrowest, width));
        const offset = edge === 0 ? fixed - clear : fixed;
        const slid = slidTo(wall.ends, wall.length, clear, offset + clear / 2, {
          catches: 0,
          step,
          free: true,
        });
        const place: WallPlace = { ...slid, wall: door.wall, name: wall.name };
        return { args: { id, patch: { offset, width: clear } }, marks: marks(context.project(), place) };
      },
    },
    pointer,
    home,
  );
}
