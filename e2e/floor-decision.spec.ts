/** The floor's decision: dragged to the band's end, an empty band's way out tried as an option, what it costs, what people ask. */
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { settled } from "./support/settled";

const step = (page: Page, name: string) =>
  page.getByRole("button", { name: new RegExp(`^${name}\\b.*:`) }).click();

async function type(page: Page, field: string, text: string): Promise<void> {
  const input = page.getByLabel(field, { exact: true }).filter({ visible: true });
  await input.fill(text);
  await input.press("Enter");
}

async function toMetres(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Units/ }).click();
  await page.getByRole("menuitemradio", { name: /^Metres/ }).click();
}

for (const units of ["feet", "metres"] as const) {
  test.describe(`in ${units}`, () => {
    test.beforeEach(async ({ page, openPage }) => {
      await openPage(page, { demo: "pottery-studio" });
      if (units === "metres") await toMetres(page);
      await step(page, "Floor");
    });

    test("the floor goes to the band's upper end, and beyond it the rule there is named", async ({
      page,
    }) => {
      const floor = page.getByRole("slider", { name: /floor/i });
      const plan = await page.locator(".plan-cell").boundingBox();
      await floor.focus();
      await floor.press("End");
      const panel = page.getByRole("complementary", { name: "This step" });
      const row = panel.getByRole("button", { name: /^Not above: fill under the slab/ });
      await expect(row).toContainText("just kept");
      await floor.press("Shift+ArrowUp");
      await expect(row).toContainText("too high");
      await expect(page.getByText(/for this limit: fill under the slab/)).toBeVisible();
      // The sentence above is longer now, and nothing has moved under the hand.
      await floor.press("Home");
      for (let i = 0; i < 20; i++) await floor.press("Shift+ArrowDown");
      await expect(page.getByText(/too low for this limit/)).toBeVisible();
      expect(await page.locator(".plan-cell").boundingBox()).toEqual(plan);
    });

    test("an empty band names its two rules; a way out is tried, kept beside the plan before, and undone", async ({
      page,
    }) => {
      const panel = page.getByRole("complementary", { name: "This step" });
      await panel.getByRole("button", { name: /^Not below: top of wall above the high ground/ }).click();
      await type(page, "At least", units === "feet" ? "1' 6" : "0.46");
      await expect(panel.getByText(/apart: /)).toBeVisible();
      await expect(
        panel.getByText(/top of wall above the high ground beside it .* asks for .*fill under the slab/),
      ).toBeVisible();
      await panel.getByRole("button", { name: "Look for ways out" }).click();
      const way = panel.getByRole("list", { name: "Ways out" }).getByRole("listitem").first();
      await expect(way).toContainText(/floor at .*(nothing new to look at|brings: )/, { timeout: 60_000 });
      await way.getByRole("button", { name: "Try it" }).click();
      await expect(panel.getByText(/apart: /)).toHaveCount(0);
      await page.keyboard.press("Control+Shift+B");
      const dialog = page.getByRole("dialog", { name: "Options side by side" });
      await expect(dialog.getByLabel("Name of before the ways out")).toBeVisible();
      await page.keyboard.press("Escape");
      await page.keyboard.press("Control+Z");
      await expect(panel.getByText(/apart: /)).toBeVisible();
      // What was found is still there, without looking anew.
      await expect(way).toBeVisible();
    });

    test("prices draw the cost against the floor; the cheapest allowed floor is set by a click; the bill is a file", async ({
      page,
    }) => {
      await step(page, "Quantities");
      for (const [item, price] of [
        ["Concrete, slab", "180"],
        ["Earth fill to bring, loose on the truck", "32"],
      ] as const)
        await type(page, item, price);
      const panel = page.getByRole("complementary", { name: "This step" });
      await expect(panel.getByRole("img", { name: /^floor at/ })).toBeVisible();
      const least = panel.getByText(/^Least within the limits at/);
      await settled(page);
      const height = await least.locator("strong").innerText();
      await panel.getByRole("button", { name: "Set the floor to the cheapest" }).click();
      await expect(page.getByRole("button", { name: new RegExp(`^Floor\\b.*${height}`) })).toBeVisible();

      const download = page.waitForEvent("download");
      await panel.getByRole("button", { name: "Export the bill for a spreadsheet" }).click();
      expect((await download).suggestedFilename()).toBe("pottery-studio-bill.csv");
    });
  });
}

test("limits are kept as a set of one's own, and taken in another plan", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await step(page, "Floor");
  const panel = page.getByRole("complementary", { name: "This step" });
  await panel.getByRole("button", { name: /^Not above: drive not too steep/ }).click();
  await type(page, "At most", "10 %");
  await type(page, "Keep them as a set of your own", "county");
  await expect(panel.getByText("Your own values.")).toBeVisible();
  await openPage(page, { demo: "joinery-shed" });
  await step(page, "Floor");
  await panel.getByRole("button", { name: /Limits$/ }).click();
  await page.getByRole("option", { name: "county" }).click();
  await panel.getByRole("button", { name: /^Not above: drive not too steep/ }).click();
  await expect(page.getByLabel("At most", { exact: true }).filter({ visible: true })).toHaveValue("10.0 %");
});

test("what people ask is answered for the plan, with a way to the step", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("Control+K");
  await page.keyboard.type("what people ask");
  await page.keyboard.press("Enter");
  const dialog = page.getByRole("dialog", { name: "What people ask" });
  await expect(dialog.getByRole("heading", { name: "How high should the floor be?" })).toBeVisible();
  await expect(dialog.getByText(/yd³ compacted, .* loose .*, \d+ loads/)).toBeVisible();
  await dialog.getByRole("button", { name: "To the step: Quantities" }).first().click();
  await expect(dialog).toHaveCount(0);
  await expect(page.getByRole("heading", { name: "Quantities" })).toBeVisible();
});
