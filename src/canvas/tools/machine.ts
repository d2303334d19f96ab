/** Runs one tool: sends keys and pointer to its present state and keeps what is being typed. */
import { emptyEntry, entryFault, isTyping, type TypedEntry, typedValues, typeKey } from "../typed/typedEntry";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "./tool";

export interface Machine {
  state(): ToolState;
  entry(): TypedEntry;
  move(pointer: PlanPointer): void;
  press(pointer: PlanPointer): void;
  release(pointer: PlanPointer): void;
  doublePress(pointer: PlanPointer): void;
  lost(): void;
  /** True when the key was used. */
  key(key: string, shift: boolean): boolean;
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Starts a tool; `changed` is told after each change of state or entry. */
export function startMachine(start: ToolStart, context: ToolContext, changed: () => void): Machine {
  let state = start(context);
  let entry = emptyEntry(state.fields ?? []);

  function go(next: ToolState | "leave"): void {
    if (next === "leave") {
      context.setTool("select");
      return;
    }
    if (next === state) return;
    const otherFields = fieldsOf(next) !== fieldsOf(state);
    state = next;
    if (otherFields) entry = emptyEntry(state.fields ?? []);
    changed();
  }

  function type(next: TypedEntry): void {
    entry = next;
    const values = typedValues(entry, context.project().display.length);
    if (state.typed) go(state.typed(values));
    changed();
  }

  function clearTyped(): void {
    entry = emptyEntry(state.fields ?? []);
    if (state.typed) go(state.typed({}));
    changed();
  }

  function enter(): boolean {
    const fault = entryFault(entry, context.project().display.length);
    if (fault) {
      context.say(fault);
      return true;
    }
    if (!state.finish) return false;
    act(() => state.finish?.() ?? state);
    return true;
  }

  /** Acts that use up what was typed. */
  function act(step: () => ToolState): void {
    const next = step();
    const used = isTyping(entry) && next !== state;
    go(next);
    if (used) clearTyped();
  }

  return {
    state: () => state,
    entry: () => entry,
    move: (pointer) => go(state.move?.(pointer) ?? state),
    press: (pointer) => act(() => state.press?.(pointer) ?? state),
    release: (pointer) => act(() => state.release?.(pointer) ?? state),
    doublePress: (pointer) => act(() => state.doublePress?.(pointer) ?? state),
    lost: () => go(state.lost()),
    key(key, shift) {
      if (key === "Escape") {
        if (isTyping(entry)) clearTyped();
        else go(state.cancel());
        return true;
      }
      const typed = typeKey(entry, key);
      if (typed) {
        type(typed);
        return true;
      }
      if (key === "Enter") return enter();
      if (key === "Backspace" && state.back) {
        go(state.back());
        return true;
      }
      if ((key === "Delete" || key === "Backspace") && state.remove) {
        go(state.remove());
        return true;
      }
      const arrow = arrows[key];
      if (!arrow || !state.nudge) return false;
      go(state.nudge(arrow, shift));
      return true;
    },
  };
}

/** States with the same fields share what is being typed. */
function fieldsOf(state: ToolState): string {
  return (state.fields ?? []).map((field) => field.name).join(" ");
}
