// @ts-check
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { repository } from "./repository.mjs";

const sources = ["src", "electron", "assets", "demo-projects", "index.html", "package.json"];
const configs = ["vite.config.ts", "vite.electron.config.ts"];
const outputs = ["dist/index.html", "dist-electron/main.cjs", "dist-electron/preload.cjs"];

/** Builds page, main and preload where a source is newer than what was built. Throws what the build said. */
export function buildIfStale() {
  if (!isStale()) return;
  console.log("Building …");
  const vite = join(repository, "node_modules/vite/bin/vite.js");
  for (const args of [
    [],
    ["-c", "vite.electron.config.ts", "--mode", "main"],
    ["-c", "vite.electron.config.ts", "--mode", "preload"],
  ]) {
    const run = spawnSync(process.execPath, [vite, "build", ...args], { cwd: repository, encoding: "utf8" });
    if (run.status !== 0) throw new Error(`The build failed:\n${run.stdout}\n${run.stderr}`);
  }
}

function isStale() {
  const built = outputs.map((file) => join(repository, file));
  if (!built.every((file) => existsSync(file))) return true;
  const oldest = Math.min(...built.map((file) => statSync(file).mtimeMs));
  return [...sources, ...configs].some((name) => newest(join(repository, name)) > oldest);
}

/** When the newest file in a folder, or the file itself, was changed.
 * @param {string} path
 * @returns {number} */
function newest(path) {
  if (!existsSync(path)) return 0;
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return readdirSync(path).reduce((time, name) => Math.max(time, newest(join(path, name))), mtimeMs);
}
