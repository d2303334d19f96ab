// @ts-check
import { _electron } from "@playwright/test";
import { repository } from "../../src/start/repository.mjs";

/**
 * Starts Drysill's window on the Electron named by ELECTRON, on the display that is there.
 * @param {{ file?: string, userData: string, args?: readonly string[], theme?: "light" | "dark" }} options
 */
export async function startElectron({ file, userData, args = [], theme = "light" }) {
  const executablePath = process.env.ELECTRON;
  if (!executablePath) throw new Error("ELECTRON isn't set; the tests' global set-up sets it");
  const app = await _electron.launch({
    executablePath,
    args: [
      repository,
      ...(file ? [file] : []),
      ...args,
      "--no-sandbox",
      "--disable-gpu",
      `--user-data-dir=${userData}`,
    ],
    cwd: repository,
    colorScheme: theme,
  });
  return { app, page: await app.firstWindow() };
}
