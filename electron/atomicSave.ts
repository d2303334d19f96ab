import { randomBytes } from "node:crypto";
import * as disk from "node:fs/promises";
import { dirname, join } from "node:path";

/** The acts on the file system that a save needs; a test puts a failing one in. */
export type FileActs = Pick<
  typeof disk,
  "chmod" | "chown" | "open" | "realpath" | "rename" | "stat" | "unlink"
>;

/**
 * Writes a file so that at every moment the name holds either the old content whole or the new content whole: a
 * temporary file in the same folder, flushed to the disk, then renamed over the old one. Permissions and, where
 * allowed, the owner stay; a link stays a link. Throws the file system's error, with the old file untouched and
 * the temporary one removed.
 */
export async function saveAtomically(
  path: string,
  content: string | Uint8Array,
  files: FileActs = disk,
): Promise<void> {
  const target = await files.realpath(path).catch(() => path);
  const before = await files.stat(target).catch(() => null);
  // Renaming would replace a file that is marked read-only.
  if (before) await files.open(target, "r+").then((handle) => handle.close());
  const temporary = join(dirname(target), `.drysill-${randomBytes(6).toString("hex")}.part`);
  try {
    await writeFlushed(temporary, content, before?.mode ?? 0o666, files);
    if (before) {
      await files.chmod(temporary, before.mode);
      await files.chown(temporary, before.uid, before.gid).catch(() => undefined);
    }
    await files.rename(temporary, target);
  } catch (error) {
    await files.unlink(temporary).catch(() => undefined);
    throw error;
  }
  await flushFolder(dirname(target), files);
}

/** Whether a file's name is that of a temporary one, which a program that died may leave behind. */
export const isHalfWritten = (name: string): boolean => /^\.drysill-[0-9a-f]{12}\.part$/.test(name);

async function writeFlushed(path: string, content: string | Uint8Array, mode: number, files: FileActs) {
  const file = await files.open(path, "wx", mode);
  try {
    await file.writeFile(content);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Makes the rename itself survive a power cut; where folders can't be flushed the file is whole all the same. */
async function flushFolder(folder: string, files: FileActs) {
  try {
    const handle = await files.open(folder, "r");
    await handle.sync().finally(() => handle.close());
  } catch {
    return;
  }
}
