/** Keys that a tool's state answers itself, and what states share. */
import type { ToolState } from "./tool";

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** The state after a key of its own; undefined where it has no use for it. */
export function answerOf(state: ToolState, key: string, shift: boolean): ToolState | undefined {
  if (key === "Backspace") return state.back?.() ?? state.remove?.();
  if (key === "Delete") return state.remove?.();
  const arrow = arrows[key];
  return arrow && state.nudge?.(arrow, shift);
}

/** States with the same fields share what is being typed. */
export function sharesFields(a: ToolState, b: ToolState): boolean {
  const names = (state: ToolState) => (state.fields ?? []).map((field) => field.name).join(" ");
  return names(a) === names(b);
}
