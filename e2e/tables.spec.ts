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
  await expect(page.getByRole("status").filter({ hasText: "far" })).toContainText("1 cell not understood");
  await expect(cell(1, 2)).toHaveText(/^far, not understood: /);
  await cell(1, 2).click();
  await page.keyboard.press("Delete");
  await expect(cell(1, 2)).toHaveText(kept);

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

test("a block of cells is dragged, copied, pasted and filled over; what is refused and begun outlives the window", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("Control+Shift+E");
  const grid = page.getByRole("grid", { name: "Features of the lot" });
  const cell = (row: number, column: number) => grid.locator(`[data-row="${row}"][data-column="${column}"]`);
  const chosen = grid.locator('td[aria-selected="true"]');
  const paste = (text: string) =>
    grid.evaluate((table, copied) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData("text/plain", copied);
      table.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
    }, text);
  const undo = page.getByRole("button", { name: /^Undo/, includeHidden: true }).first();

  // Over columns and rows, by the mouse and by keys.
  await cell(0, 2).hover();
  await page.mouse.down();
  await cell(1, 4).hover();
  await page.mouse.up();
  await expect(chosen).toHaveCount(6);
  await paste("9'");
  for (const column of [2, 3, 4]) await expect(cell(1, column)).toHaveText("9′ 0″");
  await expect(undo).toHaveText("Undo: paste 2 rows");
  await page.keyboard.press("Control+z");
  await cell(0, 3).click();
  await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("Shift+ArrowDown");
  await expect(chosen).toHaveCount(4);
  await page.keyboard.press("Control+d");
  for (const column of [3, 4])
    expect(await cell(1, column).innerText()).toBe(await cell(0, column).innerText());
  await expect(undo).toHaveText("Undo: fill down");
  await page.keyboard.press("Control+z");

  // A cell that is refused, and a row below the last that isn't complete.
  const before = await undo.innerText();
  await cell(0, 3).click();
  await page.keyboard.type("by the gate");
  await page.keyboard.press("Enter");
  await expect(cell(0, 3)).toHaveAttribute("aria-invalid", "true");
  const rows = await grid.locator("tbody tr").count();
  await cell(rows - 1, 0).click();
  await page.keyboard.type("spruce");
  await page.keyboard.press("Tab");
  await page.keyboard.type("tree");
  await page.keyboard.press("Enter");
  expect(await undo.innerText()).toBe(before);
  await page.getByRole("button", { name: "Close" }).click();
  await expect(grid).toHaveCount(0);
  await page.keyboard.press("Control+Shift+E");
  await expect(cell(rows - 1, 0)).toHaveText("spruce");
  await expect(cell(0, 3)).toHaveText(/^by the gate, not understood: /);
  await page.getByRole("button", { name: "Mend it" }).click();
  await page.keyboard.type("20'");
  await page.keyboard.press("Enter");
  await expect(cell(0, 3)).toHaveText("20′ 0″");
  await cell(rows - 1, 3).click();
  await page.keyboard.type("30'");
  await page.keyboard.press("Tab");
  await page.keyboard.type("40'");
  await page.keyboard.press("Enter");
  await expect(undo).toHaveText("Undo: add a row");
});

test("the level book's cells are chosen in a block by the mouse, filled down and emptied", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("navigation").getByText("Shots", { exact: true }).click();
  const book = page.getByRole("grid", { name: "Level book" });
  const cell = (row: number, column: string) => book.locator(`[data-row="${row}"].book-${column}`);
  const undo = page.getByRole("button", { name: /^Undo/ }).first();
  await cell(1, "name").hover();
  await page.mouse.down();
  await cell(3, "reading").hover();
  await page.mouse.up();
  await expect(book.locator('td[aria-selected="true"]')).toHaveCount(6);
  const kept = await cell(3, "reading").innerText();
  await page.keyboard.press("Control+d");
  await expect(undo).toHaveText("Undo: fill down");
  for (const column of ["name", "reading"])
    expect(await cell(3, column).innerText()).toBe(await cell(1, column).innerText());
  await page.keyboard.press("Control+z");
  await expect(cell(3, "reading")).toHaveText(kept, { useInnerText: true });
  await page.keyboard.press("Delete");
  await expect(undo).toHaveText("Undo: clear cells");
  await expect(cell(2, "reading")).toHaveText("not read");
});
