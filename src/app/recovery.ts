/** Keeps the unsaved project where it survives a crash, and the window's title in step. */
import { present, projectPieces } from "../document";
import type { Host } from "../host";
import { appStore, isDirty, isMoving } from "../store/store";

const pause = 1000;
/** Work between two looks at the hand, ms: the text of a million shots takes seconds. */
const oneGo = 8;

export function keepRecovery(host: Host): () => void {
  let timer: ReturnType<typeof setTimeout> | null = null;
  let keptBefore = false;
  const keep = () => {
    const { history, file } = appStore.getState();
    const project = present(history);
    const pieces = projectPieces(project);
    const text: Blob[] = [];
    const go = () => {
      timer = null;
      const state = appStore.getState();
      if (!isDirty(state)) return;
      // The hand shouldn't feel it.
      if (isMoving(state)) {
        timer = setTimeout(text.length === 0 ? keep : go, pause);
        return;
      }
      if (!addPieces(pieces, text)) {
        timer = setTimeout(go);
        return;
      }
      keptBefore = true;
      host.keepUnsaved({ name: file.name ?? project.name, text: new Blob(text), token: file.token });
      if (present(state.history) !== project) timer = setTimeout(keep, pause);
    };
    go();
  };
  const forget = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    if (keptBefore) host.keepUnsaved(null);
    keptBefore = false;
  };
  return appStore.subscribe((state, before) => {
    if (state.history === before.history && state.saved === before.saved) return;
    if (isDirty(state)) timer ??= setTimeout(keep, pause);
    else forget();
  });
}

/** Takes pieces out of the page's own memory for a moment. Answers whether those were the last. */
function addPieces(pieces: Iterator<string>, text: Blob[]): boolean {
  const until = performance.now() + oneGo;
  while (performance.now() < until) {
    const piece = pieces.next();
    if (piece.done) return true;
    text.push(new Blob([piece.value]));
  }
  return false;
}

export function keepTitle(host: Host): () => void {
  let shown = "";
  const show = () => {
    const state = appStore.getState();
    const name = state.screen === "plan" ? present(state.history).name : "";
    const dirty = state.screen === "plan" && isDirty(state);
    const now = `${dirty} ${name}`;
    if (now === shown) return;
    shown = now;
    host.setTitle(name, dirty);
  };
  show();
  return appStore.subscribe(show);
}
