/** A project file for a command, or every reason why it can't be opened. */
import { type FileProblem, openProject } from "../document/open";
import type { Project } from "../document/schema";
import { InputError, type Io } from "./command";

export interface OpenedFile {
  readonly project: Project;
  readonly warnings: readonly FileProblem[];
}

export function openFile(path: string, io: Io): OpenedFile {
  const opened = openProject(io.readText(path));
  if (opened.ok) return opened;
  throw new InputError([`${path} can't be opened:`, ...opened.problems.map(problemLine)].join("\n"));
}

/** "survey › shots › 3 › reading: Expected a number, found nothing." */
export function problemLine({ path, message }: FileProblem): string {
  return `  ${path === "" ? "" : `${path}: `}${message}`;
}
