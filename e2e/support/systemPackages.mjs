// @ts-check
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

/** A tool that can't be had here; the message says what to install. */
export class MissingTool extends Error {}

/** The full path of a command on PATH, or null.
 * @param {string} name */
export function commandPath(name) {
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    if (folder !== "" && existsSync(join(folder, name))) return join(folder, name);
  }
  return null;
}

const canInstall = () =>
  process.platform === "linux" && process.getuid?.() === 0 && existsSync("/etc/debian_version");

let listsAreFresh = false;

/**
 * Installs Debian packages when running as root on Debian; throws MissingTool with advice otherwise.
 * @param {string} what what they are for, in words
 * @param {readonly string[]} packages
 */
export function installPackages(what, packages) {
  const advice = `${what} is missing. On Debian: apt-get install ${packages.join(" ")}.`;
  if (!canInstall()) throw new MissingTool(advice);
  console.log(`Installing ${packages.join(", ")} (${what}) …`);
  if (!listsAreFresh) aptGet(["update"], advice);
  listsAreFresh = true;
  aptGet(["install", "-y", "--no-install-recommends", ...packages], advice);
}

/**
 * @param {readonly string[]} args
 * @param {string} advice
 */
function aptGet(args, advice) {
  const run = spawnSync("apt-get", args, {
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    encoding: "utf8",
    maxBuffer: 64e6,
  });
  if (run.status === 0) return;
  const said = (run.stderr ?? String(run.error)).trim().split("\n").slice(-3).join("\n");
  throw new MissingTool(`${advice} apt-get ${args[0]} failed here:\n${said}`);
}
