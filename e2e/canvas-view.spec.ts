/** How the plan is looked at: turned, zoomed, fitted, its layers and keys, and the sections below it. */
import type { Page } from "@playwright/test";
import { toScreen } from "../src/canvas/view/view";
import { expect, test } from "./support/fixtures";
import { colourAt } from "./support/pictures";
import { demoProject, fittedView, type PlanPage, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");
const [a, , c, d] = (studio.building?.outline ?? []) as [number, number][] as [
  [number, number],
  [number, number],
  [number, number],
  [number, number],
];
const middle: [number, number] = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];

/** Degrees clockwise by which the north arrow lies turned. */
async function northTurn(page: Page): Promise<number> {
  const transform = await page.getByTestId("north").getAttribute("transform");
  return Number(/rotate\((.*)\)/.exec(transform ?? "")?.[1]);
}

/** Where a place lies on the screen once the plan is turned by degrees and fitted. */
async function turnedAt(page: Page, degrees: number): Promise<(x: number, y: number) => [number, number]> {
  await page.getByRole("button", { name: "Show the whole plan" }).click();
  const { view, corner } = await fittedView(page, studio, (degrees * Math.PI) / 180);
  return (x, y) => {
    const [px, py] = toScreen(view, [x, y]);
    return [corner[0] + px, corner[1] + py];
  };
}

const wheel = async (page: Page, turns: number, by: number) => {
  for (let i = 0; i < turns; i++) await page.mouse.wheel(0, by);
};
const undone = (page: Page) => page.keyboard.press("Control+z");
const nearA = /· [0-3]?[⅛¼⅜½⅝¾⅞]?″ from corner A/;

test.describe("the view of the pottery studio", () => {
  let plan: PlanPage;
  test.beforeEach(async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    plan = planPage(page);
    await plan.fit(studio);
  });

  test("Shift and the wheel turn the plan about the pointer; it is one undo step", async ({ page }) => {
    const before = await northTurn(page);
    await plan.move(a[0], a[1]);
    await page.keyboard.down("Shift");
    await wheel(page, 4, -100);
    await page.keyboard.up("Shift");
    // Three degrees a notch, counter-clockwise: north goes to the left.
    await expect.poll(() => northTurn(page)).toBeCloseTo(before - 12, 1);
    await expect.poll(() => plan.undoName()).toBe("Undo: turn the plan");
    const [x, y] = plan.at(a[0], a[1]);
    await page.mouse.move(x + 1, y);
    await page.mouse.move(x, y);
    expect(await plan.readOut()).toMatch(nearA);
    await undone(page);
    await expect.poll(() => northTurn(page)).toBe(before);
    expect(await plan.undoName()).toBe("Undo");
  });

  test("the north arrow takes an angle, levels a wall and sets the plan straight; things are picked where they lie", async ({
    page,
  }) => {
    const before = await northTurn(page);
    await page.getByRole("button", { name: /North arrow/ }).click();
    const card = page.getByRole("region", { name: "Turn of the plan" });
    const field = card.getByRole("textbox");
    await field.fill("half");
    await field.press("Enter");
    await expect(card.getByRole("alert")).toContainText("half");
    await field.fill("30");
    await field.press("Enter");
    expect(await northTurn(page)).toBeCloseTo(before - 30, 1);
    await page.keyboard.press("Escape");
    await expect(card).toBeHidden();

    const at = await turnedAt(page, 30);
    await page.mouse.move(...at(...a));
    expect(await plan.readOut()).toMatch(nearA);
    await page.mouse.click(...at(...middle));
    await page.mouse.move(...at(middle[0] + 1, middle[1] + 1));
    expect(await plan.hint()).toMatch(/Drag to move the building/);
    // To the right on the screen, whichever way the plan lies.
    await page.keyboard.press("Shift+ArrowRight");
    expect(await plan.undoName()).toBe("Undo: move building");
    await undone(page);

    await page.getByRole("button", { name: /North arrow/ }).click();
    await card.getByRole("button", { name: "wall B–C level" }).click();
    expect(Math.abs((await northTurn(page)) - before)).toBeCloseTo(90, 1);
    await card.getByRole("button", { name: "north up" }).click();
    expect(Math.abs(await northTurn(page))).toBeLessThan(0.01);
    await card.getByRole("button", { name: "as it was drawn" }).click();
    expect(await northTurn(page)).toBe(before);
  });

  test("keys turn it by fifteen degrees, and the arrow pulled round by as much as it goes", async ({
    page,
  }) => {
    const before = await northTurn(page);
    await page.keyboard.press(">");
    expect(await northTurn(page)).toBeCloseTo(before + 15, 1);
    await page.keyboard.press("<");
    expect(await northTurn(page)).toBeCloseTo(before, 1);
    const box = await page.getByRole("button", { name: /North arrow/ }).boundingBox();
    if (!box) throw new Error("no arrow");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y - 20);
    await page.mouse.down();
    for (let i = 1; i <= 9; i++) {
      const angle = (i * 5 * Math.PI) / 180;
      await page.mouse.move(x - 20 * Math.sin(angle), y - 20 * Math.cos(angle));
    }
    await page.mouse.up();
    await expect.poll(() => northTurn(page)).toBeCloseTo(before - 45, 0);
    await expect(page.getByRole("region", { name: "Turn of the plan" })).toHaveCount(0);
  });

  test("the middle button and two fingers on a trackpad move the plan, Ctrl and the wheel zoom it", async ({
    page,
  }) => {
    const [x, y] = plan.at(a[0], a[1]);
    await page.mouse.move(x, y);
    await page.mouse.down({ button: "middle" });
    await page.mouse.move(x + 60, y + 30, { steps: 4 });
    await page.mouse.up({ button: "middle" });
    await page.mouse.move(x + 61, y + 30);
    await page.mouse.move(x + 60, y + 30);
    expect(await plan.readOut()).toMatch(nearA);
    // Small turns that go both ways come from a trackpad: the place follows the fingers.
    for (let i = 0; i < 6; i++) await page.mouse.wheel(5, 3);
    await page.mouse.move(x + 29, y + 12);
    await page.mouse.move(x + 30, y + 12);
    expect(await plan.readOut()).toMatch(nearA);
    const bar = page.locator(".scale-bar");
    const length = await bar.innerHTML();
    await page.keyboard.down("Control");
    await wheel(page, 3, -100);
    await page.keyboard.up("Control");
    await expect.poll(() => bar.innerHTML()).not.toBe(length);
    await page.mouse.move(x + 31, y + 12);
    await page.mouse.move(x + 30, y + 12);
    expect(await plan.readOut()).toMatch(nearA);
  });

  test("what is selected is fitted, and the building, and everything", async ({ page }) => {
    const bar = () => page.locator(".scale-bar").innerHTML();
    const whole = await bar();
    await plan.click(...middle);
    await page.keyboard.press("Shift+S");
    const near = await bar();
    expect(near).not.toBe(whole);
    await page.keyboard.press("Shift+F");
    const building = await bar();
    expect([near, whole]).not.toContain(building);
    await page.keyboard.press("f");
    expect(await bar()).toBe(whole);
    await page.getByRole("button", { name: "Show what is selected" }).click();
    expect(await bar()).toBe(near);
    await page.getByRole("button", { name: "Show the building" }).click();
    expect(await bar()).toBe(building);
  });

  test("one press shows the whole plan as it stays, from whatever zoom and turn", async ({ page }) => {
    const bar = () => page.locator(".scale-bar").innerHTML();
    const fit = page.getByRole("button", { name: "Show the whole plan" });
    // Turned so far, the buttons and the scale decide what is free.
    for (const turn of [3, 4, 8]) {
      await page.getByTestId("plan").focus();
      while (Math.round(await northTurn(page)) !== turn * 15) await page.keyboard.press(">");
      for (const zoom of ["Zoom in", "Zoom out"]) {
        for (let i = 0; i < 6; i++) await page.getByRole("button", { name: zoom }).click();
        await fit.click();
        const once = await bar();
        await fit.click();
        expect(await bar(), `${turn * 15}°, ${zoom}`).toBe(once);
      }
    }
  });

  test("what is drawn goes on below the scale bar", async ({ page }) => {
    const fill = plan.at(d[0] - 0.8, middle[1]);
    const colour = await colourAt(page, fill);
    const box = await page.locator(".scale-bar").boundingBox();
    if (!box) throw new Error("no scale bar");
    // Clear of the bar's own line and words.
    const below: [number, number] = [box.x + box.width - 12, box.y + 4];
    expect(await colourAt(page, below)).not.toEqual(colour);
    await page.mouse.move(...fill);
    await page.mouse.down({ button: "middle" });
    await page.mouse.move(...below, { steps: 4 });
    await page.mouse.up({ button: "middle" });
    await expect.poll(() => colourAt(page, below)).toEqual(colour);
  });

  test("layers are hidden, weakened and locked, and stay so", async ({ page }) => {
    const open = () => page.getByRole("button", { name: "What the plan shows" }).click();
    const layers = page.getByRole("region", { name: "Layers of the plan" });
    const inFill = plan.at(d[0] - 0.8, middle[1]);
    const full = await colourAt(page, inFill);
    await open();
    await layers.getByRole("slider", { name: "Strength of cut and fill" }).fill("20");
    await page.keyboard.press("Escape");
    await expect.poll(async () => (await colourAt(page, inFill))[0]).toBeGreaterThan(full[0] + 20);
    await open();
    await layers.getByRole("button", { name: "Lock building" }).click();
    await page.keyboard.press("Escape");
    await plan.click(...middle);
    expect(await plan.hint()).not.toMatch(/move the building/);
    await page.reload();
    await open();
    await expect(layers.getByRole("button", { name: "Lock building" })).toHaveAttribute(
      "aria-pressed",
      "true",
    );
    await expect(layers.getByRole("slider", { name: "Strength of cut and fill" })).toHaveValue("20");
    await layers.getByRole("button", { name: "As at first" }).click();
    await expect(layers.getByRole("slider", { name: "Strength of cut and fill" })).toHaveValue("100");
    await page.keyboard.press("Escape");
    await plan.click(...middle);
    await plan.move(middle[0] + 1, middle[1] + 1);
    expect(await plan.hint()).toMatch(/Drag to move the building/);
  });

  test("layers follow the step of the job until one is changed by hand", async ({ page }) => {
    const open = () => page.getByRole("button", { name: "What the plan shows" }).click();
    const layers = page.getByRole("region", { name: "Layers of the plan" });
    await open();
    await layers.getByRole("checkbox", { name: "Follow the step of the job" }).check();
    await expect(layers.getByRole("checkbox", { name: "Cut and fill" })).toBeChecked();
    await page.getByRole("navigation").getByText("Shots", { exact: true }).click();
    await expect(page.getByRole("region", { name: "Key of cut and fill" })).toHaveCount(0);
    await open();
    await expect(layers.getByRole("checkbox", { name: "Cut and fill" })).not.toBeChecked();
    await expect(layers.getByRole("checkbox", { name: "Ground as it is" })).toBeChecked();
    await layers.getByRole("checkbox", { name: "Where water runs" }).check();
    await expect(layers.getByRole("checkbox", { name: "Follow the step of the job" })).not.toBeChecked();
  });

  test("heights and steepness are mapped with a key of what is seen, one map at a time", async ({ page }) => {
    await page.getByRole("button", { name: "What the plan shows" }).click();
    const layers = page.getByRole("region", { name: "Layers of the plan" });
    await layers.getByRole("checkbox", { name: "Heights" }).check();
    await expect(layers.getByRole("checkbox", { name: "Cut and fill" })).not.toBeChecked();
    const key = page.getByRole("region", { name: "Key: height from the mark, ground as it is" });
    await expect(key.getByRole("listitem").first()).toContainText("under −3′ 6″");
    await layers.getByRole("checkbox", { name: "Steepness" }).check();
    await layers.getByRole("radio", { name: "finished" }).check();
    const steep = page.getByRole("region", { name: "Key: steepness, finished ground" });
    await expect(steep.getByRole("listitem")).toHaveCount(7);
    await expect(steep.getByRole("listitem").last()).toContainText("over 33 %");
    // On the fill's own slope of 3 : 1 the map has the colour of the key's steepest classes.
    await layers.getByRole("checkbox", { name: "Grid" }).check();
    await page.keyboard.press("Escape");
    const [r, g, b] = await colourAt(page, plan.at(30, 3.5));
    expect(b).toBeGreaterThan(Math.max(r, g) - 30);
  });

  test("the section is chosen, drawn true, and shares the pointer with the plan", async ({ page }) => {
    const strip = page.locator(".section-strip");
    const choice = page.getByRole("combobox", { name: "Section to show" });
    await choice.selectOption({ label: "Through the building, across the fall" });
    await expect(strip).toContainText("Section west to east through the building");
    await choice.selectOption({ label: "Along drive" });
    await expect(strip).toContainText(/Along drive, .* heights drawn/);
    await page.getByRole("checkbox", { name: "heights true to scale" }).check();
    await expect(strip).toContainText("heights not stretched");
    await plan.move(middle[0], d[1] - 3);
    await expect(page.getByTestId("section-at")).toContainText(/along · .* of fill/);
    const box = await page.locator(".section-box svg").boundingBox();
    if (!box) throw new Error("no section");
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await expect(page.getByTestId("section-at")).toContainText(/along/);
    expect(await plan.readOut()).toMatch(/of fill/);
    const grip = page.getByRole("separator", { name: "Height of the section" });
    await grip.focus();
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    await expect
      .poll(async () => (await page.locator(".section-box svg").boundingBox())?.height)
      .toBeCloseTo(box.height + 32, 0);
  });
});

test.describe("with fingers", () => {
  test.use({ hasTouch: true });

  test("two fingers zoom, move and turn the plan", async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    const plan = planPage(page);
    await plan.fit(studio);
    const before = await northTurn(page);
    const bar = () => page.locator(".scale-bar").innerHTML();
    const whole = await bar();
    const client = await page.context().newCDPSession(page);
    const [x, y] = plan.at(...middle);
    const touch = (type: "touchStart" | "touchMove" | "touchEnd", points: readonly [number, number][]) =>
      client.send("Input.dispatchTouchEvent", {
        type,
        touchPoints: points.map(([px, py], id) => ({ x: px, y: py, id })),
      });
    const fingers = (reach: number, degrees: number): [number, number][] => {
      const angle = (degrees * Math.PI) / 180;
      const [dx, dy] = [reach * Math.cos(angle), -reach * Math.sin(angle)];
      return [
        [x - dx, y - dy],
        [x + dx, y + dy],
      ];
    };
    await touch("touchStart", fingers(50, 0));
    for (let i = 1; i <= 10; i++) await touch("touchMove", fingers(50 + i * 5, 0));
    await touch("touchEnd", []);
    await expect.poll(bar).not.toBe(whole);
    expect(await northTurn(page)).toBe(before);

    await touch("touchStart", fingers(80, 0));
    for (let i = 1; i <= 20; i++) await touch("touchMove", fingers(80, i * 3));
    await touch("touchEnd", []);
    // The first degrees are taken for a slip of a pinch.
    await expect.poll(() => northTurn(page)).toBeLessThan(before - 40);
    await expect.poll(() => plan.undoName()).toBe("Undo: turn the plan");
  });
});
