// @ts-check
import { existsSync } from "node:fs";
import { commandPath, installPackages, MissingTool } from "./systemPackages.mjs";

const macOsPlaces = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
];

/** Chromium without a window: the tests take five sixths of the time in it. */
const shell = "chromium-headless-shell";

/** A Chromium or Chrome on this machine (CHROMIUM names another), or null. */
export function findChromium() {
  const named = process.env.CHROMIUM;
  if (named) return named;
  const commands = [shell, "chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
  for (const command of commands) {
    const path = commandPath(command);
    if (path) return path;
  }
  return macOsPlaces.find((path) => existsSync(path)) ?? null;
}

/** As findChromium, but installs Debian's where it may. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  const what = "Chromium for the browser tests";
  try {
    installPackages(what, [shell]);
  } catch (error) {
    // Older Debians and its kin have the whole browser only.
    if (!(error instanceof MissingTool)) throw error;
    installPackages(what, ["chromium"]);
  }
  const installed = findChromium();
  if (installed) return installed;
  throw new MissingTool("Chromium was installed but isn't on PATH; set CHROMIUM to its path.");
}

/** No sandbox (it is refused to root, and in most containers), and nothing that calls out. */
export const chromiumArguments = [
  "--no-sandbox",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-default-apps",
  "--disable-domain-reliability",
  "--disable-sync",
  "--no-default-browser-check",
  "--no-first-run",
  "--no-pings",
];
