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
  return { app, child: app.process(), page: await app.firstWindow() };
}

/**
 * Ends the program without asking it, and waits until it is gone.
 * @param {import("@playwright/test").ElectronApplication} app
 * @param {import("node:child_process").ChildProcess} child
 */
export async function endElectron(app, child) {
  const late = setTimeout(() => child.kill("SIGKILL"), 5000);
  const gone = ended(child);
  if (child.exitCode === null && child.signalCode === null) {
    await app.evaluate(({ app }) => app.exit(0)).catch(() => undefined);
  }
  await gone;
  clearTimeout(late);
}

/**
 * Resolves to the exit code once the program is gone; null where a signal ended it.
 * @param {import("node:child_process").ChildProcess} child
 * @returns {Promise<number | null>}
 */
export function ended(child) {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve(child.exitCode);
  return new Promise((resolve) => child.once("exit", resolve));
}
