/** Keeps the unsaved project where it survives a crash, and the window's title in step. */
import { present, projectText } from "../document";
import type { Host } from "../host";
import { appStore, isDirty, isMoving } from "../store/store";

const pause = 1000;

export function keepRecovery(host: Host): () => void {
  let timer: ReturnType<typeof setTimeout> | null = null;
  let keptBefore = false;
  const keep = () => {
    timer = null;
    const state = appStore.getState();
    if (!isDirty(state)) return;
    // A project with pictures takes a tenth of a second to note: the hand shouldn't feel that.
    if (isMoving(state)) {
      timer = setTimeout(keep, pause);
      return;
    }
    const project = present(state.history);
    keptBefore = true;
    host.keepUnsaved({
      name: state.file.name ?? project.name,
      text: projectText(project),
      token: state.file.token,
    });
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
