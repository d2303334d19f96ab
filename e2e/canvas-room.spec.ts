/** What lies over the plan and beside it has room: tools, scale, key, figures; and windows stand in their list. */
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { demoProject, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");
const outline = studio.building?.outline ?? [];
const middle = [0, 1].map((i) => outline.reduce((sum, at) => sum + (at[i] ?? 0), 0) / outline.length) as [
  number,
  number,
];

/** Pairs of parts over the plan that cover each other. */
function covering(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const parts = [
      ".tool-bar",
      ".scale-bar",
      ".heights-note",
      ".legend",
      ".hint-strip",
      ".north",
      ".view-buttons",
      ".choices-card",
      ".empty-plan",
      ".layer-menu",
      ".read-out",
    ];
    const boxes = parts.flatMap((name) =>
      [...document.querySelectorAll(name)].map((part) => ({ name, box: part.getBoundingClientRect() })),
    );
    return boxes.flatMap(({ name, box: a }, i) =>
      boxes
        .slice(i + 1)
        .filter(({ box: b }) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map((other) => `${name} and ${other.name}`),
    );
  });
}

for (const textSize of [1, 1.5])
  test(`tools, scale and key cover nothing of each other, text at ${textSize * 100} %`, async ({
    page,
    openPage,
  }) => {
    await page.addInitScript(
      (size) => localStorage.setItem("drysill.preferences", JSON.stringify({ textSize: size })),
      textSize,
    );
    for (const height of [800, 720]) {
      await page.setViewportSize({ width: 1280, height });
      await openPage(page, { demo: "pottery-studio" });
      await expect(page.locator(".scale-bar")).toBeVisible();
      await expect(page.getByRole("region", { name: /section/i }).first()).toBeVisible();
      expect(await covering(page), `${height} px high`).toEqual([]);
      await page.keyboard.press("b");
      await expect(page.getByTestId("choices")).toBeVisible();
      expect(await covering(page), `${height} px high, with kinds`).toEqual([]);
    }
  });

for (const { width, height, key } of [
  { width: 1280, height: 800, key: "s" },
  { width: 1280, height: 800, key: "e" },
  { width: 1280, height: 800, key: "t" },
  { width: 1920, height: 1080, key: "t" },
])
  test(`what lies over the plan covers nothing of the rest at ${width}×${height} with the tool ${key}`, async ({
    page,
    openPage,
  }) => {
    await page.setViewportSize({ width, height });
    await openPage(page, { demo: "pottery-studio" });
    await page.keyboard.press(key);
    await expect(page.locator(".tool-bar [aria-pressed=true]")).toBeVisible();
    expect(await covering(page)).toEqual([]);
  });

test("kinds to choose from leave most of a small plan in sight, each with its name", async ({
  page,
  openPage,
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("t");
  const card = page.getByTestId("choices");
  const [box, plan] = [await card.boundingBox(), await page.getByTestId("plan").boundingBox()];
  expect(box && plan && box.height / plan.height).toBeLessThan(0.3);
  await card.getByRole("button", { name: "septic field" }).click();
  await expect(card.getByRole("button", { name: "septic field" })).toBeVisible();
});

test("a tool that is picked leaves the plan where it lies, though the level book opens below", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await plan.fit(studio);
  await plan.move(...middle);
  const before = await page.locator(".read-out").innerText();
  const low = (await page.getByTestId("plan").boundingBox())?.height ?? 0;
  await page.keyboard.press("e");
  await expect.poll(async () => (await page.getByTestId("plan").boundingBox())?.height).toBeLessThan(low);
  // The same place of the screen is the same place of the plan.
  const [x, y] = plan.at(...middle);
  await page.mouse.move(x + 1, y);
  await page.mouse.move(x, y);
  await expect(page.locator(".read-out")).toHaveText(before, { useInnerText: true });
});

test("figures of a selected building keep off its name, however small it is drawn", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await plan.fit(studio);
  await plan.click(middle[0] + 1, middle[1] + 1);
  // The step's dock may be of another height.
  await plan.fit(studio);
  const at = plan.at(...middle);
  const figures = page.locator(".live-dimension");
  await expect(figures.first()).toBeVisible();
  // Its size stands in the middle: about as large as this.
  for (const box of await figures.evaluateAll((all) =>
    all.map((each) => each.getBoundingClientRect().toJSON()),
  )) {
    const [x, y] = [box.x + box.width / 2 - at[0], box.y + box.height / 2 - at[1]];
    const free = Math.abs(x) > (box.width + 70) / 2 || Math.abs(y) > (box.height + 24) / 2;
    expect(free, JSON.stringify(box)).toBe(true);
  }
});

test("a quick drag that begins on a figure moves the building, and takes a typed distance", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await plan.fit(studio);
  await plan.click(middle[0] + 1, middle[1]);
  const box = await page.getByRole("button", { name: /^wall A–B:/ }).boundingBox();
  if (!box) throw new Error("the wall has no figure");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  // One step, far beyond the figure's edge.
  await page.mouse.move(x + box.width, y + box.height * 2);
  await page.mouse.move(x + box.width + 10, y + box.height * 2);
  await page.keyboard.type("6'");
  await expect(page.locator(".typed-chip")).toContainText("length 6'");
  await page.keyboard.press("Enter");
  await page.mouse.up();
  expect(await plan.undoName()).toBe("Undo: move building");
});

test("on an empty plan the words below the rod stand clear of its scale, and the card clear of the tools", async ({
  page,
  openPage,
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openPage(page);
  await page.getByRole("button", { name: "New plan" }).click();
  await page.getByRole("button", { name: "Start", exact: true }).click();
  await expect(page.locator(".empty-plan")).toBeVisible();
  const [words, scale] = [
    await page.locator(".rod-empty").boundingBox(),
    await page.locator(".rod-body").boundingBox(),
  ];
  if (!words || !scale) throw new Error("the rod is not on the page");
  expect(words.y).toBeGreaterThanOrEqual(scale.y + scale.height);
  expect(await covering(page)).toEqual([]);
});

test("a right click on a figure opens the menu of what it measures", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await plan.fit(studio);
  await plan.click(middle[0] + 1, middle[1]);
  await page.getByRole("button", { name: /^wall A–B:/ }).click({ button: "right" });
  await expect(page.getByRole("menu")).toContainText(/turn/i);
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: /^wall A–B:/ })).toBeVisible();
});

test("a window stands in the building's list with its place and sizes, which can be typed over", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("o");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.type("3'");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^Building\b.*:/ }).click();
  const list = page
    .locator("section")
    .filter({ has: page.getByRole("heading", { name: "Windows", exact: true }) });
  const card = list.locator(".card").last();
  await expect(card.getByLabel("Width")).toHaveValue("3′ 0″");
  await expect(card.getByLabel("From its first corner")).toHaveValue("14′ 6″");
  const sill = card.getByLabel("Sill above the floor");
  await sill.fill("3' 6\"");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: "Undo: change window" })).toBeVisible();
  await expect(sill).toHaveValue("3′ 6″");
  await card.getByRole("button", { name: /^Remove/ }).click();
  await expect(page.getByRole("button", { name: "Undo: remove window" })).toBeVisible();
});
