import { chooseFile, download, type FilePickers, filePickers, mayUse, projectType } from "./filePickers";
import type { HostAnswer, HostFailure, OpenedFile, RecentFile, SavedFile } from "./host";
import { keptRecords } from "./keptRecords";

const greatestRecent = 10;

interface RecentRecord {
  readonly handle: FileSystemFileHandle;
  readonly when: number;
}

/** Opening and saving with the browser's pickers where it has them, with a file field and downloads otherwise. */
export class BrowserFiles {
  readonly #handles = new Map<string, FileSystemFileHandle>();
  readonly #records = keptRecords("recent");

  async openProject(): HostAnswer<OpenedFile> {
    const pickers = filePickers();
    if (pickers) return this.#openPicked(pickers);
    const file = await chooseFile(".json");
    return file && { name: file.name, text: await file.text(), token: null };
  }

  async #openPicked(pickers: FilePickers): HostAnswer<OpenedFile> {
    try {
      const [handle] = await pickers.showOpenFilePicker({ types: [projectType] });
      return handle ? await this.#read(handle, await this.#remember(handle)) : null;
    } catch (error) {
      return cancelled(error) ? null : failure("opened", "The file", error);
    }
  }

  async openRecent(token: string): HostAnswer<OpenedFile> {
    const handle = await this.#handle(token);
    if (!handle) return unknownFile;
    try {
      if (!(await mayUse(handle, "read"))) return null;
      return await this.#read(handle, await this.#remember(handle));
    } catch (error) {
      if (named(error, "NotFoundError")) await this.#records.remove(token);
      return failure("opened", `“${handle.name}”`, error);
    }
  }

  async #read(handle: FileSystemFileHandle, token: string): Promise<OpenedFile> {
    const file = await handle.getFile();
    return { name: file.name, text: await file.text(), token };
  }

  async recentFiles(): Promise<readonly RecentFile[]> {
    const records = await this.#recent().catch(() => []);
    return records.map(({ token, handle }) => ({ name: handle.name, token, folder: "" }));
  }

  async saveProject(token: string, text: string): HostAnswer<SavedFile> {
    const handle = await this.#handle(token);
    return handle ? this.#write(handle, text) : unknownFile;
  }

  async saveProjectAs(suggestedName: string, text: string): HostAnswer<SavedFile> {
    const types = [projectType];
    return this.#saveWhereAsked({ suggestedName, types }, text, "application/json");
  }

  async exportFile(suggestedName: string, bytes: Uint8Array<ArrayBuffer>): HostAnswer<SavedFile> {
    const answer = await this.#saveWhereAsked({ suggestedName }, bytes, typeOf(suggestedName));
    return answer && "name" in answer ? { name: answer.name, token: null } : answer;
  }

  async #saveWhereAsked(
    options: Parameters<FilePickers["showSaveFilePicker"]>[0],
    content: string | Uint8Array<ArrayBuffer>,
    type: string,
  ): HostAnswer<SavedFile> {
    const pickers = filePickers();
    try {
      if (pickers)
        return await this.#write(await pickers.showSaveFilePicker(options), content, "types" in options);
    } catch (error) {
      if (cancelled(error)) return null;
      // The browser wants a fresh click for its picker; a download needs none.
      if (!named(error, "SecurityError")) return failure("saved", `“${options.suggestedName}”`, error);
    }
    download(options.suggestedName, content, type);
    return { name: options.suggestedName, token: null };
  }

  /** The browser writes beside the file and swaps the two when the writing is closed. */
  async #write(handle: FileSystemFileHandle, content: string | Uint8Array<ArrayBuffer>, project = true) {
    try {
      if (!(await mayUse(handle, "readwrite"))) return notAllowed(handle.name);
      const writable = await handle.createWritable();
      await writable.write(content);
      await writable.close();
      return { name: handle.name, token: project ? await this.#remember(handle) : null };
    } catch (error) {
      return failure("saved", `“${handle.name}”`, error);
    }
  }

  async #handle(token: string): Promise<FileSystemFileHandle | null> {
    const known = this.#handles.get(token);
    if (known) return known;
    const records = await this.#recent().catch(() => []);
    return records.find((record) => record.token === token)?.handle ?? null;
  }

  async #recent(): Promise<({ token: string } & RecentRecord)[]> {
    const records: ({ token: string } & RecentRecord)[] = [];
    for (const token of await this.#records.keys()) {
      const record = asRecord(await this.#records.read(token));
      if (record) records.push({ token, ...record });
    }
    return records.sort((a, b) => b.when - a.when);
  }

  /** The file's token, the same each time; where the browser keeps nothing it lasts as long as the page. */
  async #remember(handle: FileSystemFileHandle): Promise<string> {
    const known = await this.#tokenOf(handle);
    const token = known ?? crypto.randomUUID();
    this.#handles.set(token, handle);
    try {
      await this.#records.write(token, { handle, when: Date.now() } satisfies RecentRecord);
      for (const old of (await this.#recent()).slice(greatestRecent)) await this.#records.remove(old.token);
    } catch {
      return token;
    }
    return token;
  }

  async #tokenOf(handle: FileSystemFileHandle): Promise<string | null> {
    const recent = (await this.#recent().catch(() => [])).map(
      ({ token, handle }) => [token, handle] as const,
    );
    for (const [token, other] of [...this.#handles, ...recent]) {
      if (await handle.isSameEntry(other)) return token;
    }
    return null;
  }
}

function asRecord(value: unknown): RecentRecord | null {
  if (typeof value !== "object" || value === null) return null;
  const { handle, when } = value as Record<string, unknown>;
  return handle instanceof FileSystemFileHandle && typeof when === "number" ? { handle, when } : null;
}

const types: Readonly<Record<string, string>> = {
  pdf: "application/pdf",
  csv: "text/csv",
  json: "application/json",
};

const typeOf = (name: string): string =>
  types[name.slice(name.lastIndexOf(".") + 1).toLowerCase()] ?? "application/octet-stream";

const named = (error: unknown, name: string): boolean => error instanceof DOMException && error.name === name;
const cancelled = (error: unknown): boolean => named(error, "AbortError");

const unknownFile: HostFailure = {
  failed: "This browser doesn't know that file any more. Open it with Open, or save the plan with Save As.",
};

const notAllowed = (name: string): HostFailure => ({
  failed: `“${name}” wasn't saved, since the browser was not allowed to change it. Save again and allow it, or use Save As.`,
});

function failure(act: "opened" | "saved", what: string, error: unknown): HostFailure {
  if (named(error, "NotFoundError")) {
    return { failed: `${what} isn't there any more. It may have been moved, renamed or deleted.` };
  }
  if (named(error, "QuotaExceededError")) {
    return {
      failed: `${what} couldn't be ${act}: there is no room left. Free some space, or save elsewhere.`,
    };
  }
  if (named(error, "NotAllowedError") || named(error, "NoModificationAllowedError")) {
    return {
      failed: `${what} couldn't be ${act}, since the browser may not use it. Allow it, or use Save As.`,
    };
  }
  const said = error instanceof Error ? error.message : String(error);
  return { failed: `${what} couldn't be ${act} (${said}). Your work is still open here; try again.` };
}
