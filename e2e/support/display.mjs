// @ts-check
import { spawn } from "node:child_process";
import { commandPath, installPackages, MissingTool } from "./systemPackages.mjs";

/**
 * A display for Electron: the one that is there, or an Xvfb of our own, started once. Sets DISPLAY.
 * @returns {Promise<() => void>} ends the Xvfb
 */
export async function ensureDisplay() {
  if (process.platform !== "linux" || process.env.DISPLAY) return () => undefined;
  if (!commandPath("Xvfb")) installPackages("Xvfb, a display for the Electron tests,", ["xvfb"]);
  const args = ["-displayfd", "3", "-screen", "0", "1920x1200x24", "-nolisten", "tcp", "-noreset"];
  const server = spawn("Xvfb", args, { stdio: ["ignore", "ignore", "ignore", "pipe"] });
  process.env.DISPLAY = `:${await numberFrom(server)}`;
  return () => {
    server.kill();
    delete process.env.DISPLAY;
  };
}

/** The display's number, which Xvfb writes once it takes connections.
 * @param {import("node:child_process").ChildProcess} server
 * @returns {Promise<string>} */
function numberFrom(server) {
  return new Promise((resolve, reject) => {
    const fail = () => reject(new MissingTool("Xvfb ended before it gave a display."));
    server.once("error", fail);
    server.once("exit", fail);
    const pipe = /** @type {import("node:stream").Readable} */ (server.stdio[3]);
    pipe.once("data", (line) => resolve(String(line).trim()));
  });
}
