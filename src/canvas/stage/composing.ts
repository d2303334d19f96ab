/**
 * Signs that come without a key of their own: composed by an input method, put on a letter that waited for them, picked
 * from a list of signs. Such signs only reach a part that can be edited, so the plan is one while its tool takes typing;
 * the browser's own writing into it is taken back.
 */
import { machine, toolRun } from "./toolRun";

const blank = "\u200b";

export interface Composing {
  /** A key that nobody used; the browser goes on to write its sign, which was looked at already. */
  unused(key: string): void;
  stop(): void;
}

export function listenToComposing(element: HTMLElement): Composing {
  let written: string | null = null;
  /** The browser composes only where the caret has some text beside it: a space without width. */
  const host = document.createTextNode(blank);

  const follow = () => {
    const takes = (toolRun.getState().state.fields?.length ?? 0) > 0;
    if (takes === (element.contentEditable === "true")) return;
    element.contentEditable = takes ? "true" : "inherit";
    if (takes) element.prepend(host);
    else host.remove();
    caret();
  };
  const caret = () => {
    if (host.isConnected && document.activeElement === element) getSelection()?.collapse(host, 0);
  };
  const before = (event: InputEvent) => {
    if (event.isComposing || event.inputType === "insertCompositionText") return;
    event.preventDefault();
    if (event.inputType === "insertText" && event.data && event.data !== written) machine().signs(event.data);
    written = null;
  };
  const composes = (event: CompositionEvent) => toolRun.setState({ composing: event.data });
  const composed = (event: CompositionEvent) => {
    toolRun.setState({ composing: "" });
    machine().signs(event.data);
    // Not while the browser still holds the words that it is done with.
    setTimeout(() => {
      for (const node of [...element.childNodes])
        if (node.nodeType === Node.TEXT_NODE && node !== host) node.remove();
      host.data = blank;
      caret();
    });
  };

  element.addEventListener("beforeinput", before);
  element.addEventListener("compositionupdate", composes);
  element.addEventListener("compositionend", composed);
  element.addEventListener("focus", caret);
  // The page lays itself out for it: not in the frame in which a thing comes under the hand.
  let soon: ReturnType<typeof setTimeout> | undefined;
  const leave = toolRun.subscribe(() => {
    clearTimeout(soon);
    soon = setTimeout(follow);
  });
  follow();
  return {
    unused(key) {
      written = key;
    },
    stop() {
      leave();
      clearTimeout(soon);
      host.remove();
      element.removeEventListener("beforeinput", before);
      element.removeEventListener("compositionupdate", composes);
      element.removeEventListener("compositionend", composed);
      element.removeEventListener("focus", caret);
    },
  };
}
