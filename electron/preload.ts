import { contextBridge, ipcRenderer } from "electron";
import { type Bridge, bridgeName } from "../src/host/bridge";
import type { HostRequest } from "../src/host/host";
import { type Ask, type Asks, channel, type Message, type Messages, type Note, type Notes } from "./channels";

const ask = <A extends Ask>(name: A, ...given: Asks[A]["given"]): Promise<Asks[A]["answer"]> =>
  ipcRenderer.invoke(channel(name), ...given);

const note = <N extends Note>(name: N, ...given: Notes[N]["given"]): void =>
  ipcRenderer.send(channel(name), ...given);

const hear = <M extends Message>(name: M, listener: (message: Messages[M]) => void): void => {
  ipcRenderer.on(channel(name), (_event, message: Messages[M]) => listener(message));
};

const requestListeners = new Set<(request: HostRequest) => void>();
const closeListeners = new Set<() => Promise<boolean>>();

hear("request", (request) => {
  for (const listener of requestListeners) listener(request);
});

hear("closeAsked", async () => {
  note("closeHeard");
  try {
    const answers = await Promise.all([...closeListeners].map((listener) => listener()));
    note("closeAnswered", answers.every(Boolean));
  } catch {
    note("closeFailed");
  }
});

function listenTo<T>(listeners: Set<T>, listener: T): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

const bridge: Bridge = {
  openProject: () => ask("openProject"),
  openRecent: (token) => ask("openRecent", token),
  openPicture: () => ask("openPicture"),
  recentFiles: () => ask("recentFiles"),
  saveProject: (token, text) => ask("saveProject", token, text),
  saveProjectAs: (suggestedName, text) => ask("saveProjectAs", suggestedName, text),
  exportFile: (suggestedName, bytes) => ask("exportFile", suggestedName, bytes),
  recovered: () => ask("recovered"),
  setTitle: (name, dirty) => note("setTitle", name, dirty),
  keepUnsaved: (work) => note("keepUnsaved", work),
  offerCommands: (commands) => note("offerCommands", commands),
  onRequest(listener) {
    const stop = listenTo(requestListeners, listener);
    note("listening");
    return stop;
  },
  onCloseAsked: (listener) => listenTo(closeListeners, listener),
};

contextBridge.exposeInMainWorld(bridgeName, bridge);
