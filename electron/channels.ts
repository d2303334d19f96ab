import type {
  HostRequest,
  OfferedCommand,
  OpenedFile,
  PickedPicture,
  RecentFile,
  RecoveredWork,
  SavedFile,
} from "../src/host/host";

/** Acts that the page asks for and waits for, with what each is given and answers. */
export interface Asks {
  openProject: { given: []; answer: OpenedFile | null };
  openRecent: { given: [token: string]; answer: OpenedFile | null };
  openPicture: { given: []; answer: PickedPicture | null };
  recentFiles: { given: []; answer: readonly RecentFile[] };
  saveProject: { given: [token: string, text: string]; answer: SavedFile | null };
  saveProjectAs: { given: [suggestedName: string, text: string]; answer: SavedFile | null };
  exportFile: { given: [suggestedName: string, bytes: Uint8Array<ArrayBuffer>]; answer: SavedFile | null };
  recovered: { given: []; answer: RecoveredWork | null };
}

/** What the page says without waiting. */
export interface Notes {
  setTitle: { given: [name: string, dirty: boolean] };
  keepUnsaved: { given: [work: { name: string; text: string; token: string | null } | null] };
  offerCommands: { given: [commands: readonly OfferedCommand[]] };
  /** The page listens to requests from now on. */
  listening: { given: [] };
  /** The page lives and has heard that the window should close. */
  closeHeard: { given: [] };
  closeAnswered: { given: [may: boolean] };
  /** The page failed at its own question. */
  closeFailed: { given: [] };
}

/** What the main process says to the page. */
export interface Messages {
  request: HostRequest;
  closeAsked: null;
}

export type Ask = keyof Asks;
export type Note = keyof Notes;
export type Message = keyof Messages;

/** The name of an ask, note or message on the wire. */
export const channel = (name: Ask | Note | Message): string => `drysill:${name}`;
