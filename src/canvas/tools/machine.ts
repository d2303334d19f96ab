/** Runs one tool: sends keys and pointer to its present state and keeps what is being typed. */
import {
  emptyEntry,
  entryFault,
  isLetter,
  isTyping,
  type TypedEntry,
  typedValues,
  typeKey,
  wantedWords,
} from "../typed/typedEntry";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "./tool";

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export class Machine {
  private present: ToolState;
  private typed: TypedEntry;
  /** Name of the state in which nothing is begun yet. */
  private readonly idle: string;

  /** Starts a tool; `changed` is told after each change of state or entry. */
  constructor(
    start: ToolStart,
    private readonly context: ToolContext,
    private readonly changed: () => void,
  ) {
    this.present = start(context);
    this.idle = this.present.name;
    this.typed = emptyEntry(this.present.fields ?? []);
  }

  state(): ToolState {
    return this.present;
  }

  /** Is something half drawn, or under the hand? */
  begun(): boolean {
    return this.present.name !== this.idle || isTyping(this.typed);
  }

  entry(): TypedEntry {
    return this.typed;
  }

  move(pointer: PlanPointer): void {
    this.go(this.present.move?.(pointer) ?? this.present);
  }

  press(pointer: PlanPointer): void {
    this.act((state) => state.press?.(pointer));
  }

  release(pointer: PlanPointer): void {
    this.act((state) => state.release?.(pointer));
  }

  doublePress(pointer: PlanPointer): void {
    this.act((state) => state.doublePress?.(pointer));
  }

  lost(): void {
    this.go(this.present.lost());
  }

  choose(value: string): void {
    this.act((state) => state.choose?.(value));
  }

  /** Makes what the reading offers. */
  use(): void {
    this.act((state) => state.use?.());
  }

  /** True when the key was used. */
  key(key: string, shift: boolean): boolean {
    if (key === "Escape") {
      if (isTyping(this.typed)) this.clearTyped();
      else this.go(this.present.cancel());
      return true;
    }
    const typed = typeKey(this.typed, key, this.present.name !== this.idle);
    if (typed) {
      this.type(typed);
      return true;
    }
    if (key === "Enter") return this.enter();
    // In the midst of typing a letter never picks a tool: what was begun would be lost.
    if (isTyping(this.typed) && isLetter(key)) return this.unread();
    return this.stateKey(key, shift);
  }

  /** Says what can be typed now, after a key that nobody had a use for. True when something can. */
  unread(): boolean {
    const words = wantedWords(this.typed);
    if (words === null) return false;
    this.context.say(words);
    return true;
  }

  private stateKey(key: string, shift: boolean): boolean {
    const { present } = this;
    const arrow = arrows[key];
    let next: ToolState | undefined;
    if (key === "Backspace") next = present.back?.() ?? present.remove?.();
    else if (key === "Delete") next = present.remove?.();
    else if (arrow) next = present.nudge?.(arrow, shift);
    if (next) this.go(next);
    return next !== undefined;
  }

  private go(next: ToolState | "leave"): void {
    if (next === "leave") {
      this.context.setTool("select");
      return;
    }
    if (next === this.present) return;
    const otherFields = fieldsOf(next) !== fieldsOf(this.present);
    this.present = next;
    if (otherFields) this.typed = emptyEntry(next.fields ?? []);
    this.changed();
  }

  private type(entry: TypedEntry): void {
    this.typed = entry;
    const values = typedValues(entry, this.context.project().display.length);
    if (this.present.typed) this.go(this.present.typed(values));
    this.changed();
  }

  private clearTyped(): void {
    this.type(emptyEntry(this.present.fields ?? []));
  }

  private enter(): boolean {
    const fault = entryFault(this.typed, this.context.project().display.length);
    if (fault) {
      this.context.say(fault);
      return true;
    }
    if (!this.present.finish) return false;
    this.act((state) => state.finish?.());
    return true;
  }

  /** An act that uses up what was typed. */
  private act(step: (state: ToolState) => ToolState | undefined): void {
    const before = this.present;
    const next = step(before) ?? before;
    const used = isTyping(this.typed) && next !== before;
    this.go(next);
    if (used) this.clearTyped();
  }
}

/** States with the same fields share what is being typed. */
function fieldsOf(state: ToolState): string {
  return (state.fields ?? []).map((field) => field.name).join(" ");
}
