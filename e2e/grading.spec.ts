/** Shaping the ground: the drive's long section, its breaks and the limit, earth shapes on the plan, and their order. */
import type { Page } from "@playwright/test";
import { expect, type OpenPage, test } from "./support/fixtures";
import { demoProject, planPage } from "./support/planPage";

/** The demo's drive in its long section, within its limit. */
async function longSection(page: Page, openPage: OpenPage) {
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("button", { name: /^Drive\b.*:/ }).click();
  const profile = page.getByRole("region", { name: "Long section of the drive" });
  await expect(profile.getByTestId("profile-limit")).toContainText("every piece within");
  return profile;
}

test("a grade break is pulled until the limit warning clears, one undo step a pull", async ({
  page,
  openPage,
}) => {
  const profile = await longSection(page, openPage);
  await profile.getByRole("button", { name: "Put a grade break" }).click();
  const handle = profile.getByRole("slider", { name: "Grade break 1" });
  const grip = async () => {
    const box = await handle.boundingBox();
    if (!box) throw new Error("no grade break to take");
    return [box.x + box.width / 2, box.y + box.height / 2] as const;
  };
  const pull = async (dy: number) => {
    const [x, y] = await grip();
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y + dy, { steps: 6 });
    await page.mouse.up();
  };
  await pull(-34);
  await expect(profile.getByTestId("profile-limit")).toContainText("steeper than");
  await expect(page.locator(".side").getByText(/is the limit\./)).toBeVisible();
  await expect(page.getByRole("button", { name: /^Undo/ }).first()).toHaveText(/move a grade break/);
  await pull(34);
  await expect(profile.getByTestId("profile-limit")).toContainText("every piece within");
  await page.getByTestId("plan").focus();
  await page.keyboard.press("Control+z");
  await expect(profile.getByTestId("profile-limit")).toContainText("steeper than");
  // By keys: down in small steps, and gone by Delete.
  await handle.focus();
  for (let i = 0; i < 60; i++) await page.keyboard.press("ArrowDown");
  await expect(profile.getByTestId("profile-limit")).not.toHaveText("");
  await handle.focus();
  await page.keyboard.press("Delete");
  await expect(handle).toHaveCount(0);
});

test("a drive that the apron cuts, shaped after it, says so beside what its own line keeps", async ({
  page,
  openPage,
}) => {
  const profile = await longSection(page, openPage);
  await expect(profile.getByTestId("profile-cut")).toHaveCount(0);
  await page.getByRole("button", { name: "drive: earlier" }).click();
  await expect(profile.getByTestId("profile-cut")).toContainText(/pad and apron cuts it by up to/);
});

test("a parking pad is drawn, typed to a height, and its place in the order changed", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await page.getByTestId("tool-earth").click();
  await plan.fit(demoProject("pottery-studio"));
  const ways = page.getByRole("group", { name: "How it is drawn" });
  await expect(ways.getByRole("button", { name: "two corners" })).toHaveAttribute("aria-pressed", "true");
  await plan.click(27, 8);
  await plan.click(33, 14);
  expect(await plan.undoName()).toBe("Undo: draw parking pad");
  const panel = page.locator(".side");
  await expect(panel.getByRole("heading", { name: "parking pad" })).toBeVisible();
  const order = panel.getByRole("list", { name: "Order of shaping" });
  const names = () => order.locator(".order-name").allInnerTexts();
  expect(await names()).toEqual(["pad and apron", "parking pad", "drive", "swale"]);
  await order.getByRole("button", { name: "parking pad: later" }).click();
  await expect.poll(names).toEqual(["pad and apron", "drive", "parking pad", "swale"]);
  await panel.getByRole("button", { name: "Take the usual order" }).click();
  await expect.poll(names).toEqual(["pad and apron", "parking pad", "drive", "swale"]);
  await panel.getByRole("button", { name: "Remove parking pad" }).click();
  await expect(panel.getByRole("heading", { name: "parking pad" })).toHaveCount(0);
});

test("a retaining wall says what it holds and warns as the trade does", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await page.getByTestId("tool-earth").click();
  await page.getByText("retaining wall", { exact: true }).first().click();
  await plan.fit(demoProject("pottery-studio"));
  await plan.click(8, 9);
  await plan.click(24, 9);
  await page.keyboard.press("Enter");
  expect(await plan.undoName()).toBe("Undo: draw retaining wall");
  const panel = page.locator(".side");
  await expect(panel.getByText("Ground stands higher behind it by")).toBeVisible();
  await expect(panel.getByText(/usually needs a permit and an engineer's design/).first()).toBeVisible();
});

test("one side's slope and the corners are changed in the water step, and the reach follows", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("button", { name: /^Water\b.*:/ }).click();
  const panel = page.locator(".side");
  const reach = panel.locator(".part", { hasText: "Sides and corners" }).locator(".facts");
  const before = await reach.innerText();
  await panel.getByLabel("Fill slope there").fill("6");
  await page.keyboard.press("Enter");
  await expect(reach).not.toHaveText(before);
  await expect(page.getByRole("button", { name: /^Undo/ }).first()).toHaveText(/change a side/);
  await panel.getByText("Its shape", { exact: true }).click();
  await panel.getByLabel("Follow the ground, falling at least").fill("1 %");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^Undo/ }).first()).toHaveText(/change swale/);
});

test("a height of the swale's bed is typed; one that rises is told where", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("button", { name: /^Water\b.*:/ }).click();
  const panel = page.locator(".side");
  await panel.getByText("Its shape", { exact: true }).click();
  await panel.getByRole("button", { name: "Type a height of the bed" }).click();
  const height = panel.getByLabel("Bed 1 height");
  await expect(height).toBeVisible();
  await height.fill("101'");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^\d+ to look at/ }).click();
  await expect(page.getByText(/Its typed bed rises .* there: water stands behind it/).first()).toBeVisible();
  await page.keyboard.press("Escape");
  await panel.getByRole("button", { name: "Remove bed height 1" }).click();
  await expect(height).toHaveCount(0);
});

test("the building is moved: volumes and curve change, two options are kept and compared", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  const studio = demoProject("pottery-studio");
  const [a, , c] = studio.building?.outline ?? [];
  if (!a || !c) throw new Error("the demo has a building");
  await page.getByRole("button", { name: /^Floor\b.*:/ }).click();
  const read = page.locator(".curve-read");
  const curve = page.locator(".curve-fill");
  const before = { words: await read.innerText(), line: await curve.getAttribute("d") };
  const dialog = page.getByRole("dialog", { name: "Options side by side" });
  const keep = async (name: string) => {
    await page.keyboard.press("Control+Shift+B");
    await dialog.getByLabel("Keep the plan as an option").fill(name);
    await dialog.getByRole("button", { name: "Keep it" }).click();
  };
  await keep("by the bank");
  await page.keyboard.press("Escape");

  await plan.fit(studio);
  const inside: [number, number] = [(a[0] + c[0]) / 2 + 1, (a[1] + c[1]) / 2 + 1];
  await plan.click(...inside);
  await plan.drag(inside, [inside[0] - 0.5, inside[1] - 1], [inside[0] - 1, inside[1] - 3]);
  expect(await plan.undoName()).toBe("Undo: move building");
  await page.getByRole("button", { name: /^Floor\b.*:/ }).click();
  await expect(read).not.toHaveText(before.words);
  await expect(curve).not.toHaveAttribute("d", before.line ?? "");

  await keep("nearer the road");
  const table = dialog.getByRole("table", { name: "Options and their figures" });
  const fills = table.getByRole("row", { name: /^Fill, from the ground as it is/ }).getByRole("cell");
  await expect(fills.nth(1)).toContainText(/more|less/);
  await expect(fills.nth(2)).not.toContainText(/more|less/);
});
