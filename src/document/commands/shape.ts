/**
 * Edits of one place or one side of a thing by its figures.
 *
 * Units   metres. Place i is point i of the thing's shape; the only place of a picture, door or window is its middle.
 * Source  first principles.
 */
import { isRightAngled } from "../../geometry";
import type { Point, Project } from "../schema";
import type { Thing } from "../thing";
import { kindWord, thingKindWord, thingShape } from "../things";
import { handFault } from "./arrange";
import { setBreaklinePlaces } from "./breaklines";
import { changeDoor, setOutline } from "./building";
import { command, done, type Edit, refuse } from "./command";
import { changeDimension, changeNote, changeSection, changeUnderlay } from "./drawing";
import { setShapePlaces } from "./grading";
import { changePit } from "./pits";
import { changeDrive, changeFeature, changeSwale, setLotOutline } from "./site";
import { changeMark, placeShot } from "./survey";
import { changeWindow } from "./windows";

/** Puts one place of a thing elsewhere. A drive whose end is moved is no longer tied to its door. */
export const setPlace = command(
  "shape.setPlace",
  (project, args: { thing: Thing; index: number; to: Point }): Edit => {
    const fault = handFault(project, [args.thing]);
    if (fault) return refuse(fault);
    if (!Number.isFinite(args.to[0]) || !Number.isFinite(args.to[1]))
      return refuse("The place is not a number.");
    const what = `move a place of the ${thingKindWord(project, args.thing)}`;
    if (args.thing.kind === "underlay")
      return changeUnderlay.run(project, { id: args.thing.id, patch: { at: args.to }, what });
    if (args.thing.kind === "door" || args.thing.kind === "window")
      return slideOpening(project, args.thing, args.to, what);
    const points = thingShape(project, args.thing)?.points ?? [];
    if (!points[args.index]) return refuse(`The ${kindWord(args.thing.kind)} has no such place.`);
    const moved = points.map((at, i): Point => (i === args.index ? args.to : at));
    return setPoints(project, args.thing, moved, args.index, what);
  },
);

function setPoints(project: Project, thing: Thing, points: Point[], index: number, what: string): Edit {
  switch (thing.kind) {
    case "building":
      return setOutline.run(project, { outline: points, what });
    case "lot":
      return relabelled(setLotOutline.run(project, { outline: points }), what);
    case "drive": {
      const drive = project.grading.drives.find(({ id }) => id === thing.id);
      const patch = movesEnd(drive?.line ?? [], points) ? { line: points, door: null } : { line: points };
      return changeDrive.run(project, { id: thing.id, patch, what });
    }
    case "swale":
      return changeSwale.run(project, { id: thing.id, patch: { line: points }, what });
    case "pad":
    case "berm":
    case "retaining-wall":
    case "grade-point":
      return setShapePlaces.run(project, { thing, points, what });
    case "breakline":
      return setBreaklinePlaces.run(project, { id: thing.id, points, what });
    case "pit": {
      const [x, y] = points[0] as Point;
      return changePit.run(project, { id: thing.id, patch: { place: { kind: "at", x, y } }, what });
    }
    case "feature":
      return relabelled(changeFeature.run(project, { id: thing.id, patch: { points } }), what);
    case "section":
      return changeSection.run(project, {
        id: thing.id,
        patch: { line: [points[0] as Point, points[1] as Point] },
        what,
      });
    case "note":
      return changeNote.run(project, {
        id: thing.id,
        patch: { at: points[0] as Point, pointsTo: points[1] ?? null },
        what,
      });
    case "dimension": {
      const [x, y] = points[index] as Point;
      const end = { kind: "at", x, y } as const;
      return changeDimension.run(project, {
        id: thing.id,
        patch: index === 0 ? { from: end } : { to: end },
        what,
      });
    }
    case "mark":
      return changeMark.run(project, { id: thing.id, patch: { at: points[0] as Point } });
    case "shot": {
      const [x, y] = points[0] as Point;
      return placeShot.run(project, { id: thing.id, place: { kind: "at", x, y } });
    }
    default:
      return refuse(`A ${kindWord(thing.kind)} is placed along its wall.`);
  }
}

/** Slides a door or window along its wall until its middle has the coordinate that was typed. */
function slideOpening(
  project: Project,
  { kind, id }: { readonly kind: "door" | "window"; readonly id: string },
  to: Point,
  what: string,
): Edit {
  const [a, b] = thingShape(project, { kind, id })?.points ?? [];
  const { building } = project;
  const opening = (kind === "door" ? building?.doors : building?.windows)?.find((each) => each.id === id);
  const width = a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
  if (!a || !b || !opening || width === 0) return refuse(`That ${kind} is gone.`);
  const along: Point = [(b[0] - a[0]) / width, (b[1] - a[1]) / width];
  const by: Point = [to[0] - (a[0] + b[0]) / 2, to[1] - (a[1] + b[1]) / 2];
  const axis = Math.abs(by[0]) >= Math.abs(by[1]) ? 0 : 1;
  if (Math.abs(by[axis]) < 1e-9) return done(project, what);
  if (Math.abs(along[axis]) < 1e-6)
    return refuse(
      `The ${opening.name} stays on its wall, which runs straight ${axis === 0 ? "north and south" : "east and west"}: type how far ${axis === 0 ? "north" : "east"} it is.`,
    );
  const offset = opening.offset + by[axis] / along[axis];
  const edit =
    kind === "door"
      ? changeDoor.run(project, { id, patch: { offset } })
      : changeWindow.run(project, { id, patch: { offset } });
  return relabelled(edit, what);
}

function movesEnd(before: readonly Point[], after: readonly Point[]): boolean {
  const [a, b] = [before.at(-1), after.at(-1)];
  return !a || !b || a[0] !== b[0] || a[1] !== b[1];
}

function relabelled(edit: Edit, label: string): Edit {
  return edit.ok ? { ...edit, label } : edit;
}

/**
 * Gives side i of a thing (from place i to the next) a length; its direction stays. On a building, and
 * on an area whose corners are all right, the next side goes along whole, so that right angles stay; on a lot or another
 * area only its corner moves; on a line all that follows.
 */
export const setSide = command(
  "shape.setSide",
  (project, args: { thing: Thing; side: number; length: number }): Edit => {
    const fault = handFault(project, [args.thing]);
    if (fault) return refuse(fault);
    if (!(args.length >= 0.01)) return refuse("A side needs a length of more than nothing.");
    const shape = thingShape(project, args.thing);
    const n = shape?.points.length ?? 0;
    const [a, b] = [shape?.points[args.side], shape?.points[(args.side + 1) % n]];
    const now = a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
    if (!shape || !a || !b || now === 0 || (!shape.closed && args.side > n - 2))
      return refuse(`The ${kindWord(args.thing.kind)} has no such side.`);
    if (args.thing.kind === "dimension")
      return refuse("A dimension shows what it measures. Move its ends instead.");
    const grow = (args.length - now) / now;
    const by: Point = [(b[0] - a[0]) * grow, (b[1] - a[1]) * grow];
    const goes = goingAlong(args.thing, args.side, shape);
    const points = shape.points.map(([x, y], i): Point => (goes(i) ? [x + by[0], y + by[1]] : [x, y]));
    if (Math.abs(args.length - now) < 1e-9) return done(project, "side");
    return setPoints(
      project,
      args.thing,
      points,
      args.side + 1,
      `set a side of the ${thingKindWord(project, args.thing)}`,
    );
  },
);

function goingAlong(
  thing: Thing,
  side: number,
  { points, closed }: { readonly points: readonly Point[]; readonly closed: boolean },
): (i: number) => boolean {
  const n = points.length;
  if (!closed) return (i) => i > side;
  const square = thing.kind === "building" || (thing.kind !== "lot" && isRightAngled(points));
  if (!square) return (i) => i === (side + 1) % n;
  return (i) => i === (side + 1) % n || i === (side + 2) % n;
}
