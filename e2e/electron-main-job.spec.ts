/** The main job in the desktop window: open a demo, drag the floor, save, reopen, export the site plan and read it back. */
import { execFileSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { ElectronApplication, Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { pdfText } from "./support/pdfText";

/** The next native save or open dialogs answer with this path. */
function answerDialogs(app: ElectronApplication, path: string): Promise<void> {
  return app.evaluate(({ dialog }, path) => {
    dialog.showSaveDialog = async () => ({ canceled: false, filePath: path });
    dialog.showOpenDialog = async () => ({ canceled: false, filePaths: [path] });
  }, path);
}

/** Drags the floor on the rod by the mouse, in steps as a hand does. */
async function dragFloor(page: Page, by: number): Promise<void> {
  const box = await page.getByTestId("rod-handle").boundingBox();
  if (!box) throw new Error("the rod has no handle in sight");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 10; step++) await page.mouse.move(x, y + (by * step) / 10);
  await page.mouse.up();
}

const floorShown = async (page: Page) => (await page.getByTestId("rod-value").textContent()) ?? "";
const sentence = async (page: Page) => (await page.locator(".say").textContent()) ?? "";

test("from a demo to a sheet: drag the floor, save, reopen, export", async ({ launchElectron, folder }) => {
  const { app, page } = await launchElectron();
  await page.getByRole("button", { name: /Pottery studio/ }).click();
  const before = { floor: await floorShown(page), sentence: await sentence(page) };

  await dragFloor(page, -40);
  await expect.poll(() => floorShown(page)).not.toBe(before.floor);
  await expect.poll(() => sentence(page)).not.toBe(before.sentence);
  const raised = { floor: await floorShown(page), sentence: await sentence(page) };
  const loads = (text: string) => Number(/(\d+) loads? of fill/.exec(text)?.[1]);
  expect(loads(raised.sentence)).toBeGreaterThan(loads(before.sentence));

  const file = join(folder, "my studio.drysill.json");
  await answerDialogs(app, file);
  await page.keyboard.press("Control+s");
  await expect.poll(() => readFile(file, "utf8").catch(() => "")).toContain('"drysill": 1');

  await page.keyboard.press("Control+z");
  await expect.poll(() => floorShown(page)).toBe(before.floor);
  await page.keyboard.press("Control+y");
  await expect.poll(() => floorShown(page)).toBe(raised.floor);

  await app.close();
  const again = await launchElectron({ file });
  await expect.poll(() => floorShown(again.page)).toBe(raised.floor);
  await expect.poll(() => sentence(again.page)).toBe(raised.sentence);

  const sheet = join(folder, "site plan.pdf");
  await answerDialogs(again.app, sheet);
  await again.page.getByRole("button", { name: /Site plan/ }).click();
  await again.page.getByRole("button", { name: "Export as PDF" }).click();
  await expect.poll(() => readFile(sheet, "latin1").catch(() => ""), { timeout: 20_000 }).toContain("%%EOF");
  const text = await pdfText(sheet);
  for (const words of [
    "Pottery studio",
    "Site plan",
    "Corners and trench",
    "All heights are told from the mark",
    "capped bolt",
    "trench",
  ]) {
    expect(text).toContain(words);
  }
  const out = [...raised.sentence.matchAll(/([\d′″ ½¼¾⅛⅜⅝⅞]+)(?: out of the ground)? at [A-Z]\b/g)].map(
    ([, figure = ""]) => figure.trim(),
  );
  expect(out).toHaveLength(2);
  for (const figure of out) expect(text).toContain(figure);

  const solve = ["src/cli/run.mjs", "solve", file, "--json"];
  const solved = JSON.parse(execFileSync(process.execPath, solve, { encoding: "utf8" }));
  expect(solved.floor).toBeGreaterThan(solved.band.low);
});
