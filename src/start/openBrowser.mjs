// @ts-check
import { spawn } from "node:child_process";

/** Shows a page in the person's browser, where there is a screen and a browser to show it; silent where not.
 * @param {string} address */
export function openBrowser(address) {
  const command = commandFor(process.platform);
  if (!command) return;
  const [program, ...args] = command;
  const child = spawn(program, [...args, address], { stdio: "ignore", detached: true });
  child.once("error", () => undefined);
  child.unref();
}

/**
 * @param {NodeJS.Platform} platform
 * @returns {[string, ...string[]] | null}
 */
function commandFor(platform) {
  if (platform === "darwin") return ["open"];
  if (platform === "win32") return ["cmd", "/c", "start", ""];
  const screen = process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  return screen ? ["xdg-open"] : null;
}
