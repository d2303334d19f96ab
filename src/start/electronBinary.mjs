// @ts-check
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { repository } from "./repository.mjs";

/** The version that the tests run on, and the folder it is kept in once fetched. */
export const testElectronVersion = "22.3.25";
export const testElectronFolder = join(repository, ".cache", `electron-${testElectronVersion}`);

/** npm's Electron, if its binary has been fetched. */
export function npmElectron() {
  const folder = join(repository, "node_modules/electron");
  const pathFile = join(folder, "path.txt");
  if (!existsSync(pathFile)) return null;
  const executable = join(folder, "dist", readFileSync(pathFile, "utf8").trim());
  return existsSync(executable) ? executable : null;
}

/** The tests' Electron, if it has been fetched. */
export function testElectron() {
  const executable = join(testElectronFolder, "electron");
  return process.platform === "linux" && existsSync(executable) ? executable : null;
}

/** Chromium refuses its own sandbox to root. */
export function sandboxArguments() {
  return process.platform === "linux" && process.getuid?.() === 0 ? ["--no-sandbox"] : [];
}
