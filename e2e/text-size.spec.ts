/** Words half as large again: everywhere in the window, with nothing cut off. */
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { demoProject, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");

/** Every word that is seen, with the size it is written in, px. */
function wordsSeen(page: Page): Promise<readonly { text: string; size: number; where: string }[]> {
  return page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const seen: { text: string; size: number; where: string }[] = [];
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const text = node.textContent?.trim() ?? "";
      const element = node.parentElement;
      if (text === "" || !element?.checkVisibility({ checkVisibilityCSS: true, checkOpacity: true }))
        continue;
      if (element.closest(".visually-hidden, title, style, script, option")) continue;
      const where = element.closest("[class]")?.getAttribute("class") ?? element.tagName;
      seen.push({ text, size: Number.parseFloat(getComputedStyle(element).fontSize), where });
    }
    return seen;
  });
}

/** Words that reach out of what cuts them off: a box that neither scrolls nor says by an ellipsis that there is more. */
function wordsCut(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const parts = ".plan-canvas, .rod, .section-strip";
    const texts = [...document.querySelectorAll<HTMLElement>(parts)].flatMap((part) => {
      const walker = document.createTreeWalker(part, NodeFilter.SHOW_TEXT);
      const found: Node[] = [];
      for (let node = walker.nextNode(); node; node = walker.nextNode()) found.push(node);
      return found;
    });
    return texts.flatMap((node) => {
      const element = node.parentElement;
      if (
        !node.textContent?.trim() ||
        !element?.checkVisibility({ checkVisibilityCSS: true, checkOpacity: true })
      )
        return [];
      if (
        element.closest(
          ".visually-hidden, .unseen, .choices-card p:not(.choices-caution), title, option, .plan-hint, .read-out, .section-name",
        )
      )
        return [];
      const range = document.createRange();
      range.selectNodeContents(node);
      const box = range.getBoundingClientRect();
      if (box.width === 0) return [];
      for (let up: Element | null = element; up; up = up.parentElement) {
        const { overflowX } = getComputedStyle(up);
        if (overflowX === "visible") continue;
        if (overflowX === "auto" && up.scrollWidth > up.clientWidth) return [];
        const clip = up.getBoundingClientRect();
        if (box.left < clip.left - 1 || box.right > clip.right + 1)
          return [`"${node.textContent}" in ${up.className}`];
      }
      return [];
    });
  });
}

/** On a window that is low for its words what stands below the plan is folded to its title. */
async function unfolded(page: Page) {
  const title = page.locator(".dock-title");
  if (await title.isVisible()) await title.click();
  await expect(title).toBeHidden();
}

/** What is opened, one after another, and looked at. */
const parts: readonly { readonly name: string; open(page: Page): Promise<unknown> }[] = [
  { name: "the plan with rod, key and section", open: (page) => step(page, "Floor") },
  { name: "layers", open: (page) => page.getByRole("button", { name: "What the plan shows" }).click() },
  { name: "snaps", open: (page) => again(page, "What the hand snaps to") },
  { name: "turns", open: (page) => again(page, "North arrow: turn the plan") },
  { name: "kinds of a tool", open: (page) => tool(page, "e") },
  { name: "a length being typed", open: (page) => typed(page) },
  { name: "level book", open: (page) => step(page, "Shots") },
  { name: "elevations", open: (page) => step(page, "Foundation") },
  { name: "long section", open: (page) => step(page, "Drive") },
];

const step = (page: Page, name: string) =>
  page.locator(".rail-step", { hasText: new RegExp(`^${name}:`) }).click();

async function again(page: Page, button: string) {
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: button }).click();
}

async function tool(page: Page, key: string) {
  await page.keyboard.press("Escape");
  await page.getByTestId("plan").focus();
  await page.keyboard.press(key);
}

async function typed(page: Page) {
  await tool(page, "d");
  await page.getByTestId("plan").click({ position: { x: 240, y: 200 } });
  await page.keyboard.type("12");
}

test("at 150 % every word of the window is half as large again, and none is cut off", async ({
  page,
  openPage,
}) => {
  test.slow();
  const usual = new Map<string, Map<string, Set<number>>>();
  await openPage(page, { demo: "pottery-studio" });
  await expect(page.locator(".scale-bar")).toBeVisible();
  for (const { name, open } of parts) {
    await open(page);
    const sizes = new Map<string, Set<number>>();
    for (const { text, size } of await wordsSeen(page))
      sizes.set(text, (sizes.get(text) ?? new Set()).add(size));
    usual.set(name, sizes);
  }
  await page.evaluate(() => localStorage.setItem("drysill.preferences", '{"textSize":1.5}'));
  await openPage(page, { demo: "pottery-studio" });
  await expect(page.locator(".scale-bar")).toBeVisible();
  for (const { name, open } of parts) {
    await open(page);
    const words = await wordsSeen(page);
    const before = usual.get(name);
    const known = words.filter(({ text }) => before?.has(text));
    expect(known.length, name).toBeGreaterThan(0.6 * words.length);
    const small = known.filter(
      ({ text, size }) => ![...(before?.get(text) ?? [])].some((was) => Math.abs(size - 1.5 * was) < 0.3),
    );
    expect(
      small.map(({ text, size, where }) => `${text}: ${size} px in ${where}`),
      name,
    ).toEqual([]);
    expect(await wordsCut(page), name).toEqual([]);
  }
});

/** Sizes of the words that were painted on the plan's canvases, px. */
function paintedSizes(page: Page): Promise<Record<string, number>> {
  return page.evaluate(() => (window as unknown as { painted: Record<string, number> }).painted);
}

const steps = [
  "Lot",
  "Shots",
  "Building",
  "Drive",
  "Water",
  "Floor",
  "Foundation",
  "Quantities",
  "Set-out",
  "Sheets",
];

for (const textSize of [1.15, 1.3, 1.5])
  test(`text at ${Math.round(textSize * 100)} % leaves the plan half of the window's width and 45 % of its height in every step`, async ({
    page,
    openPage,
  }) => {
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.addInitScript(
      (size) => localStorage.setItem("drysill.preferences", JSON.stringify({ textSize: size })),
      textSize,
    );
    await openPage(page, { demo: "pottery-studio" });
    const stage = page.locator(".plan-stage");
    for (const name of steps) {
      await step(page, name);
      await expect(page.locator(".rail-here .rail-title")).toHaveText(name);
      // A level book is what its step is about: unless it is folded it has a little more.
      const least = name === "Shots" && (await page.locator(".book").isVisible()) ? 0.4 : 0.45;
      await expect
        .poll(async () => (await stage.boundingBox())?.width, { message: name })
        .toBeGreaterThanOrEqual(640);
      await expect
        .poll(async () => (await stage.boundingBox())?.height, { message: name })
        .toBeGreaterThanOrEqual(least * 800 - 1);
      expect(await cutIn(page, ".rail, .dock, .plan-over"), name).toEqual([]);
    }
  });

/** Words in these parts that reach out of what cuts them off. */
function cutIn(page: Page, parts: string): Promise<readonly string[]> {
  return page.locator(parts).evaluateAll((found) =>
    found.flatMap((part) =>
      [...part.querySelectorAll<HTMLElement>("span, p, b, strong, button, label, h2")].flatMap((element) => {
        const words = element.textContent?.trim() ?? "";
        if (
          words === "" ||
          element.children.length > 0 ||
          !element.checkVisibility({ checkVisibilityCSS: true })
        )
          return [];
        if (element.closest(".visually-hidden, .rail-figure, .plan-tip, .plan-status, .book, .section-name"))
          return [];
        const range = document.createRange();
        range.selectNodeContents(element);
        const box = range.getBoundingClientRect();
        const clip = part.getBoundingClientRect();
        return box.left < clip.left - 1 || box.right > clip.right + 1 ? [words] : [];
      }),
    ),
  );
}

test("what is folded below the plan opens at a click, stays so, and folds again", async ({
  page,
  openPage,
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.addInitScript(() => localStorage.setItem("drysill.preferences", '{"textSize":1.5}'));
  await openPage(page, { demo: "pottery-studio" });
  const strip = page.locator(".section-strip");
  await expect(strip).toBeHidden();
  await page.getByRole("button", { name: "Section", exact: true }).click();
  await expect(strip).toBeVisible();
  await openPage(page, { demo: "pottery-studio" });
  await expect(strip).toBeVisible();
  // What is told of a place takes one more line, and no button of the view.
  await page.getByTestId("plan").hover({ position: { x: 420, y: 150 } });
  await expect(page.locator(".read-out")).toBeVisible();
  const [layers, told] = await Promise.all(
    [".layer-menu", ".plan-status"].map((part) => page.locator(part).boundingBox()),
  );
  expect((layers?.y ?? 0) + (layers?.height ?? 0)).toBeLessThanOrEqual(told?.y ?? 0);
  await page.getByRole("button", { name: "Fold the section away" }).click();
  await expect(strip).toBeHidden();
  // The splitter pulls it open, too.
  await page.getByRole("separator", { name: "Height of the section" }).press("ArrowUp");
  await expect(strip).toBeVisible();
});

test("a level book that is folded opens when it is asked to take a reading", async ({ page, openPage }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.addInitScript(() => localStorage.setItem("drysill.preferences", '{"textSize":1.5}'));
  await openPage(page, { demo: "pottery-studio" });
  await step(page, "Shots");
  await expect(page.getByRole("button", { name: "Level book", exact: true })).toBeVisible();
  await page.getByRole("button", { name: "Add a set-up" }).click();
  await expect(page.locator(".book")).toBeVisible();
});

test("words painted on the plan follow the size of text at once, and back", async ({ page, openPage }) => {
  await page.addInitScript(() => {
    const painted: Record<string, number> = {};
    Object.assign(window, { painted });
    const paint = CanvasRenderingContext2D.prototype.fillText;
    CanvasRenderingContext2D.prototype.fillText = function (this: CanvasRenderingContext2D, text, x, y) {
      painted[text] = Number.parseFloat(this.font.match(/([\d.]+)px/)?.[1] ?? "");
      paint.call(this, text, x, y);
    };
  });
  await openPage(page, { demo: "pottery-studio" });
  await step(page, "Floor");
  await expect.poll(async () => (await paintedSizes(page)).A).toBeGreaterThan(0);
  const usual = await paintedSizes(page);
  const choose = async (words: string) => {
    await page.keyboard.press("Control+k");
    await page.keyboard.type(words);
    await page.keyboard.press("Enter");
  };
  await choose("Text at 150 %");
  for (const corner of ["A", "B", "C", "D"])
    await expect
      .poll(async () => (await paintedSizes(page))[corner] ?? 0)
      .toBeCloseTo(1.5 * (usual[corner] ?? 0), 1);
  await choose("Text at 100 %");
  await expect.poll(async () => (await paintedSizes(page)).A ?? 0).toBeCloseTo(usual.A ?? 0, 1);
});

/** Boxes of the section's head and of the way its heights are drawn, as they are seen. */
function sectionHead(page: Page) {
  return page.locator(".section-strip").evaluate((strip) => {
    const { left, right } = strip.getBoundingClientRect();
    const seen = [...strip.querySelectorAll(".section-head > *, .section-stretch")]
      .map((part) => ({ words: part.className || part.textContent, box: part.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0)
      .sort((a, b) => a.box.left - b.box.left);
    return { left, right, seen: seen.map(({ words, box }) => ({ words, left: box.left, right: box.right })) };
  });
}

for (const [textSize, width] of [
  [1, 1280],
  [1.5, 1280],
  [1.5, 1920],
] as const)
  test(`the section's head and how its heights are drawn stand apart, text at ${Math.round(textSize * 100)} %, ${width} px wide`, async ({
    page,
    openPage,
  }) => {
    await page.setViewportSize({ width, height: 800 });
    await page.addInitScript(
      (size) => localStorage.setItem("drysill.preferences", JSON.stringify({ textSize: size })),
      textSize,
    );
    await openPage(page, { demo: "pottery-studio" });
    await unfolded(page);
    await page.getByLabel("heights true to scale").check();
    for (const section of ["Through the building, down the fall", "Across drive"]) {
      await page.getByLabel("Section to show").selectOption({ label: section });
      const { left, right, seen } = await sectionHead(page);
      expect(seen.length, section).toBe(section === "Across drive" ? 4 : 3);
      for (const [i, { words, ...box }] of seen.entries()) {
        expect(box.right, `${words} in ${section}`).toBeLessThanOrEqual(right - 8);
        expect(box.left - (seen[i - 1]?.right ?? left), `before ${words} in ${section}`).toBeGreaterThan(8);
      }
    }
  });

test("a sign beside a message, a check or a thing to look at keeps clear of its words, text at 150 %", async ({
  page,
  openPage,
}) => {
  await page.addInitScript(() => localStorage.setItem("drysill.preferences", '{"textSize":1.5}'));
  await openPage(page, { demo: "pottery-studio" });
  await page.getByRole("button", { name: /^\d+ to look at/ }).click();
  const gaps = await page.locator(".problem, .check, .message").evaluateAll((rows) =>
    rows.flatMap((row) => {
      const [sign, words] = [...row.children].map((part) => part.getBoundingClientRect());
      return sign && words ? [words.left - sign.right] : [];
    }),
  );
  expect(gaps.length).toBeGreaterThan(0);
  expect(Math.min(...gaps)).toBeGreaterThan(5);
});

/** Parts of the read-out that a person can't see: cut off, out of its box, or below something else. */
function readOutHidden(page: Page): Promise<readonly string[]> {
  return page.locator(".read-out").evaluate((readOut) => {
    const walker = document.createTreeWalker(readOut, NodeFilter.SHOW_TEXT);
    const hidden: string[] = [];
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (!node.parentElement?.checkVisibility()) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const { left, top, width, height } of range.getClientRects()) {
        const places = [0.02, 0.98].map((share) => [left + share * width, top + height / 2] as const);
        if (!places.every(([x, y]) => readOut.contains(document.elementFromPoint(x, y))))
          hidden.push(node.textContent ?? "");
      }
    }
    return hidden;
  });
}

/** Depth and fall, how sure and how far from the building, and both heights. */
const toldOfPlace = [
  /^(\d.* of (cut|fill)|no change)( here)? · falls \d.* % to [NESW]+/,
  /(measured|guessed).* · \d.* from corner [A-D]/,
  /ground \d.+, finished \d/,
];
const besideWall = [13.2, 12.2] as const;
const farCorner = [33.5, 3] as const;

for (const [textSize, height] of [
  [1, 800],
  [1.5, 800],
  [1.5, 720],
] as const)
  test(`what is under the pointer is told whole beside an open section, text at ${Math.round(textSize * 100)} %, 1280×${height}`, async ({
    page,
    openPage,
  }) => {
    await page.setViewportSize({ width: 1280, height });
    await page.addInitScript(
      (size) => localStorage.setItem("drysill.preferences", JSON.stringify({ textSize: size })),
      textSize,
    );
    await openPage(page, { demo: "pottery-studio" });
    await unfolded(page);
    await expect(page.locator(".section-strip")).toBeVisible();
    const plan = planPage(page);
    const readOut = page.locator(".read-out");
    // Without a tool, and while the outline of a building is drawn.
    for (const key of ["Escape", "b"]) {
      await page.getByTestId("plan").focus();
      await page.keyboard.press(key);
      await plan.fit(studio);
      for (const [x, y] of [besideWall, farCorner]) {
        await plan.move(x, y);
        for (const part of toldOfPlace) await expect(readOut).toHaveText(part, { useInnerText: true });
        expect(await readOutHidden(page), `after ${key}`).toEqual([]);
      }
    }
  });

/** Texts whose last line is one word, though there are enough for several lines; and texts that are cut short. */
function badlyBroken(page: Page): Promise<readonly string[]> {
  const texts =
    ".say p, .side p, .side .panel-standing span, .side .limit-place, .side .limit-name, .side .check > span";
  return page.locator(texts).evaluateAll((found) =>
    found.flatMap((element) => {
      // Beside the button that asks why a word isn't alone.
      if (!element.checkVisibility() || element.querySelector("button")) return [];
      const said = element.textContent ?? "";
      if (element.scrollWidth > element.clientWidth + 1 && getComputedStyle(element).overflowX !== "visible")
        return [`cut: ${said}`];
      const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
      const tops: number[] = [];
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        for (const { index, 0: word } of (node.textContent ?? "").matchAll(/[^\s]+/g)) {
          const range = document.createRange();
          range.setStart(node, index);
          range.setEnd(node, index + word.length);
          const box = range.getBoundingClientRect();
          if (box.width > 0) tops.push(box.bottom);
        }
      }
      const [before, last] = tops.slice(-2);
      const isAlone = tops.length > 4 && before !== undefined && last !== undefined && last > before + 8;
      return isAlone ? [`alone on its line: the end of ${said}`] : [];
    }),
  );
}

for (const [width, height, demo] of [
  [1280, 800, "pottery-studio"],
  [1920, 1080, "potting-barn"],
] as const)
  test(`no text of a step ends in one word alone on its line, and none is cut, ${demo}, ${width} px wide`, async ({
    page,
    openPage,
  }) => {
    await page.setViewportSize({ width, height });
    await openPage(page, { demo });
    const broken: Record<string, readonly string[]> = {};
    for (const name of steps) {
      await step(page, name);
      await expect(page.locator(".rail-here .rail-title")).toHaveText(name);
      const more = page.getByRole("button", { name: /more that don't bear on it now$/ });
      if (await more.isVisible()) await more.click();
      const found = await badlyBroken(page);
      if (found.length > 0) broken[name] = found;
    }
    expect(broken).toEqual({});
  });
