/** Water: the storm that a swale must carry, runs of water, and what would drain a hollow. */
import { expect, test } from "./support/fixtures";

test("a swale is held against the storm that is typed: it carries it, overflows, or is scoured", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("button", { name: /^Water\b.*:/ }).click();
  const panel = page.locator(".side");
  await expect(panel.getByText("Drains to it")).toBeVisible();
  await expect(panel.getByText("type the rain below")).toBeVisible();
  const rain = panel.getByLabel("It rains");
  await rain.fill("2");
  await rain.press("Enter");
  await expect(panel.getByText(/^It carries the storm with .* to spare/)).toBeVisible();
  await expect(panel.getByText("ft³/s").first()).toBeVisible();
  await panel.getByLabel("More ground uphill").fill("200,000");
  await page.keyboard.press("Enter");
  await expect(panel.getByText(/^In the storm it overflows: water stands /)).toBeVisible();
  await rain.fill("a lot");
  await rain.press("Enter");
  await expect(panel.getByText(/Can't read “a lot” as a number/)).toBeVisible();
  await page.keyboard.press("Escape");
  await page.getByTestId("plan").focus();
  await page.keyboard.press("Control+z");
  await expect(panel.getByText(/^It carries the storm/)).toBeVisible();
});

test("in metres the storm is typed in millimetres an hour; a hollow says what would drain it", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "open-hillside" });
  await page.getByRole("button", { name: /^Water\b.*:/ }).click();
  const panel = page.locator(".side");
  await panel.getByLabel("It rains").fill("60");
  await page.keyboard.press("Enter");
  await expect(panel.getByText(/ l\/s$/).first()).toBeVisible();
  await expect(
    panel.getByText(/It drains once its rim is .* lower where it spills over/).first(),
  ).toBeVisible();
  await panel.getByRole("button", { name: "Show the rim" }).first().click();
});
