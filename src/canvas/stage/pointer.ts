/**
 * The hand on the plan: one pointer goes to the tool, two fingers or the middle button or Space move the view.
 * Whatever is pressed is captured, so that a drag goes on beyond the plan's rim and ends there.
 */
import { setPointer } from "../../store/actions";
import { capturePointer } from "../capture";
import type { Machine } from "../tools/machine";
import type { PlanPointer } from "../tools/tool";
import { panPlan, planView, zoomPlan } from "../view/planView";
import { toWorld, type XY } from "../view/view";
import { wheelReader } from "./wheel";

export interface PointerHost {
  readonly element: HTMLElement;
  machine(): Machine;
  /** Space is held. */
  spaceHeld(): boolean;
  /** The view is under the hand, for the cursor. */
  panning(active: boolean): void;
}

interface Finger {
  readonly id: number;
  at: XY;
}

/** Listens to pointer and wheel; answers with what stops listening. */
export function listenToPointer(host: PointerHost): () => void {
  const { element } = host;
  const fingers = new Map<number, Finger>();
  /** Id of the pointer that pans, or that works with the tool. */
  let panner: number | null = null;
  let worker: number | null = null;
  const readWheel = wheelReader();

  const place = (event: MouseEvent): XY => {
    const box = element.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };
  const asPlanPointer = (event: MouseEvent, touch: boolean): PlanPointer => {
    const screen = place(event);
    return {
      at: toWorld(planView.getState().view, screen),
      screen,
      free: event.shiftKey,
      adds: event.ctrlKey || event.metaKey,
      touch,
    };
  };
  const read = (event: PointerEvent) => asPlanPointer(event, event.pointerType === "touch");

  function down(event: PointerEvent): void {
    fingers.set(event.pointerId, { id: event.pointerId, at: place(event) });
    capturePointer(element, event.pointerId);
    if (fingers.size === 2 && event.pointerType === "touch") {
      // A second finger: whatever the first one began is given up, both move the view.
      if (worker !== null) host.machine().lost();
      worker = null;
      return;
    }
    if (event.button === 1 || (event.button === 0 && host.spaceHeld())) {
      event.preventDefault();
      panner = event.pointerId;
      host.panning(true);
    } else if (event.button === 0) {
      worker = event.pointerId;
      host.machine().press(read(event));
    }
  }

  function move(event: PointerEvent): void {
    const finger = fingers.get(event.pointerId);
    if (finger && fingers.size === 2 && event.pointerType === "touch") {
      pinch(finger, place(event));
      return;
    }
    if (panner === event.pointerId && finger) {
      const at = place(event);
      panPlan(at[0] - finger.at[0], at[1] - finger.at[1]);
      finger.at = at;
      return;
    }
    if (finger) finger.at = place(event);
    const pointer = read(event);
    setPointer(pointer.at);
    if (worker === null || worker === event.pointerId) host.machine().move(pointer);
  }

  /** Two fingers: their middle moves the plan, their distance zooms it. */
  function pinch(finger: Finger, to: XY): void {
    const other = [...fingers.values()].find(({ id }) => id !== finger.id);
    if (!other) return;
    const before = Math.hypot(finger.at[0] - other.at[0], finger.at[1] - other.at[1]);
    const after = Math.hypot(to[0] - other.at[0], to[1] - other.at[1]);
    const middle: XY = [(to[0] + other.at[0]) / 2, (to[1] + other.at[1]) / 2];
    panPlan((to[0] - finger.at[0]) / 2, (to[1] - finger.at[1]) / 2);
    if (before > 10 && after > 10) zoomPlan(after / before, middle);
    finger.at = to;
  }

  function up(event: PointerEvent): void {
    if (!fingers.delete(event.pointerId)) return;
    if (panner === event.pointerId) {
      panner = null;
      host.panning(false);
    } else if (worker === event.pointerId) {
      worker = null;
      host.machine().release(read(event));
    }
  }

  /** The system took the pointer away. */
  function lost(event: PointerEvent): void {
    if (!fingers.delete(event.pointerId)) return;
    if (panner === event.pointerId) {
      panner = null;
      host.panning(false);
    }
    if (worker === event.pointerId) {
      worker = null;
      host.machine().lost();
    }
  }

  function wheel(event: WheelEvent): void {
    event.preventDefault();
    const act = readWheel(event);
    if (act.kind === "zoom") zoomPlan(act.factor, place(event));
    else panPlan(act.dx, act.dy);
  }

  const leave = () => setPointer(null);
  const doubleClick = (event: MouseEvent) => host.machine().doublePress(asPlanPointer(event, false));
  const noMenu = (event: MouseEvent) => event.preventDefault();

  element.addEventListener("pointerdown", down);
  element.addEventListener("pointermove", move);
  element.addEventListener("pointerup", up);
  element.addEventListener("pointercancel", lost);
  element.addEventListener("lostpointercapture", lost);
  element.addEventListener("pointerleave", leave);
  element.addEventListener("wheel", wheel, { passive: false });
  element.addEventListener("dblclick", doubleClick);
  element.addEventListener("contextmenu", noMenu);
  return () => {
    element.removeEventListener("pointerdown", down);
    element.removeEventListener("pointermove", move);
    element.removeEventListener("pointerup", up);
    element.removeEventListener("pointercancel", lost);
    element.removeEventListener("lostpointercapture", lost);
    element.removeEventListener("pointerleave", leave);
    element.removeEventListener("wheel", wheel);
    element.removeEventListener("dblclick", doubleClick);
    element.removeEventListener("contextmenu", noMenu);
  };
}
