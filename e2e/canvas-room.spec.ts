/** What lies over the plan and beside it has room: tools, scale, key, figures; and windows stand in their list. */
import type { Page } from "@playwright/test";
import { freeBox } from "../src/canvas/view/freeArea";
import { planPlaces } from "../src/canvas/view/planBounds";
import { toScreen } from "../src/canvas/view/view";
import { expect, test } from "./support/fixtures";
import { demoProject, fittedView, planPage } from "./support/planPage";

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
      ".key-chip",
      ".legend",
      ".plan-status",
      ".north",
      ".view-buttons",
      ".choices-card",
      ".empty-plan",
      ".layer-menu",
      ".reading-card",
      ".section-strip",
      ".rod",
    ];
    const boxes = parts
      .flatMap((name) =>
        [...document.querySelectorAll(name)].map((part) => ({ name, box: part.getBoundingClientRect() })),
      )
      .filter(({ box }) => box.width > 0 && box.height > 0);
    return boxes.flatMap(({ name, box: a }, i) =>
      boxes
        .slice(i + 1)
        .filter(({ box: b }) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map((other) => `${name} and ${other.name}`),
    );
  });
}

/** The largest empty box between them, as a share of the plan; and how wide and high it is, px. */
async function freePart(page: Page): Promise<{ share: number; width: number; height: number }> {
  const { corner, view, taken } = await fittedView(page, studio);
  expect(corner.every(Number.isFinite)).toBe(true);
  const free = freeBox(view, taken, [1, 1]);
  const [width, height] = [free.right - free.left, free.bottom - free.top];
  return { share: (width * height) / (view.width * view.height), width, height };
}

for (const { width, height, scale = 1 } of [
  { width: 1280, height: 720 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
  { width: 2560, height: 1440, scale: 2 },
])
  test.describe(`at ${width}×${height}`, () => {
    test.use({ viewport: { width, height }, deviceScaleFactor: scale });
    // Between the least and the largest words a large window has room to spare.
    for (const textSize of width > 1280 ? [1, 1.5] : [1, 1.15, 1.3, 1.5])
      test(`nothing over the plan covers another thing, and enough plan remains, text at ${Math.round(textSize * 100)} %`, async ({
        page,
        openPage,
      }) => {
        await page.addInitScript(
          (size) => localStorage.setItem("drysill.preferences", JSON.stringify({ textSize: size })),
          textSize,
        );
        await openPage(page, { demo: "pottery-studio" });
        await expect(page.locator(".scale-bar")).toBeVisible();
        await expect(page.getByRole("region", { name: /section/i }).first()).toBeVisible();
        const plan = page.getByTestId("plan");
        // The section below, the level book below, kinds to choose from, something measured, a line being drawn.
        for (const key of ["Escape", "s", "e", "t", "b", "m", "d"]) {
          await page.keyboard.press(key);
          await plan.hover();
          await expect(page.locator(".read-out")).toBeVisible();
          expect(await covering(page), `after ${key}`).toEqual([]);
          const free = await freePart(page);
          expect(free.share, `after ${key}`).toBeGreaterThan(0.3);
          expect(Math.min(free.width, free.height), `after ${key}`).toBeGreaterThan(170);
        }
      });
  });

test("on a small plan the key is a strip of its colours, which opens and shuts it", async ({
  page,
  openPage,
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openPage(page, { demo: "pottery-studio" });
  const key = page.getByRole("region", { name: "Key of cut and fill" });
  const strip = page.getByRole("button", { name: "Key: cut, fill" });
  await expect(key).toBeVisible();
  await expect(strip).toBeHidden();
  // With the level book below, the plan is low.
  await page.getByRole("button", { name: /^Shots\b.*:/ }).click();
  await expect(key).toBeHidden();
  await strip.click();
  await expect(key).toBeVisible();
  await expect(key).toContainText("18″");
  await strip.click();
  await expect(key).toBeHidden();
});

test("what was fitted makes room for a key that comes later, and keeps clear of all that lies over it", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await expect(page.getByRole("region", { name: "Key of cut and fill" })).toBeVisible();
  const { view, corner, taken } = await fittedView(page, studio);
  // The view of the page is that one: the read-out tells the same corner.
  const [x, y] = toScreen(view, outline[0] as [number, number]);
  await page.mouse.move(corner[0] + x + 2, corner[1] + y + 2);
  await page.mouse.move(corner[0] + x, corner[1] + y);
  await expect(page.locator(".read-out")).toHaveText(/· [0-3]?[⅛¼⅜½⅝¾⅞]?″ from corner A/);
  for (const place of planPlaces(studio)) {
    const [px, py] = toScreen(view, place);
    const under = taken.filter((box) => px > box.left && px < box.right && py > box.top && py < box.bottom);
    expect(under).toEqual([]);
  }
});

test("kinds to choose from leave most of a small plan in sight, each with its name", async ({
  page,
  openPage,
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openPage(page, { demo: "pottery-studio" });
  const card = page.getByTestId("choices");
  for (const key of ["b", "e", "t"]) {
    await page.keyboard.press(key);
    const [box, plan] = [await card.boundingBox(), await page.getByTestId("plan").boundingBox()];
    expect(box && plan && box.height / plan.height, key).toBeLessThan(0.15);
    // No kind is cut, and what is typed is told with the hint below.
    expect(await card.locator(".choices").evaluate((row) => row.scrollWidth - row.clientWidth)).toBe(0);
    await expect(page.locator(".hint-typed")).toBeVisible();
  }
  await card.getByRole("button", { name: "septic field" }).click();
  await expect(card.getByRole("button", { name: "septic field" })).toBeVisible();
});

test("a hint that takes two lines moves nothing on the plan", async ({ page, openPage }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openPage(page, { demo: "pottery-studio" });
  const status = page.locator(".plan-status");
  const places = () =>
    Promise.all([".plan-stage", ".scale-line", ".tool-bar"].map((part) => page.locator(part).boundingBox()));
  await page.getByTestId("plan").hover();
  const [before, low] = [await places(), (await status.boundingBox())?.height ?? 0];
  await page.keyboard.press("b");
  await page.getByTestId("plan").hover({ position: { x: 200, y: 200 } });
  await expect.poll(async () => (await status.boundingBox())?.height).toBeGreaterThan(low + 10);
  expect(await places()).toEqual(before);
  expect(await covering(page)).toEqual([]);
});

/** What is said below the plan and can't be read: cut off by an ellipsis, or below something else. */
function saidUnread(page: Page): Promise<readonly string[]> {
  return page.locator(".hint-strip").evaluate((strip) =>
    [...strip.querySelectorAll("p")].flatMap((line) => {
      if (!line.checkVisibility()) return [];
      const range = document.createRange();
      range.selectNodeContents(line);
      const seen = [...range.getClientRects()].every(({ left, top, width, height }) =>
        [0.02, 0.98].every((share) =>
          strip.contains(document.elementFromPoint(left + share * width, top + height / 2)),
        ),
      );
      return seen && line.scrollWidth <= line.clientWidth ? [] : [line.textContent ?? ""];
    }),
  );
}

test("all that is said while a building is drawn can be read on a small plan", async ({ page, openPage }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openPage(page, { demo: "pottery-studio" });
  const plan = page.getByTestId("plan");
  const read = async (when: string) => {
    await expect(page.locator(".read-out")).toBeVisible();
    expect(await saidUnread(page), when).toEqual([]);
  };
  await page.keyboard.press("b");
  const kinds = page.getByTestId("choices").locator(".choices button");
  for (let i = 0; i < (await kinds.count()); i++) {
    await kinds.nth(i).click();
    await plan.hover({ position: { x: 250, y: 240 } });
    await read(`kind ${i}`);
    for (const x of [250, 330]) {
      await plan.click({ position: { x, y: 240 } });
      await plan.hover({ position: { x: x + 40, y: 250 } });
      await read(`kind ${i} after ${x}`);
    }
    for (let back = 0; back < 3; back++) await page.keyboard.press("Escape");
    if (await kinds.first().isHidden()) await page.keyboard.press("b");
  }
});

for (const [width, textSize] of [
  [1024, 1],
  [1024, 1.3],
  [860, 1],
] as const)
  test(`what the next act is can be read whole on a narrow plan, ${width} px, text at ${Math.round(textSize * 100)} %, and nothing moves`, async ({
    page,
    openPage,
  }) => {
    await page.setViewportSize({ width, height: 800 });
    await page.addInitScript(
      (size) => localStorage.setItem("drysill.preferences", JSON.stringify({ textSize: size })),
      textSize,
    );
    await openPage(page, { demo: "pottery-studio" });
    expect((await page.locator(".plan-canvas").boundingBox())?.width).toBeLessThan(561);
    const places = () =>
      Promise.all(
        [".plan-stage", ".plan-status", ".layer-menu", ".scale-line"].map((part) =>
          page.locator(part).first().boundingBox(),
        ),
      );
    await page.getByTestId("plan").hover({ position: { x: 180, y: 200 } });
    await expect(page.locator(".read-out")).toBeVisible();
    const before = await places();
    for (const key of ["v", "m", "b", "d", "w", "p", "t"]) {
      await page.getByTestId("plan").focus();
      await page.keyboard.press(key);
      await page.getByTestId("plan").hover({ position: { x: 200, y: 180 } });
      await expect(page.locator(".read-out")).toBeVisible();
      const cut = await page.locator(".hint-strip").evaluate((strip) => {
        const hint = strip.querySelector(".plan-hint");
        const box = strip.getBoundingClientRect();
        const words = hint?.getBoundingClientRect();
        return !hint || !words || words.bottom > box.bottom + 1 || hint.scrollWidth > hint.clientWidth;
      });
      expect(cut, `${key}: ${await page.locator(".plan-hint").textContent()}`).toBe(false);
      expect(await places(), `after ${key}`).toEqual(before);
      expect(await covering(page), `after ${key}`).toEqual([]);
      await page.keyboard.press("Escape");
    }
  });

test("what was measured folds to its first line, and opens again", async ({ page, openPage }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openPage(page, { demo: "pottery-studio" });
  await page
    .getByRole("button", { name: /^Measure/ })
    .first()
    .click();
  await page.mouse.click(450, 300);
  await page.mouse.click(560, 250);
  await page.mouse.dblclick(500, 420);
  const card = page.getByTestId("reading");
  const fold = card.getByRole("button", { expanded: true });
  const open = await card.boundingBox();
  // Both are large enough for a finger, also where they lie over their neighbours.
  for (const target of [fold, page.getByRole("button", { name: /^all signs/ }).first()]) {
    const box = await target.boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(24);
    for (const y of [1, (box?.height ?? 0) - 1]) await target.click({ trial: true, position: { x: 8, y } });
  }
  await fold.click();
  expect((await card.boundingBox())?.height).toBeLessThan(40);
  await card.getByRole("button", { expanded: false }).click();
  expect(await card.boundingBox()).toEqual(open);
});

test("a tool that is picked leaves the plan as large and where it lies, though the level book opens below", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await plan.fit(studio);
  await plan.move(...middle);
  const before = await page.locator(".read-out").innerText();
  const size = await page.getByTestId("plan").boundingBox();
  for (const key of ["e", "s"]) {
    await page.keyboard.press(key);
    await expect(page.getByRole("grid", { name: "Level book" })).toBeVisible();
    expect(await page.getByTestId("plan").boundingBox()).toEqual(size);
    // The same place of the screen is the same place of the plan.
    const [x, y] = plan.at(...middle);
    await page.mouse.move(x + 1, y);
    await page.mouse.move(x, y);
    await expect(page.locator(".read-out")).toHaveText(before, { useInnerText: true });
    await page.keyboard.press("Escape");
  }
  // The step that is gone to by hand takes the room that its table needs.
  await page.getByRole("navigation").getByText("Floor", { exact: true }).click();
  await page.getByRole("navigation").getByText("Shots", { exact: true }).click();
  await expect
    .poll(async () => (await page.getByTestId("plan").boundingBox())?.height)
    .toBeLessThan(size?.height ?? 0);
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
  // So large that the wall's figure has room inside.
  await page.keyboard.press("Shift+F");
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
