/** Whether the plan is in a file, in the words of the window's head. */
import type { OpenFile } from "../store/state";

export interface SavedWords {
  readonly words: string;
  /** What saving will do, or where it went. */
  readonly more: string;
}

export function savedWords(dirty: boolean, { name, token, origin }: OpenFile): SavedWords {
  const asks = "Save asks where to keep it";
  if (dirty) return { words: "not saved yet", more: token === null ? `${asks}.` : `Save writes to ${name}.` };
  if (token !== null) return { words: "saved", more: name ?? "" };
  if (origin === "demo")
    return { words: "demo: a copy of your own", more: `${asks}; the demo stays as it is.` };
  if (origin === "copy")
    return { words: "opened as a copy", more: `${asks}; ${name} itself stays as it is.` };
  if (name !== null) return { words: "saved as a download", more: `${name} is among your downloads.` };
  return { words: "nothing to save yet", more: "This plan has no file yet." };
}
