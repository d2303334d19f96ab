/**
 * The hand on the plan: one pointer goes to the tool, two fingers or the middle button or Space move the view.
 * Whatever is pressed is captured, so that a drag goes on beyond the plan's rim and ends there.
 */
import { setPointer } from "../../store/actions";
import { capturePointer } from "../capture";
import type { Machine } from "../tools/machine";
import type { PlanPointer } from "../tools/tool";
import { panPlan, planView, turnPlan, zoomPlan } from "../view/planView";
import { toWorld, type XY } from "../view/view";
import { Rim } from "./rim";
import { wheelReader } from "./wheel";

export interface PointerHost {
  readonly element: HTMLElement;
  machine(): Machine;
  /** Space is held. */
  spaceHeld(): boolean;
  /** The menu of what lies at a place is wanted; px on the plan. */
  menu(screen: XY, touch: boolean): void;
  /** Is a line or a shape half drawn? */
  draws(): boolean;
  /** Does the tool hold a thing of the plan under the pointer? */
  holds(): boolean;
  /** The view is under the hand, for the cursor. */
  panning(active: boolean): void;
}

interface Finger {
  readonly id: number;
  at: XY;
}

/** Fingers that only zoom also turn a little: the plan follows from here on, radians. */
const turnFrom = Math.PI / 18;

/** Lets a turn through once the fingers clearly mean it. */
function createTurnGate() {
  let sum = 0;
  let open = false;
  return {
    close(): void {
      sum = 0;
      open = false;
    },
    by(angle: number): number {
      if (open) return angle;
      sum += angle;
      open = Math.abs(sum) > turnFrom;
      return 0;
    },
  };
}

/** Turn of a finger about another, radians counter-clockwise as seen; screen y runs down. */
function turnOf(about: XY, from: XY, to: XY): number {
  const turn =
    Math.atan2(from[1] - about[1], from[0] - about[0]) - Math.atan2(to[1] - about[1], to[0] - about[0]);
  return Math.atan2(Math.sin(turn), Math.cos(turn));
}

/** A finger that stays within this, px, for so long, ms, asks for the menu. */
const restReach = 9;
const longPress = 500;

class PointerHand {
  private readonly fingers = new Map<number, Finger>();
  /** Id of the pointer that pans. */
  private panner: number | null = null;
  /** Id of the pointer that works with the tool. */
  private worker: number | null = null;
  private readonly readWheel = wheelReader();
  /** A finger that rests asks for the menu. */
  private resting: ReturnType<typeof setTimeout> | null = null;
  private restsAt: XY = [0, 0];
  private readonly turning = createTurnGate();

  /** The last press or move of the pointer that works, for when the plan moves under it. */
  private lastMove: PointerEvent | null = null;
  private readonly rim: Rim;

  constructor(private readonly host: PointerHost) {
    this.rim = new Rim({
      view: () => planView.getState().view,
      draws: () => this.panner === null && this.fingers.size < 2 && host.draws(),
      holds: () => host.holds(),
      pan: panPlan,
      moved: () => {
        if (this.lastMove) this.point(this.lastMove);
      },
    });
  }

  down(event: PointerEvent): void {
    this.fingers.set(event.pointerId, { id: event.pointerId, at: this.place(event) });
    this.endRest();
    // A press on the plan gives it the keyboard: typed lengths, Tab and Esc belong to what is drawn.
    this.host.element.classList.add("by-hand");
    this.host.element.focus({ preventScroll: true });
    capturePointer(this.host.element, event.pointerId);
    if (this.isPinch(event)) {
      // A second finger: whatever the first one began is given up, both move the view.
      if (this.worker !== null) this.host.machine().lost();
      this.worker = null;
      this.turning.close();
    } else if (event.button === 1 || (event.button === 0 && this.host.spaceHeld())) {
      event.preventDefault();
      this.panner = event.pointerId;
      this.host.panning(true);
    } else if (event.button === 0) {
      this.worker = event.pointerId;
      this.host.machine().press(this.read(event));
      if (event.pointerType !== "mouse") this.rest(event);
    }
  }

  private rest(event: PointerEvent): void {
    this.restsAt = this.place(event);
    this.resting = setTimeout(() => {
      this.resting = null;
      this.menu(this.restsAt, true);
    }, longPress);
  }

  stop(): void {
    this.endRest();
    this.rim.leave();
  }

  private endRest(): void {
    if (this.resting !== null) clearTimeout(this.resting);
    this.resting = null;
  }

  /** What the press began is given up: the menu is meant. */
  private menu(at: XY, touch: boolean): void {
    if (this.worker !== null) this.host.machine().lost();
    this.worker = null;
    this.host.menu(at, touch);
  }

  contextMenu(event: MouseEvent): void {
    event.preventDefault();
    // The menu key and a resting finger have ways of their own; on a Mac Ctrl and a click are the right button.
    if (event.button === 2 || event.ctrlKey) this.menu(this.place(event), false);
  }

  move(event: PointerEvent): void {
    const finger = this.fingers.get(event.pointerId);
    const at = this.place(event);
    if (Math.hypot(at[0] - this.restsAt[0], at[1] - this.restsAt[1]) > restReach) this.endRest();
    if (finger && this.isPinch(event)) this.pinch(finger, at);
    else if (finger && this.panner === event.pointerId) panPlan(at[0] - finger.at[0], at[1] - finger.at[1]);
    else {
      this.lastMove = event;
      this.point(event);
      this.rim.at(at);
    }
    if (finger) finger.at = at;
  }

  up(event: PointerEvent): void {
    this.endRest();
    if (!this.fingers.delete(event.pointerId)) return;
    this.endPan(event);
    if (this.worker !== event.pointerId) return;
    this.worker = null;
    this.host.machine().release(this.read(event));
  }

  /** The system took the pointer away. */
  lost(event: PointerEvent): void {
    this.endRest();
    if (!this.fingers.delete(event.pointerId)) return;
    this.endPan(event);
    if (this.worker !== event.pointerId) return;
    this.worker = null;
    this.host.machine().lost();
  }

  /** The pointer has left the plan without a button held. */
  leave(): void {
    this.lastMove = null;
    this.rim.leave();
    setPointer(null);
  }

  wheel(event: WheelEvent): void {
    event.preventDefault();
    const act = this.readWheel(event);
    if (act.kind === "zoom") zoomPlan(act.factor, this.place(event));
    else if (act.kind === "turn") turnPlan(act.by, this.place(event));
    else panPlan(act.dx, act.dy);
  }

  doubleClick(event: MouseEvent): void {
    this.host.machine().doublePress(this.asPlanPointer(event, false));
  }

  private point(event: PointerEvent): void {
    const pointer = this.read(event);
    setPointer(pointer.at);
    if (this.worker === null || this.worker === event.pointerId) this.host.machine().move(pointer);
  }

  /** Two fingers: their middle moves the plan, their distance zooms it, and they turn it. */
  private pinch(finger: Finger, to: XY): void {
    const other = [...this.fingers.values()].find(({ id }) => id !== finger.id);
    if (!other) return;
    const before = Math.hypot(finger.at[0] - other.at[0], finger.at[1] - other.at[1]);
    const after = Math.hypot(to[0] - other.at[0], to[1] - other.at[1]);
    panPlan((to[0] - finger.at[0]) / 2, (to[1] - finger.at[1]) / 2);
    const middle: XY = [(to[0] + other.at[0]) / 2, (to[1] + other.at[1]) / 2];
    if (before <= 10 || after <= 10) return;
    zoomPlan(after / before, middle);
    turnPlan(this.turning.by(turnOf(other.at, finger.at, to)), middle);
  }

  private isPinch(event: PointerEvent): boolean {
    return this.fingers.size === 2 && event.pointerType === "touch";
  }

  private endPan(event: PointerEvent): void {
    if (this.panner !== event.pointerId) return;
    this.panner = null;
    this.host.panning(false);
  }

  private place(event: MouseEvent): XY {
    const box = this.host.element.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }

  private read(event: PointerEvent): PlanPointer {
    return this.asPlanPointer(event, event.pointerType === "touch");
  }

  private asPlanPointer(event: MouseEvent, touch: boolean): PlanPointer {
    const screen = this.place(event);
    return {
      at: toWorld(planView.getState().view, screen),
      screen,
      free: event.shiftKey,
      adds: event.ctrlKey || event.metaKey,
      copies: event.altKey,
      touch,
    };
  }
}

/** Listens to pointer and wheel; answers with what stops listening. */
export function listenToPointer(host: PointerHost): () => void {
  const hand = new PointerHand(host);
  const ending = new AbortController();
  const { signal } = ending;
  const { element } = host;
  element.addEventListener("pointerdown", (event) => hand.down(event), { signal });
  element.addEventListener("pointermove", (event) => hand.move(event), { signal });
  element.addEventListener("pointerup", (event) => hand.up(event), { signal });
  element.addEventListener("pointercancel", (event) => hand.lost(event), { signal });
  element.addEventListener("lostpointercapture", (event) => hand.lost(event), { signal });
  element.addEventListener("pointerleave", () => hand.leave(), { signal });
  element.addEventListener("wheel", (event) => hand.wheel(event), { signal, passive: false });
  element.addEventListener("dblclick", (event) => hand.doubleClick(event), { signal });
  element.addEventListener("contextmenu", (event) => hand.contextMenu(event), { signal });
  return () => {
    hand.stop();
    ending.abort();
  };
}
