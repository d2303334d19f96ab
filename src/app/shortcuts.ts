/** Keyboard shortcuts of the whole window, from the list of commands. */
import type { AppCommand } from "../panels/command";
import { isPlainKey, isPressed, onMac } from "../panels/keys";
import { tell } from "../store/actions";
import { appStore } from "../store/store";
import { takeTyping } from "./typing";

/** Pressed until nothing is left: its end needs no words. */
const endsByItself = /^edit\.(undo|redo)$/;

export function listenToKeys(commands: readonly AppCommand[]): () => void {
  const mac = onMac();
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.isComposing) return;
    const pressed = commands.filter(({ keys = [] }) =>
      keys.some((key) => isPressed(key, event, mac) && mayFire(key, event)),
    );
    const state = appStore.getState();
    // Where a key does and undoes (lock, unlock) the one that can be done is meant.
    const command = pressed.find(({ whyNot }) => (whyNot?.(state) ?? null) === null) ?? pressed[0];
    if (!command) return;
    event.preventDefault();
    takeTyping();
    const why = command.whyNot?.(appStore.getState()) ?? null;
    if (why === null) command.run();
    else if (state.screen === "plan" && !endsByItself.test(command.id)) tell({ tone: "caution", text: why });
  };
  window.addEventListener("keydown", onKeyDown);
  return () => window.removeEventListener("keydown", onKeyDown);
}

/** All, copy, paste, fill down: where a person types these mean the text, where text is marked they mean that. */
function belongsToTyping(key: string): boolean {
  return /^Mod\+[ACVD]$/.test(key);
}

/** A plain key belongs to whoever is being typed into; an open dialog keeps all but the shortcuts with Mod. */
function mayFire(key: string, event: KeyboardEvent): boolean {
  const target = event.target instanceof Element ? event.target : null;
  const typing = target?.closest(
    "input, textarea, select, [contenteditable]:not(.plan-stage), [role=grid], [role=menu], [role=listbox]",
  );
  if (isPlainKey(key) || belongsToTyping(key)) {
    // A dialog that was asked for but isn't drawn yet gets no keys that mean something else meanwhile.
    const opening = appStore.getState().dialog !== null;
    const marked = key === "Mod+C" && window.getSelection()?.isCollapsed === false;
    return !marked && !opening && !typing && !target?.closest("[role=dialog], [role=alertdialog]");
  }
  const ownUndo = typing instanceof HTMLInputElement && /^(Shift\+)?Mod\+[ZY]$/.test(key);
  return !(ownUndo && typing.dataset.typed === "true");
}
