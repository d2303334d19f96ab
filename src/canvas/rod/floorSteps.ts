/** How far keys and the hand move the floor, and how a move is named. */
import type { Display } from "../../document";
import { FOOT, formatLength, INCH, roundingFor, roundingStep } from "../../units";

export interface FloorSteps {
  /** An arrow key, m. */
  readonly fine: number;
  /** An arrow key with Shift. */
  readonly coarse: number;
  /** Page up or down. */
  readonly page: number;
  /** What the hand snaps to: the finest height that the project shows. */
  readonly hand: number;
}

export function floorSteps(display: Display): FloorSteps {
  const hand = roundingStep(display.length, roundingFor(display.length, display));
  if (display.length === "ft-in" || display.length === "in")
    return { fine: INCH / 4, coarse: INCH, page: 6 * INCH, hand };
  if (display.length === "ft") return { fine: FOOT / 50, coarse: FOOT / 10, page: FOOT / 2, hand };
  return { fine: 0.005, coarse: 0.02, page: 0.1, hand: Math.max(hand, 0.001) };
}

/** "floor up 1″", "floor down 40 mm"; null when it comes back to where it was. */
export function floorMoveLabel(by: number, display: Display): string | null {
  const notation = display.length === "ft-in" && Math.abs(by) < FOOT ? "in" : display.length;
  const amount = formatLength(Math.abs(by), notation, roundingFor(notation, display));
  if (Math.abs(by) < 1e-9) return null;
  return `floor ${by > 0 ? "up" : "down"} ${amount}`;
}
