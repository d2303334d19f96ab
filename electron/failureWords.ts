import { homedir } from "node:os";
import { basename, dirname, sep } from "node:path";

/** A folder as people know it. */
export function shownFolder(folder: string): string {
  const home = homedir();
  if (folder === home) return "~";
  return folder.startsWith(home + sep) ? `~${folder.slice(home.length)}` : folder;
}

const codeOf = (error: unknown): string =>
  typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";

/** Why a file couldn't be written, and how to mend it. */
export function saveFailure(error: unknown, path: string): string {
  const name = `“${basename(path)}”`;
  const folder = `“${shownFolder(dirname(path))}”`;
  const rest = "Your work is still open here; nothing on the disk was changed.";
  switch (codeOf(error)) {
    case "ENOSPC":
    case "EDQUOT":
      return `${name} couldn't be saved: there is no room left on the disk of ${folder}. Free some space, or save it to another disk. ${rest}`;
    case "EROFS":
      return `${name} couldn't be saved: the disk of ${folder} is read-only. Save it to another disk. ${rest}`;
    case "EACCES":
    case "EPERM":
      return `${name} couldn't be saved: the file, or the folder ${folder}, is read-only for you. Save it in another folder, or change the permissions. ${rest}`;
    case "ENOENT":
    case "ENOTDIR":
      return `${name} couldn't be saved: the folder ${folder} isn't there any more. Bring it back (a drive may be unplugged), or save somewhere else. ${rest}`;
    case "EISDIR":
      return `${name} couldn't be saved: a folder has that name. Choose another name. ${rest}`;
    case "ENAMETOOLONG":
      return `The plan couldn't be saved: the name is too long. Choose a shorter one. ${rest}`;
    default:
      return `${name} couldn't be saved in ${folder} (${said(error)}). Try again, or save somewhere else. ${rest}`;
  }
}

/** Why a file couldn't be read, and how to mend it. */
export function openFailure(error: unknown, path: string): string {
  const name = `“${basename(path)}”`;
  const folder = `“${shownFolder(dirname(path))}”`;
  switch (codeOf(error)) {
    case "ENOENT":
    case "ENOTDIR":
      return `${name} isn't in ${folder} any more. It may have been moved, renamed or deleted, or its drive unplugged. Find it with Open.`;
    case "EACCES":
    case "EPERM":
      return `${name} in ${folder} may not be read by you. Change its permissions, or open a copy.`;
    case "EISDIR":
      return `${name} is a folder. Choose a project file in it.`;
    default:
      return `${name} in ${folder} couldn't be read (${said(error)}).`;
  }
}

const said = (error: unknown): string => (error instanceof Error ? error.message : String(error));
