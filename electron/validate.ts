/** Checks what comes over the bridge, since a page gone wrong may send anything. A check throws on the first fault. */
import { limits } from "../src/host/bridge";
import type { OfferedCommand } from "../src/host/host";
import type { Ask, Asks, Note, Notes } from "./channels";

export class BadArgument extends Error {}

type Checks = {
  readonly [A in Ask]: (given: readonly unknown[]) => Asks[A]["given"];
} & { readonly [N in Note]: (given: readonly unknown[]) => Notes[N]["given"] };

export const checks: Checks = {
  openProject: (given) => none(given),
  openRecent: (given) => [token(one(given))],
  openPicture: (given) => none(given),
  recentFiles: (given) => none(given),
  saveProject: (given) => {
    const [file, content] = two(given);
    return [token(file), text(content)];
  },
  saveProjectAs: (given) => {
    const [name, content] = two(given);
    return [fileName(name), text(content)];
  },
  exportFile: (given) => {
    const [name, content] = two(given);
    return [fileName(name), bytes(content)];
  },
  recovered: (given) => none(given),
  setTitle: (given) => {
    const [name, dirty] = two(given);
    return [fileName(name), flag(dirty)];
  },
  keepUnsaved: (given) => [unsavedWork(one(given))],
  offerCommands: (given) => [offeredCommands(one(given))],
  listening: (given) => none(given),
  closeHeard: (given) => none(given),
  closeAnswered: (given) => [flag(one(given))],
  closeFailed: (given) => none(given),
};

function none(given: readonly unknown[]): [] {
  if (given.length !== 0) throw new BadArgument(`expected no arguments, got ${given.length}`);
  return [];
}

function one(given: readonly unknown[]): unknown {
  if (given.length !== 1) throw new BadArgument(`expected 1 argument, got ${given.length}`);
  return given[0];
}

function two(given: readonly unknown[]): [unknown, unknown] {
  if (given.length !== 2) throw new BadArgument(`expected 2 arguments, got ${given.length}`);
  return [given[0], given[1]];
}

function text(value: unknown): string {
  if (typeof value !== "string") throw new BadArgument("expected text");
  if (value.length > limits.textCharacters) throw new BadArgument("the text is too long");
  return value;
}

function token(value: unknown): string {
  if (typeof value !== "string" || !/^[0-9a-f]{32}$/.test(value))
    throw new BadArgument("expected a file token");
  return value;
}

function flag(value: unknown): boolean {
  if (typeof value !== "boolean") throw new BadArgument("expected true or false");
  return value;
}

function bytes(value: unknown): Uint8Array<ArrayBuffer> {
  if (!(value instanceof Uint8Array) || !(value.buffer instanceof ArrayBuffer))
    throw new BadArgument("expected bytes");
  if (value.length > limits.exportBytes) throw new BadArgument("the file is too large");
  return new Uint8Array(value.buffer, value.byteOffset, value.byteLength);
}

/** A name for people and for a file: what no file system takes is replaced, so that it can't name a folder. */
export function fileName(value: unknown): string {
  if (typeof value !== "string") throw new BadArgument("expected a name");
  if (value.length > limits.nameCharacters) throw new BadArgument("the name is too long");
  return value.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}/\\:*?"<>|]/gu, "-").trim();
}

function unsavedWork(value: unknown): Notes["keepUnsaved"]["given"][0] {
  if (value === null) return null;
  if (typeof value !== "object") throw new BadArgument("expected unsaved work or null");
  const { name, text: content, token: file } = value as Record<string, unknown>;
  return { name: fileName(name), text: text(content), token: file === null ? null : token(file) };
}

function offeredCommands(value: unknown): OfferedCommand[] {
  if (!Array.isArray(value) || value.length > limits.commands)
    throw new BadArgument("expected a list of commands");
  return value.map((command: unknown) => {
    if (typeof command !== "object" || command === null) throw new BadArgument("expected a command");
    const { id, name, place, keys } = command as Record<string, unknown>;
    if (!Array.isArray(keys) || keys.length > 4) throw new BadArgument("expected a list of keys");
    return { id: word(id), name: word(name), place: word(place), keys: keys.map(word) };
  });
}

/** A few words on one line, for a menu. */
function word(value: unknown): string {
  if (typeof value !== "string" || value.length === 0 || value.length > limits.nameCharacters)
    throw new BadArgument("expected a few words");
  if (/\p{Cc}/u.test(value)) throw new BadArgument("expected one line of words");
  return value;
}
