/** Help within the window: guides, words of the trade, why a figure is what it is, the tour; by mouse and keyboard. */
import type { Page } from "@playwright/test";
import { guides, tourStops } from "../src/help";
import { expect, test } from "./support/fixtures";

const dialog = (page: Page, name: string) => page.getByRole("dialog", { name });
const step = (page: Page, name: string) =>
  page.getByRole("button", { name: new RegExp(`^${name}\\b.*:`) }).first();

test("F1 opens the guide of the present step; a word in it tells its meaning and leads to the glossary", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await step(page, "Shots").click();
  await page.keyboard.press("F1");
  const guide = dialog(page, guides.shots.title);
  await expect(guide.getByRole("img", { name: guides.shots.caption })).toBeVisible();
  await guide.getByRole("button", { name: "turning point" }).click();
  const word = dialog(page, "turning point");
  await expect(word).toContainText("hands the height from one to the next");
  await word.getByRole("button", { name: "Words of the trade" }).click();
  const glossary = dialog(page, "Words of the trade");
  await expect(glossary.locator(".glossary-here")).toContainText("turning point");
  await expect(glossary.locator(".glossary-here")).toBeInViewport();

  await glossary.getByRole("textbox", { name: "Find a word" }).fill("bulk");
  await expect(glossary.locator(".glossary-entry dt")).toHaveText(["swell"]);
  await page.keyboard.press("Escape");
  await expect(glossary).toBeHidden();

  await step(page, "Foundation").click();
  await page.getByRole("button", { name: "Guide to this step" }).click();
  await expect(dialog(page, guides.foundation.title)).toContainText("29 CFR 1926.652");
  await page.getByRole("button", { name: "Next: Quantities" }).click();
  await expect(dialog(page, guides.quantities.title)).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("heading", { name: "Quantities", exact: true })).toBeVisible();
});

test("the glossary is found in the finder and in the help menu", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("Control+k");
  await page.keyboard.type("glossary");
  await page.keyboard.press("Enter");
  await expect(dialog(page, "Words of the trade")).toBeVisible();
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Help", exact: true }).click();
  await page.getByRole("menuitem", { name: "Words of the trade" }).click();
  await expect(dialog(page, "Words of the trade")).toBeVisible();
});

test("what the colours and signs mean is told from the key by the plan, from the finder and by the keyboard", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const signs = dialog(page, "What the colours and signs mean");
  await page.locator(".legend").getByRole("button", { name: "What the colours and signs mean" }).click();
  await expect(signs.getByText("guessed ground: no shots near enough")).toBeVisible();
  await expect(signs.getByRole("region", { name: "The rod" })).toContainText("drag the flag");
  await page.keyboard.press("Escape");
  await expect(signs).toBeHidden();
  await page.keyboard.press("Control+k");
  await page.keyboard.type("legend");
  await page.keyboard.press("Enter");
  await expect(signs).toBeVisible();
});

test("why: inputs, rule and source of a figure, by mouse and by keyboard, following the floor", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const row = page.getByRole("row", { name: /^C / });
  await row.getByRole("button", { name: "Why: floor above the ground at C" }).click();
  const corner = dialog(page, "Floor above the ground at C");
  await expect(corner).toContainText("Floor − ground");
  const figure = await corner.locator(".why-figure").innerText();
  await expect(row).toContainText(figure);
  await page.keyboard.press("Escape");
  await expect(corner).toBeHidden();

  await page.getByLabel("Height of the finished floor").fill("100'");
  await page.keyboard.press("Enter");
  await row.getByRole("button", { name: /^Why/ }).focus();
  await page.keyboard.press("Enter");
  await expect(corner.locator(".why-input").first()).toContainText("100′ 0″");
  await expect(corner.locator(".why-figure")).not.toHaveText(figure);
  await page.keyboard.press("Escape");

  await step(page, "Foundation").click();
  await page.getByRole("button", { name: "Why: bottom of trench" }).click();
  await expect(dialog(page, "Bottom of trench")).toContainText(
    "top of wall − wall height − footing thickness",
  );
});

test("the tour points at each of its stops, and is offered less loudly once it was seen", async ({
  page,
  openPage,
}) => {
  await openPage(page);
  await page.getByRole("button", { name: "Take the tour" }).click();
  for (const [at, stop] of tourStops.entries()) {
    const card = dialog(page, `Tour: ${stop.title}`);
    await expect(card).toContainText(`${at + 1} of ${tourStops.length}`);
    await expect(card).toBeInViewport({ ratio: 1 });
    await expectRingRound(page, stop.anchor);
    if (at % 2 === 0) await card.getByRole("button", { name: /^(Next|Done)$/ }).click();
    else await page.keyboard.press("ArrowRight");
  }
  await expect(page.locator(".tour")).toHaveCount(0);
  await page.getByRole("button", { name: /^Plan menu/ }).click();
  await page.getByRole("menuitem", { name: "Start screen" }).click();
  await expect(page.getByRole("button", { name: "The tour again" })).toBeVisible();
});

test("the tour is left in the middle by Esc, and the window is as usable as before", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "joinery-shed" });
  await page.getByRole("button", { name: "Help", exact: true }).click();
  await page.getByRole("menuitem", { name: "Tour on a demo" }).click();
  await expect(page.getByLabel("Name of the plan")).toHaveValue("Pottery studio");
  for (let stop = 0; stop < 3; stop++) await page.getByRole("button", { name: "Next" }).click();
  await expect(dialog(page, "Tour: What the laser read")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.locator(".tour")).toHaveCount(0);
  await step(page, "Floor").click();
  await page.getByLabel("Height of the finished floor").fill("99' 8\"");
  await page.keyboard.press("Enter");
  await expect(page.locator(".say")).toContainText("The floor stands");
});

test("with less motion asked for, the tour's card doesn't glide", async ({ page, openPage }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openPage(page);
  await page.getByRole("button", { name: "Take the tour" }).click();
  await expect(page.locator(".tour-card")).toHaveCSS("transition-duration", "0s");
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await expect(page.locator(".tour-card")).not.toHaveCSS("transition-duration", "0s");
});

/** The ring lies round the part of the window that the stop names. */
async function expectRingRound(page: Page, anchor: string): Promise<void> {
  const part = page.locator(`[data-tour="${anchor}"]`);
  await expect(part).toBeVisible();
  await expect
    .poll(async () => {
      const [ring, box] = [await page.locator(".tour-ring").boundingBox(), await part.boundingBox()];
      if (!ring || !box) return Number.POSITIVE_INFINITY;
      return Math.max(
        Math.abs(ring.x - box.x),
        Math.abs(ring.y - box.y),
        Math.abs(ring.width - box.width),
        Math.abs(ring.height - box.height),
      );
    })
    .toBeLessThan(3);
}
