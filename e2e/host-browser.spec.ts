/** The browser's host in a real Chromium: pickers, downloads, recent files, recovery and the question on leaving. */

import { mkdtempSync, rmSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import type { Host, HostRequest } from "../src/host/host";
import { servePage } from "../src/start/serve.mjs";
import { buildHostPage } from "./support/buildHostPage";
import { expect, test } from "./support/fixtures";

declare global {
  interface Window {
    host: Host;
  }
}

const built = mkdtempSync(join(tmpdir(), "drysill-host-"));
let server: Awaited<ReturnType<typeof servePage>>;

test.beforeAll(async () => {
  await buildHostPage(built);
  server = await servePage({ folder: built });
});
test.afterAll(async () => {
  await server.close();
  rmSync(built, { recursive: true, force: true });
});

/** Opens the host's page with pickers that hand out files of the browser's private folder, or with none. */
async function openHost(page: Page, pickers: boolean): Promise<void> {
  await page.addInitScript((withPickers) => {
    const picked = async (name: string) =>
      (await navigator.storage.getDirectory()).getFileHandle(name, { create: true });
    Object.assign(window, {
      showOpenFilePicker: withPickers ? async () => [await picked("studio.drysill.json")] : undefined,
      showSaveFilePicker: withPickers
        ? (options: { suggestedName: string }) => picked(options.suggestedName)
        : undefined,
    });
  }, pickers);
  await page.goto(server.address);
  await page.waitForFunction(() => "host" in window);
}

test.describe("with the browser's own pickers", () => {
  test("saves, saves again by token, opens and remembers, also after a reload", async ({ page }) => {
    await openHost(page, true);
    const saved = await page.evaluate(() => window.host.saveProjectAs("studio.drysill.json", "one"));
    expect(saved).toEqual({ name: "studio.drysill.json", token: expect.any(String) });
    const token = (saved as { token: string }).token;
    expect(await page.evaluate((token) => window.host.saveProject(token, "two"), token)).toEqual(saved);
    expect(await page.evaluate(() => window.host.openProject())).toEqual({ ...saved, text: "two" });

    await page.reload();
    await page.waitForFunction(() => "host" in window);
    const recent = await page.evaluate(() => window.host.recentFiles());
    expect(recent).toEqual([{ name: "studio.drysill.json", token, folder: "" }]);
    expect(await page.evaluate((token) => window.host.openRecent(token), token)).toEqual({
      ...saved,
      text: "two",
    });
    expect(await page.evaluate((token) => window.host.saveProject(token, "three"), token)).toEqual(saved);
  });

  test("exports bytes, which are not a recent plan", async ({ page }) => {
    await openHost(page, true);
    const answer = await page.evaluate(() => window.host.exportFile("plan.pdf", new Uint8Array([1, 2, 3])));
    expect(answer).toEqual({ name: "plan.pdf", token: null });
    const bytes = await page.evaluate(async () => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle("plan.pdf");
      return [...new Uint8Array(await (await handle.getFile()).arrayBuffer())];
    });
    expect(bytes).toEqual([1, 2, 3]);
    expect(await page.evaluate(() => window.host.recentFiles())).toEqual([]);
  });

  test("says in words that a recent file is gone, and forgets it", async ({ page }) => {
    await openHost(page, true);
    const answer = await page.evaluate(async () => {
      const saved = (await window.host.saveProjectAs("gone.json", "{}")) as { token: string };
      await (await navigator.storage.getDirectory()).removeEntry("gone.json");
      return window.host.openRecent(saved.token);
    });
    expect(answer).toEqual({ failed: expect.stringContaining("“gone.json” isn't there any more") });
    expect(await page.evaluate(() => window.host.recentFiles())).toEqual([]);
  });

  test("answers null when the person cancels, and words for a token it doesn't know", async ({ page }) => {
    await openHost(page, true);
    const [opened, saved, unknown] = await page.evaluate(async () => {
      const cancel = () => Promise.reject(new DOMException("cancelled", "AbortError"));
      Object.assign(window, { showOpenFilePicker: cancel, showSaveFilePicker: cancel });
      const { host } = window;
      return [
        await host.openProject(),
        await host.saveProjectAs("a.json", "{}"),
        await host.saveProject("x", "{}"),
      ];
    });
    expect([opened, saved]).toEqual([null, null]);
    expect(unknown).toEqual({ failed: expect.stringContaining("Save As") });
  });

  test("picks a picture by its bytes, offering only pictures and PDFs; it is no recent plan", async ({
    page,
  }) => {
    await openHost(page, true);
    const answer = await page.evaluate(async () => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle("plat.png", {
        create: true,
      });
      const writable = await handle.createWritable();
      await writable.write(Uint8Array.of(1, 2, 3));
      await writable.close();
      const offered: string[] = [];
      const showOpenFilePicker = async (options: { types: { accept: Record<string, string[]> }[] }) => {
        offered.push(...Object.values(options.types[0]?.accept ?? {}).flat());
        return [handle];
      };
      Object.assign(window, { showOpenFilePicker });
      const picked = await window.host.openPicture();
      Object.assign(window, {
        showOpenFilePicker: () => Promise.reject(new DOMException("cancelled", "AbortError")),
      });
      const cancelled = await window.host.openPicture();
      const bytes = picked && "bytes" in picked ? [picked.name, ...picked.bytes] : picked;
      return { offered, bytes, cancelled, recent: await window.host.recentFiles() };
    });
    expect(answer).toEqual({
      offered: [".png", ".jpg", ".jpeg", ".webp", ".pdf"],
      bytes: ["plat.png", 1, 2, 3],
      cancelled: null,
      recent: [],
    });
  });
});

test.describe("without pickers", () => {
  test("opens through a file field", async ({ page, folder }) => {
    const file = join(folder, "shed.drysill.json");
    await writeFile(file, "a plan");
    await openHost(page, false);
    const chooser = page.waitForEvent("filechooser");
    const opened = page.evaluate(() => window.host.openProject());
    await (await chooser).setFiles(file);
    expect(await opened).toEqual({ name: "shed.drysill.json", text: "a plan", token: null });
  });

  test("saves and exports as downloads", async ({ page, folder }) => {
    await openHost(page, false);
    for (const [name, act] of [
      ["shed.json", () => window.host.saveProjectAs("shed.json", "a plan")],
      ["plan.csv", () => window.host.exportFile("plan.csv", new TextEncoder().encode("a plan"))],
    ] as const) {
      const download = page.waitForEvent("download");
      expect(await page.evaluate(act)).toEqual({ name, token: null });
      const path = join(folder, name);
      await (await download).saveAs(path);
      expect((await download).suggestedFilename()).toBe(name);
      expect(await readFile(path, "utf8")).toBe("a plan");
    }
  });
});

test("opens a plan that is dropped on it, and leaves other files alone", async ({ page }) => {
  await openHost(page, false);
  const requests = await page.evaluate(async () => {
    const heard: HostRequest[] = [];
    const stop = window.host.onRequest((request) => heard.push(request));
    const drop = async (name: string) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([`text of ${name}`], name));
      window.dispatchEvent(new DragEvent("drop", { dataTransfer, cancelable: true }));
      await new Promise((resolve) => setTimeout(resolve, 50));
    };
    await drop("points.csv");
    await drop("shed.drysill.json");
    stop();
    await drop("later.json");
    return heard;
  });
  expect(requests).toEqual([
    { openFile: { name: "shed.drysill.json", text: "text of shed.drysill.json", token: null } },
  ]);
});

test("shows the plan's name and whether it is edited, and asks before leaving only then", async ({
  page,
}) => {
  await openHost(page, false);
  await page.evaluate(() => window.host.setTitle("studio", true));
  await expect(page).toHaveTitle("studio (edited) – Drysill");
  await page.mouse.click(10, 10);
  const question = page.waitForEvent("dialog");
  const leaving = page.close({ runBeforeUnload: true });
  const dialog = await question;
  expect(dialog.type()).toBe("beforeunload");
  await dialog.dismiss();
  await leaving;
  await page.evaluate(() => window.host.setTitle("studio", false));
  await expect(page).toHaveTitle("studio – Drysill");
  await page.reload();
  await expect(page).toHaveTitle("Host");
});

test.describe("unsaved work", () => {
  const work = { name: "studio", text: "unsaved", token: null };
  const keep = (page: Page, kept: typeof work | null) =>
    page.evaluate(async (kept) => {
      window.host.keepUnsaved(kept && { ...kept, text: new Blob([kept.text]) });
      await new Promise((resolve) => setTimeout(resolve, 200));
    }, kept);

  test("is found by the next page when this one ends badly, until it is given up", async ({
    page,
    context,
  }) => {
    await openHost(page, false);
    await keep(page, work);
    await page.close();
    const next = await context.newPage();
    await openHost(next, false);
    expect(await next.evaluate(() => window.host.recovered())).toEqual({ ...work, when: expect.any(Number) });
    await keep(next, null);
    expect(await next.evaluate(() => window.host.recovered())).toBeNull();
  });

  test("of a page that is still open is not offered to another", async ({ page, context }) => {
    await openHost(page, false);
    await keep(page, work);
    const next = await context.newPage();
    await openHost(next, false);
    expect(await next.evaluate(() => window.host.recovered())).toBeNull();
    await page.close();
    await expect.poll(() => next.evaluate(() => window.host.recovered())).toMatchObject(work);
  });

  test("is not there after it was saved", async ({ page, context }) => {
    await openHost(page, false);
    await keep(page, work);
    await keep(page, null);
    await page.close();
    const next = await context.newPage();
    await openHost(next, false);
    expect(await next.evaluate(() => window.host.recovered())).toBeNull();
  });

  test("and recent files do without, where the browser keeps nothing", async ({ page }) => {
    await page.addInitScript(() => {
      Object.defineProperty(window, "indexedDB", { get: () => undefined });
    });
    await openHost(page, true);
    await keep(page, work);
    expect(await page.evaluate(() => window.host.recovered())).toBeNull();
    expect(await page.evaluate(() => window.host.recentFiles())).toEqual([]);
    const saved = await page.evaluate(() => window.host.saveProjectAs("studio.json", "one"));
    const token = (saved as { token: string }).token;
    expect(await page.evaluate((token) => window.host.saveProject(token, "two"), token)).toEqual(saved);
  });
});
