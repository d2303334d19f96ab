/**
 * What differs between the Electron window and a plain browser page: files, recent files, the title, closing.
 * Views and commands know only this interface.
 */

/** A file the host opened: its text, its name for people, and a token by which the host saves to it again. */
export interface OpenedFile {
  readonly name: string;
  readonly text: string;
  /** Opaque to the page; null where the place can't be saved to (a dropped file, a demo). */
  readonly token: string | null;
}

/** A picture or a PDF that the person chose, unread. */
export interface PickedPicture {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export interface SavedFile {
  readonly name: string;
  readonly token: string | null;
}

export interface RecentFile {
  readonly name: string;
  readonly token: string;
  /** Folder, shown as a hint. */
  readonly folder: string;
}

/** What the native menu, or the system, asks the page for: a command by its id, or a file to open. */
export type HostRequest = { readonly command: string } | { readonly openFile: OpenedFile };

/** A command of the page as a native menu shows it. */
export interface OfferedCommand {
  readonly id: string;
  readonly name: string;
  /** The menu it belongs to. */
  readonly place: string;
  /** As the page writes them: "Mod+K", "Shift+Mod+Z", "F1", "B". */
  readonly keys: readonly string[];
}

/** Unsaved work as the page hands it over. */
export interface UnsavedText {
  readonly name: string;
  readonly text: Blob;
  readonly token: string | null;
}

/** An unsaved project found after a crash. */
export interface RecoveredWork {
  readonly name: string;
  readonly text: string;
  /** The file it belonged to, if any. */
  readonly token: string | null;
  /** Milliseconds since 1970. */
  readonly when: number;
}

/** A failed act resolves to this; the text is for people and says what, where and how to mend it. */
export interface HostFailure {
  readonly failed: string;
}

/** null = the person cancelled. */
export type HostAnswer<T> = Promise<T | HostFailure | null>;

export interface Host {
  readonly kind: "electron" | "browser";
  openProject(): HostAnswer<OpenedFile>;
  openRecent(token: string): HostAnswer<OpenedFile>;
  /** Asks for a picture or PDF file to put under the plan. */
  openPicture(): HostAnswer<PickedPicture>;
  recentFiles(): Promise<readonly RecentFile[]>;
  /** Atomic: a temporary file, then a rename. */
  saveProject(token: string, text: string): HostAnswer<SavedFile>;
  saveProjectAs(suggestedName: string, text: string): HostAnswer<SavedFile>;
  /** Saves bytes (a PDF, a CSV) where the person says. */
  exportFile(suggestedName: string, bytes: Uint8Array<ArrayBuffer>): HostAnswer<SavedFile>;
  setTitle(name: string, dirty: boolean): void;
  /** Recovery journal: the unsaved text, or null once it is saved or given up. */
  keepUnsaved(work: UnsavedText | null): void;
  recovered(): Promise<RecoveredWork | null>;
  /** The commands that a native menu should offer, in their order. */
  offerCommands(commands: readonly OfferedCommand[]): void;
  onRequest(listener: (request: HostRequest) => void): () => void;
  /** Asked before the window closes; resolves true when it may. */
  onCloseAsked(listener: () => Promise<boolean>): () => void;
}
