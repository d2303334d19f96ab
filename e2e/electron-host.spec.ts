/** What the Electron main process does for the page, on a real window: files, recovery, closing, refusals. */
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { basename, join } from "node:path";
import type { ElectronApplication, Page } from "@playwright/test";
import type { Bridge } from "../src/host/bridge";
import type { HostRequest } from "../src/host/host";
import { repository } from "../src/start/repository.mjs";
import { ended, expect, test } from "./support/fixtures";

declare global {
  interface Window {
    drysill: Bridge;
    heard: HostRequest[];
  }
}

type Saved = { name: string; token: string };

/** The next native save or open dialogs answer with these paths; null cancels. */
function answerDialogs(app: ElectronApplication, path: string | null): Promise<void> {
  return app.evaluate(({ dialog }, path) => {
    const canceled = path === null;
    dialog.showSaveDialog = async () => ({ canceled, filePath: path ?? "" });
    dialog.showOpenDialog = async () => ({ canceled, filePaths: path === null ? [] : [path] });
  }, path);
}

/** Every native question from now on is noted and answered by the button with this number. */
function answerQuestions(app: ElectronApplication, response: number): Promise<void> {
  return app.evaluate(({ dialog }, response) => {
    const asked: string[] = [];
    Object.assign(globalThis, { asked });
    dialog.showMessageBox = async (...given: unknown[]) => {
      asked.push((given[1] as { message: string }).message);
      return { response, checkboxChecked: false };
    };
  }, response);
}

const questions = (app: ElectronApplication): Promise<string[]> =>
  app.evaluate(() => (globalThis as unknown as { asked: string[] }).asked);

/** Closes as the window's own button does. */
const closeWindow = (app: ElectronApplication): Promise<void> =>
  app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close());

const startHearing = (page: Page): Promise<void> =>
  page.evaluate(() => {
    window.heard = [];
    window.drysill.onRequest((request) => window.heard.push(request));
  });

const heard = (page: Page): Promise<HostRequest[]> => page.evaluate(() => window.heard);

const keepUnsaved = async (page: Page, userData: string, text: string) => {
  await page.evaluate((text) => window.drysill.keepUnsaved({ name: "studio", text, token: null }), text);
  const noted = async () => {
    const names = await readdir(join(userData, "recovery")).catch(() => []);
    const whole = names.filter((name) => name.endsWith(".json"));
    const texts = whole.map((name) => readFile(join(userData, "recovery", name), "utf8").catch(() => ""));
    return (await Promise.all(texts)).join("\n");
  };
  await expect.poll(noted).toContain(text);
};

const recovered = (page: Page) => page.evaluate(() => window.drysill.recovered());

test.describe("files", () => {
  test("are saved, saved again by token, opened, and remembered after a restart", async ({
    launchElectron,
    folder,
  }) => {
    const { app, child, page, userData } = await launchElectron();
    const file = join(folder, "studio.drysill.json");
    await answerDialogs(app, file);
    const saved = await page.evaluate(() => window.drysill.saveProjectAs("studio", "one"));
    expect(saved).toEqual({ name: basename(file), token: expect.stringMatching(/^[0-9a-f]{32}$/) });
    expect(await readFile(file, "utf8")).toBe("one");
    const { token } = saved as Saved;
    expect(await page.evaluate((token) => window.drysill.saveProject(token, "two ½″"), token)).toEqual(saved);
    expect(await readFile(file, "utf8")).toBe("two ½″");
    expect(await page.evaluate(() => window.drysill.openProject())).toEqual({ ...saved, text: "two ½″" });
    expect(await readdir(folder)).toEqual([basename(file), "user-data"]);
    await closeWindow(app);
    expect(await ended(child)).toBe(0);

    const next = await launchElectron({ userData });
    const [recent] = await next.page.evaluate(() => window.drysill.recentFiles());
    expect(recent).toMatchObject({ name: basename(file), folder });
    const text = await next.page.evaluate((token) => window.drysill.openRecent(token), recent?.token ?? "");
    expect(text).toMatchObject({ name: basename(file), text: "two ½″" });
  });

  test("are exported byte for byte, with the ending put on where it was left out", async ({
    launchElectron,
    folder,
  }) => {
    const { app, page } = await launchElectron();
    await answerDialogs(app, join(folder, "site plan"));
    const answer = await page.evaluate(() =>
      window.drysill.exportFile("plan.pdf", new Uint8Array([0, 37, 255])),
    );
    expect(answer).toEqual({ name: "site plan.pdf", token: null });
    expect([...(await readFile(join(folder, "site plan.pdf")))]).toEqual([0, 37, 255]);
    expect(await page.evaluate(() => window.drysill.recentFiles())).toEqual([]);
  });

  test("with the ending put on are not replaced unasked", async ({ launchElectron, folder }) => {
    const { app, page } = await launchElectron();
    const file = join(folder, "studio.drysill.json");
    await writeFile(file, "old");
    await answerDialogs(app, join(folder, "studio"));
    await answerQuestions(app, 0);
    expect(await page.evaluate(() => window.drysill.saveProjectAs("studio", "new"))).toBeNull();
    expect(await readFile(file, "utf8")).toBe("old");
    expect(await questions(app)).toEqual(["“studio.drysill.json” is already there. Replace it?"]);
    await answerQuestions(app, 1);
    expect(await page.evaluate(() => window.drysill.saveProjectAs("studio", "new"))).toMatchObject({
      name: "studio.drysill.json",
    });
    expect(await readFile(file, "utf8")).toBe("new");
  });

  test("that the person cancels are no failure", async ({ launchElectron }) => {
    const { app, page } = await launchElectron();
    await answerDialogs(app, null);
    const answers = await page.evaluate(async () => [
      await window.drysill.openProject(),
      await window.drysill.saveProjectAs("studio", "{}"),
      await window.drysill.exportFile("plan.pdf", new Uint8Array(1)),
    ]);
    expect(answers).toEqual([null, null, null]);
  });

  test("that can't be saved or opened are told in words", async ({ launchElectron, folder }) => {
    const { app, page } = await launchElectron();
    await answerDialogs(app, join(folder, "gone", "studio.json"));
    expect(await page.evaluate(() => window.drysill.saveProjectAs("studio", "{}"))).toEqual({
      failed: expect.stringMatching(
        /“studio.json” couldn't be saved: the folder “.*gone” isn't there any more/,
      ),
    });
    expect(await page.evaluate(() => window.drysill.openProject())).toEqual({
      failed: expect.stringContaining("“studio.json” isn't in"),
    });
    await writeFile(join(folder, "photo.json"), new Uint8Array([0xff, 0xd8, 0xff]));
    await answerDialogs(app, join(folder, "photo.json"));
    expect(await page.evaluate(() => window.drysill.openProject())).toEqual({
      failed: expect.stringContaining("isn't a text file"),
    });
  });

  test("of the examples are read, but can't be saved over nor are they remembered", async ({
    launchElectron,
  }) => {
    const { app, page } = await launchElectron();
    const demos = (await readdir(join(repository, "demo-projects"))).filter((name) => name.endsWith(".json"));
    const demo = demos[0] ?? "";
    await answerDialogs(app, join(repository, "demo-projects", demo));
    const text = await readFile(join(repository, "demo-projects", demo), "utf8");
    expect(await page.evaluate(() => window.drysill.openProject())).toEqual({
      name: demo,
      text,
      token: null,
    });
    expect(await page.evaluate(() => window.drysill.recentFiles())).toEqual([]);
  });

  test("named to a second Drysill are opened by the first", async ({ launchElectron, folder }) => {
    const { app, page, userData } = await launchElectron();
    await startHearing(page);
    const file = join(folder, "shed.drysill.json");
    await writeFile(file, "a shed");
    const args = [repository, file, "--no-sandbox", "--disable-gpu", `--user-data-dir=${userData}`];
    const second = spawn(process.env.ELECTRON ?? "", args, { stdio: "ignore" });
    expect(await new Promise((resolve) => second.once("exit", resolve))).toBe(0);
    await expect
      .poll(() => heard(page))
      .toEqual([{ openFile: { name: "shed.drysill.json", text: "a shed", token: expect.any(String) } }]);
    expect(app.windows()).toHaveLength(1);
  });

  test("that the system names and can't be read are told natively", async ({ launchElectron, folder }) => {
    const { app } = await launchElectron();
    await answerQuestions(app, 0);
    await app.evaluate(
      ({ app }, path) => app.emit("open-file", { preventDefault: () => undefined }, path),
      join(folder, "gone.json"),
    );
    await expect.poll(() => questions(app)).toEqual([expect.stringContaining("“gone.json” isn't in")]);
  });
});

test.describe("the bridge", () => {
  test("refuses paths, wrong kinds and unknown tokens, and touches nothing", async ({
    launchElectron,
    folder,
  }) => {
    const { page } = await launchElectron();
    const file = join(folder, "precious.txt");
    await writeFile(file, "precious");
    const refused = await page.evaluate(async (path) => {
      const { drysill } = window as unknown as {
        drysill: Record<string, (...given: unknown[]) => Promise<unknown>>;
      };
      const attempts = [
        drysill.saveProject?.(path, "x"),
        drysill.openRecent?.(path),
        drysill.saveProject?.("0".repeat(32), 5),
        drysill.exportFile?.("plan.pdf", "text"),
      ];
      const settled = await Promise.allSettled(attempts);
      return settled.map(({ status }) => status);
    }, file);
    expect(refused).toEqual(["rejected", "rejected", "rejected", "rejected"]);
    expect(await readFile(file, "utf8")).toBe("precious");
    expect(await page.evaluate(() => window.drysill.openRecent("0".repeat(32)))).toEqual({
      failed: expect.stringContaining("doesn't know that file"),
    });
  });

  test("is all that the page has: no Node, no Electron, no path", async ({ launchElectron }) => {
    const { page } = await launchElectron();
    const globals = await page.evaluate(() =>
      ["require", "process", "module", "Buffer", "global", "ipcRenderer", "electron"].filter(
        (name) => name in window,
      ),
    );
    expect(globals).toEqual([]);
    expect(await page.evaluate(() => Object.keys(window.drysill).sort())).toEqual([
      "exportFile",
      "keepUnsaved",
      "offerCommands",
      "onCloseAsked",
      "onRequest",
      "openPicture",
      "openProject",
      "openRecent",
      "recentFiles",
      "recovered",
      "saveProject",
      "saveProjectAs",
      "setTitle",
    ]);
  });

  test("carries the menu's requests", async ({ launchElectron }) => {
    const { app, page } = await launchElectron();
    await startHearing(page);
    await expect
      .poll(() => app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById("view.fit") !== null))
      .toBe(true);
    await app.evaluate(({ Menu }) => {
      for (const id of ["help.shortcuts", "view.fit"])
        Menu.getApplicationMenu()?.getMenuItemById(id)?.click();
    });
    await expect.poll(() => heard(page)).toEqual([{ command: "help.shortcuts" }, { command: "view.fit" }]);
  });

  test("shows the plan's name and whether it is edited", async ({ launchElectron }) => {
    const { app, page } = await launchElectron();
    const title = () => app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getTitle());
    await page.evaluate(() => window.drysill.setTitle("studio", true));
    await expect.poll(title).toMatch(/^studio.* – Drysill$/);
    await page.evaluate(() => window.drysill.setTitle("", false));
    await expect.poll(title).toBe("Drysill");
  });
});

test.describe("refused to the page", () => {
  /** Something to reach on the network, which any page may read; it notes who comes. */
  const visits: string[] = [];
  const elsewhere = createServer((request, response) => {
    visits.push(request.url ?? "");
    response.writeHead(200, { "access-control-allow-origin": "*", "content-type": "text/javascript" });
    response.end("window.remoteRan = true");
  });
  let address: string;
  test.beforeAll(async () => {
    await new Promise<void>((resolve) => elsewhere.listen(0, "127.0.0.1", resolve));
    address = `http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}`;
  });
  test.beforeEach(() => visits.splice(0));
  test.afterAll(() => void elsewhere.close());

  test("going elsewhere, and new windows", async ({ launchElectron }) => {
    const { app, page } = await launchElectron();
    const before = page.url();
    const opened = await page.evaluate(async (address) => {
      const link = document.createElement("a");
      link.href = `${address}/link`;
      document.body.append(link);
      link.click();
      link.target = "_blank";
      link.click();
      location.href = `${address}/location`;
      const second = window.open(`${address}/window`);
      await new Promise((resolve) => setTimeout(resolve, 500));
      return second !== null;
    }, address);
    expect(opened).toBe(false);
    expect(page.url()).toBe(before);
    expect(await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
    expect(visits).toEqual([]);
  });

  test("scripts that are not its own files", async ({ launchElectron }) => {
    const { page } = await launchElectron();
    const ran = await page.evaluate(async (address) => {
      const violations: string[] = [];
      document.addEventListener("securitypolicyviolation", (event) =>
        violations.push(event.effectiveDirective),
      );
      const inline = document.createElement("script");
      inline.textContent = "window.inlineRan = true";
      document.head.append(inline);
      const button = document.createElement("button");
      button.setAttribute("onclick", "window.handlerRan = true");
      document.body.append(button);
      button.click();
      const remote = document.createElement("script");
      remote.src = `${address}/remote.js`;
      document.head.append(remote);
      // The developer tools' own call may evaluate; what runs after it may not.
      await new Promise((resolve) => setTimeout(resolve, 300));
      const evaluated = (() => {
        try {
          return new Function("return true")();
        } catch {
          return false;
        }
      })();
      const marks = ["inlineRan", "handlerRan", "remoteRan"].filter((mark) => mark in window);
      return { marks, evaluated, violations };
    }, address);
    expect(ran).toMatchObject({ marks: [], evaluated: false });
    expect(ran.violations).toEqual(expect.arrayContaining(["script-src-elem", "script-src-attr"]));
    expect(visits).toEqual([]);
  });

  test("the network, other files, and folders beside the page", async ({ launchElectron }) => {
    const { app, page } = await launchElectron();
    const beside = await page.evaluate(async (address) => {
      const picture = document.createElement("img");
      picture.src = `${address}/picture`;
      document.body.append(picture);
      navigator.sendBeacon(`${address}/beacon`);
      await fetch(`${address}/fetch`).catch(() => undefined);
      const paths = ["/../package.json", "/%2e%2e/package.json", "/..%2fpackage.json", "/gone.js"];
      return Promise.all(paths.map(async (path) => (await fetch(path)).status));
    }, address);
    expect(beside).toEqual([404, 404, 404, 404]);
    // Behind the page's own policy stands the session's: it lets nothing out even where no policy asks.
    const reached = await app.evaluate(async ({ BrowserWindow }, address) => {
      const hidden = new BrowserWindow({ show: false });
      const loaded = await hidden.loadURL(`${address}/window`).then(
        () => true,
        () => false,
      );
      hidden.destroy();
      return loaded;
    }, address);
    expect(reached).toBe(false);
    expect(visits).toEqual([]);
  });

  test("permissions, whether asked for or only looked up", async ({ launchElectron }) => {
    const { page } = await launchElectron();
    const states = await page.evaluate(async () => {
      const names = ["geolocation", "notifications", "camera", "microphone"] as PermissionName[];
      const looked = await Promise.all(
        names.map(async (name) => (await navigator.permissions.query({ name })).state),
      );
      const place = await new Promise((resolve) =>
        navigator.geolocation.getCurrentPosition(
          () => resolve("allowed"),
          (error) => resolve(error.code),
        ),
      );
      const camera = await navigator.mediaDevices.getUserMedia({ video: true }).then(
        () => "allowed",
        (error: DOMException) => error.name,
      );
      return { looked, place, camera, notifications: await Notification.requestPermission() };
    });
    expect(states.looked).toEqual(["denied", "denied", "denied", "denied"]);
    expect(states).toMatchObject({ place: 1, notifications: "denied" });
    expect(states.camera).not.toBe("allowed");
  });
});

test.describe("closing", () => {
  const answerClose = (page: Page, may: boolean) =>
    page.evaluate((may) => void window.drysill.onCloseAsked(async () => may), may);

  test("is the page's to allow", async ({ launchElectron }) => {
    const { app, child, page } = await launchElectron();
    const refusal = await page.evaluateHandle(() => {
      const count = { asked: 0 };
      const stop = window.drysill.onCloseAsked(async () => {
        count.asked++;
        return false;
      });
      return { count, stop };
    });
    await closeWindow(app);
    await expect.poll(() => refusal.evaluate(({ count }) => count.asked)).toBe(1);
    expect(app.windows()).toHaveLength(1);
    await refusal.evaluate(({ stop }) => stop());
    await answerClose(page, true);
    await closeWindow(app);
    expect(await ended(child)).toBe(0);
  });

  test("that the page allows forgets the unsaved work it gave up", async ({ launchElectron }) => {
    const { app, child, page, userData } = await launchElectron();
    await keepUnsaved(page, userData, "given up");
    await answerClose(page, true);
    await closeWindow(app);
    await ended(child);
    const next = await launchElectron({ userData });
    expect(await recovered(next.page)).toBeNull();
  });

  test("is not prevented by a page that hangs, and the work is found again", async ({ launchElectron }) => {
    const { app, child, page, userData } = await launchElectron();
    await keepUnsaved(page, userData, "before the page hung");
    await answerQuestions(app, 1);
    const hanging = page.evaluate(() => {
      for (;;);
    });
    hanging.catch(() => undefined);
    await closeWindow(app);
    // It ends; with what code is left open, for the system may have to end the hanging page's process by force.
    await ended(child);
    const next = await launchElectron({ userData });
    expect(await recovered(next.page)).toMatchObject({ name: "studio", text: "before the page hung" });
  });

  test("is put to the person where the page fails at its question", async ({ launchElectron }) => {
    const { app, child, page } = await launchElectron();
    await answerQuestions(app, 1);
    await page.evaluate(() => void window.drysill.onCloseAsked(() => Promise.reject(new Error("broken"))));
    await closeWindow(app);
    expect(await ended(child)).toBe(0);
  });

  test("remembers the window's size", async ({ launchElectron }) => {
    const { app, child, page, userData } = await launchElectron();
    await app.evaluate(({ BrowserWindow }) => {
      BrowserWindow.getAllWindows()[0]?.setBounds({ x: 40, y: 30, width: 1111, height: 777 });
    });
    await answerClose(page, true);
    await closeWindow(app);
    await ended(child);
    expect(JSON.parse(await readFile(join(userData, "window.json"), "utf8"))).toMatchObject({
      width: 1111,
      height: 777,
    });
    const next = await launchElectron({ userData });
    const size = await next.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getSize());
    expect(size).toEqual([1111, 777]);
  });
});

test.describe("unsaved work", () => {
  test("is found after the program was killed, and gone once it is given up", async ({ launchElectron }) => {
    const { child, page, userData } = await launchElectron();
    await keepUnsaved(page, userData, "before the kill");
    child.kill("SIGKILL");
    await ended(child);
    const next = await launchElectron({ userData });
    const found = await recovered(next.page);
    expect(found).toEqual({ name: "studio", text: "before the kill", token: null, when: expect.any(Number) });
    await next.page.evaluate(() => window.drysill.keepUnsaved(null));
    await expect.poll(() => recovered(next.page)).toBeNull();
    expect(await readdir(join(userData, "recovery"))).toEqual([]);
  });

  test("is offered to the page that comes after a crashed one", async ({ launchElectron }) => {
    const { app, page, userData } = await launchElectron();
    await keepUnsaved(page, userData, "before the crash");
    await answerQuestions(app, 0);
    const crashed = page.waitForEvent("crash");
    await app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer(),
    );
    await crashed;
    const state = () =>
      app.evaluate(async ({ BrowserWindow }) => {
        const page = BrowserWindow.getAllWindows()[0]?.webContents;
        return page?.executeJavaScript("window.drysill.recovered()");
      });
    await expect.poll(state).toMatchObject({ name: "studio", text: "before the crash" });
    expect(await questions(app)).toEqual([expect.stringContaining("stopped working")]);
  });

  test("does not stop a start where the settings' folder holds rubbish", async ({
    launchElectron,
    folder,
  }) => {
    const userData = join(folder, "damaged");
    await mkdir(join(userData, "recovery"), { recursive: true });
    await writeFile(join(userData, "window.json"), "{");
    await writeFile(join(userData, "recent.json"), "\u0000");
    await writeFile(join(userData, "recovery", "unsaved-1.json"), "{");
    const { page } = await launchElectron({ userData });
    expect(await recovered(page)).toBeNull();
    expect(await page.evaluate(() => window.drysill.recentFiles())).toEqual([]);
    expect(existsSync(join(userData, "recovery", "unsaved-1.damaged"))).toBe(true);
  });
});
