/** The plan in the browser as a person meets it: places in metres, a mouse, and what can be read on the page. */
import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { type Box, freePadding } from "../../src/canvas/view/freeArea";
import { planPlaces } from "../../src/canvas/view/planBounds";
import { boxesOver } from "../../src/canvas/view/slots";
import { fittedTo, toScreen, type View } from "../../src/canvas/view/view";
import { newProject, openProject, type Project } from "../../src/document";

export function demoProject(name: string): Project {
  const opened = openProject(readFileSync(`demo-projects/${name}.drysill.json`, "utf8"));
  if (!opened.ok) throw new Error(`${name} does not open`);
  return opened.project;
}

export interface PlanPage {
  /** Fits the plan; from now on places are counted in this view. */
  fit(project?: Project): Promise<void>;
  /** Screen place of a place of the plan. */
  at(x: number, y: number): [number, number];
  click(x: number, y: number): Promise<void>;
  move(x: number, y: number): Promise<void>;
  /** Presses at the first place, goes through the others and lets go at the last. */
  drag(...places: readonly (readonly [number, number])[]): Promise<void>;
  hint(): Promise<string>;
  /** What is written about the place under the pointer. */
  readOut(): Promise<string>;
  /** Name of the edit that undo would take back. */
  undoName(): Promise<string>;
}

/** The view that fits a plan now, turned or not, and where the plan's corner lies on the page. */
export async function fittedView(
  page: Page,
  project: Project,
  angle = 0,
): Promise<{ view: View; corner: [number, number]; taken: readonly Box[] }> {
  const [box, taken] = await Promise.all([
    page.getByTestId("plan").boundingBox(),
    page
      .locator("[data-slot]")
      .evaluateAll((slots) => slots.map((slot) => slot.getBoundingClientRect().toJSON() as DOMRect)),
  ]);
  if (!box) throw new Error("the plan is not on the page");
  const blank: View = { centre: [0, 0], scale: 1, angle, width: box.width, height: box.height };
  const over = boxesOver({ left: box.x, top: box.y }, taken);
  const view = fittedTo(blank, planPlaces(project), (span) => freePadding(blank, over, span));
  return { view, corner: [box.x, box.y], taken: over };
}

export function planPage(page: Page): PlanPage {
  let view: View | null = null;
  let corner: [number, number] = [0, 0];
  const at = (x: number, y: number): [number, number] => {
    if (!view) throw new Error("fit the plan first");
    const [px, py] = toScreen(view, [x, y]);
    return [corner[0] + px, corner[1] + py];
  };
  return {
    at,
    async fit(project = newProject()) {
      await page.getByRole("button", { name: "Show the whole plan" }).click();
      const fit = await fittedView(page, project);
      view = fit.view;
      corner = fit.corner;
    },
    async click(x, y) {
      const [px, py] = at(x, y);
      await page.mouse.move(px - 3, py - 2);
      await page.mouse.move(px, py);
      await page.mouse.down();
      await page.mouse.up();
    },
    async move(x, y) {
      await page.mouse.move(...at(x, y), { steps: 3 });
    },
    async drag(first, ...others) {
      if (!first) return;
      await page.mouse.move(...at(first[0], first[1]));
      await page.mouse.down();
      for (const [x, y] of others) await page.mouse.move(...at(x, y), { steps: 4 });
      await page.mouse.up();
    },
    hint: () => page.locator(".plan-hint").innerText(),
    readOut: () => page.locator(".read-out").innerText(),
    undoName: () => page.getByRole("button", { name: /^Undo/ }).first().innerText(),
  };
}
