/**
 * A whole job from an empty window to the printed sheets: lot, twelve shots, an L-shaped building, door, drive, swale,
 * floor, site plan. Once with mouse and keyboard, once with the keyboard alone. Every figure read back is worked out
 * here from what was typed: a height is the beam less the reading.
 */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Download, Locator, Page } from "@playwright/test";
import { newProject, type Point, type Project } from "../src/document";
import { expect, test } from "./support/fixtures";
import { pdfText } from "./support/pdfText";
import { planPage } from "./support/planPage";

const FOOT = 0.3048;

/** In feet. */
const lot = [
  [0, 0],
  [120, 0],
  [120, 100],
  [0, 100],
] as const;
/** The reading on the mark, inches, and the mark's height. */
const onMark = 62.625;
const markHeight = 1200;
/** Twelve shots, feet and inches: the ground falls to the south, and a little to the east. */
const shots = [12, 50, 88].flatMap((y, row) =>
  [12, 45, 80, 108].map((x, column) => ({
    name: `${"SMN"[row]}${column + 1}`,
    x,
    y,
    reading: ([85.625, 64, 42.375][row] ?? 0) + ([0, 0.5, 1, 1.25][column] ?? 0),
  })),
);
/** The L: from its first corner, each wall by an arrow key and its length; the last wall closes it. */
const corner: readonly [number, number] = [40, 40];
const walls = [
  ["ArrowRight", "32'"],
  ["ArrowUp", "14'"],
  ["ArrowLeft", "18'6\""],
  ["ArrowUp", "9'"],
  ["ArrowLeft", "13'6\""],
] as const;
/** Its corners A to F, feet. */
const outline = [
  [40, 40],
  [72, 40],
  [72, 54],
  [53.5, 54],
  [53.5, 63],
  [40, 63],
] as const;
/** The middle of its south wall, where the door goes. */
const doorAt: readonly [number, number] = [56, 40];

const eighths = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];

/** Inches as a carpenter writes them: 1′ 11″, 8¼″. */
function feetAndInches(inches: number): string {
  const [feet, rest] = [Math.floor(inches / 12), inches % 12];
  const part = eighths[Math.round((rest % 1) * 8)] ?? "?";
  const whole = Math.floor(rest);
  const small = feet === 0 && whole === 0 && part !== "" ? part : `${whole}${part}`;
  return feet === 0 ? `${small}″` : `${feet}′ ${small}″`;
}

/** 99′ 5½″ in inches. */
function inchesOf(text: string): number {
  const found = /^(\d+)′ (\d+)?([⅛¼⅜½⅝¾⅞])?″$/.exec(text);
  if (!found) throw new Error(`“${text}” is no length in feet and inches`);
  return Number(found[1]) * 12 + Number(found[2] ?? 0) + Math.max(0, eighths.indexOf(found[3] ?? "")) / 8;
}

const typeLine = async (page: Page, text: string) => {
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
};
const book = (page: Page) => page.getByRole("grid", { name: "Level book" });
const floorField = (page: Page) => page.getByLabel("Height of the finished floor");
const undoName = (page: Page) => page.getByRole("button", { name: /^Undo/ }).first();

/** The mark, its reading, and the rows of the level book, all typed. */
async function typeBook(page: Page, withPlaces: boolean): Promise<void> {
  await page.keyboard.type("bolt");
  await page.keyboard.press("Tab");
  await page.keyboard.type("100'");
  await page.keyboard.press("Tab");
  await expect(page.getByLabel("Reading on it")).toBeFocused();
  await typeLine(page, "62 5/8");
  await expect(book(page)).toBeFocused();
  for (const { name, reading, x, y } of shots) {
    await page.keyboard.type(name);
    await page.keyboard.press("Tab");
    await page.keyboard.type(String(reading));
    if (withPlaces) {
      for (let i = 0; i < 3; i++) await page.keyboard.press("Tab");
      await page.keyboard.type(`${x}', ${y}'`);
    }
    await page.keyboard.press("Enter");
  }
}

/** Each shot stands in the book with its height from the mark: the mark's reading less its own. */
async function checkHeights(page: Page): Promise<void> {
  for (const { name, reading } of shots) {
    const above = onMark - reading;
    const words = `${feetAndInches(Math.abs(above))} ${above > 0 ? "above" : "below"}`;
    const row = book(page).getByRole("row").filter({ hasText: name });
    await expect(row.getByText(words, { exact: true }), name).toBeVisible();
  }
}

/** What was saved, against what was drawn; places that were clicked lie within the hand's reach, m. */
function checkPlan(project: Project, clicked: number): void {
  const near = (at: Point | undefined, [x, y]: readonly [number, number], within: number, what: string) => {
    expect(Math.hypot((at?.[0] ?? 99) - x * FOOT, (at?.[1] ?? 99) - y * FOOT), what).toBeLessThan(within);
  };
  expect(project.lot.outline).toHaveLength(4);
  for (const [i, at] of lot.entries()) near(project.lot.outline[i], at, 1e-6, `lot corner ${i + 1}`);
  const read = project.survey.shots.filter(({ kind }) => kind === "ground");
  expect(read.map(({ name }) => name)).toEqual(shots.map(({ name }) => name));
  for (const [i, { x, y, reading, name }] of shots.entries()) {
    expect(read[i]?.reading?.m).toBeCloseTo((reading / 12) * FOOT, 9);
    const place = read[i]?.place;
    near(place?.kind === "at" ? [place.x, place.y] : undefined, [x, y], clicked, `shot ${name}`);
  }
  const drawn = project.building?.outline ?? [];
  expect(drawn).toHaveLength(outline.length);
  near(drawn[0], corner, clicked, "corner A");
  for (const [i, [x, y]] of outline.entries()) {
    const [ax, ay] = drawn[0] ?? [0, 0];
    near([(drawn[i]?.[0] ?? 0) - ax, (drawn[i]?.[1] ?? 0) - ay], [x - 40, y - 40], 1e-6, `corner ${i + 1}`);
  }
  const [door] = project.building?.doors ?? [];
  expect(door?.wall).toBe(0);
  expect((door?.offset ?? 0) + (door?.width ?? 0) / 2).toBeCloseTo(16 * FOOT, 6);
  expect(project.grading.drives[0]?.door).toBe(door?.id);
  expect(project.grading.swales[0]?.line).toHaveLength(3);
}

/** Inches alone, as a rod of inches is read: 40⅛″. */
const inchWords = (inches: number) => `${Math.floor(inches)}${eighths[Math.round((inches % 1) * 8)] ?? "?"}″`;
/** With its sign, as the sheets write it. */
const signed = (inches: number, words: (inches: number) => string) =>
  `${inches < 0 ? "−" : inches > 0 ? "+" : ""}${words(Math.abs(inches))}`;

/** The sheets tell what was typed: lot, walls, every shot's height, the mark, and what the rod reads at the floor. */
async function checkSheets(path: string, name: string, floor: number): Promise<void> {
  const text = (await pdfText(path)).replace(/\s+/g, " ");
  expect(text).toContain(name);
  expect(text).toContain("The mark is bolt.");
  for (const side of ["120′ 0″", "100′ 0″"]) expect(text).toContain(side);
  for (const wall of ["32′ 0″", "14′ 0″", "18′ 6″", "9′ 0″", "13′ 6″", "23′ 0″"])
    expect(text).toContain(wall);
  // The one that lies within the walls has no room for its height.
  for (const shot of shots.filter(({ name }) => name !== "M2"))
    expect(text).toContain(signed(onMark - shot.reading, feetAndInches));
  const above = floor - markHeight;
  expect(text).toContain(`finished floor mark ${signed(above, feetAndInches)}`);
  // Set-out: the rod at the floor reads what it read on the mark, less what the floor stands above it.
  expect(text).toContain(`finished floor inside ${signed(-above, inchWords)} ${inchWords(onMark - above)}`);
}

async function saved(download: Promise<Download>, path: string): Promise<string> {
  await (await download).saveAs(path);
  return path;
}

async function savedProject(page: Page, folder: string): Promise<Project> {
  const download = page.waitForEvent("download");
  await page.keyboard.press("Control+s");
  const path = await saved(download, join(folder, "job.drysill.json"));
  return JSON.parse(await readFile(path, "utf8")) as Project;
}

test("a whole job by mouse and keyboard, from an empty window to the sheets", async ({
  page,
  openPage,
  folder,
}) => {
  test.setTimeout(120_000);
  await openPage(page);
  await page.getByRole("button", { name: "New plan" }).click();
  await typeLine(page, "Ridge barn");
  const plan = planPage(page);

  await page.getByTestId("tool-lot").click();
  for (const line of ["0, 0", "@120', 0", "@0, 100'", "@120' W, 0"]) await typeLine(page, line);
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/lot/);
  const meant: Project = {
    ...newProject(),
    lot: { ...newProject().lot, outline: lot.map(([x, y]): Point => [x * FOOT, y * FOOT]) },
  };

  await page.getByRole("button", { name: /^Shots\b.*:/ }).click();
  await page.getByLabel("The mark").click();
  await typeBook(page, false);
  await page.getByTestId("tool-shot").click();
  await plan.fit(meant);
  for (const { x, y } of shots) await plan.click(x * FOOT, y * FOOT);
  await page.getByTestId("tool-select").click();
  await checkHeights(page);

  await page.getByTestId("tool-building").click();
  await page.getByTestId("choices").getByRole("button", { name: "any outline" }).click();
  await plan.fit(meant);
  await plan.click(corner[0] * FOOT, corner[1] * FOOT);
  for (const [key, length] of walls) {
    await page.keyboard.press(key);
    await typeLine(page, length);
  }
  await page.keyboard.press("Enter");
  await page.getByTestId("tool-door").click();
  await plan.fit(meant);
  await plan.click(doorAt[0] * FOOT, doorAt[1] * FOOT);
  await expect(undoName(page)).toHaveText(/add door/);
  await page.getByTestId("tool-drive").click();
  await plan.fit(meant);
  await plan.click(doorAt[0] * FOOT, 3 * FOOT);
  await plan.click(doorAt[0] * FOOT, doorAt[1] * FOOT);
  await expect(undoName(page)).toHaveText(/drive/);
  await page.getByTestId("tool-swale").click();
  await plan.fit(meant);
  for (const [x, y] of [
    [50, 84],
    [88, 74],
    [96, 20],
  ] as const)
    await plan.click(x * FOOT, y * FOOT);
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/swale/);

  await page.getByRole("button", { name: /^Floor\b.*:/ }).click();
  const before = await floorField(page).inputValue();
  const handle = await page.getByTestId("rod-handle").boundingBox();
  if (!handle) throw new Error("the rod has no handle");
  const [hx, hy] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
  await page.mouse.move(hx, hy);
  await page.mouse.down();
  await page.mouse.move(hx, hy - 30, { steps: 6 });
  await page.mouse.up();
  await expect(floorField(page)).not.toHaveValue(before);
  const floor = inchesOf(await floorField(page).inputValue());
  expect(floor).toBeGreaterThan(inchesOf(before));

  const project = await savedProject(page, folder);
  checkPlan(project, 0.2);
  expect(project.building?.floor).toBeCloseTo((floor / 12) * FOOT, 6);
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Site plan…" }).click();
  await page.getByRole("button", { name: "Export as PDF" }).click();
  await checkSheets(await saved(download, join(folder, "sheets.pdf")), "Ridge barn", floor);
});

/** Goes on by Tab until the keyboard is there. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  // Looked up once: by its role it takes as long as several Tabs.
  const wanted = await target.elementHandle();
  for (let i = 0; wanted && i < 150; i++) {
    await page.keyboard.press("Tab");
    if (await wanted.evaluate((part) => part === document.activeElement)) return;
  }
  throw new Error(`Tab never came to ${target}`);
}

/** Runs a command by its name, as the finder lists it. */
async function find(page: Page, words: string): Promise<void> {
  await page.keyboard.press("Control+k");
  await expect(page.getByRole("dialog", { name: "Find a command" })).toBeVisible();
  await page.keyboard.type(words);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("dialog", { name: "Find a command" })).toBeHidden();
}

test("the same job by the keyboard alone", async ({ page, openPage, folder }) => {
  test.setTimeout(120_000);
  await openPage(page);
  await expect(page.getByRole("button", { name: "New plan" })).toBeVisible();
  await page.keyboard.press("Control+n");
  await expect(page.getByRole("dialog", { name: "A new plan" })).toBeVisible();
  await typeLine(page, "Ridge barn");

  await find(page, "go to shots");
  await tabTo(page, page.getByLabel("The mark"));
  await typeBook(page, true);
  await checkHeights(page);

  await find(page, "lot: draw");
  await expect(page.getByTestId("plan")).toBeFocused();
  for (const line of ["0, 0", "@120', 0", "@0, 100'", "@120' W, 0"]) await typeLine(page, line);
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/lot/);

  // The plan has the keyboard now: a letter picks a tool, Tab goes to what it offers.
  await page.keyboard.press("b");
  await tabTo(page, page.getByTestId("choices").getByRole("button", { name: "any outline" }));
  await page.keyboard.press("Enter");
  await typeLine(page, `${corner[0]}', ${corner[1]}'`);
  for (const [key, length] of walls) {
    await page.keyboard.press(key);
    await typeLine(page, length);
  }
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/building/);
  await page.keyboard.press("d");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/add door/);
  await page.keyboard.press("r");
  for (const line of [`${doorAt[0]}', 0`, `0, ${doorAt[1]}'`]) await typeLine(page, line);
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/drive/);
  await find(page, "go to drive");
  await tabTo(page, page.getByRole("button", { name: /It ends at/ }));
  await page.keyboard.press("Enter");
  await expect(page.getByRole("listbox")).toBeVisible();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/change the drive's door/);
  await page.keyboard.press("w");
  for (const line of ["50', 84'", "38', 10' S", "8', 54' S"]) await typeLine(page, line);
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/swale/);

  await find(page, "go to floor");
  await tabTo(page, floorField(page));
  await page.keyboard.press("Control+a");
  await typeLine(page, "99' 6\"");
  await expect(floorField(page)).toHaveValue("99′ 6″");
  await find(page, "floor up");
  await expect(floorField(page)).toHaveValue("99′ 6½″");

  checkPlan(await savedProject(page, folder), 1e-6);
  await page.keyboard.press("Control+p");
  const make = page.getByRole("button", { name: "Export as PDF" });
  await expect(make).toBeEnabled();
  const download = page.waitForEvent("download");
  await tabTo(page, make);
  await page.keyboard.press("Enter");
  await checkSheets(await saved(download, join(folder, "sheets.pdf")), "Ridge barn", 99 * 12 + 6.5);
});
