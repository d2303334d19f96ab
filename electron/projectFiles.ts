import { existsSync } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import { basename, dirname, extname, join, sep } from "node:path";
import { app, type BrowserWindow, dialog } from "electron";
import { limits } from "../src/host/bridge";
import type { HostFailure, OpenedFile, PickedPicture, RecentFile, SavedFile } from "../src/host/host";
import { pictureEndings } from "../src/host/pictureFile";
import { saveAtomically } from "./atomicSave";
import { openFailure, saveFailure, shownFolder } from "./failureWords";
import type { FileTokens } from "./fileTokens";
import { readPicture } from "./pictureFile";
import type { RecentFiles } from "./recentFiles";

const projectEnding = ".drysill.json";
const projectFilter = { name: "Drysill plan", extensions: ["json"] };

type Answer<T> = Promise<T | HostFailure | null>;

/** Opening and saving by path, with the native dialogs; paths go no further than here. */
export class ProjectFiles {
  constructor(
    readonly window: BrowserWindow,
    readonly tokens: FileTokens,
    readonly recent: RecentFiles,
    /** Files here are examples: they are read but never saved to, nor remembered. */
    readonly demoFolder: string,
  ) {}

  async openProject(): Answer<OpenedFile> {
    const { filePaths } = await dialog.showOpenDialog(this.window, {
      title: "Open a plan",
      properties: ["openFile"],
      filters: [projectFilter, { name: "All files", extensions: ["*"] }],
    });
    const path = filePaths[0];
    return path === undefined ? null : this.openPath(path);
  }

  async openRecent(token: string): Answer<OpenedFile> {
    const path = this.tokens.pathFor(token);
    return path === null ? unknownFile : this.openPath(path);
  }

  async openPath(path: string): Promise<OpenedFile | HostFailure> {
    const text = await readText(path);
    if (typeof text !== "string") {
      if (!existsSync(path)) await this.recent.remove(path);
      return text;
    }
    if (path.startsWith(this.demoFolder + sep)) return { name: basename(path), text, token: null };
    await this.#remember(path);
    return { name: basename(path), text, token: this.tokens.tokenFor(path) };
  }

  async openPicture(): Answer<PickedPicture> {
    const { filePaths } = await dialog.showOpenDialog(this.window, {
      title: "Place a picture under the plan",
      properties: ["openFile"],
      filters: [{ name: "Picture or PDF", extensions: [...pictureEndings] }],
    });
    const path = filePaths[0];
    return path === undefined ? null : readPicture(path);
  }

  recentFiles(): readonly RecentFile[] {
    return this.recent.paths.map((path) => ({
      name: basename(path),
      token: this.tokens.tokenFor(path),
      folder: shownFolder(dirname(path)),
    }));
  }

  async saveProject(token: string, text: string): Answer<SavedFile> {
    const path = this.tokens.pathFor(token);
    return path === null ? unknownFile : this.#saveProjectTo(path, text);
  }

  async saveProjectAs(suggestedName: string, text: string): Answer<SavedFile> {
    const name = extname(suggestedName) === "" ? suggestedName + projectEnding : suggestedName;
    const path = await this.#askWhere("Save the plan", name, projectEnding, projectFilter);
    return path === null ? null : this.#saveProjectTo(path, text);
  }

  async exportFile(suggestedName: string, bytes: Uint8Array): Answer<SavedFile> {
    const ending = extname(suggestedName);
    const filter = { name: ending.slice(1).toUpperCase(), extensions: [ending.slice(1) || "*"] };
    const path = await this.#askWhere("Export", suggestedName, ending, filter);
    if (path === null) return null;
    const failure = await write(path, bytes);
    return failure ?? { name: basename(path), token: null };
  }

  async #saveProjectTo(path: string, text: string): Promise<SavedFile | HostFailure> {
    const failure = await write(path, text);
    if (failure) return failure;
    await this.#remember(path);
    return { name: basename(path), token: this.tokens.tokenFor(path) };
  }

  /** The path chosen, with the ending put on where the person left it out; null when cancelled. */
  async #askWhere(title: string, name: string, ending: string, filter: Electron.FileFilter) {
    const defaultPath = join(this.#usualFolder(), name);
    const options = { title, defaultPath, filters: [filter] };
    const { filePath } = await dialog.showSaveDialog(this.window, options);
    if (!filePath) return null;
    if (extname(filePath) !== "") return filePath;
    const completed = filePath + ending;
    return !existsSync(completed) || (await this.#mayReplace(completed)) ? completed : null;
  }

  async #mayReplace(path: string): Promise<boolean> {
    const { response } = await dialog.showMessageBox(this.window, {
      type: "warning",
      message: `“${basename(path)}” is already there. Replace it?`,
      detail: `It is in “${shownFolder(dirname(path))}”. What it holds now will be lost.`,
      buttons: ["Cancel", "Replace"],
      defaultId: 0,
      cancelId: 0,
    });
    return response === 1;
  }

  #usualFolder(): string {
    const latest = this.recent.paths[0];
    if (latest !== undefined && existsSync(dirname(latest))) return dirname(latest);
    return app.getPath("documents");
  }

  async #remember(path: string): Promise<void> {
    await this.recent.add(path);
    app.addRecentDocument(path);
  }
}

const unknownFile: HostFailure = {
  failed: "Drysill doesn't know that file any more. Open it with Open, or save the plan with Save As.",
};

async function readText(path: string): Promise<string | HostFailure> {
  try {
    if ((await stat(path)).size > limits.textCharacters) {
      return { failed: `“${basename(path)}” is too large to be a plan. Choose a ${projectEnding} file.` };
    }
    return new TextDecoder("utf-8", { fatal: true }).decode(await readFile(path));
  } catch (error) {
    if (error instanceof TypeError) {
      return {
        failed: `“${basename(path)}” isn't a text file, so it can't be a plan. Choose a ${projectEnding} file.`,
      };
    }
    return { failed: openFailure(error, path) };
  }
}

async function write(path: string, content: string | Uint8Array): Promise<HostFailure | null> {
  try {
    await saveAtomically(path, content);
    return null;
  } catch (error) {
    return { failed: saveFailure(error, path) };
  }
}
