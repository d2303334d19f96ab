import type { ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test as base, type ElectronApplication, type Page } from "@playwright/test";
import { endElectron, startElectron } from "./electron.mjs";

import { settled } from "./settled";

export { expect } from "@playwright/test";
export { ended } from "./electron.mjs";

interface Launched {
  readonly app: ElectronApplication;
  /** Its process, which outlives Playwright's hold on it. */
  readonly child: ChildProcess;
  readonly page: Page;
  /** The folder of settings and recovered work, to start once more with. */
  readonly userData: string;
}

export type OpenPage = (page: Page, options?: { demo?: string; pickers?: boolean }) => Promise<void>;

interface Fixtures {
  /** A folder of the test's own, removed after it. */
  folder: string;
  /** Starts the Electron window; it is ended after the test, whatever the page thinks of closing. */
  launchElectron(options?: { file?: string; userData?: string; args?: readonly string[] }): Promise<Launched>;
  /**
   * Opens the page in the browser, on a demo where one is named. A test can't drive the browser's own file
   * pickers, so they are taken away unless asked for: the page then uses a file field and downloads.
   */
  openPage: OpenPage;
}

export const test = base.extend<Fixtures>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of what a fixture needs
  folder: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), "drysill-test-"));
    await use(folder);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  },
  // biome-ignore lint/correctness/noEmptyPattern: as above
  baseURL: async ({}, use) => use(process.env.DRYSILL_PAGE),
  launchElectron: async ({ folder }, use) => {
    const launched: { app: ElectronApplication; child: ChildProcess }[] = [];
    await use(async ({ file, userData = join(folder, "user-data"), args } = {}) => {
      const { app, child, page } = await startElectron({ file, userData, args });
      launched.push({ app, child });
      await pageIsUp(page);
      return { app, child, page, userData };
    });
    for (const { app, child } of launched) await endElectron(app, child);
  },
  openPage: async ({ baseURL }, use) => {
    await use(async (page, { demo, pickers = false } = {}) => {
      if (!pickers) {
        await page.addInitScript(() => {
          Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined });
        });
      }
      await page.goto(demo ? `${baseURL}/?demo=${demo}` : `${baseURL}/`);
      // A key that is pressed before the plan is there means nothing to it, and is lost.
      if (demo) await settled(page);
    });
  },
});

/** Waits until the page has drawn itself and listens to its host: what a test puts in comes after that. */
async function pageIsUp(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector("#root")?.firstElementChild != null);
  await page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done))));
}
