// @ts-check
/**
 * One picture of the program:
 *   node e2e/support/screenshot.mjs --out plan.png [--demo pottery-studio] [--width 1280] [--height 800]
 *     [--theme light|dark] [--host browser|electron] [--wait 1500]
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { chromium } from "@playwright/test";
import { buildIfStale } from "../../src/start/build.mjs";
import { repository } from "../../src/start/repository.mjs";
import { servePage } from "../../src/start/serve.mjs";
import { chromiumArguments, ensureChromium } from "./chromium.mjs";
import { ensureDisplay } from "./display.mjs";
import { endElectron, startElectron } from "./electron.mjs";
import { ensureElectron } from "./testElectron.mjs";

const { values } = parseArgs({
  options: {
    out: { type: "string" },
    demo: { type: "string" },
    width: { type: "string", default: "1280" },
    height: { type: "string", default: "800" },
    theme: { type: "string", default: "light" },
    host: { type: "string", default: "browser" },
    wait: { type: "string", default: "1500" },
  },
});
const { out, demo } = values;
if (!out) throw new Error("say where the picture goes: --out plan.png");
const size = { width: Number(values.width), height: Number(values.height) };
const theme = values.theme === "dark" ? "dark" : "light";

buildIfStale();
await (values.host === "electron" ? fromElectron(out) : fromBrowser(out));

/** @param {string} path */
async function fromBrowser(path) {
  const server = await servePage();
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: chromiumArguments });
  try {
    const page = await browser.newPage({ viewport: size, colorScheme: theme });
    page.on("console", (message) => console.error(message.text()));
    page.on("pageerror", (error) => console.error(error));
    const query = new URLSearchParams({ theme, ...(demo && { demo }) });
    await page.goto(`${server.address}/?${query}`);
    await page.waitForTimeout(Number(values.wait));
    await page.screenshot({ path });
  } finally {
    await browser.close();
    await server.close();
  }
}

/** @param {string} path */
async function fromElectron(path) {
  process.env.ELECTRON = ensureElectron();
  const endDisplay = await ensureDisplay();
  const userData = mkdtempSync(join(tmpdir(), "drysill-picture-"));
  const file = demo && join(repository, "demo-projects", `${demo}.drysill.json`);
  const { app, child, page } = await startElectron({ file, userData, theme });
  try {
    page.on("console", (message) => console.error(message.text()));
    page.on("pageerror", (error) => console.error(error));
    await app.evaluate(({ BrowserWindow }, { width, height }) => {
      BrowserWindow.getAllWindows()[0]?.setContentSize(width, height);
    }, size);
    await page.waitForTimeout(Number(values.wait));
    await page.screenshot({ path });
  } finally {
    await endElectron(app, child);
    endDisplay();
    rmSync(userData, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}
