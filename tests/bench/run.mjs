/**
 * npm run bench: how fast the program is on this machine, against the figures it should hold. A table of medians and
 * p95 on standard output; with --json only a list [{ name, unit, median, p95, limit }]. `limit` is on the p95, or
 * on the median where a row says `judged: "median"`. --quick
 * leaves out the million shots, which take minutes to make and open.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, tmpdir, totalmem } from "node:os";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { chromiumArguments, ensureChromium } from "../../e2e/support/chromium.mjs";
import { buildIfStale } from "../../src/start/build.mjs";
import { servePage } from "../../src/start/serve.mjs";
import { timeBuildingDrag } from "./building-drag.mjs";
import { dragOpenFloor, timeFloorDrag } from "./floor-drag.mjs";
import { timeFlow } from "./flow.mjs";
import { mostMemory } from "./memory.mjs";
import { benchProject } from "./projects.mjs";
import { timeTerrain } from "./terrain.mjs";
import { memoryOverUndo, timeView } from "./view.mjs";

const json = process.argv.includes("--json");
const say = (text) => process.stderr.write(`${text}\n`);

function summary(name, limit, times) {
  const sorted = Float64Array.from(times).sort();
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return { name, unit: "ms", median: at(0.5), p95: at(0.95), limit };
}

/** Runs a page that is closed again, whatever happens. */
async function withPage(browser, work) {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  try {
    return await work(page);
  } finally {
    await page.close();
  }
}

/** From the navigation's start until the floor can be dragged and the first results are drawn. */
async function timeStart(browser, address) {
  const times = [];
  for (let i = 0; i < 7; i++) {
    const time = await withPage(browser, async (page) => {
      await page.goto(`${address}/?demo=pottery-studio`);
      await page.getByTestId("rod-handle").waitFor();
      return page.evaluate(() => new Promise((done) => requestAnimationFrame(() => done(performance.now()))));
    });
    times.push(time);
  }
  return times;
}

function timeSheets() {
  const folder = mkdtempSync(join(tmpdir(), "drysill-bench-"));
  const command = ["src/cli/run.mjs", "sheets", "demo-projects/pottery-studio.drysill.json", "--out", folder];
  const times = [];
  try {
    execFileSync(process.execPath, command, { stdio: "ignore" });
    for (let i = 0; i < 7; i++) {
      const start = performance.now();
      execFileSync(process.execPath, command, { stdio: "ignore" });
      times.push(performance.now() - start);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return times;
}

/** Decimals that a figure is told with. */
const digits = (value) => (value < 10 ? 2 : 1);

buildIfStale();
const server = await servePage();
const browser = await chromium.launch({ executablePath: ensureChromium(), args: chromiumArguments });
const results = [];
try {
  say("start to an interactive demo plan …");
  results.push(
    summary("start to an interactive demo plan, in Chromium", 2000, await timeStart(browser, server.address)),
  );
  for (const count of [200, 10_000]) {
    say(`floor drag at ${count} shots …`);
    const { drag, release, open } = await withPage(browser, (page) =>
      timeFloorDrag(page, server.address, benchProject(count)),
    );
    results.push(summary(`floor drag, handler to end of draw, ${count} shots`, 16, drag));
    results.push(summary(`floor let go, until all of it is drawn, ${count} shots`, 150, release));
    if (count === 10_000) results.push(summary("opening a project of 10,000 shots", 1000, open));
  }
  say("building drag at 10000 shots …");
  const moved = await withPage(browser, (page) =>
    timeBuildingDrag(page, server.address, benchProject(10_000)),
  );
  results.push(summary("building drag, handler to end of draw, 10000 shots", 33, moved.drag));
  results.push(summary("building let go, until its fine earth is drawn, 10000 shots", 300, moved.earth));
  results.push(summary("building let go, until all of it is drawn, 10000 shots", 500, moved.release));
  for (const { count, limit } of [
    { count: 10_000, limit: 16 },
    { count: 1_000_000, limit: 33 },
  ]) {
    if (count > 10_000 && process.argv.includes("--quick")) continue;
    say(`pan and zoom at ${count} shots …`);
    const { pan, zoom, open, floor, memory } = await withPage(browser, async (page) => ({
      ...(await timeView(page, server.address, benchProject(count), 600_000)),
      // With fewer shots the floor was dragged above.
      floor: count > 10_000 ? await dragOpenFloor(page) : null,
      memory: await mostMemory(browser),
    }));
    results.push(summary(`pan, handler to end of draw, ${count} shots`, limit, pan));
    results.push(summary(`zoom, handler to end of draw, ${count} shots`, limit, zoom));
    if (!floor) continue;
    results.push(summary(`opening a project of ${count} shots`, 60_000, [open]));
    results.push(summary(`floor drag, handler to end of draw, ${count} shots`, 16, floor.drag));
    if (memory !== null)
      results.push({
        ...summary(`most memory of the page's process, ${count} shots`, 1500, [memory]),
        unit: "MB",
      });
  }
  say("surfaces …");
  results.push(...(await timeTerrain(process.argv.includes("--quick") ? 100_000 : 1_000_000, say)));
  say("water …");
  results.push(...(await timeFlow(say)));
  say("memory over 520 steps of undo and redo …");
  const grown = await withPage(browser, (page) => memoryOverUndo(page, server.address, 520));
  results.push({ ...summary("heap grown over 520 steps of undo and redo", 3, [grown]), unit: "MB" });
  say("site plan …");
  results.push(summary("site plan as PDF, the whole command", 1500, timeSheets()));
} finally {
  await browser.close();
  await server.close();
}

if (json) {
  process.stdout.write(`${JSON.stringify(results, null, 1)}\n`);
} else {
  const { model } = cpus()[0] ?? { model: "unknown" };
  process.stdout.write(
    `${model.trim()}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}, Chromium ${browser.version()}\n\n`,
  );
  const rows = results.map(({ name, unit, median, p95, limit, judged }) => [
    name,
    `${median.toFixed(digits(median))} ${unit}`,
    `${p95.toFixed(digits(p95))} ${unit}`,
    `${judged === "median" ? "median" : "p95"} ≤ ${limit} ${unit}`,
    (judged === "median" ? median : p95) <= limit ? "holds" : "MISSED",
  ]);
  const table = [["what", "median", "p95", "figure", ""], ...rows];
  const widths = table[0].map((_, column) => Math.max(...table.map((row) => row[column].length)));
  for (const row of table) {
    process.stdout.write(
      `${row.map((cell, column) => (column === 0 ? cell.padEnd(widths[0]) : cell.padStart(widths[column]))).join("  ")}\n`,
    );
  }
}
