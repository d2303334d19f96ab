import { readdir, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import type { ShelfStore } from "../src/host/recoveryShelf";
import { isHalfWritten } from "./atomicSave";
import { readJson, writeJson } from "./jsonFile";

/** Keeps unsaved work as one JSON file a session. The program runs once at a time, so every file is an orphan. */
export function recoveryFolder(folder: string): ShelfStore {
  const fileOf = (key: string) => join(folder, `${key}.json`);
  return {
    async orphans() {
      const names = await readdir(folder).catch(() => []);
      for (const name of names.filter(isHalfWritten)) await rm(join(folder, name), { force: true });
      return names
        .filter((name) => /^unsaved-.*\.json$/.test(name))
        .map((name) => name.slice(0, -".json".length));
    },
    async read(key) {
      const work = await readJson(fileOf(key));
      // Damaged: out of the way, but still there for someone who knows how to read it.
      if (work === null) await rename(fileOf(key), join(folder, `${key}.damaged`)).catch(() => undefined);
      return work;
    },
    write: (key, work) => writeJson(fileOf(key), work),
    remove: (key) => rm(fileOf(key), { force: true }),
  };
}
