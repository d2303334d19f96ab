/** Aiming: the pointer, snapped and measured the way every tool does it. */
import type { Point, Project } from "../../document";
import { type Snap, snap, unsnapped } from "../snap/snap";
import { handStep } from "../snap/step";
import { type SnapTargets, snapTargets, type Without } from "../snap/targets";
import type { TypedValues } from "../typed/typedEntry";
import type { PlanPointer, ToolContext } from "./tool";

/** How near the pointer must come, px. */
export const snapPixels = { mouse: 10, touch: 18 } as const;

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

/** The aimed place with a typed length and angle laid over it. */
export function withTyped(aimed: Snap, from: Point, typed: TypedValues): Snap {
  const { length, angle } = typed;
  if (length === undefined && angle === undefined) return aimed;
  const [dx, dy] = [aimed.at[0] - from[0], aimed.at[1] - from[1]];
  const pointed = Math.atan2(dy, dx);
  const way = angle ?? pointed;
  // A typed angle keeps the pointer's distance along it.
  const along =
    length ??
    (angle === undefined ? Math.hypot(dx, dy) : Math.max(0, dx * Math.cos(way) + dy * Math.sin(way)));
  return {
    at: [from[0] + Math.cos(way) * along, from[1] + Math.sin(way) * along],
    word: length === undefined ? null : aimed.word && angle === undefined && aimed.guide ? aimed.word : null,
    tie: null,
    guide: from,
  };
}
