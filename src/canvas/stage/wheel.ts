/** What a turn of the wheel means: a mouse zooms, two fingers on a trackpad pan, a pinch zooms, Shift turns the plan. */

export interface WheelTurn {
  readonly deltaX: number;
  readonly deltaY: number;
  /** 0: pixels, 1: lines, 2: pages. */
  readonly deltaMode: number;
  /** Set by a pinch on a trackpad, too. */
  readonly ctrlKey: boolean;
  readonly shiftKey?: boolean;
  readonly timeStamp: number;
}

export type WheelAct =
  | { readonly kind: "zoom"; readonly factor: number }
  | { readonly kind: "pan"; readonly dx: number; readonly dy: number }
  /** Radians counter-clockwise. */
  | { readonly kind: "turn"; readonly by: number };

const linePixels = 16;
const pagePixels = 400;
/** Turns that follow each other within this, ms, come from one gesture of one device. */
const oneGesture = 250;
/** A notch of a mouse wheel is at least this; two fingers start far smaller, px. */
const leastNotch = 40;
/** A notch of 100 px turns the plan by this, radians. */
const turnPerNotch = Math.PI / 60;

/** Reads turns one after the other; a gesture that started on a trackpad stays one. */
export function wheelReader(): (turn: WheelTurn) => WheelAct {
  let fromMouse = false;
  let last = Number.NEGATIVE_INFINITY;
  return (turn) => {
    const unit = turn.deltaMode === 1 ? linePixels : turn.deltaMode === 2 ? pagePixels : 1;
    if (turn.timeStamp - last > oneGesture) fromMouse = looksLikeMouse(turn);
    last = turn.timeStamp;
    if (turn.shiftKey && !turn.ctrlKey) {
      // With Shift some systems hand the wheel on as a turn to the side.
      const most = Math.abs(turn.deltaX) > Math.abs(turn.deltaY) ? turn.deltaX : turn.deltaY;
      return { kind: "turn", by: (-most * unit * turnPerNotch) / 100 };
    }
    if (turn.ctrlKey) {
      // A pinch comes in small steps, Ctrl with a wheel in notches.
      const step = Math.abs(turn.deltaY) >= leastNotch ? 0.0018 : 0.01;
      return { kind: "zoom", factor: Math.exp(-turn.deltaY * unit * step) };
    }
    if (fromMouse) return { kind: "zoom", factor: Math.exp(-turn.deltaY * unit * 0.0018) };
    return { kind: "pan", dx: -turn.deltaX * unit, dy: -turn.deltaY * unit };
  };
}

function looksLikeMouse({ deltaX, deltaY, deltaMode }: WheelTurn): boolean {
  if (deltaMode !== 0) return true;
  return deltaX === 0 && Math.abs(deltaY) >= leastNotch && Number.isInteger(deltaY);
}
