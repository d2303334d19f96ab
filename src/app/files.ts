/** Opening, saving and exporting, through whichever host runs the page. Every failure becomes a message that stays. */
import {
  type Display,
  fileEnding,
  newProject,
  openProject,
  type Project,
  present,
  projectText,
} from "../document";
import type { Host, HostFailure, OpenedFile, RecoveredWork, SavedFile } from "../host";
import { clearDrafts } from "../panels/levelbook/drafts";
import { clearKept } from "../panels/table/kept";
import { markSaved, openDialog, showProject, showStart, showUnsavedProject, tell } from "../store/actions";
import type { OpenFile } from "../store/state";
import { appStore, isDirty } from "../store/store";
import { ask, type Question } from "./asking";
import { type Demo, demos } from "./demos";
import { placePicture } from "./pictures/placePicture";

export interface Files {
  newPlan(name: string, display: Partial<Display>): Promise<void>;
  open(): Promise<void>;
  openFile(file: OpenedFile): Promise<void>;
  openLast(): Promise<void>;
  openRecent(token: string): Promise<void>;
  openDemo(demo: Demo): Promise<void>;
  openRecovered(work: RecoveredWork): Promise<void>;
  /** Both resolve to whether the project is saved now. */
  save(): Promise<boolean>;
  saveAs(): Promise<boolean>;
  exportBytes(suggestedName: string, bytes: Uint8Array<ArrayBuffer>): Promise<void>;
  /** Asks for a picture or PDF and puts it under the plan. */
  placePicture(): Promise<void>;
  toStart(): Promise<void>;
  /** Whether the project may go: saved, given up on purpose, or without changes. */
  mayLeave(): Promise<boolean>;
}

export function filesThrough(host: Host): Files {
  return new HostFiles(host);
}

class HostFiles implements Files {
  constructor(private readonly host: Host) {}

  async newPlan(name: string, display: Partial<Display>): Promise<void> {
    if (!(await this.mayLeave())) return;
    const project = newProject(name.trim() || "Untitled plan");
    forgetTyped();
    showProject({ ...project, display: { ...project.display, ...display } }, { name: null, token: null });
  }

  async open(): Promise<void> {
    await this.show(await this.host.openProject());
  }

  async openRecent(token: string): Promise<void> {
    await this.show(await this.host.openRecent(token));
  }

  /** The plan that was worked on last, where the host knows one. */
  async openLast(): Promise<void> {
    const [last] = await this.host.recentFiles();
    if (last) await this.openRecent(last.token);
  }

  async openFile(file: OpenedFile): Promise<void> {
    if (await this.mayLeave()) showOpened(file, await placeOf(file));
  }

  async openDemo(demo: Demo): Promise<void> {
    if (await this.mayLeave()) showOpened({ name: demo.file, text: await demo.text(), token: null }, aDemo);
  }

  async openRecovered(work: RecoveredWork): Promise<void> {
    const read = openProject(work.text);
    if (!read.ok) {
      tellUnreadable(work.name, read.problems);
      return;
    }
    forgetTyped();
    const file = { name: work.token ? work.name : null, token: work.token };
    showUnsavedProject(read.project, file, newProject());
  }

  async save(): Promise<boolean> {
    const { file, history } = appStore.getState();
    if (file.token === null) return this.saveAs();
    const project = present(history);
    return saved(await this.host.saveProject(file.token, projectText(project)), project);
  }

  async saveAs(): Promise<boolean> {
    const project = present(appStore.getState().history);
    return saved(await this.host.saveProjectAs(suggestedName(project), projectText(project)), project);
  }

  async exportBytes(suggested: string, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
    const answer = await this.host.exportFile(suggested, bytes);
    if (answer === null) return;
    if ("failed" in answer) tell({ tone: "error", text: answer.failed });
    else tell({ tone: "done", text: `Exported ${answer.name}.` });
  }

  async placePicture(): Promise<void> {
    await placePicture(await this.host.openPicture());
  }

  async toStart(): Promise<void> {
    if (!(await this.mayLeave())) return;
    const { saved: asSaved, file } = appStore.getState();
    showProject(asSaved, file);
    showStart();
  }

  async mayLeave(): Promise<boolean> {
    const state = appStore.getState();
    if (state.screen === "start" || !isDirty(state)) return true;
    const answer = await ask(leavingQuestion(present(state.history).name));
    if (answer !== "discard") return answer === "save" && (await this.save());
    this.host.keepUnsaved(null); // given up on purpose: nothing to offer after the next start
    return true;
  }

  private async show(answer: OpenedFile | HostFailure | null): Promise<void> {
    if (answer === null) return;
    if ("failed" in answer) tell({ tone: "error", text: answer.failed });
    else await this.openFile(answer);
  }
}

function leavingQuestion(name: string): Question {
  return {
    title: `Save "${name}" first?`,
    text: "It has changes that are not in a file yet.",
    choices: [
      { id: "save", words: "Save", look: "accent" },
      { id: "discard", words: "Don't save" },
      { id: "cancel", words: "Cancel", look: "quiet" },
    ],
  };
}

const aDemo: OpenFile = { name: null, token: null, origin: "demo" };

/**
 * A demo stays as it is wherever it was opened from; so does a file that the host can't save back to. A plan that was made
 * from a demo goes by the demo's name, but isn't it any more.
 */
async function placeOf({ name, token, text }: OpenedFile): Promise<OpenFile> {
  if (token !== null) return { name, token };
  const demo = demos.find(({ file }) => file === name);
  return demo && sameProject(text, await demo.text()) ? aDemo : { name, token, origin: "copy" };
}

function sameProject(a: string, b: string): boolean {
  const [one, other] = [openProject(a), openProject(b)];
  return one.ok && other.ok && projectText(one.project) === projectText(other.project);
}

/** What was typed into tables and not understood belongs to the plan that goes. */
function forgetTyped(): void {
  clearDrafts();
  clearKept();
}

/** Shows a file's project, or says what is wrong with the file. */
function showOpened(file: OpenedFile, place: OpenFile): void {
  const read = openProject(file.text);
  if (!read.ok) {
    tellUnreadable(file.name, read.problems);
    return;
  }
  forgetTyped();
  showProject(read.project, place);
  openDialog(null);
  if (read.warnings.length > 0)
    tell({
      tone: "caution",
      text: `${file.name} holds ${read.warnings.length} field${read.warnings.length > 1 ? "s" : ""} that this Drysill doesn't know. They are kept when you save.`,
      more: read.warnings.map((warning) => warning.path).join("\n"),
    });
}

function tellUnreadable(
  name: string,
  problems: readonly { readonly path: string; readonly message: string }[],
): void {
  const [first] = problems;
  const where = first?.path ? ` At ${first.path}:` : "";
  tell({
    tone: "error",
    text: `${name} can't be opened.${where} ${first?.message ?? ""} The file was left as it is.`,
    more: problems
      .slice(1)
      .map(({ path, message }) => (path ? `${path}: ${message}` : message))
      .join("\n"),
  });
}

function saved(answer: SavedFile | HostFailure | null, project: Project): boolean {
  if (answer === null) return false;
  if ("failed" in answer) {
    tell({ tone: "error", text: answer.failed });
    return false;
  }
  markSaved(project, answer);
  return true;
}

export function suggestedName(project: Project, ending = fileEnding): string {
  const base = project.name
    .normalize("NFC")
    .replace(/[\\/:*?"<>|\p{Cc}]+/gu, " ")
    .trim()
    .replace(/\s+/g, "-")
    .toLowerCase();
  return `${base || "plan"}${ending}`;
}
