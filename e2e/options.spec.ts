/** Options kept by name, compared, and gone back to. */
import { expect, test } from "./support/fixtures";

test("two floors are kept, compared by their figures, and one is gone back to", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const floor = page.getByLabel("Height of the finished floor");
  await page.getByRole("button", { name: /^Floor\b.*:/ }).click();
  const before = await floor.inputValue();

  await page.keyboard.press("Control+Shift+B");
  const dialog = page.getByRole("dialog", { name: "Options side by side" });
  await dialog.getByLabel("Keep the plan as an option").fill("as drawn");
  await page.keyboard.press("Enter");
  await expect(dialog.getByLabel("Name of as drawn")).toHaveValue("as drawn");
  await expect(dialog.getByText("the plan is so now")).toBeVisible();
  await page.keyboard.press("Escape");

  for (let i = 0; i < 8; i++) await page.keyboard.press("Alt+ArrowUp");
  await expect(floor).not.toHaveValue(before);
  await page.keyboard.press("Control+Shift+B");
  await dialog.getByRole("button", { name: "Keep it" }).click();
  const table = dialog.getByRole("table", { name: "Options and their figures" });
  const cells = (row: string) => table.getByRole("row", { name: new RegExp(`^${row}`) }).getByRole("cell");
  await expect(cells("Floor").nth(1)).toContainText("lower");
  await expect(cells("Fill").nth(1)).toContainText("less");
  await expect(cells("Floor").nth(2)).not.toContainText(/lower|higher/);
  await expect(dialog.locator(".stamp-building")).toHaveCount(3);

  await dialog.getByRole("button", { name: "Go back to this" }).click();
  await page.keyboard.press("Escape");
  await expect(floor).toHaveValue(before);
  await page.keyboard.press("Control+Z");
  await expect(floor).not.toHaveValue(before);
});

test("a name that is taken is refused beside what was typed", async ({ page, openPage }) => {
  await openPage(page, { demo: "joinery-shed" });
  await page.keyboard.press("Control+Shift+B");
  const dialog = page.getByRole("dialog", { name: "Options side by side" });
  const name = dialog.getByLabel("Keep the plan as an option");
  await name.fill("long drive");
  await name.press("Enter");
  await name.fill("long drive");
  await name.press("Enter");
  await expect(dialog.getByText(/There is an option “long drive” already/)).toBeVisible();
  await dialog.getByRole("button", { name: "Remove long drive" }).click();
  await expect(dialog.getByLabel("Name of long drive")).toHaveCount(0);
});
