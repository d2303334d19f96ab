/** The plan's tables by keyboard, as in a spreadsheet. */
import { expect, test } from "./support/fixtures";

test("features are typed, filled down, pasted, sorted and found, each act one step to undo", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await expect(page.getByTestId("plan")).toBeVisible();
  await page.keyboard.press("Control+Shift+E");
  const grid = page.getByRole("grid", { name: "Features of the lot" });
  await expect(grid).toBeVisible();
  const cell = (row: number, column: number) => grid.locator(`[data-row="${row}"][data-column="${column}"]`);
  const kept = await cell(1, 2).innerText();
  await cell(0, 0).click();
  await page.keyboard.type("old oak");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.type("14");
  await page.keyboard.press("Enter");
  await expect(cell(0, 0)).toHaveText("old oak");
  await expect(cell(0, 2)).toHaveText("14′ 0″");
  await expect(cell(1, 0)).toHaveClass(/here/);

  await cell(0, 2).click();
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Control+d");
  await expect(cell(1, 2)).toHaveText("14′ 0″");
  await page.keyboard.press("Control+z");
  await expect(cell(1, 2)).toHaveText(kept);
  await expect(cell(0, 2)).toHaveText("14′ 0″");

  await cell(0, 0).click();
  await grid.evaluate((table) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", "big oak\ttree\t15'\nwell\twell\tfar");
    table.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  });
  await expect(cell(0, 2)).toHaveText("15′ 0″");
  await expect(cell(1, 2)).toHaveText(kept);
  await expect(page.getByRole("status").filter({ hasText: "far" })).toContainText("1 cell not understood");

  await cell(0, 2).click();
  await page.keyboard.press("F2");
  await page.keyboard.press("9");
  await page.keyboard.press("Escape");
  await expect(cell(0, 2)).toHaveText("15′ 0″");
  await expect(page.getByRole("dialog")).toBeVisible();

  await grid.getByRole("button", { name: "name" }).click();
  await expect(cell(0, 0)).toHaveText("big oak");
  await grid.getByRole("button", { name: "name" }).click();
  await expect(cell(0, 0)).not.toHaveText("big oak");
  await page.getByRole("searchbox", { name: "Find" }).fill("OAK");
  await expect(grid.locator("tbody tr")).toHaveCount(1);
});
