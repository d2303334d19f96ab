/** Water at the walls: a hollow is found, a swale is led out of it, and the walls pass. */
import type { Page } from "@playwright/test";
import { newProject, type Point, type Project } from "../src/document";
import { expect, test } from "./support/fixtures";
import { demoProject, planPage } from "./support/planPage";

const FOOT = 0.3048;

async function typeLine(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

async function setFloor(page: Page, height: string): Promise<void> {
  await page.getByRole("button", { name: /^Floor\b.*:/ }).click();
  const field = page.getByLabel("Height of the finished floor", { exact: true }).filter({ visible: true });
  await field.fill(height);
  await field.press("Enter");
  await page.getByRole("button", { name: /^Water\b.*:/ }).click();
}

const walls = (page: Page) => page.locator(".side .checks").first();
const undoName = (page: Page) => page.getByRole("button", { name: /^Undo/ }).first();

test("on the flat demo the walls stand in water until a swale from the hollow, laid by two clicks, drains it", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "potting-barn" });
  await setFloor(page, "49' 2 1/2\"");
  const panel = page.locator(".side");
  await expect(walls(page).getByText(/^Water stands .* deep at its deepest/)).toHaveCount(4);
  await expect(panel.getByText(/a measured hollow/)).toBeVisible();
  await panel.getByRole("button", { name: "Lay one from start to outlet" }).click();
  const plan = planPage(page);
  await plan.fit(demoProject("potting-barn"));
  await plan.click(28.1, 21.3);
  await plan.click(32.6, 34.4);
  // From its usual depth the bed can't come out in the ditch; what would do is a key away.
  await expect(page.getByText("It works if it starts so deep")).toBeVisible();
  await page.keyboard.press("Enter");
  await expect(undoName(page)).toHaveText(/swale/);
  await page.keyboard.press("Escape");
  await expect(panel.getByText("It drains.")).toBeVisible();
  await expect(walls(page).getByText(/^Water stands/)).toHaveCount(0);
  await expect(panel.getByText(/^Wall .* falls too little/)).toHaveCount(0);
});

/** Feet east and north, and the reading in inches: level ground, a hollow 12 ft off the east wall, low ground in the north. */
const shots = [
  ...[10, 40, 80, 110].flatMap((x) => [10, 40, 75, 98].map((y) => [x, y, y === 98 ? 90 : 60] as const)),
  [60, 40, 68],
  [60, 49, 60],
  [60, 31, 60],
  [69, 40, 60],
] as const;
const lot: readonly Point[] = [
  [0, 0],
  [120, 0],
  [120, 105],
  [0, 105],
].map(([x = 0, y = 0]): Point => [x * FOOT, y * FOOT]);

test("on a plan typed from nothing too: the program finds the swale that mends the wall", async ({
  page,
  openPage,
}) => {
  test.setTimeout(120_000);
  await openPage(page);
  await page.getByRole("button", { name: "New plan" }).click();
  await typeLine(page, "Level lot");
  await page.getByTestId("tool-lot").click();
  for (const line of ["0, 0", "@120', 0", "@0, 105'", "@120' W, 0"]) await typeLine(page, line);
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^Shots\b.*:/ }).click();
  await page.getByLabel("The mark").click();
  await page.keyboard.type("bolt");
  await page.keyboard.press("Tab");
  await page.keyboard.type("100'");
  await page.keyboard.press("Tab");
  await typeLine(page, "60");
  for (const [i, [x, y, reading]] of shots.entries()) {
    await page.keyboard.type(`P${i + 1}`);
    await page.keyboard.press("Tab");
    await page.keyboard.type(String(reading));
    for (let k = 0; k < 3; k++) await page.keyboard.press("Tab");
    await page.keyboard.type(`${x}', ${y}'`);
    await page.keyboard.press("Enter");
  }
  const meant: Project = { ...newProject(), lot: { ...newProject().lot, outline: [...lot] } };
  const plan = planPage(page);
  await page.getByTestId("tool-building").click();
  await page.getByTestId("choices").getByRole("button", { name: "any outline" }).click();
  await plan.fit(meant);
  await plan.click(24 * FOOT, 28 * FOOT);
  for (const [key, length] of [
    ["ArrowRight", "24'"],
    ["ArrowUp", "24'"],
    ["ArrowLeft", "24'"],
  ] as const) {
    await page.keyboard.press(key);
    await typeLine(page, length);
  }
  await page.keyboard.press("Enter");
  await setFloor(page, "100' 9\"");
  await expect(
    walls(page)
      .getByText(/^Water stands .* deep at its deepest/)
      .first(),
  ).toBeVisible();
  await walls(page).getByRole("button", { name: "Look for a mend" }).first().click();
  const mend = walls(page).getByRole("listitem").filter({ hasText: "Lead the water off by a swale" }).last();
  await mend.getByRole("button", { name: "Try it" }).click({ timeout: 60_000 });
  await expect(walls(page).getByText(/^Water stands/)).toHaveCount(0);
  await expect(page.locator(".side").getByText("It drains.")).toBeVisible();
  await expect(undoName(page)).toHaveText(/Lead the water off/);
});
