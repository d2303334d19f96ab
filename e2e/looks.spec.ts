/**
 * How the window looks, against pictures of it. Coarse on purpose: a browser's other way with edges passes, a layout
 * that came apart, a theme that didn't reach a part or a missing font doesn't. A wanted change: run with
 * --update-snapshots and look at the new pictures.
 */
import { chromiumArguments, findChromium } from "./support/chromium.mjs";
import { expect, test } from "./support/fixtures";

// The font is the program's own; how a machine hints it and which colours its screen has must not count either.
test.use({
  launchOptions: {
    executablePath: findChromium() ?? undefined,
    args: [...chromiumArguments, "--font-render-hinting=none", "--force-color-profile=srgb"],
  },
});
// At half size: the pictures stay small, and a label that moved a little counts for little.
test.use({ deviceScaleFactor: 0.5 });
// A rail moved aside by 90 px differs by 0.0037 of the window, another hinting of the font by nothing.
const coarse = {
  scale: "device",
  threshold: 0.25,
  maxDiffPixelRatio: 0.003,
  animations: "disabled",
  caret: "hide",
} as const;

test("the start screen", async ({ page, openPage }) => {
  await openPage(page);
  await expect(page.getByText(/81 shots/)).toBeVisible({ timeout: 20_000 });
  await page.evaluate(() => document.fonts.ready);
  await expect(page).toHaveScreenshot("start.png", coarse);
});

for (const theme of ["light", "dark"] as const) {
  test(`a plan at its floor, ${theme}`, async ({ page, openPage }) => {
    await page.emulateMedia({ colorScheme: theme });
    await openPage(page, { demo: "pottery-studio" });
    await page.locator(".rail-step", { hasText: /^Floor:/ }).click();
    await page.evaluate(() => document.fonts.ready);
    await expect(page).toHaveScreenshot(`plan-${theme}.png`, coarse);
  });
}

test("the floor's panel at 150 %", async ({ page, openPage }) => {
  await page.addInitScript(() => localStorage.setItem("drysill.preferences", '{"textSize":1.5}'));
  await openPage(page, { demo: "pottery-studio" });
  await page.locator(".rail-step", { hasText: /^Floor:/ }).click();
  await page.evaluate(() => document.fonts.ready);
  await expect(page.locator(".side")).toHaveScreenshot("floor-150.png", coarse);
});
