import { BrowserFiles } from "./browserFiles";
import { browserRecovery } from "./browserRecovery";
import { listenToDrops } from "./droppedFiles";
import type { Host } from "./host";
import { pickPicture } from "./pickPicture";

/** The host of a plain browser page: the browser's file pickers or downloads, and its own storage. */
export function browserHost(): Host {
  const files = new BrowserFiles();
  const recovery = browserRecovery();
  let unsaved = false;
  window.addEventListener("beforeunload", (event) => {
    if (!unsaved) return;
    event.preventDefault();
    event.returnValue = "";
  });
  return {
    kind: "browser",
    openProject: () => files.openProject(),
    openRecent: (token) => files.openRecent(token),
    openPicture: () => pickPicture(),
    recentFiles: () => files.recentFiles(),
    saveProject: (token, text) => files.saveProject(token, text),
    saveProjectAs: (suggestedName, text) => files.saveProjectAs(suggestedName, text),
    exportFile: (suggestedName, bytes) => files.exportFile(suggestedName, bytes),
    setTitle(name, dirty) {
      unsaved = dirty;
      document.title = name === "" ? "Drysill" : `${name}${dirty ? " (edited)" : ""} – Drysill`;
    },
    keepUnsaved: (work) => recovery.keep(work),
    recovered: () => recovery.found(),
    // A page has no menu of the system's; its own reads the same list.
    offerCommands: () => undefined,
    onRequest: (listener) => listenToDrops((openFile) => listener({ openFile })),
    // A browser lets a page ask only its own yes-or-no question, which setTitle's dirty mark decides.
    onCloseAsked: () => () => undefined,
  };
}
