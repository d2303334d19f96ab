/** The window in a real Chromium: start screen, level book by keyboard, floor, files, export, failures. */
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { pdfText } from "./support/pdfText";
import { settled } from "./support/settled";

const step = (page: Page, name: string) => page.getByRole("button", { name: new RegExp(`^${name}\\b.*:`) });
const book = (page: Page) => page.getByRole("grid", { name: "Level book" });
const floor = (page: Page) => page.getByLabel("Height of the finished floor");

/** Fails the test on anything that the page reports as an error. */
function watch(page: Page): string[] {
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  return errors;
}

test("the start screen shows the demos drawn from their own data, and opens one", async ({
  page,
  openPage,
}) => {
  const errors = watch(page);
  await openPage(page);
  await expect(page.getByRole("button", { name: /Pottery studio/ })).toBeVisible();
  await expect(page.locator(".stamp .stamp-building").first()).toHaveAttribute("d", /^M.+Z$/);
  await expect(page.locator(".stamp .stamp-minor").first()).toHaveAttribute("d", /^M/);
  await page.getByRole("button", { name: /Joinery shed/ }).click();
  await expect(page.getByLabel("Name of the plan")).toHaveValue("Joinery shed");
  await expect(page).toHaveTitle(/^Joinery shed/);
  expect(errors).toEqual([]);
});

test("a plan opened in the browser is listed after a reload, and opens again", async ({ page, openPage }) => {
  const text = await readFile("demo-projects/joinery-shed.drysill.json", "utf8");
  await page.addInitScript((content) => {
    const pick = async () => {
      const folder = await navigator.storage.getDirectory();
      const handle = await folder.getFileHandle("my-shed.drysill.json", { create: true });
      const writable = await handle.createWritable();
      await writable.write(content);
      await writable.close();
      return [handle];
    };
    Object.assign(window, { showOpenFilePicker: pick });
  }, text);
  await openPage(page, { pickers: true });
  await expect(page.getByText("Plans that you open or save will be listed here.")).toBeVisible();
  await page.getByRole("button", { name: "Open a file…" }).click();
  await expect(page.getByText("saved", { exact: true })).toBeVisible();
  await page.reload();
  await page.getByRole("button", { name: /my-shed\.drysill\.json/ }).click();
  await expect(page.getByLabel("Name of the plan")).toHaveValue("Joinery shed");
});

test("a browser that can't open a file again says so; a file opened there is a copy", async ({
  page,
  openPage,
  folder,
}) => {
  await openPage(page);
  await expect(page.getByText("This browser can't open a file again by itself.")).toBeVisible();
  await expect(page.getByRole("heading", { name: "Settle the floor" })).toBeVisible();
  const path = join(folder, "mine.drysill.json");
  await writeFile(path, await readFile("demo-projects/joinery-shed.drysill.json"));
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open a file…" }).click();
  await (await chooser).setFiles(path);
  await expect(page.getByText("opened as a copy")).toBeVisible();
});

test("a plan from nothing by keyboard: mark, shots, building, floor", async ({ page, openPage }) => {
  const errors = watch(page);
  await openPage(page);
  await page.getByRole("button", { name: "New plan" }).click();
  await page.keyboard.type("Slope shed");
  await page.keyboard.press("Enter");
  await page.getByLabel("The mark").fill("bolt");
  await page.getByLabel("Reading on it").fill("62 5/8");
  await page.keyboard.press("Enter");
  await expect(book(page)).toBeFocused();
  const shots = [
    ["low", "90", "-60, -60"],
    ["east", "80", "60, -60"],
    ["high", "50", "60, 60"],
    ["west", "60", "-60, 60"],
  ] as const;
  for (const [name, reading, place] of shots) {
    await page.keyboard.type(name);
    await page.keyboard.press("Tab");
    await page.keyboard.type(reading);
    for (let i = 0; i < 3; i++) await page.keyboard.press("Tab");
    await page.keyboard.type(place);
    await page.keyboard.press("Enter");
  }
  await expect(book(page).getByText("2′ 3⅜″ below")).toBeVisible(); // 62⅝ − 90 inches
  await expect(page.locator(".say")).toContainText("the ground falls to the south");

  await step(page, "Building").click();
  await page.getByRole("button", { name: /Or start with 32′ × 24′/ }).click();
  await page.getByLabel("Wall A–B").fill("40");
  await page.keyboard.press("Enter");
  await expect(page.getByLabel("Corner B, east")).toHaveValue("24′ 0″");
  await step(page, "Floor").click();
  await floor(page).fill("101' 2\"");
  await page.keyboard.press("Enter");
  await expect(page.locator(".say")).toContainText("The floor stands");
  await expect(page.getByRole("button", { name: "Undo: floor to 101′ 2″" })).toBeVisible();
  await page.getByLabel("Name of the plan").blur();
  await page.keyboard.press("Control+z");
  await expect(floor(page)).not.toHaveValue("101′ 2″");
  expect(errors).toEqual([]);
});

test("nothing in the panel moves while the floor is dragged", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  const handle = await page.getByTestId("rod-handle").boundingBox();
  if (!handle) throw new Error("the rod has no handle");
  const [x, y] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
  const places = () =>
    page.locator(".side :is(li, tr, .part-head, dt, .curve), .rail li, .rail-problems").evaluateAll((parts) =>
      parts.map((part) => {
        const { top, height } = part.getBoundingClientRect();
        return `${Math.round(top)} ${Math.round(height)}`;
      }),
    );
  const before = await places();
  expect(before.length).toBeGreaterThan(20);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (const by of [-8, -40, -90, 30, 75, 160]) {
    await page.mouse.move(x, y + by, { steps: 3 });
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    expect(await places(), `${by} px`).toEqual(before);
  }
  await page.keyboard.press("Escape");
  await page.mouse.up();
});

test("the rail's counts add up to the one at its foot, in every demo", async ({ page, openPage }) => {
  for (const demo of ["pottery-studio", "joinery-shed", "potting-barn", "open-hillside"]) {
    await openPage(page, { demo });
    await expect(floor(page)).toBeVisible();
    const counts = await page.locator(".rail-count").allInnerTexts();
    const sum = counts.reduce((total, count) => total + Number(count), 0);
    const foot = page.locator(".rail-problems");
    await expect(foot).toHaveText(sum === 0 ? "Nothing to look at." : `${sum} to look at`);
    if (sum === 0) continue;
    await foot.click();
    await expect(page.getByRole("dialog").locator(".problem")).toHaveCount(sum);
    await page.keyboard.press("Escape");
  }
});

test("a field keeps what it can't read, and the project stays as it was", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  const before = await floor(page).inputValue();
  await floor(page).fill("a foot or so");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("alert")).toContainText('"a foot or so"');
  await expect(floor(page)).toHaveValue("a foot or so");
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  await page.keyboard.press("Escape");
  await expect(floor(page)).toHaveValue(before);
});

test("units change what is shown, and a shot stays as it was typed", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("button", { name: /^Units/ }).click();
  await page.getByRole("menuitemradio", { name: /^Metres/ }).click();
  await expect(floor(page)).toHaveValue("30.302 m");
  await step(page, "Shots").click();
  const reading = book(page).getByRole("gridcell", { name: "1.026 m", exact: true }).first();
  await expect(reading).toHaveAttribute("title", 'typed as 40 3/8"');
});

test("saves with what is being typed, in a field and in a cell", async ({ page, openPage, folder }) => {
  await openPage(page, { demo: "pottery-studio" });
  const saveAs = async (name: string) => {
    const download = page.waitForEvent("download");
    await page.keyboard.press("Control+s");
    const path = join(folder, name);
    await (await download).saveAs(path);
    return JSON.parse(await readFile(path, "utf8"));
  };
  await floor(page).fill("99' 6\"");
  expect((await saveAs("field.drysill.json")).building.floor).toBeCloseTo(99.5 * 0.3048, 9);
  await expect(floor(page)).toBeFocused();

  await page.getByRole("button", { name: /^Shots/ }).click();
  const book = page.getByRole("grid", { name: "Level book" });
  const first = book
    .getByRole("gridcell")
    .filter({ hasText: /^\d.*[″′]/ })
    .first();
  await first.click();
  await page.keyboard.type("5.25");
  const saved = await saveAs("cell.drysill.json");
  const texts = saved.survey.shots.map(({ reading }: { reading: { text: string } | null }) => reading?.text);
  expect(texts.some((text: string) => text?.startsWith("5.25"))).toBe(true);
  await expect(book).toBeFocused();
});

test("saves, and opens what was saved", async ({ page, openPage, folder }) => {
  await openPage(page, { demo: "pottery-studio" });
  await floor(page).fill("99' 6\"");
  await page.keyboard.press("Enter");
  await expect(page.getByText("not saved yet")).toBeVisible();
  const download = page.waitForEvent("download");
  await page.keyboard.press("Control+s");
  const path = join(folder, "studio.drysill.json");
  await (await download).saveAs(path);
  await expect(page.getByText("not saved yet")).toBeHidden();
  const saved = JSON.parse(await readFile(path, "utf8"));
  expect(saved.building.floor).toBeCloseTo(99.5 * 0.3048, 9);

  await page.getByRole("button", { name: /^Plan menu/ }).click();
  await page.getByRole("menuitem", { name: "Start screen" }).click();
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open a file…" }).click();
  await (await chooser).setFiles(path);
  await expect(floor(page)).toHaveValue("99′ 6″");
});

test("a damaged file is refused in words that stay, and what is open stays open", async ({
  page,
  openPage,
  folder,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const path = join(folder, "broken.drysill.json");
  await writeFile(path, '{ "drysill": 1, "lot": { "outline": [[1, 2], [3');
  await settled(page);
  const chooser = page.waitForEvent("filechooser");
  await page.keyboard.press("Control+o");
  await (await chooser).setFiles(path);
  const message = page.getByRole("alert");
  await expect(message).toContainText(
    "broken.drysill.json can't be opened. The file is damaged or cut short",
  );
  await expect(page.getByLabel("Name of the plan")).toHaveValue("Pottery studio");
  await page.waitForTimeout(7000);
  await expect(message).toBeVisible();
  await page.getByRole("button", { name: "Dismiss this message" }).click();
  await expect(message).toBeHidden();
});

test("asks before unsaved work gives way", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("Alt+ArrowUp");
  await page.keyboard.press("Control+k");
  await page.keyboard.type("start screen");
  await page.keyboard.press("Enter");
  const question = page.getByRole("alertdialog");
  await expect(question).toContainText("It has changes that are not in a file yet.");
  await page.keyboard.press("Escape");
  await expect(question).toBeHidden();
  await expect(page.getByRole("button", { name: "Undo: floor up ½″" })).toBeVisible();
});

test("unsaved work comes back after a crash", async ({ page, openPage, context }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.getByLabel("Name of the plan").fill("Not saved");
  await page.keyboard.press("Enter");
  await page.waitForTimeout(1800);
  await page.close({ runBeforeUnload: false });
  const again = await context.newPage();
  await openPage(again);
  await expect(again.getByText("Unsaved work was found:")).toBeVisible();
  await again.getByRole("button", { name: "Bring it back" }).click();
  await expect(again.getByLabel("Name of the plan")).toHaveValue("Not saved");
  await expect(again.getByText("not saved yet")).toBeVisible();
});

test("exports the site plan as a PDF whose text can be read", async ({ page, openPage, folder }) => {
  const errors = watch(page);
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("button", { name: "Site plan…" }).click();
  await page.getByLabel("Owner").fill("A. Potter");
  await page.keyboard.press("Enter");
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Export as PDF" }).click();
  const path = join(folder, "site-plan.pdf");
  const file = await download;
  expect(file.suggestedFilename()).toBe("pottery-studio-site-plan.pdf");
  await file.saveAs(path);
  const text = await pdfText(path);
  expect(text).toContain("A. Potter");
  expect(text).toContain("Pottery studio");
  await expect(page.getByRole("dialog")).toBeHidden();
  expect(errors).toEqual([]);
});

test("the export says its scales, sheets and open points before it is made", async ({
  page,
  openPage,
  folder,
}) => {
  await openPage(page, { demo: "joinery-shed" });
  await page.keyboard.press("Control+p");
  const dialog = page.getByRole("dialog", { name: "Export the site plan" });
  await expect(dialog.getByText(/^\d sheets?$/)).toBeVisible();
  const said = Number.parseInt(await dialog.getByText(/^\d sheets?$/).innerText(), 10);
  await expect(dialog.getByText("3 to look at")).toBeVisible();
  await expect(dialog.getByText("lot line 4, overhead line, a low place")).toBeVisible();
  await dialog.getByRole("button", { name: /^Paper|Paper$/ }).click();
  await expect(page.getByRole("option", { name: /^A4, 210 × 297 mm: 1:\d+$/ })).toBeVisible();
  await page.getByRole("option", { name: /A3/ }).click();
  const scale = /1:\d+/.exec(await dialog.getByRole("button", { name: /the largest that fits/ }).innerText());
  await expect(dialog.getByText(/^\d sheets?$/)).toBeVisible();
  const download = page.waitForEvent("download");
  await dialog.getByRole("button", { name: "Export as PDF" }).click();
  const path = join(folder, "site-plan.pdf");
  await (await download).saveAs(path);
  const text = await pdfText(path);
  expect(text).toContain(scale?.[0]);
  expect(text.split("\n")).toHaveLength(said);
});

test("finds a command by a few letters, tells its keys, and why another can't be done", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("Control+k");
  const finder = page.getByRole("dialog", { name: "Find a command" });
  await page.keyboard.type("flor up");
  await expect(finder.getByRole("option").first()).toHaveText(/Floor up one step.*Alt\+↑/);
  await page.keyboard.press("Enter");
  await expect(finder).toBeHidden();
  await expect(page.getByRole("button", { name: "Undo: floor up ½″" })).toBeVisible();
  await page.keyboard.press("Control+k");
  await page.keyboard.type("redo");
  const redo = finder.getByRole("option", { name: /Redo/ });
  await expect(redo).toContainText("There is nothing to do again.");
  await expect(redo).toBeDisabled();
  await page.keyboard.press("Enter");
  await expect(finder).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(finder).toBeHidden();
});

test("the history names every step and goes to any of them", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  const start = await floor(page).inputValue();
  await floor(page).fill("99' 8\"");
  await page.keyboard.press("Enter");
  await floor(page).fill("99' 9\"");
  await page.keyboard.press("Enter");
  await page.getByLabel("Name of the plan").fill("Pots");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^History/ }).click();
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+Shift+H");
  const history = page.getByRole("listbox", { name: /^Steps/ });
  await expect(history.getByRole("option")).toHaveText([
    /^Rename/i,
    "Floor to 99′ 9″",
    "Floor to 99′ 8″",
    "As it was opened",
  ]);
  await page.keyboard.press("End");
  await page.keyboard.press("Enter");
  await expect(floor(page)).toHaveValue(start);
  await expect(history.getByRole("option").first()).toContainText("undone");
  await history.getByRole("option", { name: "Floor to 99′ 9″" }).click();
  await page.keyboard.press("Escape");
  await expect(history).toBeHidden();
  await expect(floor(page)).toHaveValue("99′ 9″");
  await expect(page.getByLabel("Name of the plan")).toHaveValue("Pottery studio");
});

test("lists the shortcuts on ?", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("?");
  const list = page.getByRole("dialog", { name: "Keyboard shortcuts" });
  await expect(list.getByText("Ctrl+K", { exact: true })).toBeVisible();
  await expect(list.getByText("Go from cell to cell")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(list).toBeHidden();
});

test("every command stands in a menu", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("Control+k");
  const all = await page.getByRole("option").locator("> span:first-child").allInnerTexts();
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: /^Plan menu/ }).click();
  const names = (menu: RegExp) =>
    page.getByRole("menu", { name: menu }).locator("[role=menuitem] > span:first-child").allInnerTexts();
  const shown = await names(/^Plan menu/);
  for (const place of ["Edit", "Arrange", "View", "Draw", "Steps", "Help"]) {
    await page.getByRole("menuitem", { name: place, exact: true }).hover();
    await expect(page.getByRole("menu", { name: place, exact: true })).toBeVisible();
    shown.push(...(await names(new RegExp(`^${place}$`))));
  }
  expect(all.length).toBeGreaterThan(30);
  // A tool's kinds ("Feature: well") are its own choice once it is picked from the menu.
  const kindOf = (name: string) => /^(Building|Feature|Earth shape|Breakline): /.exec(name)?.[0];
  const stands = (name: string) => {
    const tool = kindOf(name);
    return shown.includes(name) || (tool !== undefined && shown.some((each) => each.startsWith(tool)));
  };
  expect(all.filter((name) => !stands(name))).toEqual([]);
  await page.getByRole("menuitem", { name: "Steps", exact: true }).hover();
  await page.getByRole("menuitem", { name: "Go to water" }).click();
  await expect(page.getByRole("heading", { name: "Water", exact: true })).toBeVisible();
});

test("every step fits the window: no page scroll, nothing wider than its place", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "joinery-shed" });
  for (const size of [
    { width: 1280, height: 800 },
    { width: 2560, height: 1440 },
  ]) {
    await page.setViewportSize(size);
    for (const name of [
      "Lot",
      "Shots",
      "Building",
      "Drive",
      "Water",
      "Floor",
      "Foundation",
      "Quantities",
      "Set-out",
      "Sheets",
    ]) {
      await step(page, name).click();
      const overflow = await page.evaluate(() => {
        const wide = [...document.querySelectorAll(".side, .side *, .head, .rail, .book-head")].filter(
          (part) =>
            part instanceof HTMLElement &&
            part.clientWidth > 0 &&
            part.scrollWidth > part.clientWidth + 1 &&
            getComputedStyle(part).overflowX === "visible",
        );
        return {
          page:
            document.documentElement.scrollHeight > innerHeight ||
            document.documentElement.scrollWidth > innerWidth,
          wide: wide.map((part) => `${part.className}: ${part.textContent?.slice(0, 40)}`),
        };
      });
      expect(overflow, `${name} at ${size.width}`).toEqual({ page: false, wide: [] });
    }
  }
});

test("a part that can't be drawn leaves a calm page with ways on", async ({ page, openPage, folder }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.evaluate(() => {
    // Drawing fails from here on: what React asks of a list that the panel draws.
    const find = Array.prototype.flatMap;
    Array.prototype.flatMap = function flatMap(
      this: { floorAboveGround?: number }[],
      ...args: Parameters<typeof find>
    ) {
      if (this.length > 0 && this[0]?.floorAboveGround !== undefined) throw new Error("drawn on purpose");
      return find.apply(this, args);
    } as typeof find;
  });
  await page.keyboard.press("Alt+ArrowUp");
  await expect(page.getByRole("heading", { name: "The window couldn't be drawn." })).toBeVisible();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save a copy" }).click();
  const path = join(folder, "copy.drysill.json");
  await (await download).saveAs(path);
  expect(JSON.parse(await readFile(path, "utf8")).name).toBe("Pottery studio");
});

for (const [width, height, textSize] of [
  [1920, 1080, 1],
  [1280, 800, 1.5],
] as const)
  test(`messages cover nothing of plan, rod and section, ${width}×${height}, text at ${textSize * 100} %`, async ({
    page,
    openPage,
  }) => {
    await page.setViewportSize({ width, height });
    await page.addInitScript(
      (size) => localStorage.setItem("drysill.preferences", JSON.stringify({ textSize: size })),
      textSize,
    );
    await openPage(page, { demo: "pottery-studio" });
    const messages = page.locator(".message");
    const plan = page.getByTestId("plan");
    for (const key of ["d", "n"]) {
      await plan.focus();
      await page.keyboard.press(key);
      await plan.press("Enter");
      // What the tool before said is over.
      await expect(messages).toHaveCount(1);
      for (const part of [".plan-canvas", ".rod", ".dock", ".rail"]) {
        const box = await page.locator(part).boundingBox();
        for (const message of await messages.all()) {
          const lies = await message.boundingBox();
          if (!box || !lies) throw new Error(`${part} or the message is not there`);
          const apart =
            lies.x >= box.x + box.width ||
            lies.x + lies.width <= box.x ||
            lies.y >= box.y + box.height ||
            lies.y + lies.height <= box.y;
          expect(apart, `${part} ${JSON.stringify([box, lies])}`).toBe(true);
        }
      }
    }
  });
