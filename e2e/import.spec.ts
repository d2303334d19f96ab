/** Ground from files and pasted rows: mapped, looked at, joined or left; and out again. */
import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { planPage } from "./support/planPage";

const rows = [
  "pt;north;east;elev",
  "1;0,00;0,00;30,10",
  "2;0,00;20,00;30,60",
  "3;15,00;20,00;31,20",
  "4;15,00;0,00;30,90",
].join("\n");

async function openImport(page: Page) {
  await page.keyboard.press("Control+k");
  await page.keyboard.type("Import ground");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Import ground" })).toBeVisible();
}

const give = (page: Page, name: string, text: string) =>
  page
    .getByLabel("File of ground")
    .setInputFiles({ name, mimeType: "text/plain", buffer: Buffer.from(text, "utf8") });

const unit = async (page: Page, words: string) => {
  await page.getByRole("button", { name: /Its numbers are/ }).click();
  await page.getByRole("option", { name: words, exact: true }).click();
};

test("a table with decimal commas is mapped, its unit asked for, and joined in one step", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await openImport(page);
  await give(page, "stakes.csv", rows);
  const first = page.getByRole("table", { name: "The first rows" });
  await expect(first).toContainText("30,60");
  for (const [column, use] of [
    ["Column 1, pt", "name"],
    ["Column 2, north", "northing (y)"],
    ["Column 3, east", "easting (x)"],
    ["Column 4, elev", "height"],
  ])
    await expect(page.getByRole("button", { name: new RegExp(`${column}`) })).toContainText(use ?? "");
  await page.getByRole("button", { name: "Look at it on the plan" }).click();

  const join = page.getByRole("button", { name: "Join it to the plan" });
  await expect(join).toBeDisabled();
  await expect(page.getByText("The file doesn't say.")).toBeVisible();
  await expect(page.getByText("4 points")).toBeVisible();
  await unit(page, "metres");
  await expect(page.getByText("65′ 7⅜″ × 49′ 2½″")).toBeVisible();
  // Until it is joined, nothing of the plan has changed.
  expect(await plan.undoName()).toBe("Undo");
  await join.click();
  expect(await plan.undoName()).toBe("Undo: import stakes.csv");
  await page.keyboard.press("Control+z");
  expect(await plan.undoName()).toBe("Undo");
});

test("a file far from the plan is asked about, and a point that both have brings it over", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.locator(".rail-step", { hasText: /^Shots:/ }).click();
  await openImport(page);
  await give(page, "town.csv", "name,x,y,z\nBM7,5000,2000,250\na,5010,2000,250.5\nb,5000,2010,249\n");
  await page.getByRole("button", { name: "Look at it on the plan" }).click();
  await unit(page, "metres");
  const far = page.getByRole("region", { name: "Far from the plan" });
  await expect(far).toContainText("higher");
  const join = page.getByRole("button", { name: "Join it to the plan" });
  await expect(join).toBeDisabled();
  await far.getByRole("button", { name: /It joins/ }).click();
  await page.getByRole("option", { name: "shifted, by a point that both have" }).click();
  await expect(join).toBeDisabled();
  const point = far.getByLabel("The point in the file");
  await point.fill("BM8");
  await page.keyboard.press("Enter");
  await expect(far.getByRole("alert")).toContainText("No point of the file is called “BM8”");
  await point.fill("bm7");
  await page.keyboard.press("Enter");
  await far.getByRole("button", { name: /Is on the plan/ }).click();
  await page.getByRole("option", { name: "capped bolt" }).click();
  await expect(far).toContainText(/Everything is moved .* west, .* south; .* down\./);
  await join.click();
  await expect(page.getByRole("heading", { name: "Import ground" })).toHaveCount(0);
  expect(await planPage(page).undoName()).toBe("Undo: import town.csv");
  // BM7 lies where the bolt is, and as high.
  const book = page.getByRole("grid", { name: "Level book" });
  await book.focus();
  await page.keyboard.press("Control+End");
  const row = book.getByRole("row").filter({ hasText: "BM7" });
  await expect(row.locator(".book-height")).toHaveText("level");
});

test("pasted rows are taken; a column taken twice is refused in words", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await openImport(page);
  await page.getByLabel("Or paste rows of a spreadsheet").fill("a\t1\t2\t3\nb\t4\t5\t6\nc\t2\t8\t5");
  await page.getByRole("button", { name: "Take the pasted rows" }).click();
  await page.getByRole("button", { name: /Column 4/ }).click();
  await page.getByRole("option", { name: "northing (y)" }).click();
  await expect(page.getByRole("alert")).toContainText("two columns are taken as y");
  await expect(page.getByRole("button", { name: "Look at it on the plan" })).toBeDisabled();
  await page.getByRole("button", { name: /Column 4/ }).click();
  await page.getByRole("option", { name: "height" }).click();
  await page.getByRole("button", { name: "Look at it on the plan" }).click();
  await expect(page.getByText("3 points")).toBeVisible();
  await page.getByRole("button", { name: "Cancel" }).click();
  await expect(page.getByRole("heading", { name: "Import ground" })).toHaveCount(0);
  expect(await planPage(page).undoName()).toBe("Undo");
});

test("of a grid only a part is read, and a part beside it is refused while what was read stays", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await openImport(page);
  const heights = Array.from({ length: 20 }, (_, row) =>
    Array.from({ length: 20 }, (_, column) => (30 + row / 10 + column / 20).toFixed(2)).join(" "),
  );
  const head = "ncols 20\nnrows 20\nxllcorner 0\nyllcorner 0\ncellsize 1\nNODATA_value -9999";
  await give(page, "hill.asc", `${head}\n${heights.join("\n")}\n`);
  await expect(page.getByText("400 points", { exact: true })).toBeVisible();
  await page.getByRole("textbox", { name: "East", exact: true }).fill("9.6");
  await page.getByRole("textbox", { name: "North", exact: true }).fill("4.6");
  await page.getByRole("button", { name: "Read this part" }).click();
  // Centres at 0.5 … 9.5 east and 0.5 … 4.5 north.
  await expect(page.getByText("50 points", { exact: true })).toBeVisible();
  await page.getByRole("textbox", { name: "West", exact: true }).fill("400");
  await page.getByRole("textbox", { name: "East", exact: true }).fill("500");
  await page.getByRole("button", { name: "Read this part" }).click();
  await expect(page.getByRole("alert")).toContainText("hill.asc");
  await expect(page.getByText("50 points", { exact: true })).toBeVisible();
});

test("what is no ground, and a file cut short, are refused in words; the plan stays", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await openImport(page);
  await give(page, "plan.zip", "PK\u0003\u0004");
  await expect(page.getByRole("alert")).toContainText("plan.zip is packed");
  await give(page, "half.geojson", '{"type":"FeatureCollection","features":[');
  await expect(page.getByRole("alert")).toContainText("half.geojson is no whole JSON");
  expect(await planPage(page).undoName()).toBe("Undo");
});

test("a big table is read away from the window and can be stopped", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await openImport(page);
  const many = Array.from(
    { length: 400_000 },
    (_, i) => `p${i},${(i % 640) / 4},${Math.floor(i / 640) / 4},${(30 + (i % 97) / 100).toFixed(2)}`,
  );
  await give(page, "scan.csv", many.join("\n"));
  await page.getByRole("button", { name: "Look at it on the plan" }).click();
  await page.getByRole("button", { name: "Stop", exact: true }).click();
  await expect(page.getByRole("alert")).toContainText("The import was stopped. Nothing was changed.");
});

test("a crowd of points is worked in by steps, and can be stopped meanwhile", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await openImport(page);
  const many = Array.from(
    { length: 30_000 },
    (_, i) => `p${i},${(i % 300) / 10},${Math.floor(i / 300) / 10},${(30 + (i % 97) / 100).toFixed(2)}`,
  );
  await give(page, "scan.csv", many.join("\n"));
  await page.getByRole("button", { name: "Look at it on the plan" }).click();
  await unit(page, "metres");
  // Pressed as soon as it is there: on a quick machine the steps are over before a hand would reach it.
  await page.evaluate(() => {
    const watch = new MutationObserver(() => {
      const stop = [...document.querySelectorAll("button")].find(({ textContent }) => textContent === "Stop");
      if (!stop) return;
      watch.disconnect();
      stop.click();
    });
    watch.observe(document.body, { childList: true, subtree: true });
  });
  await page.getByRole("button", { name: "Join it to the plan" }).click();
  await expect(page.getByRole("alert")).toContainText("It was stopped. Nothing was changed.");
  expect(await planPage(page).undoName()).toBe("Undo");
  await page.getByRole("button", { name: "Join it to the plan" }).click();
  await expect(page.getByRole("heading", { name: "Import ground" })).toHaveCount(0, { timeout: 60_000 });
  expect(await planPage(page).undoName()).toBe("Undo: import scan.csv");
});

test("the ground goes out as a table, and comes in again as it was", async ({ page, openPage }, info) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("Control+k");
  await page.keyboard.type("Export the ground");
  await page.keyboard.press("Enter");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Export", exact: true }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/-ground\.csv$/);
  const path = info.outputPath("ground.csv");
  await download.saveAs(path);
  const text = readFileSync(path, "utf8");
  expect(text.split("\n")[0]).toBe("name,x (m),y (m),z (m),kind");
  // No height with the rounding of a binary sum.
  expect(text).not.toMatch(/\d\.\d{10}/);
  const rows = text.trim().split("\n");
  // The mark stands on a nail or a slab: it comes back as a mark, not as ground.
  const count = rows.filter((row) => row.endsWith(",ground")).length;
  expect(count).toBeGreaterThan(15);
  expect(rows.filter((row) => row.endsWith(",mark"))).toHaveLength(1);
  await openImport(page);
  await give(page, "ground.csv", text);
  await page.getByRole("button", { name: "Look at it on the plan" }).click();
  await expect(page.getByText(`${count} points, 1 mark`, { exact: true })).toBeVisible();
  // The heads told the unit: nothing is asked for.
  await expect(page.getByRole("button", { name: /Its numbers are/ })).toContainText("metres");
  await expect(page.getByRole("button", { name: "Join it to the plan" })).toBeEnabled();
});
