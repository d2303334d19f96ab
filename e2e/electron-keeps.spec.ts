/** The desktop window keeps what was drawn, kept and imported: saved from the native menu, opened again after a restart. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { ElectronApplication, Page } from "@playwright/test";
import { openProject, type Project } from "../src/document";
import { expect, test } from "./support/fixtures";
import { demoProject, type PlanPage, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");
const [, , c] = (studio.building?.outline ?? []) as [number, number][] as [never, never, [number, number]];

const rows = ["name\tx\ty\theight", "i1\t1\t1\t30.1", "i2\t3\t1\t30.2", "i3\t2\t4\t30.4"].join("\n");

/** Chooses an item of the native menu once the page has offered its commands. */
async function choose(app: ElectronApplication, id: string): Promise<void> {
  const there = () =>
    app.evaluate(({ Menu }, id) => (Menu.getApplicationMenu()?.getMenuItemById(id) ?? null) !== null, id);
  await expect.poll(there).toBe(true);
  await app.evaluate(({ Menu }, id) => Menu.getApplicationMenu()?.getMenuItemById(id)?.click(), id);
}

async function importRows(app: ElectronApplication, page: Page): Promise<void> {
  await choose(app, "plan.importGround");
  await page.getByLabel("Or paste rows of a spreadsheet").fill(rows);
  await page.getByRole("button", { name: "Take the pasted rows" }).click();
  await page.getByRole("button", { name: "Look at it on the plan" }).click();
  await expect(page.getByText("3 points")).toBeVisible();
  await page.getByRole("button", { name: /Its numbers are/ }).click();
  await page.getByRole("option", { name: "metres", exact: true }).click();
  await page.getByRole("button", { name: "Join it to the plan" }).click();
}

/** A breakline and a test pit by the hand, and a feature's figures by its table. */
async function drawAndType(app: ElectronApplication, page: Page, plan: PlanPage): Promise<void> {
  await page.keyboard.press("Escape");
  await page.keyboard.press("e");
  await plan.fit(studio);
  await plan.click(c[0] + 4, c[1] - 10);
  await plan.click(c[0] + 12, c[1] - 10);
  await page.keyboard.press("Enter");
  expect(await plan.undoName()).toMatch(/^Undo: draw/);
  await page.keyboard.press("Escape");
  await page.keyboard.press("h");
  await plan.fit(studio);
  await plan.click(c[0] + 10, c[1] + 14);
  await page.keyboard.press("Escape");
  await page.keyboard.press("v");
  await plan.click(c[0] + 10, c[1] + 14);
  await page.getByTestId("inspector").getByLabel("Rock at").fill("3'");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await choose(app, "edit.tables");
  const grid = page.getByRole("grid", { name: "Features of the lot" });
  const first = grid.locator('[data-row="0"][data-column="0"]');
  await first.click();
  await page.keyboard.type("old oak");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.type("14'");
  await page.keyboard.press("Enter");
  await expect(first).toHaveText("old oak");
  await page.getByRole("button", { name: "Close", exact: true }).click();
}

/** What `drawAndType` left in a plan. */
function drawnIn({ survey, lot }: Project) {
  return {
    breaklines: survey.breaklines.map(({ kind, points }) => ({ kind, points: points.length })),
    rock: survey.pits.map(({ rock }) => rock?.text),
    oak: lot.features.map(({ name, keepClear }) => [name, Number(keepClear.toFixed(4))])[0],
  };
}

const drawn = {
  breaklines: [{ kind: expect.any(String), points: 2 }],
  rock: ["3'"],
  oak: ["old oak", 4.2672],
};

test("a note, a breakline, a pit, a table, an option and imported points are there again after a restart", async ({
  launchElectron,
  folder,
}) => {
  const { app, page } = await launchElectron();
  await page.getByRole("button", { name: /Pottery studio/ }).click();
  const plan = planPage(page);
  await plan.fit(studio);
  await page.keyboard.press("n");
  await plan.click(c[0] + 4, c[1] - 6);
  await page.keyboard.type("hedge stays");
  await page.keyboard.press("Enter");
  expect(await plan.undoName()).toBe("Undo: write note");

  await drawAndType(app, page, plan);

  await choose(app, "edit.options");
  const options = page.getByRole("dialog", { name: "Options side by side" });
  await options.getByLabel("Keep the plan as an option").fill("as drawn");
  await page.keyboard.press("Enter");
  await expect(options.getByLabel("Name of as drawn")).toBeVisible();
  await page.keyboard.press("Escape");

  await importRows(app, page);
  await expect.poll(() => plan.undoName()).toMatch(/^Undo: import/);

  const file = join(folder, "kept.drysill.json");
  await app.evaluate(({ dialog }, filePath) => {
    dialog.showSaveDialog = async () => ({ canceled: false, filePath });
  }, file);
  await choose(app, "plan.save");
  await expect.poll(() => readFile(file, "utf8").catch(() => "")).toContain('"drysill": 1');
  // The window asks before it closes for as long as it doesn't know that all is saved.
  await expect(page.getByText("not saved yet")).toHaveCount(0);
  await expect.poll(() => page.title()).not.toMatch(/^[•*]/);
  await app.close();

  const saved = openProject(await readFile(file, "utf8"));
  if (!saved.ok) throw new Error("the saved file doesn't open");
  expect(saved.project.drawing.notes.map(({ text }) => text)).toEqual(["hedge stays"]);
  expect(drawnIn(saved.project)).toEqual(drawn);
  expect(saved.project.options.map(({ name }) => name)).toEqual(["as drawn"]);
  expect(saved.project.survey.shots.map(({ name }) => name)).toEqual(
    expect.arrayContaining(["i1", "i2", "i3"]),
  );

  const again = await launchElectron({ file });
  await again.page.getByRole("button", { name: /^Floor\b.*:/ }).click();
  await choose(again.app, "edit.options");
  const table = again.page.getByRole("table", { name: "Options and their figures" });
  await expect(table.getByLabel("Name of as drawn")).toHaveValue("as drawn");
  await expect(table.locator(".stamp-building")).toHaveCount(2, { timeout: 30_000 });
  await again.page.keyboard.press("Escape");

  // What is there again is what is saved again.
  await choose(again.app, "edit.tables");
  await expect(
    again.page.getByRole("grid", { name: "Features of the lot" }).locator('[data-row="0"][data-column="2"]'),
  ).toHaveText("14′ 0″");
  await again.page.getByRole("button", { name: "Close", exact: true }).click();
  await choose(again.app, "edit.objects");
  const tree = again.page.getByRole("dialog");
  for (const name of ["Old oak", "Ditch"]) await expect(tree).toContainText(name);
  // Only what is in sight is drawn.
  await tree.getByRole("row").first().focus();
  await again.page.keyboard.press("End");
  await expect(tree).toContainText("hedge stays");
  const lasting = openProject(await readFile(file, "utf8"));
  expect(lasting.ok && drawnIn(lasting.project)).toEqual(drawn);
});
