// @ts-check
/** npm test: types, lint, unit tests, build and end-to-end tests, in that order; stops at the first that fails. */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { ensureChromium } from "../e2e/support/chromium.mjs";
import { ensureDisplay } from "../e2e/support/display.mjs";
import { MissingTool } from "../e2e/support/systemPackages.mjs";
import { ensureElectron } from "../e2e/support/testElectron.mjs";
import { repository } from "../src/start/repository.mjs";

const reports = join(repository, "test-results");
const unitReport = join(reports, "unit.json");
const endToEndReport = join(reports, "end-to-end.json");
const count = { passed: 0, failed: 0 };
/** @type {string[]} */
const leftOut = [];

const steps = [
  { name: "types", run: () => node("typescript/bin/tsc", "--noEmit", "-p", ".") },
  { name: "lint", run: () => node("@biomejs/biome/bin/biome", "check", "--error-on-warnings", ".") },
  { name: "unit tests", run: unitTests },
  { name: "build", run: build },
  { name: "browser and Electron tests", run: endToEndTests },
];

mkdirSync(reports, { recursive: true });
const began = Date.now();
for (const { name, run } of steps) {
  console.log(`\n── ${name}`);
  const before = count.failed;
  const start = Date.now();
  const ok = await run();
  // A step that fails without a failed test (a type error, a crash) is one failure.
  if (!ok && count.failed === before) count.failed++;
  console.log(`── ${name}: ${ok ? "ok" : "FAILED"} after ${seconds(start)} s`);
  if (!ok) break;
}
for (const what of leftOut) console.log(`\nLeft out: ${what}`);
console.log(`\nTook ${seconds(began)} s.\n${count.passed} passed, ${count.failed} failed`);
process.exitCode = count.failed === 0 ? 0 : 1;

/** @param {number} since */
function seconds(since) {
  return ((Date.now() - since) / 1000).toFixed(1);
}

/**
 * @param {string} script within node_modules
 * @param {readonly string[]} args
 */
function node(script, ...args) {
  const path = join(repository, "node_modules", script);
  return spawnSync(process.execPath, [path, ...args], { cwd: repository, stdio: "inherit" }).status === 0;
}

function unitTests() {
  rmSync(unitReport, { force: true });
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${unitReport}`];
  const ok = node("vitest/vitest.mjs", "run", ...reporters);
  const report = readReport(unitReport);
  const skipped = (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0);
  return counted(ok, report?.numPassedTests ?? 0, report?.numFailedTests ?? 0, skipped);
}

function build() {
  const electron = ["build", "-c", "vite.electron.config.ts", "--mode"];
  const vite = "vite/bin/vite.js";
  return node(vite, "build") && node(vite, ...electron, "main") && node(vite, ...electron, "preload");
}

async function endToEndTests() {
  rmSync(endToEndReport, { force: true });
  let endDisplay = () => {};
  const projects = [];
  if (await prepared("the browser tests", ensureBrowser)) projects.push("browser");
  if (await prepared("the Electron tests", ensureWindow)) projects.push("electron");
  if (leftOut.length > 0 && (process.env.CI || projects.length === 0)) return false;
  process.env.PLAYWRIGHT_JSON_OUTPUT_NAME = endToEndReport;
  const chosen = projects.map((project) => `--project=${project}`);
  const ok = node("@playwright/test/cli.js", "test", "--reporter=list,json", ...chosen);
  endDisplay();
  const stats = readReport(endToEndReport)?.stats;
  const flaky = stats?.flaky ?? 0;
  if (flaky > 0) console.log(`\n${flaky} passed only at the second try: see the list above.`);
  return counted(ok, (stats?.expected ?? 0) + flaky, stats?.unexpected ?? 0, stats?.skipped ?? 0);

  function ensureBrowser() {
    process.env.CHROMIUM = ensureChromium();
  }
  async function ensureWindow() {
    process.env.ELECTRON = ensureElectron();
    endDisplay = await ensureDisplay();
  }
}

/**
 * @param {string} what
 * @param {() => void | Promise<void>} ensure
 */
async function prepared(what, ensure) {
  try {
    await ensure();
    return true;
  } catch (error) {
    if (!(error instanceof MissingTool)) throw error;
    leftOut.push(`${what}. ${error.message}`);
    return false;
  }
}

/** A skipped test is a failed one: nothing here may pass by not being run.
 * @param {boolean} ok
 * @param {number} passed
 * @param {number} failed
 * @param {number} skipped
 */
function counted(ok, passed, failed, skipped) {
  count.passed += passed;
  count.failed += failed + skipped;
  return ok && failed + skipped === 0 && passed > 0;
}

/** @param {string} path */
function readReport(path) {
  return existsSync(path) ? JSON.parse(readFileSync(path, "utf8")) : null;
}
