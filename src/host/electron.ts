import { type Bridge, bridgeName } from "./bridge";
import { listenToDrops } from "./droppedFiles";
import type { Host, HostAnswer, UnsavedText } from "./host";

/** The preload's bridge, where the page runs in the Electron window. */
export function findBridge(): Bridge | null {
  return (globalThis as { [bridgeName]?: Bridge })[bridgeName] ?? null;
}

/** The host of the Electron window: the bridge, with refusals of the main process put into words. */
export function electronHost(bridge: Bridge): Host {
  const notedInTurn = inTurn(async (work: UnsavedText | null) =>
    bridge.keepUnsaved(work && { ...work, text: await work.text.text() }),
  );
  return {
    kind: "electron",
    openProject: () => inWords(bridge.openProject(), "opened"),
    openRecent: (token) => inWords(bridge.openRecent(token), "opened"),
    openPicture: () => inWords(bridge.openPicture(), "opened"),
    recentFiles: () => bridge.recentFiles(),
    saveProject: (token, text) => inWords(bridge.saveProject(token, text), "saved"),
    saveProjectAs: (suggestedName, text) => inWords(bridge.saveProjectAs(suggestedName, text), "saved"),
    exportFile: (suggestedName, bytes) => inWords(bridge.exportFile(suggestedName, bytes), "exported"),
    setTitle: (name, dirty) => bridge.setTitle(name, dirty),
    keepUnsaved: (work) => notedInTurn(work),
    recovered: () => bridge.recovered(),
    offerCommands: (commands) => bridge.offerCommands(commands),
    onRequest(listener) {
      const stopRequests = bridge.onRequest(listener);
      const stopDrops = listenToDrops((openFile) => listener({ openFile }));
      return () => {
        stopRequests();
        stopDrops();
      };
    },
    onCloseAsked: (listener) => bridge.onCloseAsked(listener),
  };
}

/** One after another: what was given up last isn't kept again by what was handed in before. */
function inTurn<Given>(act: (given: Given) => Promise<void>): (given: Given) => void {
  let last: Promise<void> = Promise.resolve();
  return (given) => {
    last = last
      .then(() => act(given))
      .catch((error: unknown) => console.error("Unsaved work could not be noted:", error));
  };
}

async function inWords<T>(answer: HostAnswer<T>, act: string): HostAnswer<T> {
  try {
    return await answer;
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    return { failed: `The file couldn't be ${act}: ${said}. Your work is still open here; try again.` };
  }
}
