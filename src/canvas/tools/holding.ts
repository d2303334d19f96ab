/** A direction that is held by a key: along what lies under the pointer, or the way of the key. */
import type { Point } from "../../document";
import { edgesNear } from "../snap/constructed";
import { type Lock, type LockKey, lockFor } from "../snap/lock";
import { roundUnder } from "../snap/rounds";
import { toScreen } from "../view/view";
import { allTargets, reachOf } from "./aim";
import type { PlanPointer, ToolContext } from "./tool";

/** A held direction, and where it was held from. */
export interface Held {
  readonly lock: Lock;
  readonly from: Point;
}

export interface Holding {
  readonly from: Point;
  readonly to: Point;
  /** Where the pointer rests now; null where there is none. */
  readonly pointer: PlanPointer | null;
}

/** The lock that a key makes there, or in words why there is none. */
export function lockAt(context: ToolContext, key: LockKey, { from, to, pointer }: Holding): Lock | string {
  const turn = context.view().angle;
  if (!pointer) return lockFor(key, { from, to, edge: null, circle: null, turn });
  const { edges, circles } = allTargets(context.project());
  const { at } = pointer;
  const reach = 1.5 * reachOf(context, pointer);
  const circle = roundUnder(circles, at, reach);
  return lockFor(key, {
    from,
    to,
    edge: edgesNear(edges, at, reach)[0] ?? null,
    circle: circle && { circle, at },
    turn,
  });
}

/** A pointer that shows the way of a held direction, where there has been none yet. */
export function pointerAhead(context: ToolContext, { lock, from }: Held): PlanPointer {
  const at: Point = [from[0] + lock.along[0], from[1] + lock.along[1]];
  const screen = toScreen(context.view(), at);
  return { at, screen, free: false, adds: false, copies: false, touch: false };
}

export function isSamePlace(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
