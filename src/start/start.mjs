// @ts-check
/**
 * npm start: Drysill on a demo project, or on the file given (`npm start -- plan.drysill.json`), in its Electron
 * window; in a browser where there is no display or no Electron can be had.
 */
import { spawn } from "node:child_process";
import { join, resolve } from "node:path";
import { buildIfStale } from "./build.mjs";
import { npmElectron, sandboxArguments, testElectron } from "./electronBinary.mjs";
import { fetchElectron } from "./fetchElectron.mjs";
import { openBrowser } from "./openBrowser.mjs";
import { repository } from "./repository.mjs";
import { servePage } from "./serve.mjs";

const demo = "pottery-studio";
const given = process.argv[2];
const file = given ? resolve(given) : join(repository, "demo-projects", `${demo}.drysill.json`);

if (given === "--help" || given === "-h") {
  console.log(`Usage: npm start -- [FILE]

Opens Drysill on FILE (a .drysill.json plan), or on the demo project ${demo}, in a window of its own; in a browser
where there is no display or Electron can't be had. Builds it first where that is needed. Ctrl-C ends it.`);
  process.exit(0);
}

try {
  buildIfStale();
  const electron = await findElectron();
  const trouble = "path" in electron ? await runElectron(electron.path) : electron.trouble;
  if (trouble) await runInBrowser(trouble);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

/** An Electron to run, or why there is none.
 * @returns {Promise<{ path: string } | { trouble: string }>} */
async function findElectron() {
  const { DISPLAY, WAYLAND_DISPLAY } = process.env;
  if (process.platform === "linux" && !DISPLAY && !WAYLAND_DISPLAY) return { trouble: "There is no display" };
  const found = npmElectron() ?? testElectron();
  if (found) return { path: found };
  try {
    return { path: await fetchElectron(console.log) };
  } catch (error) {
    return { trouble: `Electron can't be fetched (${reason(error)})` };
  }
}

/**
 * Runs the window until it is closed.
 * @param {string} executable
 * @returns {Promise<string | null>} why it can't run here, or null
 */
function runElectron(executable) {
  const args = [repository, file, ...sandboxArguments()];
  const child = spawn(executable, args, { stdio: ["inherit", "inherit", "pipe"] });
  let said = "";
  child.stderr.on("data", (chunk) => {
    said = (said + chunk).slice(-20_000);
  });
  // Ctrl-C reaches the window too, which may first ask about unsaved work; a second one ends it.
  let interrupts = 0;
  process.on("SIGINT", () => ++interrupts > 1 && child.kill("SIGKILL"));
  process.on("SIGTERM", () => child.kill("SIGTERM"));
  return new Promise((done) => {
    child.once("error", (error) => done(`Electron doesn't run here (${reason(error)})`));
    child.once("exit", (code, signal) => {
      if (code === 0 || interrupts > 0 || signal === "SIGTERM") return done(null);
      done(`Electron ended with ${signal ?? `code ${code}`}: ${whyEnded(said)}`);
    });
  });
}

/** @param {string} said */
function whyEnded(said) {
  if (said.includes("SUID sandbox helper")) return "this system doesn't let it use its sandbox";
  const lines = said
    .split("\n")
    .filter((line) => /FATAL|error while loading|Missing X server|Error:/.test(line));
  return lines.at(-1)?.trim() ?? "it gave no reason";
}

/** @param {string} trouble */
async function runInBrowser(trouble) {
  const { address, close } = await servePage();
  const page = given ? `${address}/` : `${address}/?demo=${demo}`;
  console.log(`${trouble}, so Drysill runs in a browser at ${page} (Ctrl-C ends it).`);
  openBrowser(page);
  const end = () => void close().then(() => process.exit(0));
  process.on("SIGINT", end);
  process.on("SIGTERM", end);
}

/** @param {unknown} error */
function reason(error) {
  if (!(error instanceof Error)) return String(error);
  return error.cause instanceof Error ? `${error.message}: ${error.cause.message}` : error.message;
}
