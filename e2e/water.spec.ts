/** Water: the storm that a swale must carry, runs of water, and what would drain a hollow. */
import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";

async function waterPanel(page: Page): Promise<Locator> {
  await page.getByRole("button", { name: /^Water\b.*:/ }).click();
  return page.locator(".side");
}

test("a swale is held against the storm that is typed: it carries it, overflows, or is scoured", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const panel = await waterPanel(page);
  await expect(panel.getByText("Drains to it")).toBeVisible();
  await expect(panel.getByText("type the rain below")).toBeVisible();
  const rain = panel.getByLabel("It rains");
  await rain.fill("2");
  await rain.press("Enter");
  await expect(panel.getByText(/^The storm stays in it with only 2⅛″ to spare/)).toBeVisible();
  await panel.getByText("Ground, bed and whole storm").click();
  const freeboard = panel.getByLabel("Room over the water");
  await freeboard.fill("2");
  await freeboard.press("Enter");
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
  const panel = await waterPanel(page);
  await panel.getByLabel("It rains").fill("60");
  await page.keyboard.press("Enter");
  await expect(panel.getByText(/ l\/s$/).first()).toBeVisible();
  await expect(
    panel.getByText(/It drains once its rim is .* lower where it spills over/).first(),
  ).toBeVisible();
  await panel.getByRole("button", { name: "Show the rim" }).first().click();
});

async function choose(page: Page, field: string | RegExp, option: string | RegExp): Promise<void> {
  await page.locator(".side").getByRole("button", { name: field }).first().click();
  await page.getByRole("option", { name: option }).first().click();
}

test("the rain goes its whole way: off the ground's covers, off the roof, into the ditch, through a pipe under the drive", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const panel = await waterPanel(page);
  const figure = (name: string) =>
    panel.locator("dt", { hasText: name }).first().locator("xpath=following-sibling::dd[1]");
  await panel.getByLabel("It rains").fill("2");
  await page.keyboard.press("Enter");
  const before = await figure("Peak, C i A").innerText();
  await panel.getByText("Ground, bed and whole storm").click();
  await panel.getByRole("button", { name: "Take it from what covers the ground" }).click();
  await choose(page, /Cover 1$/, /^woods on silt, hilly: 0.5/);
  await expect(panel.getByLabel("Part that runs off", { exact: true })).toHaveValue("0.5");
  await expect(figure("Peak, C i A")).not.toHaveText(before);
  await choose(page, /Lined with$/, /^redtop or fescue on soil that washes easily/);
  await expect(figure("So fast")).toBeVisible();
  await expect(panel.getByText(/its bed bears 2\.50 ft\/s/).first()).toBeVisible();
  const bare = await figure("Drains to it").innerText();
  await panel.getByText("Roof", { exact: true }).click();
  await choose(page, /Shape$/, "two sides, ridge the long way");
  await choose(page, /Its downspouts come out$/, "into swale");
  await expect(panel.getByText(/of roof with it/).first()).toBeVisible();
  await expect(figure("Drains to it")).not.toHaveText(bare);
  // A second ditch crosses the drive: there it needs a pipe.
  await page.getByTestId("tool-swale").click();
  await page.keyboard.type("30', 24'");
  await page.keyboard.press("Enter");
  await page.keyboard.type("90', 18'");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await expect(panel.getByRole("heading", { name: "Pipes under drives" })).toBeVisible();
  await expect(panel.getByText(/Invert upstream/).first()).toBeVisible();
  // As shallow as it is, a pipe lacks cover under the drive; deeper, it has it.
  await expect(panel.getByText(/12 in bore carries the storm, but only .* of cover is left/)).toBeVisible();
  await panel.getByText("Its shape").last().click();
  const deep = panel.getByLabel("Depth at its high end").last();
  await deep.fill("2' 6\"");
  await deep.press("Enter");
  const falls = panel.getByLabel("Bed falls", { exact: true }).last();
  await falls.fill("1.5 %");
  await falls.press("Enter");
  await expect(panel.getByText(/\d+ in bore carries the storm, with .* of cover over it/)).toBeVisible();
  // The order of shaping says why neither of the two wins there.
  await page.getByRole("button", { name: /^Drive\b.*:/ }).click();
  await expect(page.getByRole("list", { name: "Where they meet" })).toContainText(
    /under drive: a pipe takes it/,
  );
});
