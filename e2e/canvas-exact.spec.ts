/** Exact drawing by real mouse and keyboard: typed lengths, locks, snaps, dimensions typed over, the building built on to. */
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { demoProject, type PlanPage, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");
type XY = [number, number];
const [a, b, c, d] = (studio.building?.outline ?? []) as XY[] as [XY, XY, XY, XY];
const FOOT = 0.3048;

const typeLine = async (page: Page, text: string) => {
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
};
const dimension = (page: Page, name: string) => page.getByRole("button", { name: new RegExp(`^${name}:`) });
const locks = (page: Page) => page.locator(".plan-locks");

test.describe("on the pottery studio", () => {
  let plan: PlanPage;
  test.beforeEach(async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    plan = planPage(page);
    await plan.fit(studio);
  });

  test("an L-shaped building by typed lengths and arrow keys, then its sides read off the plan", async ({
    page,
  }) => {
    await page.keyboard.press("b");
    await page.getByTestId("choices").getByRole("button", { name: "any outline" }).click();
    await plan.click(a[0] + 1, d[1] + 1);
    await expect(locks(page)).toHaveText("Arrows, A, P, T, K lock the direction");
    const walls = [
      ["ArrowRight", "32'"],
      ["ArrowUp", "14'"],
      ["ArrowLeft", "18'6\""],
      ["ArrowUp", "9'"],
      ["ArrowLeft", "13'6\""],
    ] as const;
    for (const [key, length] of walls) {
      await page.keyboard.press(key);
      await expect(locks(page)).toContainText("the arrow again or Esc lets go");
      await typeLine(page, length);
    }
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: redraw building");
    // Large enough for all figures.
    await page.keyboard.press("Shift+F");
    await page.keyboard.press("+");
    for (const [wall, size] of [
      ["wall A–B", "32′ 0″"],
      ["wall B–C", "14′ 0″"],
      ["wall C–D", "18′ 6″"],
      ["wall E–F", "13′ 6″"],
      ["wall F–A", "23′ 0″"],
    ] as const)
      await expect(dimension(page, wall)).toHaveText(size);
  });

  test("a tool's key, two typed lengths, Enter: the first place is there without the mouse", async ({
    page,
  }) => {
    for (const [key, next] of [
      ["q", /^Click the next place/],
      ["i", /^Click the second place/],
    ] as const) {
      await page.keyboard.press(key);
      await typeLine(page, "5, 5");
      expect(await plan.hint()).toMatch(next);
      await page.keyboard.press("Escape");
      await page.keyboard.press("Escape");
    }
    await page.keyboard.press("h");
    await typeLine(page, "5, 5");
    expect(await plan.undoName()).toBe("Undo: add a test pit");
  });

  test("zoomed and gone to another step by clicks in between, typed lengths still reach what is drawn", async ({
    page,
  }) => {
    await page.keyboard.press("q");
    await plan.click(...a);
    await page.getByRole("button", { name: "Zoom out" }).click();
    await page.getByRole("navigation").getByRole("button", { name: "Lot" }).first().click();
    await typeLine(page, "20");
    await expect(page.getByTestId("reading")).toContainText("20′ 0″");
    await page.getByRole("button", { name: "What the plan shows" }).click();
    await page.keyboard.press("Escape");
    await expect(page.getByTestId("reading")).toBeVisible();
  });

  test("a side at a bearing and a typed depth make a turned rectangle", async ({ page }) => {
    await page.keyboard.press("b");
    await page.getByTestId("choices").getByRole("button", { name: "a side, then depth" }).click();
    await plan.click(d[0], d[1] - 1);
    await page.keyboard.type("30'");
    await page.keyboard.press("Tab");
    await typeLine(page, "70");
    await plan.move(d[0], d[1] + 8);
    await typeLine(page, "20'");
    await page.keyboard.press("Shift+F");
    await page.keyboard.press("+");
    await expect(dimension(page, "wall A–B")).toHaveText("30′ 0″");
    await expect(dimension(page, "wall B–C")).toHaveText("20′ 0″");
  });

  test("an add-on on all of a wall, and a piece pulled out for a T", async ({ page }) => {
    await page.keyboard.press("b");
    const choices = page.getByTestId("choices");
    await choices.getByRole("button", { name: "add-on" }).click();
    const east: XY = [b[0], (b[1] + c[1]) / 2 + 0.8];
    await plan.move(...east);
    expect(await plan.hint()).toMatch(
      /^Click or Enter to build on to all of wall B–C, or drag along a piece/,
    );
    await plan.click(...east);
    await plan.move(b[0] + 2, east[1]);
    await typeLine(page, "8'");
    expect(await plan.undoName()).toBe("Undo: add an add-on");
    await expect(dimension(page, "wall A–B")).toHaveText("40′ 0″");

    await page.keyboard.press("b");
    await choices.getByRole("button", { name: "pull a wall" }).click();
    await plan.move(a[0] + 3, a[1]);
    await typeLine(page, "10'");
    await plan.move(a[0] + 7, a[1]);
    await typeLine(page, "12'");
    await plan.move(a[0] + 5, a[1] + 1);
    await plan.move(a[0] + 5, a[1] + 5 * FOOT);
    await typeLine(page, "5'");
    expect(await plan.undoName()).toBe("Undo: pull a piece of a wall out");
    await page.keyboard.press("Shift+F");
    await expect(dimension(page, "wall C–D")).toHaveText("12′ 0″");
  });

  test("dimensions of the selected building are typed over: Enter is one step, Esc none, nonsense is answered", async ({
    page,
  }) => {
    await plan.click((a[0] + c[0]) / 2 + 1, (a[1] + c[1]) / 2 + 1);
    const side = dimension(page, "wall A–B");
    await expect(side).toHaveText("32′ 0″");
    await side.click();
    const field = page.getByRole("textbox", { name: "wall A–B" });
    await expect(field).toBeFocused();
    await typeLine(page, "wide");
    await expect(page.locator(".length-ask [role=alert]")).toContainText("wide");
    await page.keyboard.press("Escape");
    await expect(field).toHaveCount(0);
    expect(await plan.undoName()).toBe("Undo");

    await side.click();
    await typeLine(page, "36'");
    expect(await plan.undoName()).toBe("Undo: wall A–B by its length");
    await expect(side).toHaveText("36′ 0″");
    await expect(dimension(page, "wall C–D")).toHaveText("36′ 0″");
    await page.keyboard.press("Control+z");
    await expect(side).toHaveText("32′ 0″");

    const tie = page.getByRole("button", { name: /^corner . to the [a-z-]+ lot line:/ }).first();
    // Where there is room it says to which line; elsewhere its arrow does.
    const told = page
      .getByRole("button", { name: /lot line:/ })
      .filter({ hasText: / to (north|west) line$/ });
    await expect(told.first()).toBeVisible();
    await tie.click();
    await typeLine(page, "30'");
    expect(await plan.undoName()).toBe("Undo: move building by its distance to the lot line");
  });

  test("figures that an input method composes, and signs without a key of their own, are typed", async ({
    page,
  }) => {
    const stage = page.getByTestId("plan");
    const chip = page.locator(".typed-chip");
    await page.keyboard.press("q");
    await expect(stage).toBeFocused();
    const method = await page.context().newCDPSession(page);
    await method.send("Input.imeSetComposition", { text: "１２", selectionStart: 2, selectionEnd: 2 });
    await expect(chip).toContainText("１２");
    await method.send("Input.insertText", { text: "１２，" });
    await expect(chip).toContainText("place from the origin 12,");
    await page.keyboard.type(" 5");
    await page.keyboard.insertText("½");
    await expect(chip).toContainText("12, 5½");
    await page.keyboard.press("Backspace");
    await page.keyboard.press("Enter");
    await expect(chip).toHaveCount(0);
    await method.send("Input.imeSetComposition", { text: "３", selectionStart: 1, selectionEnd: 1 });
    await method.send("Input.insertText", { text: "３０＇" });
    await page.keyboard.press("Tab");
    await page.keyboard.type("N 45");
    await page.keyboard.insertText("°");
    await page.keyboard.type(" E");
    await expect(chip).toContainText("30'");
    await expect(chip).toContainText("N 45° E");
    await page.keyboard.press("Enter");
    await expect(page.getByTestId("reading")).toContainText("30′ 0″");
    expect((await stage.innerText()).replace("\u200b", "")).toBe("");
    // A letter that nothing can be typed from still picks its tool.
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await page.keyboard.press("b");
    await expect(page.getByTestId("choices")).toBeVisible();
    await expect(stage).toBeFocused();
  });

  test("while a rectangle is drawn its width is clicked and typed over", async ({ page }) => {
    await page.keyboard.press("b");
    await plan.click(d[0], d[1] - 8);
    await plan.move(d[0] + 8, d[1] - 3);
    await dimension(page, "width").click();
    await typeLine(page, "24'");
    await expect(page.getByTestId("plan")).toBeFocused();
    await plan.click(d[0] + 5, d[1] - 3);
    await expect(dimension(page, "wall A–B")).toHaveText("24′ 0″");
  });

  test("a swale locked square to a wall; Esc lets go; the snaps list switches kinds off and is remembered", async ({
    page,
  }) => {
    await page.keyboard.press("w");
    await plan.click(d[0] - 6, d[1] - 6);
    await plan.move((c[0] + 2 * d[0]) / 3, d[1]);
    await page.keyboard.press("p");
    await expect(locks(page)).toContainText("locked square to wall");
    await page.keyboard.press("Escape");
    await expect(locks(page)).toHaveText("Arrows, A, P, T, K lock the direction");
    await page.keyboard.press("ArrowUp");
    await typeLine(page, "40'");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: draw swale");
    await expect(dimension(page, "piece 1 of the swale")).toHaveText("40′ 0″");

    await page.getByRole("button", { name: "What the hand snaps to" }).click();
    const list = page.getByRole("region", { name: "Snaps" });
    await list.getByRole("checkbox", { name: "Middles" }).uncheck();
    await page.keyboard.press("Escape");
    await expect(list).toHaveCount(0);
    await page.keyboard.press("g");
    await page.reload();
    await page.getByRole("button", { name: "What the hand snaps to" }).click();
    await expect(list.getByRole("checkbox", { name: "Middles" })).not.toBeChecked();
    await expect(list.getByRole("checkbox", { name: /^Grid/ })).toBeChecked();
    await expect(list.getByRole("checkbox", { name: "Where lines cross" })).toBeChecked();
  });

  test("a place typed as east and north, and a door's distance typed over", async ({ page }) => {
    await page.keyboard.press("w");
    await typeLine(page, "20', 20'");
    await typeLine(page, "@30', 0");
    await typeLine(page, "@10' W, 5' S");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: draw swale");
    await expect(dimension(page, "piece 1 of the swale")).toHaveText("30′ 0″");

    const door = studio.building?.doors[0];
    if (!door) throw new Error("the studio has no door");
    await plan.click(c[0] - door.offset - door.width / 2, c[1]);
    await page.keyboard.press("Shift+S");
    await dimension(page, "from corner C").click();
    await typeLine(page, "8'");
    expect(await plan.undoName()).toBe("Undo: change door");
    await expect(dimension(page, "from corner C")).toHaveText("8′ 0″");
    await expect(dimension(page, "from corner D")).toHaveText("12′ 0″");
  });

  test("a wall pulled with Alt lets the right angles go; a drag on a figure moves the building", async ({
    page,
  }) => {
    await plan.click((a[0] + c[0]) / 2 + 1, (a[1] + c[1]) / 2 + 1);
    const north: XY = [(a[0] + b[0]) / 2, a[1]];
    await page.keyboard.down("Alt");
    await plan.drag(north, [north[0] + 1, north[1] + 1], [north[0] + 2, north[1] + 2]);
    await page.keyboard.up("Alt");
    expect(await plan.undoName()).toBe("Undo: move a wall");
    await page.keyboard.press("Control+z");

    // So large that the wall's figure has room inside.
    await page.keyboard.press("Shift+F");
    const box = await dimension(page, "wall A–B").boundingBox();
    if (!box) throw new Error("the wall has no figure");
    await page.mouse.move(box.x + 20, box.y + 8);
    await page.mouse.down();
    await page.mouse.move(box.x + 40, box.y + 28, { steps: 5 });
    await page.mouse.up();
    expect(await plan.undoName()).toBe("Undo: move building");
    await expect(page.locator(".length-ask")).toHaveCount(0);
  });
});
