/** Aiming: the pointer, snapped and measured the way every tool does it. */
import type { Point, Project } from "../../document";
import { type Snap, snap, unsnapped } from "../snap/snap";
import { handStep } from "../snap/step";
import { type SnapTargets, snapTargets, type Without } from "../snap/targets";
import type { TypedValues } from "../typed/typedEntry";
import type { PlanPointer, ToolContext } from "./tool";

/** How near the pointer must come, px. */
export const snapPixels = { mouse: 10, touch: 18 } as const;

const fullTurn = 2 * Math.PI;

export interface AimOptions {
  readonly from?: Point | undefined;
  readonly without?: Without;
  /** Targets that were gathered before: for drags, where they don't change. */
  readonly targets?: SnapTargets;
}

/** The place that the pointer means. */
export function aim(context: ToolContext, pointer: PlanPointer, options: AimOptions = {}): Snap {
  if (pointer.free) return unsnapped(pointer.at);
  const { scale } = context.view();
  const project = context.project();
  return snap({
    at: pointer.at,
    targets:
      options.targets ?? (options.without ? snapTargets(project, options.without) : allTargets(project)),
    reach: (pointer.touch ? snapPixels.touch : snapPixels.mouse) / scale,
    from: options.from,
    step: handStep(project.display.length, scale),
  });
}

let gathered: { readonly project: Project; readonly targets: SnapTargets } | null = null;

/** Targets of the whole plan; gathered once for each project, not for each move of the pointer. */
export function allTargets(project: Project): SnapTargets {
  if (gathered?.project !== project) gathered = { project, targets: snapTargets(project) };
  return gathered.targets;
}

/** The aimed place with a typed length and bearing laid over it; `north` is the plan's. */
export function withTyped(aimed: Snap, from: Point, typed: TypedValues, north: number): Snap {
  const { length, bearing } = typed;
  if (length === undefined && bearing === undefined) return aimed;
  const [dx, dy] = [aimed.at[0] - from[0], aimed.at[1] - from[1]];
  const way = bearing === undefined ? Math.atan2(dy, dx) : directionOf(bearing, north);
  // A typed bearing keeps the pointer's distance along it.
  const along =
    length ??
    (bearing === undefined ? Math.hypot(dx, dy) : Math.max(0, dx * Math.cos(way) + dy * Math.sin(way)));
  const keepsWord = length !== undefined && bearing === undefined && aimed.guide;
  return {
    at: [from[0] + Math.cos(way) * along, from[1] + Math.sin(way) * along],
    word: keepsWord ? aimed.word : null,
    tie: null,
    guide: from,
  };
}

/** Radians clockwise from the plan's north, 0 to a full turn. */
export function bearingOf(from: Point, to: Point, north: number): number {
  const turn = Math.atan2(to[0] - from[0], to[1] - from[1]) - north;
  return ((turn % fullTurn) + fullTurn) % fullTurn;
}

/** Counter-clockwise from the x axis, radians, of a bearing. */
function directionOf(bearing: number, north: number): number {
  return Math.PI / 2 - (bearing + north);
}
