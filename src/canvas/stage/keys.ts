/**
 * Keys for the plan: the tool's own, typed lengths, and Space to move the view. They are the plan's while it has the
 * focus; while a tool draws they are it too where nobody else has a use for them, and Esc steps back from anywhere.
 */
import { appStore } from "../../store/store";
import { isLetter } from "../typed/typedEntry";
import { listenToComposing } from "./composing";
import { menuByKey } from "./planMenu";
import { machine } from "./toolRun";

export interface PlanKeys {
  spaceHeld(): boolean;
  stop(): void;
}

/** Keys typed while drawing are answered, once it is known that they are no shortcut either. */
function explainIfUnused(event: KeyboardEvent): void {
  setTimeout(() => {
    if (event.defaultPrevented || appStore.getState().tool === "select") return;
    if (!machine().unread() && figure.test(event.key)) machine().untypable();
  });
}

/** Where keys belong to what has the focus: it is typed into, walked through, or lies over the plan. */
const ownKeys =
  "input:not([type=checkbox], [type=radio], [type=range]), textarea, select, [contenteditable]:not(.plan-stage), " +
  "[role=grid], [role=menu], [role=listbox], [role=dialog], [role=alertdialog]";

/** What may begin a typed value; no button has a use for it. */
const figure = /^[0-9.,@½¼¾⅛⅜⅝⅞−-]$/;

const isDrawing = () => appStore.getState().tool !== "select";

const isShortcut = ({ ctrlKey, metaKey, altKey }: KeyboardEvent) => ctrlKey || metaKey || altKey;

/** Signs such as ° and ½ lie on a third level of many keyboards: reached by AltGr (told as Ctrl and Alt) or Option. */
function isThirdSign(event: KeyboardEvent): boolean {
  const third = event.getModifierState("AltGraph") || (event.altKey && !event.metaKey);
  return third && /^[°º½¼¾⅛⅜⅝⅞′″’”'"/;−@]$/.test(event.key);
}

/**
 * The sign that a key stands for. On keyboards where the mark of feet and inches waits for a letter to put it on, the
 * key names no sign: there the mark is taken at once.
 */
function signOf(event: KeyboardEvent): string {
  const { key, code, shiftKey } = event;
  if (key !== "Dead" || code !== "Quote" || event.getModifierState("AltGraph")) return key;
  return shiftKey ? '"' : "'";
}

/** Is this key, pressed beside the plan, meant for what is drawn on it? */
function isForPlan({ key, target }: KeyboardEvent): boolean {
  const { dialog, planMenu } = appStore.getState();
  const focused = target instanceof Element && target !== document.body ? target : null;
  if (dialog !== null || planMenu !== null || focused?.closest(ownKeys)) return false;
  return key === "Escape" || (isDrawing() && (!focused || figure.test(key)));
}

/** A click on these gives the keys back to the plan: while a tool draws, or "always". */
function givesKeysBack({ detail, target }: MouseEvent): boolean {
  const part = target instanceof Element ? target.closest<HTMLElement>("[data-keys-to-plan]") : null;
  // Pressed by a key, a button keeps the focus: it may be pressed again.
  if (!part || detail === 0 || document.activeElement?.closest(ownKeys)) return false;
  return isDrawing() || part.dataset.keysToPlan === "always";
}

export function listenToKeys(element: HTMLElement): PlanKeys {
  let space = false;
  /** A mark that was taken from a key that still waits for its letter. */
  let waiting: string | null = null;

  const composing = listenToComposing(element);

  function hold(held: boolean): void {
    space = held;
    element.classList.toggle("space-held", held);
  }

  function down(event: KeyboardEvent): void {
    element.classList.remove("by-hand");
    if (event.isComposing || (isShortcut(event) && !isThirdSign(event))) return;
    if (event.key === "ContextMenu" || (event.key === "F10" && event.shiftKey)) {
      event.preventDefault();
      menuByKey(element);
      return;
    }
    const sign = signOf(event);
    // The space that frees a waiting mark brings the same mark again: it is there already.
    const again = waiting !== null && event.code === "Space" && event.key === waiting;
    waiting = event.key === "Dead" && sign !== "Dead" ? sign : null;
    const used = again || machine().key(sign, event.shiftKey);
    if (!used && (isLetter(event.key) || figure.test(event.key))) explainIfUnused(event);
    if (!used) composing.unused(event.key);
    if (!used && event.key !== " ") return;
    if (!used) hold(true);
    event.preventDefault();
    // A letter that belongs to a typed length must not pick a tool.
    event.stopPropagation();
  }

  function up(event: KeyboardEvent): void {
    if (event.key === " ") hold(false);
  }

  const blur = () => {
    element.classList.remove("by-hand");
    hold(false);
  };

  function beside(event: KeyboardEvent): void {
    const within = event.target instanceof Node && element.contains(event.target);
    if (within || event.defaultPrevented || !isForPlan(event)) return;
    const drawing = isDrawing();
    down(event);
    if (drawing && event.defaultPrevented) element.focus({ preventScroll: true });
  }

  const clicked = (event: MouseEvent) => {
    if (givesKeysBack(event)) element.focus({ preventScroll: true });
  };

  element.addEventListener("keydown", down);
  document.addEventListener("keydown", beside);
  document.addEventListener("click", clicked);
  element.addEventListener("keyup", up);
  element.addEventListener("blur", blur);
  return {
    spaceHeld: () => space,
    stop() {
      composing.stop();
      element.removeEventListener("keydown", down);
      document.removeEventListener("keydown", beside);
      document.removeEventListener("click", clicked);
      element.removeEventListener("keyup", up);
      element.removeEventListener("blur", blur);
    },
  };
}
