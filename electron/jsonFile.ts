import { mkdir, readFile } from "node:fs/promises";
import { dirname } from "node:path";
import { saveAtomically } from "./atomicSave";

/** The content of one of the program's own JSON files; null where it is missing or damaged. */
export async function readJson(path: string): Promise<unknown> {
  try {
    return JSON.parse(await readFile(path, "utf8"));
  } catch {
    return null;
  }
}

export async function writeJson(path: string, value: unknown): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await saveAtomically(path, JSON.stringify(value));
}
