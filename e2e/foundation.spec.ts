/** The foundation step: kinds with their section, depth and frost, steps, walls in elevation, the sheet. */
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { pdfText } from "./support/pdfText";

const step = (page: Page) => page.getByRole("button", { name: /^Foundation\b.*:/ }).click();

async function choose(page: Page, field: string, option: string): Promise<void> {
  await page.getByRole("button", { name: new RegExp(field) }).click();
  await page.getByRole("option", { name: option }).click();
}

async function type(page: Page, field: string, text: string): Promise<void> {
  const input = page.getByLabel(field, { exact: true });
  await input.fill(text);
  await input.press("Enter");
}

test("each kind shows its section to scale with its own dimensions, typed on it", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await step(page);
  const panel = page.getByRole("complementary", { name: "This step" });
  await expect(
    panel.getByRole("img", { name: /Section at the low corner C: stem wall of poured/ }),
  ).toBeVisible();
  await expect(panel.getByText("94′ 9″")).toBeVisible();

  await type(page, "Wall height", "4' 8");
  await expect(panel.getByText("94′ 1″")).toBeVisible();
  await type(page, "Slab", "x");
  await expect(panel.getByRole("alert")).toBeVisible();
  await page.getByLabel("Slab", { exact: true }).press("Escape");

  await choose(page, "Kind of foundation", "Slab with thickened edge");
  await expect(panel.getByRole("img", { name: /: slab with thickened edge/ })).toBeVisible();
  await type(page, "Depth of the edge", "2'");
  await expect(panel.getByLabel("Depth of the edge")).toHaveValue("2′ 0″");

  await choose(page, "Kind of foundation", "Posts in holes");
  await expect(panel.getByLabel("Hole into undisturbed ground")).toHaveValue("4′ 0″");
  await expect(panel.getByText(/at its lowest/)).toBeVisible();

  await choose(page, "Kind of foundation", "Crawl space");
  await expect(panel.getByLabel("Ground to top of wall")).toHaveValue("2′ 0″");
  for (let i = 0; i < 5; i++) await page.keyboard.press("Control+Z");
  await expect(panel.getByText("94′ 9″")).toBeVisible();
});

for (const units of ["feet", "metres"] as const) {
  test(`a frost depth shows the corners that fail; one click steps the footing down (${units})`, async ({
    page,
    openPage,
  }) => {
    await openPage(page, { demo: "pottery-studio" });
    if (units === "metres") {
      await page.getByRole("button", { name: /^Units/ }).click();
      await page.getByRole("menuitemradio", { name: /^Metres/ }).click();
    }
    await step(page);
    const panel = page.getByRole("complementary", { name: "This step" });
    await type(page, "Frost depth", units === "feet" ? "3'" : "0.914");
    await expect(panel.getByText("Too little below the ground as it is at corner C.")).toBeVisible();
    await expect(panel.getByText(/6″ short|0\.152 m short/)).toBeVisible();

    await panel.getByRole("button", { name: "Step the footing down where it is shallow" }).click();
    await expect(panel.getByText(/Too little below the ground/)).toHaveCount(0);
    await expect(panel.getByText(/\d steps? of (8″|0\.203 m), 1 down at most/)).toBeVisible();
    const walls = page.getByRole("region", { name: "Walls in elevation" });
    await expect(walls.getByRole("img", { name: /side B-C shows/ })).toBeVisible();
    await expect(walls.getByText(units === "feet" ? "8″" : "0.203 m").first()).toBeVisible();
    await page.keyboard.press("Control+Z");
    await expect(panel.getByText("Too little below the ground as it is at corner C.")).toBeVisible();
  });
}

test("the foundation's sheet is handed out from the sheets step", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("button", { name: /^Sheets\b.*:/ }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Export the foundation sheet…" }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe("pottery-studio-foundation.pdf");
  const text = await pdfText(await file.path());
  expect(text).toContain("Walls in elevation, unrolled");
  expect(text).toContain("Section at the low corner C");
});
