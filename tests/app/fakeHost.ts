/** A host in memory: answers what a test says, and remembers what it was asked. */
import type { Host, HostFailure, OpenedFile, SavedFile } from "../../src/host";

export interface FakeHost extends Host {
  readonly saved: { name: string; text: string }[];
  readonly kept: (Blob | null)[];
  readonly titles: string[];
  opens: OpenedFile | HostFailure | null;
  saves: SavedFile | HostFailure | null;
}

export function fakeHost(): FakeHost {
  const host: FakeHost = {
    kind: "browser",
    saved: [],
    kept: [],
    titles: [],
    opens: null,
    saves: { name: "plan.drysill.json", token: "t1" },
    openProject: async () => host.opens,
    openRecent: async () => host.opens,
    openPicture: async () => null,
    recentFiles: async () => [],
    saveProject: async (token, text) => record(token, text),
    saveProjectAs: async (name, text) => record(name, text),
    exportFile: async (name) => ({ name, token: null }),
    setTitle: (name, dirty) => host.titles.push(`${name}${dirty ? " *" : ""}`),
    keepUnsaved: (work) => host.kept.push(work?.text ?? null),
    recovered: async () => null,
    offerCommands: () => undefined,
    onRequest: () => () => undefined,
    onCloseAsked: () => () => undefined,
  };
  async function record(name: string, text: string) {
    host.saved.push({ name, text });
    return host.saves;
  }
  return host;
}
