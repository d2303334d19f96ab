/** Runs one tool: sends keys and pointer to its present state, keeps what is being typed and a direction that is held. */
import type { Edit, Point } from "../../document";
import { halfWidth } from "../../units";
import { isLockKey, type Lock, type LockKey } from "../snap/lock";
import {
  bearingAsked,
  emptyEntry,
  entryFault,
  isLetter,
  isTyping,
  nextWanted,
  refusedEntry,
  type TypedEntry,
  typedValues,
  typeKey,
  wantedWords,
} from "../typed/typedEntry";
import { toWorld } from "../view/view";
import { type Held, isSamePlace, lockAt, pointerAhead } from "./holding";
import { exactText } from "./liveMarks";
import { type Outcome, watched } from "./outcome";
import { answerOf, sharesFields } from "./stateKeys";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "./tool";

export class Machine {
  private present: ToolState;
  private typed: TypedEntry;
  private held: Held | null = null;
  private pointer: PlanPointer | null = null;
  /** A place was set by figures since the pointer last moved: it points nowhere any more. */
  private outrun = false;
  /** Name of the state in which nothing is begun yet. */
  private readonly idle: string;

  private readonly context: ToolContext;
  private readonly outcome: Outcome;
  /** What was typed lacks its way alone: the hand may still show one. */
  private lacksWay = false;

  /** Starts a tool; `changed` is told after each change of state or entry. */
  constructor(
    start: ToolStart,
    context: ToolContext,
    private readonly changed: () => void,
  ) {
    ({ context: this.context, outcome: this.outcome } = watched(context));
    this.present = start(this.context);
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

  /** Would another tool take away what is being drawn? What only shows a reading loses nothing. */
  halfDrawn(): boolean {
    return this.begun() && this.present.reading?.live !== false;
  }

  entry(): TypedEntry {
    return this.typed;
  }

  /** The direction that is held now. */
  lock(): Lock | null {
    return this.held?.lock ?? null;
  }

  move(pointer: PlanPointer): void {
    const held = this.hold(pointer);
    this.go(this.present.move?.(held) ?? this.present);
  }

  press(pointer: PlanPointer): void {
    const held = this.hold(pointer);
    this.act((state) => state.press?.(held));
  }

  release(pointer: PlanPointer): void {
    const held = this.hold(pointer);
    this.act((state) => state.release?.(held));
  }

  doublePress(pointer: PlanPointer): void {
    const held = this.hold(pointer);
    this.act((state) => state.doublePress?.(held));
  }

  /** The pointer with the direction that is held. */
  private hold(pointer: PlanPointer): PlanPointer {
    this.pointer = pointer;
    this.outrun = false;
    this.takeBack();
    return this.held ? { ...pointer, lock: this.held.lock } : pointer;
  }

  lost(): void {
    this.go(this.present.lost());
  }

  choose(value: string): void {
    this.act((state) => state.choose?.(value));
  }

  /** The plan or the selection changed beside the hand: what is pointed at, or `away` nothing, is told anew. */
  refresh(away: boolean): void {
    if (this.present.name !== this.idle) return;
    const { pointer } = this;
    if (away || !pointer) this.lost();
    else this.move({ ...pointer, at: this.under(pointer) });
  }

  /** Makes what the reading offers. */
  use(): void {
    this.act((state) => state.use?.());
  }

  /** A figure of what is being drawn was typed over. */
  setDimension(key: string, m: number): Edit {
    const project = this.context.project();
    const dimension = this.present.dimensions?.find((each) => each.key === key);
    if (!dimension) return { ok: false, why: "That is drawn no longer." };
    if (!(m > 0)) return { ok: false, why: "A length must be more than nothing." };
    const { field, set } = dimension;
    const index = this.typed.fields.findIndex(({ name }) => name === field);
    if (index >= 0) {
      const texts = this.typed.texts.slice();
      texts[index] = exactText(m, project);
      this.type({ ...this.typed, texts });
    } else if (set) this.go(set(m));
    return { ok: true, project, label: dimension.label };
  }

  /** True when the key was used. */
  key(key: string, shift: boolean): boolean {
    if (key === "Escape") {
      if (isTyping(this.typed)) this.clearTyped();
      else if (this.held) this.setLock(null);
      else this.go(this.present.cancel());
      return true;
    }
    const typed = typeKey(this.typed, key, this.present.name !== this.idle);
    if (typed) {
      this.type(typed);
      return true;
    }
    if (key === "Enter") return this.enter();
    const lockKey = key.length === 1 ? key.toLowerCase() : key;
    if (this.present.locksFrom && isLockKey(lockKey)) return this.toggleLock(lockKey, this.present.locksFrom);
    // In the midst of typing a letter never picks a tool: what was begun would be lost.
    if (isTyping(this.typed) && isLetter(key)) return this.unread();
    const next = answerOf(this.present, key, shift);
    if (next) this.go(next);
    return next !== undefined;
  }

  /** Signs that came composed, not key by key: they are typed, and pick nothing. */
  signs(text: string): void {
    for (const sign of halfWidth(text)) {
      const typed = typeKey(this.typed, sign, this.present.name !== this.idle);
      if (typed) this.type(typed);
      else if (!this.unread()) this.untypable();
    }
  }

  /** Says what can be typed now, after a key that nobody had a use for. True when something can. */
  unread(): boolean {
    const words = wantedWords(this.typed);
    if (words === null) return false;
    this.context.say(words);
    return true;
  }

  /** A figure came where nothing can be typed: says what does the next step instead. */
  untypable(): void {
    this.context.say(`Figures have no use here. ${this.present.hint}.`);
  }

  private toggleLock(key: LockKey, from: Point): true {
    const to = this.present.snap?.at ?? this.pointer?.at ?? from;
    if (this.held?.lock.key === key) this.setLock(null);
    else {
      const { pointer } = this;
      const lock = lockAt(this.context, key, {
        from,
        to,
        pointer: pointer && { ...pointer, at: this.under(pointer) },
      });
      if (typeof lock === "string") this.context.say(lock);
      else this.setLock({ lock, from });
    }
    return true;
  }

  /** The view may have gone on under a pointer that rests. */
  private under({ screen }: PlanPointer): Point {
    return toWorld(this.context.view(), screen);
  }

  private setLock(held: Held | null): void {
    this.held = held;
    if (held) this.takeBack();
    // What is drawn follows at once, also where there has been no pointer yet.
    const pointer = this.pointer && !this.outrun ? this.pointer : held && pointerAhead(this.context, held);
    if (pointer) this.move(pointer);
    this.changed();
  }

  private go(next: ToolState | "leave"): void {
    if (next === "leave") {
      this.context.setTool("select");
      return;
    }
    if (next === this.present) return;
    const otherFields = !sharesFields(next, this.present);
    this.present = next;
    const { locksFrom } = next;
    // A held direction is for one piece.
    if (this.held && !(locksFrom && isSamePlace(locksFrom, this.held.from))) this.held = null;
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

  private refuse(why: string): void {
    this.context.say(why);
    this.markRefused();
  }

  private markRefused(): void {
    this.lacksWay = false;
    this.typed = refusedEntry(this.typed, this.context.project().display.length);
    this.changed();
  }

  /** What only lacked its way is good again once the hand shows one. */
  private takeBack(): void {
    const { refused, ...entry } = this.typed;
    if (refused && this.lacksWay) this.typed = entry;
  }

  private enter(): boolean {
    const fault = entryFault(this.typed, this.context.project().display.length);
    if (fault) {
      this.refuse(fault);
      return true;
    }
    const next = nextWanted(this.typed, this.context.project().display.length);
    if (next) {
      this.type(next);
      return true;
    }
    if (!this.present.finish) return false;
    const { length } = this.context.project().display;
    const asked = !this.pointer || this.outrun ? bearingAsked(this.typed, length) : null;
    if (asked !== null) {
      this.refuse(asked);
      this.lacksWay = true;
      return true;
    }
    const from = this.present.locksFrom;
    this.act((state) => state.finish?.());
    // What is placed by figures may lie out of sight: the view follows.
    const { locksFrom } = this.present;
    if (locksFrom && !(from && isSamePlace(from, locksFrom))) {
      this.outrun = true;
      this.context.show(locksFrom);
    }
    return true;
  }

  /** An act that uses up what was typed; where it was refused that stays, and what is typed next takes its place. */
  private act(step: (state: ToolState) => ToolState | undefined): void {
    const before = this.present;
    Object.assign(this.outcome, { said: false, done: false });
    const next = step(before) ?? before;
    const refused = this.outcome.said && !this.outcome.done && next.name === before.name;
    const typing = isTyping(this.typed);
    this.go(next);
    if (typing && refused) this.markRefused();
    else if (typing && next !== before) this.clearTyped();
  }
}
