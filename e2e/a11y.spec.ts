/** Screens, dialogs and step panels before an automatic check of accessibility, in both themes, and without a mouse. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "@playwright/test";
import { tourStops } from "../src/help";
import { stepTitles } from "../src/panels/steps";
import { stepNames } from "../src/store/state";
import { expect, test } from "./support/fixtures";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What is seriously wrong on the page as it stands: rule, words and where. */
async function faults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof import("axe-core") };
    const { violations } = await axe.run(document, {
      resultTypes: ["violations"],
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"],
    });
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .flatMap(({ id, nodes }) =>
        nodes.map(({ target, failureSummary }) => `${id}: ${target} ${failureSummary}`),
      );
  });
}

const dialogs = [
  ["the finder", "Control+k"],
  ["the shortcuts", "?"],
  ["the history", "Control+Shift+H"],
  ["the preferences", "Control+,"],
  ["the tables", "Control+Shift+E"],
  ["the options", "Control+Shift+B"],
  ["the export dialog", "Control+p"],
  ["a new plan", "Control+n"],
  ["the guide", "F1"],
] as const;

// A click that finds nothing tells so soon.
test.use({ actionTimeout: 15_000 });

test("the check finds what is wrong", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await expect(page.getByTestId("plan")).toBeVisible();
  await page.evaluate(() => document.querySelector(".side")?.append(document.createElement("button")));
  expect((await faults(page)).map((fault) => fault.split(":")[0])).toEqual(["button-name"]);
});

for (const theme of ["light", "dark"] as const) {
  test.describe(`nothing serious, ${theme}`, () => {
    test.use({ colorScheme: theme });

    test("on the start screen", async ({ page, openPage }) => {
      await openPage(page);
      await expect(page.getByText("Pottery studio")).toBeVisible({ timeout: 20_000 });
      expect(await faults(page)).toEqual([]);
    });

    test("on every step of a plan", async ({ page, openPage }) => {
      test.slow();
      await openPage(page, { demo: "pottery-studio" });
      for (const name of stepNames) {
        await page.locator(".rail-step", { hasText: new RegExp(`^${stepTitles[name]}:`) }).click();
        expect(await faults(page), stepTitles[name]).toEqual([]);
      }
    });

    test("in the survey's dialogs, its unfolded cards and the question about a reading", async ({
      page,
      openPage,
    }) => {
      test.slow();
      await openPage(page, { demo: "pottery-studio" });
      await page.locator(".rail-step", { hasText: /^Shots:/ }).click();
      await page.getByRole("row").filter({ hasText: "corner C" }).locator(".book-reading").click();
      await page.keyboard.type("85 3/8");
      await page.keyboard.press("Enter");
      await page.keyboard.press("Alt+p");
      const folded = page.locator(".survey-more:not([open]) > summary");
      await folded.evaluateAll((parts) => {
        for (const part of parts) (part as HTMLElement).click();
      });
      await expect(page.locator(".survey-more:not([open])")).toHaveCount(0);
      expect(await faults(page), "cards").toEqual([]);
      for (const name of ["Level run", "Two-peg check", "Grid of stakes"]) {
        await page.keyboard.press("Control+k");
        await expect(page.getByRole("combobox", { name: "Find a command" })).toBeFocused();
        await page.keyboard.type(name);
        await page.keyboard.press("Enter");
        await expect(page.getByRole("dialog", { name })).toBeVisible();
        expect(await faults(page), name).toEqual([]);
        await page.keyboard.press("Escape");
        await expect(page.getByRole("dialog")).toBeHidden();
      }
    });

    test("in menus, with things selected, in messages and questions", async ({ page, openPage }) => {
      test.slow();
      await openPage(page, { demo: "pottery-studio" });
      for (const name of [/^Plan menu/, /^Units:/, /^Help$/, "What the plan shows"]) {
        await page.getByRole("button", { name }).first().click();
        await expect(page.locator(".popover, .layer-list").first()).toBeVisible();
        expect(await faults(page), String(name)).toEqual([]);
        await page.keyboard.press("Escape");
        await expect(page.locator(".popover, .layer-list")).toHaveCount(0);
      }
      const inspector = page.getByTestId("inspector");
      await page.getByTestId("plan").focus();
      await page.keyboard.press("Control+a");
      await expect(inspector).toContainText(/\d+ things/);
      expect(await faults(page), "many things selected").toEqual([]);
      // A pointer that rests where the menu opens would open one of its own menus.
      await page.mouse.move(2, 2);
      await page.keyboard.press("Shift+F10");
      await expect(page.getByRole("menu")).toBeVisible();
      expect(await faults(page), "the menu of what is selected").toEqual([]);
      await page.keyboard.press("Escape");
      await expect(page.getByRole("menu")).toBeHidden();

      await page.keyboard.press("Shift+Control+O");
      const things = page.getByRole("dialog", { name: "Things of the plan" });
      await expect(things).toBeVisible();
      expect(await faults(page), "the list of things").toEqual([]);
      for (const thing of [/^building/i, /^drive/i]) {
        await things.getByRole("row", { name: thing }).last().click();
        await expect(inspector).toBeVisible();
        expect(await faults(page), String(thing)).toEqual([]);
      }
      await page.keyboard.press("Escape");
      await expect(things).toBeHidden();

      const chooser = page.waitForEvent("filechooser");
      await page.keyboard.press("Control+o");
      await (await chooser).setFiles({
        name: "note.json",
        mimeType: "application/json",
        buffer: Buffer.from("no plan"),
      });
      await expect(page.getByRole("alert")).toBeVisible();
      expect(await faults(page), "a message").toEqual([]);

      await page.getByLabel("Name of the plan").fill("another name");
      await page.keyboard.press("Enter");
      await page.keyboard.press("Control+k");
      await page.keyboard.type("start screen");
      await page.keyboard.press("Enter");
      await expect(page.getByRole("alertdialog")).toBeVisible();
      expect(await faults(page), "a question").toEqual([]);
    });

    test("on the tour and in the glossary", async ({ page, openPage }) => {
      test.slow();
      await openPage(page);
      await page.getByRole("button", { name: "Take the tour" }).click();
      for (const stop of tourStops) {
        await expect(page.getByRole("dialog", { name: `Tour: ${stop.title}` })).toBeVisible();
        expect(await faults(page), stop.title).toEqual([]);
        await page.keyboard.press("ArrowRight");
      }
      await page.getByRole("button", { name: "Help", exact: true }).click();
      await page.getByRole("menuitem", { name: "Words of the trade" }).click();
      await expect(page.getByRole("dialog", { name: "Words of the trade" })).toBeVisible();
      expect(await faults(page), "the glossary").toEqual([]);
      await page.keyboard.press("Escape");
      await page.keyboard.press("Control+k");
      await page.keyboard.type("colours and signs");
      await page.keyboard.press("Enter");
      await expect(page.getByRole("dialog", { name: "What the colours and signs mean" })).toBeVisible();
      expect(await faults(page), "the key of colours and signs").toEqual([]);
    });

    test("in every dialog", async ({ page, openPage }) => {
      test.slow();
      await openPage(page, { demo: "pottery-studio" });
      for (const [name, keys] of dialogs) {
        await page.keyboard.press(keys);
        await expect(page.getByRole("dialog"), name).toBeVisible();
        expect(await faults(page), name).toEqual([]);
        await page.keyboard.press("Escape");
        await expect(page.getByRole("dialog"), name).toBeHidden();
      }
    });
  });
}

test("Tab goes round the whole window, seen and named at every stop", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await expect(page.getByTestId("plan")).toBeVisible();
  const reached = new Set<string>();
  const unseen: string[] = [];
  for (let stop = 0; stop < 120; stop += 1) {
    await page.keyboard.press("Tab");
    const here = await page.evaluate(() => {
      const at = document.activeElement;
      if (!at || at === document.body) return null;
      const { outlineStyle, boxShadow, borderColor } = getComputedStyle(at);
      const part = at.closest(".head, .rail, .plan-cell, .rod-cell, .dock, .side")?.classList[0] ?? "";
      // The table marks its cell, the plan its cross, the rod's flag its edge.
      const seen =
        outlineStyle !== "none" ||
        boxShadow !== "none" ||
        at.matches("[role=grid], [role=application], .rod-handle");
      return {
        part,
        seen,
        what: `${at.tagName} ${at.className} ${at.textContent?.slice(0, 30)} ${borderColor}`,
      };
    });
    if (here === null) break;
    reached.add(here.part);
    if (!here.seen) unseen.push(here.what);
  }
  expect([...reached].sort()).toEqual(
    expect.arrayContaining(["dock", "head", "plan-cell", "rail", "rod-cell", "side"]),
  );
  expect(unseen).toEqual([]);
});

test("at 150 % nothing in panels and dialogs is cut off or lies over another", async ({ page, openPage }) => {
  await page.addInitScript(() => localStorage.setItem("drysill.preferences", '{"textSize":1.5}'));
  await openPage(page, { demo: "pottery-studio" });
  for (const name of stepNames) {
    await page.locator(".rail-step", { hasText: new RegExp(`^${stepTitles[name]}:`) }).click();
    expect(await crowded(page), stepTitles[name]).toEqual([]);
  }
});

test("at 150 % nothing in a dialog is cut off or lies over another", async ({ page, openPage }) => {
  test.slow();
  await page.addInitScript(() => localStorage.setItem("drysill.preferences", '{"textSize":1.5}'));
  await openPage(page, { demo: "pottery-studio" });
  await expect(page.getByTestId("plan")).toBeVisible();
  const dialog = page.locator("[role=dialog]").first();
  const check = async (name: string) => {
    await expect(dialog).toBeVisible();
    expect(await crowded(page, "[role=dialog] *", "[role=dialog]"), name).toEqual([]);
    await page.keyboard.press("Escape");
    await expect(page.getByRole("dialog")).toHaveCount(0);
  };
  for (const [name, key] of dialogs) {
    await page.keyboard.press(key);
    await check(name);
  }
  for (const name of [
    "Level run",
    "Two-peg check",
    "Grid of stakes",
    "Import ground",
    "Words of the trade",
  ]) {
    await page.keyboard.press("Control+k");
    await expect(page.getByRole("combobox", { name: "Find a command" })).toBeFocused();
    await page.keyboard.type(name);
    await page.keyboard.press("Enter");
    await expect(page.getByRole("combobox", { name: "Find a command" })).toHaveCount(0);
    await check(name);
  }
});

/** Words in the head, the rail and the panel, or within what is asked for, that run over their neighbours, or wider than where they stand. */
function crowded(
  page: Page,
  within = ".head *, .rail *, .side *",
  frame = ".side",
): Promise<readonly string[]> {
  return page.evaluate(
    ({ within, frame }) => {
      const shown = [...document.querySelectorAll<HTMLElement>(within)].filter(
        (element) =>
          [...element.childNodes].some(
            (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim(),
          ) &&
          !element.closest(".visually-hidden, .plan-tip, svg") &&
          getComputedStyle(element).display !== "inline" &&
          element.checkVisibility() &&
          element.getClientRects().length > 0 &&
          element.offsetWidth > 2,
      );
      /** What of it isn't scrolled out of its frames. */
      const seen = (element: HTMLElement) => {
        let { left, right, top, bottom } = element.getBoundingClientRect();
        for (let up = element.parentElement; up; up = up.parentElement) {
          if (getComputedStyle(up).overflowY === "visible") continue;
          const clip = up.getBoundingClientRect();
          [left, right] = [Math.max(left, clip.left), Math.min(right, clip.right)];
          [top, bottom] = [Math.max(top, clip.top), Math.min(bottom, clip.bottom)];
        }
        return { left, right, top, bottom };
      };
      const boxes = shown.map((element) => ({ element, box: seen(element) }));
      const over = boxes.flatMap(({ element, box }, i) =>
        boxes.slice(i + 1).flatMap(({ element: other, box: its }) => {
          if (element.contains(other) || other.contains(element)) return [];
          const width = Math.min(box.right, its.right) - Math.max(box.left, its.left);
          const height = Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top);
          return width > 2 && height > 4
            ? [`"${element.textContent}" and "${other.textContent}" overlap`]
            : [];
        }),
      );
      const side = document.querySelector(frame);
      const wide = side && side.scrollWidth > side.clientWidth + 1 ? ["it scrolls sideways"] : [];
      return [...over, ...wide];
    },
    { within, frame },
  );
}

test("the text size is chosen in the preferences and stays after a reload", async ({ page, openPage }) => {
  await openPage(page, { demo: "pottery-studio" });
  await page.keyboard.press("Control+,");
  const dialog = page.getByRole("dialog", { name: "Preferences" });
  await dialog.getByRole("button", { name: /Text size/ }).click();
  await page.getByRole("option", { name: "150 %" }).click();
  const size = () => page.locator(".panel-purpose").evaluate((words) => getComputedStyle(words).fontSize);
  expect(await size()).toBe("21px");
  await page.reload();
  expect(await size()).toBe("21px");
  await page.keyboard.press("Control+,");
  await dialog.getByRole("tab", { name: "Paper, rules and earth" }).click();
  await dialog.getByRole("textbox", { name: "Swell" }).fill("1.3");
  await page.keyboard.press("Enter");
  await dialog.getByRole("button", { name: "Done" }).click();
  await page.keyboard.press("Control+z");
  await page.getByRole("navigation").getByRole("button", { name: "Quantities" }).click();
  await expect(page.getByRole("textbox", { name: "Swell" })).toHaveValue("1.25");
});
