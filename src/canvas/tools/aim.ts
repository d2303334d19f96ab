/** Aiming: the pointer, snapped and measured the way every tool does it. */
import type { Point, Project } from "../../document";
import type { SnapKind } from "../../store/snapping";
import { type Snap, type SnapQuery, snap, unsnapped } from "../snap/snap";
import { handStep } from "../snap/step";
import { straightCorner } from "../snap/straight";
import { type SnapPoint, type SnapTargets, snapTargets, type Without } from "../snap/targets";
import type { Field, TypedValues } from "../typed/typedEntry";
import type { PlanPointer, ToolContext } from "./tool";

/** How near the pointer must come, px. */
export const snapPixels = { mouse: 10, touch: 18 } as const;

const fullTurn = 2 * Math.PI;

export interface AimOptions {
  readonly from?: Point | undefined;
  readonly without?: Without;
  /** Targets that were gathered before: for drags, where they don't change. */
  readonly targets?: SnapTargets;
  /** Places of what is being drawn. */
  readonly own?: readonly SnapPoint[];
}

/** The place that the pointer means. */
export function aim(context: ToolContext, pointer: PlanPointer, options: AimOptions = {}): Snap {
  const lock = options.from && pointer.lock;
  if (pointer.free && !lock) return unsnapped(pointer.at);
  return snap(queryOf(context, pointer, options));
}

/**
 * The place that the pointer means for a corner between two others: a place or a line that lies there, else one at which
 * the lines to both lie straight.
 */
export function aimCornerBetween(
  context: ToolContext,
  pointer: PlanPointer,
  [before, after]: readonly [Point, Point],
  options: AimOptions = {},
): Snap {
  const aimed = aim(context, pointer, options);
  const { on } = context.snapping();
  const fixed = aimed.word !== null && !(options.from && aimed.guide === options.from);
  if (fixed || pointer.free || pointer.lock || !on.has("directions")) return aimed;
  const straight = straightCorner(queryOf(context, pointer, options), before, after);
  return straight ?? aimed;
}

function queryOf(context: ToolContext, pointer: PlanPointer, options: AimOptions): SnapQuery {
  const lock = options.from && pointer.lock;
  const { scale } = context.view();
  const project = context.project();
  const notation = project.display.length;
  const { on, grid } = context.snapping();
  return {
    at: pointer.at,
    targets:
      options.targets ?? (options.without ? snapTargets(project, options.without) : allTargets(project)),
    reach: reachOf(context, pointer),
    from: options.from,
    own: options.own,
    lock,
    ...(pointer.free ? { on: nothing } : { on, step: handStep(notation, scale) }),
    grid: grid ?? undefined,
  };
}

const nothing: ReadonlySet<SnapKind> = new Set();

/** How near the pointer must come, m. */
export function reachOf(context: ToolContext, pointer: PlanPointer): number {
  return (pointer.touch ? snapPixels.touch : snapPixels.mouse) / context.view().scale;
}

let gathered: { readonly project: Project; readonly targets: SnapTargets } | null = null;

/** Targets of the whole plan; gathered once for each project, not for each move of the pointer. */
export function allTargets(project: Project): SnapTargets {
  if (gathered?.project !== project) gathered = { project, targets: snapTargets(project) };
  return gathered.targets;
}

/** Fields of a piece that goes on from a place. */
export const pieceFields: readonly Field[] = [
  { name: "length", kind: "length", pair: true },
  { name: "bearing", kind: "bearing" },
];

/** Was enough typed to place the end of a piece? */
export function isPlaced({ length, east, right }: TypedValues): boolean {
  return length !== undefined || east !== undefined || right !== undefined;
}

/** Enter after a bearing alone: what else is needed. Null where it isn't a bearing alone. */
export function lengthWanted(typed: TypedValues): string | null {
  if (typed.bearing === undefined || isPlaced(typed)) return null;
  return "The bearing is there, not how far: type the length too (Tab goes to it), or click where it ends.";
}

/**
 * The aimed place with what was typed laid over it: a length and bearing, how far right and up of the place before, or a
 * place from the plan's origin; `north` is the plan's.
 */
export function withTyped(aimed: Snap, from: Point, typed: TypedValues, north: number): Snap {
  const { length, bearing, east, north: northOf, right, up } = typed;
  if (right !== undefined && up !== undefined)
    return { ...unsnapped([from[0] + right, from[1] + up]), guide: from };
  if (east !== undefined && northOf !== undefined) return { ...unsnapped([east, northOf]), guide: from };
  if (length === undefined && bearing === undefined) return aimed;
  const [dx, dy] = [aimed.at[0] - from[0], aimed.at[1] - from[1]];
  const far = Math.hypot(dx, dy);
  const [c, s] = bearing !== undefined ? wayOf(bearing, north) : far > 0 ? [dx / far, dy / far] : [1, 0];
  // A typed bearing keeps the pointer's distance along it.
  const along = length ?? Math.max(0, dx * c + dy * s);
  const keepsWord = length !== undefined && bearing === undefined && aimed.guide;
  return {
    at: [from[0] + c * along, from[1] + s * along],
    word: keepsWord ? aimed.word : null,
    tie: null,
    guide: from,
    ...(keepsWord && aimed.beyond ? { beyond: aimed.beyond } : {}),
  };
}

/** Radians clockwise from the plan's north, 0 to a full turn. */
export function bearingOf(from: Point, to: Point, north: number): number {
  const turn = Math.atan2(to[0] - from[0], to[1] - from[1]) - north;
  return ((turn % fullTurn) + fullTurn) % fullTurn;
}

/** Unit vector of a bearing. */
function wayOf(bearing: number, north: number): Point {
  return [Math.sin(bearing + north), Math.cos(bearing + north)];
}
