/** Several things at once, the menu of what is under the pointer, the inspector and the list of all things, by hand. */
import type { Page } from "@playwright/test";
import { allThings, thingShape } from "../src/document";
import { expect, test } from "./support/fixtures";
import { demoProject, type PlanPage, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");
const outline = (studio.building?.outline ?? []) as [number, number][];
const [a, , c] = outline as [[number, number], [number, number], [number, number]];
const middle: [number, number] = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];
const placed = allThings(studio).filter((thing) => thingShape(studio, thing) !== null);
const features = studio.lot.features;
const feature = (i: number) => features[i]?.points[0] as [number, number];

const inspector = (page: Page) => page.getByTestId("inspector");
const menu = (page: Page) => page.getByRole("menu");
const act = (page: Page, name: string | RegExp) => page.getByRole("menuitem", { name });

test.describe("on the pottery studio", () => {
  let plan: PlanPage;
  test.beforeEach(async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    plan = planPage(page);
    await plan.fit(studio);
  });

  async function rightClick(page: Page, x: number, y: number): Promise<void> {
    await page.mouse.click(...plan.at(x, y), { button: "right" });
    await expect(menu(page)).toBeVisible();
  }

  test("a box with Shift selects what it touches; several are moved together and undone as one", async ({
    page,
  }) => {
    const [px, py] = plan.at(...middle);
    await page.keyboard.down("Shift");
    await page.mouse.move(...plan.at(a[0] - 7, a[1] + 5));
    await page.mouse.down();
    await page.mouse.move(px, py, { steps: 4 });
    expect(await plan.hint()).toMatch(/The box touches \d things/);
    await page.mouse.up();
    await page.keyboard.up("Shift");
    await expect(inspector(page).getByRole("heading", { level: 2 })).toHaveText(/^\d+ things$/);

    await plan.drag(middle, [middle[0] + 1, middle[1]], [middle[0] + 3, middle[1]]);
    expect(await plan.undoName()).toMatch(/^Undo: move \d+ things/);
    await page.keyboard.press("Control+z");
    expect(await plan.undoName()).toBe("Undo");

    await page.keyboard.press("Escape");
    await expect(inspector(page)).toBeHidden();
    await plan.click(...middle);
    await page.keyboard.down("Control");
    await plan.click(...feature(0));
    await page.keyboard.up("Control");
    await expect(inspector(page)).toContainText("2 things");
    await page.keyboard.press("Control+a");
    await expect(inspector(page)).toContainText(`${placed.length} things`);
  });

  test("the right button keeps several things: their menu between them, the plan's beside them, Esc", async ({
    page,
  }) => {
    const several = inspector(page).getByRole("heading", { level: 2 });
    await plan.click(...feature(0));
    await page.keyboard.down("Control");
    await plan.click(...feature(1));
    await page.keyboard.up("Control");
    await expect(several).toHaveText("2 things");
    const [p, q] = [feature(0), feature(1)];
    for (const [at, title] of [
      [p, "2 things"],
      [[p[0] + (q[0] - p[0]) * 0.17, p[1] + (q[1] - p[1]) * 0.17], "2 things"],
      [[a[0] - 4, middle[1] - 7], "Plan"],
    ] as [[number, number], string][]) {
      await rightClick(page, ...at);
      await expect(menu(page)).toHaveAccessibleName(title);
      await page.keyboard.press("Escape");
      await expect(menu(page)).toBeHidden();
      await expect(several).toHaveText("2 things");
    }
    await rightClick(page, ...p);
    await act(page, "Line up").hover();
    await expect(act(page, /^Turn about/)).toBeVisible();
    await act(page, /^Delete/).click();
    expect(await plan.undoName()).toBe("Undo: remove 2 things");
  });

  test("the right button shows what fits the thing: copy it, hide it, show it again", async ({ page }) => {
    await rightClick(page, ...feature(0));
    await expect(menu(page)).toContainText(/oak/i);
    await act(page, /^Duplicate/).click();
    expect(await plan.undoName()).toMatch(/^Undo: duplicate feature/);
    await expect(inspector(page)).toContainText(/oak/i);
    await page.keyboard.press("Control+z");

    await rightClick(page, ...feature(0));
    await act(page, "Hide").click();
    expect(await plan.undoName()).toMatch(/^Undo: hide/);
    // What is hidden isn't there to be picked: the ground is.
    await rightClick(page, ...feature(0));
    await expect(act(page, "Show all that is hidden")).toBeVisible();
    await page.keyboard.press("Escape");
    const note = page.getByRole("button", { name: /^1 hidden · show what is hidden/ });
    await note.click();
    await expect(note).toHaveCount(0);
    await expect(page.getByTestId("plan")).toBeFocused();
    await page.keyboard.press("Control+z");
    await rightClick(page, ...feature(0));
    await act(page, "Show all that is hidden").click();
    await rightClick(page, ...feature(0));
    await expect(menu(page)).toContainText(/oak/i);
    await page.keyboard.press("Escape");
    await expect(menu(page)).toBeHidden();
  });

  test("a locked thing stays: dragging and Delete say why; the menu unlocks it", async ({ page }) => {
    await rightClick(page, ...middle);
    await act(page, /^Lock/).click();
    await plan.drag(middle, [middle[0] + 2, middle[1]], [middle[0] + 4, middle[1]]);
    await expect(page.getByText(/is locked\. Unlock it first\./)).toBeVisible();
    expect(await plan.undoName()).toBe("Undo: lock studio");
    await expect(inspector(page)).toContainText("Locked: its figures can be read, not changed.");
    const east = inspector(page).getByLabel("East of A");
    await expect(east).toHaveAttribute("readonly");
    await expect(east).toHaveAccessibleDescription(/^Locked: .*“Unlock”/);
    // Nor by the panel, whose fields look locked too; and nothing is removed.
    const panel = page.getByRole("complementary", { name: "This step" });
    await page.getByRole("button", { name: /^Building\b.*:/ }).click();
    for (const field of await panel.getByRole("textbox").all()) {
      // What was taped of a settled building can still be typed.
      const isTape = (await field.getAttribute("placeholder")) === "taped";
      if (isTape) await expect(field).toBeEditable();
      else await expect(field).not.toBeEditable();
    }
    await expect(panel.getByRole("button", { name: /On wall/ }).first()).toBeDisabled();
    await expect(panel.locator(".field-lock").first()).toBeVisible();
    await panel.getByRole("button", { name: "Remove the building" }).click();
    await expect(page.getByText(/is locked\. Unlock it first/).first()).toBeVisible();
    expect(await plan.undoName()).toBe("Undo: lock studio");
    await rightClick(page, ...middle);
    await expect(act(page, /^Turn about/)).toBeHidden();
    await act(page, "Unlock").click();
    await expect(inspector(page).getByLabel("Bearing of A–B")).toBeEditable();
    await expect(panel.getByLabel("Wall A–B", { exact: true })).toBeEditable();
  });

  test("the menu key opens the menu of what is selected, and arrows choose", async ({ page }) => {
    await plan.click(...feature(1));
    await page.keyboard.press("Shift+F10");
    await expect(menu(page)).toContainText(/well/i);
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await expect(menu(page)).toBeHidden();
    expect(await plan.undoName()).toMatch(/^Undo: duplicate feature/);
    // The plan has the keys again.
    await page.keyboard.press("Delete");
    expect(await plan.undoName()).toMatch(/^Undo: remove feature/);
  });

  test("copies by key go to the pointer, with Alt to where they are dragged", async ({ page }) => {
    await plan.click(...feature(1));
    await page.keyboard.press("Control+c");
    await plan.move(middle[0], middle[1] - 14);
    await page.keyboard.press("Control+v");
    expect(await plan.undoName()).toMatch(/^Undo: paste feature/);
    await plan.click(...feature(1));
    await page.keyboard.down("Alt");
    const [x, y] = feature(1);
    await plan.drag([x, y], [x + 1, y - 2], [x + 2, y - 5]);
    await page.keyboard.up("Alt");
    expect(await plan.undoName()).toMatch(/^Undo: duplicate feature/);
  });

  test("the building turns about a chosen corner by a typed angle", async ({ page }) => {
    await plan.click(...middle);
    await page.keyboard.press("Shift+T");
    expect(await plan.hint()).toMatch(/^Click the place to turn about, or type it/);
    await plan.drag(middle, [middle[0] - 1, middle[1] + 1], a);
    await page.keyboard.type("10");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: turn building");
    const east = inspector(page).getByLabel("East of A");
    const was = await east.inputValue();
    await page.keyboard.press("Control+z");
    await expect(east).toHaveValue(was);
    await expect(inspector(page).getByLabel("East of B")).not.toHaveValue(was);
  });

  test("the well is mirrored about a wall by one click", async ({ page }) => {
    await plan.click(...feature(1));
    await page.keyboard.press("Shift+M");
    const [b, cc] = [outline[1] as [number, number], outline[2] as [number, number]];
    await plan.click(b[0] + (cc[0] - b[0]) * 0.3, b[1] + (cc[1] - b[1]) * 0.3);
    expect(await plan.undoName()).toBe("Undo: mirror feature");
  });

  test("the inspector's figures are typed over: a place, a side, from a mark; nonsense says why", async ({
    page,
  }) => {
    await plan.click(...middle);
    const panel = inspector(page);
    const side = panel.getByLabel("A–B", { exact: true });
    await expect(side).toHaveValue("32′ 0″");
    await side.fill("34'");
    await side.press("Enter");
    await expect(side).toHaveValue("34′ 0″");
    expect(await plan.undoName()).toBe("Undo: set a side of the building");
    await expect(panel).toContainText("Area");
    await side.fill("wide");
    await side.press("Enter");
    await expect(panel.getByRole("alert")).toBeVisible();
    await side.press("Escape");

    const east = panel.getByLabel("East of A");
    const fromPlan = await east.inputValue();
    await panel.getByRole("button", { name: /Counted from/ }).click();
    await page.getByRole("option", { name: /from capped bolt/i }).click();
    await expect(east).not.toHaveValue(fromPlan);
    expect(await plan.undoName()).toBe("Undo: set a side of the building");
  });

  test("several are lined up and thinned out in the inspector", async ({ page }) => {
    await plan.click(...feature(0));
    await page.keyboard.down("Control");
    await plan.click(...feature(1));
    await plan.click(...middle);
    await page.keyboard.up("Control");
    await inspector(page).getByRole("button", { name: "Keep only the 2 features" }).click();
    await inspector(page).getByRole("button", { name: "Line up: top edges" }).click();
    expect(await plan.undoName()).toBe("Undo: line up 2 things");
  });

  test("all things stand in a tree that is walked by keys", async ({ page }) => {
    await page.getByTestId("plan").focus();
    await page.keyboard.press("Control+Shift+O");
    const tree = page.getByRole("treegrid", { name: "Things of the plan" });
    await expect(tree).toBeVisible();
    // From the first group to its first things: the lot, then the oak.
    await expect(tree).toBeFocused();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowDown");
    await expect(tree.getByRole("row", { name: /oak/i })).toHaveAttribute("aria-selected", "true");
    await page.keyboard.press("F2");
    await page.keyboard.type("old oak");
    await page.keyboard.press("Enter");
    await expect(tree.getByRole("row", { name: "Old oak" })).toBeFocused();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await expect(tree.getByRole("row", { name: "Old oak, locked" })).toBeVisible();
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Delete");
    await expect(tree.getByRole("row", { name: /oak/i })).toBeHidden();
    expect(await plan.undoName()).toBe("Undo: remove feature");
    // Esc leaves the list, what was chosen there stays chosen.
    await tree.getByRole("row", { name: "Well" }).click();
    await page.keyboard.press("Escape");
    await expect(tree).toBeHidden();
    await expect(inspector(page)).toContainText("Well");
  });
});

test.describe("by touch", () => {
  test.use({ hasTouch: true });

  test("a resting finger opens the menu; a tap selects", async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    const plan = planPage(page);
    await plan.fit(studio);
    const [x, y] = plan.at(...feature(1)).map(Math.round) as [number, number];
    const hand = await page.context().newCDPSession(page);
    await hand.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y }] });
    await expect(menu(page)).toContainText(/well/i);
    await hand.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    await expect(menu(page)).toBeVisible();
    await act(page, /^Duplicate/).tap();
    expect(await plan.undoName()).toMatch(/^Undo: duplicate feature/);
    await page.touchscreen.tap(...plan.at(...middle));
    await expect(inspector(page).getByLabel("East of A")).toBeVisible();
  });

  test("one finger drags what is selected, and on open ground the plan", async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    const plan = planPage(page);
    await plan.fit(studio);
    const hand = await page.context().newCDPSession(page);
    const drag = async ([x, y]: readonly [number, number], dx: number, dy: number) => {
      const touch = (type: "touchStart" | "touchMove" | "touchEnd", at: { x: number; y: number }[]) =>
        hand.send("Input.dispatchTouchEvent", { type, touchPoints: at });
      await touch("touchStart", [{ x, y }]);
      for (let i = 1; i <= 6; i++) await touch("touchMove", [{ x: x + (dx * i) / 6, y: y + (dy * i) / 6 }]);
      await touch("touchEnd", []);
    };
    await page.touchscreen.tap(...plan.at(middle[0] + 1, middle[1] + 1));
    await expect(inspector(page).getByLabel("East of A")).toBeVisible();
    // The step's dock may be of another height.
    await plan.fit(studio);
    await drag(plan.at(middle[0] + 1, middle[1] + 1), 24, 0);
    expect(await plan.undoName()).toBe("Undo: move building");
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Escape");
    const [x, y] = plan.at(...feature(1));
    await drag([x + 60, y + 60], 0, 40);
    await page.touchscreen.tap(x, y + 40);
    await expect(inspector(page)).toContainText(/well/i);
  });
});
