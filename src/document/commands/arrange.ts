/**
 * Edits of any things together: moved, turned, mirrored, lined up, taken away; one undo step each.
 *
 * Units   metres, radians counter-clockwise.
 * Errors  what is locked, gone or can't be done with a kind of thing is refused with its name.
 */
import type { Building, Point, Project } from "../schema";
import type { Thing } from "../thing";
import { hasThing, isLocked, kindWord, thingKindWord, thingName, thingShape } from "../things";
import { removeBreakline } from "./breaklines";
import { changeDoor, removeBuilding, removeDoor, wallLength } from "./building";
import { command, done, type Edit, refuse } from "./command";
import { removeDrawn } from "./drawing";
import { removeShape } from "./grading";
import { type Motion, mirroring, movedAlone, movedThings, shifting, turning } from "./motion";
import { removePit } from "./pits";
import { removeDrive, removeFeature, removeSwale, setLotOutline } from "./site";
import { removeMark, removeShots } from "./survey";
import { changeWindow, removeWindow } from "./windows";

export { copiedThings, copyFault, duplicateThings, pasteThings } from "./duplicate";

interface Together {
  readonly things: readonly Thing[];
  readonly mergeKey?: string;
}

/** "drive", or "3 things". */
export function thingsWord(project: Project, things: readonly Thing[]): string {
  const [only] = things;
  return only && things.length === 1 ? thingKindWord(project, only) : `${things.length} things`;
}

/** Why these can't be changed by hand, in words; null where they can. */
export function handFault(project: Project, things: readonly Thing[]): string | null {
  if (things.length === 0) return "Select something first.";
  const gone = things.find((thing) => !hasThing(project, thing));
  if (gone) return `That ${kindWord(gone.kind)} is gone.`;
  const locked = things.find((thing) => isLocked(project, thing));
  return locked ? `${capital(thingName(project, locked))} is locked. Unlock it first.` : null;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

type OpeningRef = Extract<Thing, { kind: "door" | "window" }>;

/** Doors and windows that don't go along with their building. */
function openingsAlone(things: readonly Thing[]): OpeningRef[] {
  if (things.some(({ kind }) => kind === "building")) return [];
  return things.filter((thing): thing is OpeningRef => thing.kind === "door" || thing.kind === "window");
}

function moved(project: Project, args: Together, motion: Motion, verb: string): Edit {
  const more = args.mergeKey === undefined ? {} : { mergeKey: args.mergeKey };
  const next = movedThings(project, args.things, motion);
  const broken = [...(next.building?.outline ?? []), ...next.lot.outline].some((at) => !isPlace(at));
  return broken
    ? refuse("That leads to a place that is not a number.")
    : done(next, `${verb} ${thingsWord(project, args.things)}`, more);
}

function isPlace([x, y]: Point): boolean {
  return Number.isFinite(x) && Number.isFinite(y);
}

/**
 * Shifts the things. Doors and windows without their building slide along their wall; a note by itself leaves what it
 * points to, a dimension by itself stands off farther or nearer.
 */
export const moveThings = command("arrange.move", (project, args: Together & { by: Point }): Edit => {
  const fault = handFault(project, args.things);
  if (fault) return refuse(fault);
  if (!isPlace(args.by)) return refuse("How far to move is not a number.");
  if (args.by[0] === 0 && args.by[1] === 0) return done(project, "move");
  const more = args.mergeKey === undefined ? {} : { mergeKey: args.mergeKey };
  const [only] = args.things;
  const byItself = only && args.things.length === 1 ? movedAlone(project, only, args.by) : null;
  if (byItself) return done(byItself, `move ${thingsWord(project, args.things)}`, more);
  const alone = openingsAlone(args.things);
  let now = project;
  for (const opening of alone) {
    const edit = slid(now, opening, args.by);
    if (!edit.ok) return edit;
    now = edit.project;
  }
  const others = args.things.filter((thing) => !alone.some((opening) => opening === thing));
  if (others.length > 0) return moved(now, { ...args, things: others }, shifting(args.by), "move");
  return done(now, `move ${thingsWord(project, args.things)}`, more);
});

function slid(project: Project, ref: OpeningRef, by: Point): Edit {
  const { building } = project;
  const opening = building && openingOf(building, ref);
  if (!building || !opening) return refuse(`That ${ref.kind} is gone.`);
  const { outline } = building;
  const [a, b] = [outline[opening.wall], outline[(opening.wall + 1) % outline.length]];
  const length = wallLength(outline, opening.wall);
  if (!a || !b || length === 0) return refuse("The building has no such wall.");
  const along = ((b[0] - a[0]) * by[0] + (b[1] - a[1]) * by[1]) / length;
  const offset = Math.max(0, Math.min(length - opening.width, opening.offset + along));
  const change = ref.kind === "door" ? changeDoor : changeWindow;
  return change.run(project, { id: ref.id, patch: { offset } });
}

function openingOf(building: Building, { kind, id }: OpeningRef) {
  return (kind === "door" ? building.doors : building.windows).find((each) => each.id === id);
}

/** Turns the things about a place. */
export const turnThings = command(
  "arrange.turn",
  (project, args: Together & { about: Point; angle: number }): Edit => {
    const fault = handFault(project, args.things) ?? openingFault(args.things);
    if (fault) return refuse(fault);
    if (!isPlace(args.about) || !Number.isFinite(args.angle)) return refuse("The turn is not a number.");
    const edit = moved(project, args, turning(args.about, args.angle), "turn");
    return edit.ok && standAlike(project, edit.project, args.things) ? { ...edit, project } : edit;
  },
);

/** Less than this is only rounding, m. */
const rounding = 1e-9;

/** Do the things stand as they did? A round thing turned about its middle does. */
function standAlike(before: Project, after: Project, things: readonly Thing[]): boolean {
  return things.every((thing) => {
    const [was, is] = [before, after].map((project) => thingShape(project, thing)?.points ?? []);
    return was?.every(([x, y], i) => {
      const at = is?.[i];
      return at !== undefined && Math.hypot(at[0] - x, at[1] - y) < rounding;
    });
  });
}

/** Why these can't be turned or mirrored: a door goes with its wall alone. */
export function openingFault(things: readonly Thing[]): string | null {
  const [opening] = openingsAlone(things);
  return opening ? `A ${opening.kind} stays in its wall. Take the building with it, or leave it out.` : null;
}

/** Mirrors the things about the line through a and b. */
export const mirrorThings = command(
  "arrange.mirror",
  (project, args: Together & { a: Point; b: Point }): Edit => {
    const fault =
      handFault(project, args.things) ?? openingFault(args.things) ?? mirrorFault(project, args.things);
    if (fault) return refuse(fault);
    if (
      !isPlace(args.a) ||
      !isPlace(args.b) ||
      Math.hypot(args.b[0] - args.a[0], args.b[1] - args.a[1]) < 1e-3
    )
      return refuse("The line to mirror about needs two places that differ.");
    return moved(project, args, mirroring(args.a, args.b), "mirror");
  },
);

function mirrorFault(project: Project, things: readonly Thing[]): string | null {
  if (things.some(({ kind }) => kind === "underlay"))
    return "A picture can't be mirrored: what is written on it would read backwards. Leave it out.";
  if (project.lot.deed && things.some(({ kind }) => kind === "lot"))
    return "The lot follows its deed, which can't be mirrored. Leave it out.";
  return null;
}

export const alignments = [
  "left",
  "right",
  "top",
  "bottom",
  "middle",
  "centre",
  "across",
  "upwards",
] as const;
/**
 * left … bottom: edges in one line. middle: middles on one upright line; centre: on one level line.
 * across, upwards: even gaps between the outermost two.
 */
export type Alignment = (typeof alignments)[number];

/** Lines the things up as they are seen on a plan that is turned by `turn`. */
export const alignThings = command(
  "arrange.align",
  (project, args: { things: readonly Thing[]; to: Alignment; turn?: number }): Edit => {
    const fault = handFault(project, args.things) ?? openingFault(args.things);
    if (fault) return refuse(fault);
    const spreads = args.to === "across" || args.to === "upwards";
    const least = spreads ? 3 : 2;
    // Doors and windows go along with their building.
    const loose = args.things.filter(({ kind }) => kind !== "door" && kind !== "window");
    const boxes = loose.flatMap((thing) => boxOf(project, thing, args.turn ?? 0));
    if (boxes.length < least) return refuse(`Select at least ${least} things that have a place on the plan.`);
    const shifts = spreads ? spreadShifts(boxes, args.to) : edgeShifts(boxes, args.to);
    let now = project;
    for (const [i, box] of boxes.entries()) {
      const by = turning([0, 0], -(args.turn ?? 0)).place(shifts[i] as Point);
      now = movedThings(now, [box.thing], shifting(by));
    }
    return done(now, `${spreads ? "space" : "line up"} ${args.things.length} things`);
  },
);

interface Box {
  readonly thing: Thing;
  readonly min: Point;
  readonly max: Point;
}

function boxOf(project: Project, thing: Thing, turn: number): Box[] {
  const shape = thingShape(project, thing);
  if (!shape) return [];
  const seen = shape.points.map(turning([0, 0], turn).place);
  const xs = seen.map(([x]) => x);
  const ys = seen.map(([, y]) => y);
  return [{ thing, min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] }];
}

function edgeShifts(boxes: readonly Box[], to: Alignment): Point[] {
  const all = {
    left: Math.min(...boxes.map(({ min }) => min[0])),
    bottom: Math.min(...boxes.map(({ min }) => min[1])),
    right: Math.max(...boxes.map(({ max }) => max[0])),
    top: Math.max(...boxes.map(({ max }) => max[1])),
  };
  const middle = (all.left + all.right) / 2;
  const centre = (all.bottom + all.top) / 2;
  return boxes.map(({ min, max }): Point => {
    if (to === "left") return [all.left - min[0], 0];
    if (to === "right") return [all.right - max[0], 0];
    if (to === "bottom") return [0, all.bottom - min[1]];
    if (to === "top") return [0, all.top - max[1]];
    if (to === "middle") return [middle - (min[0] + max[0]) / 2, 0];
    return [0, centre - (min[1] + max[1]) / 2];
  });
}

function spreadShifts(boxes: readonly Box[], to: Alignment): Point[] {
  const axis = to === "across" ? 0 : 1;
  const size = ({ min, max }: Box) => max[axis] - min[axis];
  const order = boxes
    .map((_, i) => i)
    .sort((i, j) => middleOf(boxes[i] as Box, axis) - middleOf(boxes[j] as Box, axis));
  const [first, last] = [boxes[order[0] as number] as Box, boxes[order.at(-1) as number] as Box];
  const room = last.max[axis] - first.min[axis] - boxes.reduce((sum, box) => sum + size(box), 0);
  const gap = room / (boxes.length - 1);
  const shifts: Point[] = boxes.map(() => [0, 0]);
  let at = first.min[axis];
  for (const i of order) {
    const box = boxes[i] as Box;
    const by = at - box.min[axis];
    shifts[i] = axis === 0 ? [by, 0] : [0, by];
    at += size(box) + gap;
  }
  return shifts;
}

function middleOf({ min, max }: Box, axis: 0 | 1): number {
  return (min[axis] + max[axis]) / 2;
}

function removal(thing: Thing): (project: Project) => Edit {
  switch (thing.kind) {
    case "building":
      return (project) => removeBuilding.run(project, {});
    case "lot":
      return (project) => setLotOutline.run(project, { outline: [] });
    case "door":
      return (project) => removeDoor.run(project, thing);
    case "window":
      return (project) => removeWindow.run(project, thing);
    case "drive":
      return (project) => removeDrive.run(project, thing);
    case "swale":
      return (project) => removeSwale.run(project, thing);
    case "pad":
    case "berm":
    case "retaining-wall":
    case "grade-point":
      return (project) => removeShape(project, thing);
    case "breakline":
      return (project) => removeBreakline.run(project, thing);
    case "pit":
      return (project) => removePit.run(project, thing);
    case "feature":
      return (project) => removeFeature.run(project, thing);
    case "mark":
      return (project) => removeMark.run(project, thing);
    case "shot":
      return (project) => removeShots.run(project, { ids: [thing.id] });
    default:
      return (project) => drawingEditsRemove(project, thing);
  }
}

function drawingEditsRemove(
  project: Project,
  thing: Extract<Thing, { kind: "note" | "dimension" | "section" | "underlay" }>,
): Edit {
  return removeDrawn.run(project, { kind: thing.kind, id: thing.id });
}

/** Takes the things away, shots first: marks may hang on them. */
export const removeThings = command("arrange.remove", (project, args: { things: readonly Thing[] }): Edit => {
  const fault = handFault(project, args.things);
  if (fault) return refuse(fault);
  const shots = args.things.flatMap((thing) => (thing.kind === "shot" ? [thing.id] : []));
  const goesToo = new Set(openingsAlone(args.things));
  const others = args.things.filter(
    (thing) =>
      thing.kind !== "shot" && ((thing.kind !== "door" && thing.kind !== "window") || goesToo.has(thing)),
  );
  const steps = [
    ...(shots.length > 0 ? [(now: Project) => removeShots.run(now, { ids: shots })] : []),
    ...others.map(removal),
  ];
  let now = project;
  for (const step of steps) {
    const edit = step(now);
    if (!edit.ok) return edit;
    now = edit.project;
  }
  return done(now, `remove ${thingsWord(project, args.things)}`);
});
