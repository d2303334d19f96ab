/** Where things lie over the plan: tools, buttons of the view, scale and key. Each keeps to its slot (see the style sheet). */
import type { Box } from "./freeArea";

/** Room between a slot and what is drawn, px. */
const clear = 8;

const slots = new Set<HTMLElement>();
let stage: HTMLElement | null = null;
const listeners = new Set<() => void>();
const observer = typeof ResizeObserver === "undefined" ? null : new ResizeObserver(tell);

/** Where all of it was last, and when: to ask the page makes it lay itself out, which a hand feels in every frame. */
let known: { readonly boxes: readonly Box[]; readonly at: number } | null = null;
/** A change that nobody tells of is seen after so long, ms. */
const knownFor = 250;

/** The plan has another size or place: what lies over it may have moved without a change of its own. */
export function slotsMayHaveMoved(): void {
  known = null;
}

if (typeof window !== "undefined") window.addEventListener("resize", slotsMayHaveMoved);

function tell(): void {
  slotsMayHaveMoved();
  for (const told of listeners) told();
}

/** A slot's ref: the plan knows its place as long as it is on the page. */
export function planSlot(element: HTMLElement | null): (() => void) | undefined {
  if (!element) return undefined;
  slots.add(element);
  slotsMayHaveMoved();
  observer?.observe(element);
  return () => {
    slots.delete(element);
    slotsMayHaveMoved();
    observer?.unobserve(element);
  };
}

/** The stage that the slots' places are told from. */
export function slotsLieOver(element: HTMLElement | null): void {
  stage = element;
  slotsMayHaveMoved();
}

/** Calls back when a slot has another size. */
export function onSlotsChange(told: () => void): () => void {
  listeners.add(told);
  return () => listeners.delete(told);
}

/** What is taken of the plan now, with a little room round it. */
export function takenBoxes(): readonly Box[] {
  if (!stage) return [];
  const now = performance.now();
  if (known && now - known.at < knownFor) return known.boxes;
  const boxes = boxesOver(
    stage.getBoundingClientRect(),
    [...slots].map((slot) => slot.getBoundingClientRect()),
  );
  known = { boxes, at: now };
  return boxes;
}

/** Boxes of the page as boxes over the plan; what isn't shown takes nothing. */
export function boxesOver(plan: Pick<Box, "left" | "top">, boxes: readonly Box[]): readonly Box[] {
  return boxes
    .filter(({ left, top, right, bottom }) => right > left && bottom > top)
    .map(({ left, top, right, bottom }) => ({
      left: left - plan.left - clear,
      top: top - plan.top - clear,
      right: right - plan.left + clear,
      bottom: bottom - plan.top + clear,
    }));
}
