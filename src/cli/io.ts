/** Files and streams for the commands, with failures in words. */
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { InputError, type Io } from "./command";

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder, not a file",
  ENOTDIR: "part of its path is a file, not a folder",
  EACCES: "reading or writing it isn't allowed",
  EPERM: "reading or writing it isn't allowed",
  EEXIST: "a file of that name is in the way",
  ENOSPC: "the disk is full",
  EROFS: "the disk can't be written",
  ENAMETOOLONG: "the name is too long",
  ERR_FS_FILE_TOO_LARGE: "it is larger than 2 GB; cut it to the lot, or thin it, and try again",
};

/** `folder` is where the user stood: relative paths start there. */
export function nodeIo(folder: string): Io {
  const readBytes = (path: string): Uint8Array =>
    attempt("read", path, () => readFileSync(resolve(folder, path)));
  return {
    readBytes,
    readText: (path) => decode(readBytes(path)),
    writeBytes: (path, bytes) => attempt("write", path, () => writeWhole(resolve(folder, path), bytes)),
    out: (text) => writeAll(1, `${text}\n`),
    say: (text) => writeAll(2, `${text}\n`),
  };
}

function attempt<T>(verb: "read" | "write", path: string, act: () => T): T {
  try {
    return act();
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    const reason = verb === "write" && code === "ENOENT" ? "its folder can't be made there" : REASONS[code];
    throw new InputError(`Can't ${verb} ${path}: ${reason ?? (code || "the reason is not known")}.`);
  }
}

/** Under a temporary name first, so that a reader never meets half a file. */
function writeWhole(path: string, bytes: Uint8Array): void {
  makeFolder(dirname(path));
  const half = `${path}.${process.pid}.part`;
  try {
    writeFileSync(half, bytes);
    renameSync(half, path);
  } catch (error) {
    rmSync(half, { force: true });
    throw error;
  }
}

/** One folder after the other: Node's own recursive way never ends where the system refuses a folder as not there. */
function makeFolder(path: string): void {
  if (existsSync(path)) return;
  makeFolder(dirname(path));
  try {
    mkdirSync(path);
  } catch (error) {
    // Another process may have made it meanwhile.
    if (!existsSync(path)) throw error;
  }
}

/** UTF-8, or UTF-16 with its byte-order mark, or the old Western code page that some spreadsheets still write. */
function decode(bytes: Uint8Array): string {
  const [a, b] = bytes;
  if (a === 0xff && b === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (a === 0xfe && b === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Writes at once and wholly, also into a pipe whose reader is slow; a reader that has left is no failure. */
function writeAll(stream: 1 | 2, text: string): void {
  const bytes = new TextEncoder().encode(text);
  let at = 0;
  while (at < bytes.length) {
    try {
      at += writeSync(stream, bytes, at);
    } catch (error) {
      const code = error instanceof Error && "code" in error ? error.code : undefined;
      if (code === "EPIPE") return;
      if (code !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1);
    }
  }
}
