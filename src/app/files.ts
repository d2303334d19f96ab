/** Opening, saving and exporting, through whichever host runs the page. Every failure becomes a message that stays. */
import {
  type Display,
  fileEnding,
  newProject,
  type Opened,
  openProject,
  type Project,
  present,
  projectText,
} from "../document";
import type { Host, HostFailure, OpenedFile, RecoveredWork, SavedFile } from "../host";
import { clearDrafts } from "../panels/levelbook/drafts";
import { askBook } from "../panels/survey/bookRequest";
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
    // The mark and its height come first: typing goes on there.
    askBook(null);
  }

  open(): Promise<void> {
    return this.host.openProject().then((answer) => this.show(answer));
  }

  openRecent(token: string): Promise<void> {
    return this.host.openRecent(token).then((answer) => this.show(answer));
  }

  /** The plan that was worked on last, where the host knows one. */
  async openLast(): Promise<void> {
    const [last] = await this.host.recentFiles();
    if (last) await this.openRecent(last.token);
  }

  /** Nothing here waits with the text in its hand: a large one goes as soon as it is read, before all is worked out from it. */
  openFile(file: OpenedFile): Promise<void> {
    return readFile(file).then((read) => this.showRead(read));
  }

  private async showRead(read: ReadFile): Promise<void> {
    if (!read.opened.ok) tellUnreadable(read.name, read.opened.problems);
    else if (await this.mayLeave()) showOpened(read.name, read.opened, read.place);
  }

  async openDemo(demo: Demo): Promise<void> {
    const opened = openProject(await demo.text());
    await this.showRead({ name: demo.file, opened, place: aDemo });
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

  private show(answer: OpenedFile | HostFailure | null): Promise<void> {
    if (answer !== null && !("failed" in answer)) return this.openFile(answer);
    if (answer !== null) tell({ tone: "error", text: answer.failed });
    return Promise.resolve();
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

/** What was read from a file, without its text. */
interface ReadFile {
  readonly name: string;
  readonly opened: Opened;
  readonly place: OpenFile;
}

async function readFile(file: OpenedFile): Promise<ReadFile> {
  return { name: file.name, opened: openProject(file.text), place: await placeOf(file) };
}

function showOpened(name: string, { project, warnings }: Opened & { ok: true }, place: OpenFile): void {
  forgetTyped();
  showProject(project, place);
  openDialog(null);
  if (warnings.length > 0)
    tell({
      tone: "caution",
      text: `${name} holds ${warnings.length} field${warnings.length > 1 ? "s" : ""} that this Drysill doesn't know. They are kept when you save.`,
      more: warnings.map((warning) => warning.path).join("\n"),
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
