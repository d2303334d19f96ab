/** The hand on the floor's flag: a drag moves the floor, a click opens it for typing. */
import { type PointerEvent, useRef } from "react";
import { cancelFloorDrag, dragFloor, dropFloor } from "../../store/actions";
import { capturePointer } from "../capture";
import { type RodRule, rodHeight, rodY } from "./rodScale";

interface Grip {
  readonly y: number;
  readonly floor: number;
  readonly moved: boolean;
  readonly rule: RodRule;
}

/** A press that moved less, px, was a click. */
const clickReach = 3;

export interface FloorGripOptions {
  readonly rule: RodRule;
  /** The floor of the project. */
  readonly from: number;
  /** What the hand snaps to, m. */
  readonly step: number;
  /** Name of the edit when the floor is let go. */
  label(): string | undefined;
  clicked(): void;
}

export interface FloorGrip {
  press(event: PointerEvent): void;
  move(event: PointerEvent): void;
  letGo(): void;
  giveUp(): void;
  held(): boolean;
}

export function useFloorGrip({ rule, from, step, label, clicked }: FloorGripOptions): FloorGrip {
  const grip = useRef<Grip | null>(null);
  return {
    held: () => grip.current !== null,
    press(event) {
      if (event.button !== 0) return;
      capturePointer(event.currentTarget, event.pointerId);
      // The scale may grow under the hand; the hand keeps to the one it started on.
      grip.current = { y: event.clientY, floor: from, moved: false, rule };
    },
    move(event) {
      const held = grip.current;
      if (!held) return;
      const by = event.clientY - held.y;
      if (!held.moved && Math.abs(by) < clickReach) return;
      grip.current = { ...held, moved: true };
      const wanted = rodHeight(held.rule, rodY(held.rule, held.floor) + by);
      dragFloor(event.shiftKey ? wanted : Math.round(wanted / step) * step);
    },
    letGo() {
      const held = grip.current;
      grip.current = null;
      if (held?.moved) dropFloor(label());
      else if (held) clicked();
    },
    giveUp() {
      grip.current = null;
      cancelFloorDrag();
    },
  };
}
