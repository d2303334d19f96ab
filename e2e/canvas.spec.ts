import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { demoProject, type PlanPage, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");
/** The studio's corners: A (13.4, 18.9) and so on; its middle. */
const outline = studio.building?.outline ?? [];
const [a, b, c, d] = outline as [number, number][] as [
  [number, number],
  [number, number],
  [number, number],
  [number, number],
];
const middle: [number, number] = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];

const floorOnRod = (page: Page) => page.getByTestId("rod-value").innerText();
const undone = (page: Page) => page.keyboard.press("Control+z");

test.describe("on the pottery studio", () => {
  let plan: PlanPage;
  test.beforeEach(async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    plan = planPage(page);
    await plan.fit(studio);
  });

  test("the floor follows the mouse on the rod and is one undo step; Esc gives it up", async ({ page }) => {
    const handle = page.getByTestId("rod-handle");
    const before = await floorOnRod(page);
    const sentence = await page.locator(".say").innerText();
    const box = await handle.boundingBox();
    if (!box) throw new Error("the rod has no handle");
    const [x, y] = [box.x + 20, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 30, { steps: 10 });
    const under = await floorOnRod(page);
    expect(under).not.toBe(before);
    await page.keyboard.press("Escape");
    expect(await floorOnRod(page)).toBe(before);
    await page.mouse.up();
    expect(await plan.undoName()).toBe("Undo");

    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 30, { steps: 10 });
    await page.mouse.up();
    expect(await floorOnRod(page)).toBe(under);
    await expect(page.locator(".say")).not.toHaveText(sentence);
    expect(await plan.undoName()).toMatch(/^Undo: floor up \d/);
    await undone(page);
    expect(await floorOnRod(page)).toBe(before);
  });

  test("the floor moves by keys, in one undo step, and by typing a height", async ({ page }) => {
    const handle = page.getByTestId("rod-handle");
    await handle.focus();
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Shift+ArrowUp");
    // The demo's floor is 99′ 5″: two quarters and an inch more.
    expect(await floorOnRod(page)).toBe("99′ 6½″");
    await expect(handle).toHaveAttribute("aria-valuetext", /^99′ 6½″, 1′ 1¼″ out of the ground at A, .*/);
    await undone(page);
    expect(await floorOnRod(page)).toBe("99′ 5″");
    await handle.focus();
    await page.keyboard.press("PageDown");
    expect(await floorOnRod(page)).toBe("98′ 11″");

    await handle.click();
    await page.keyboard.type("100' 2 1/2\"");
    await page.keyboard.press("Enter");
    expect(await floorOnRod(page)).toBe("100′ 2½″");

    await handle.focus();
    await page.keyboard.type("98.5");
    await page.keyboard.press("Enter");
    expect(await floorOnRod(page)).toBe("98′ 6″");
    await expect(handle).toContainText("too low");
    await undone(page);

    await handle.focus();
    await page.keyboard.press("Enter");
    await expect(page.locator(".rod-typed input")).toBeFocused();
    await page.keyboard.press("Escape");
    expect(await floorOnRod(page)).toBe("100′ 2½″");

    await handle.click();
    await page.keyboard.type("high");
    await page.keyboard.press("Enter");
    await expect(page.locator(".rod-typed [role=alert]")).toContainText("high");
    await page.keyboard.press("Escape");
    expect(await floorOnRod(page)).toBe("100′ 2½″");
  });

  test("the pointer's place is told in words", async () => {
    await plan.move(...middle);
    expect(await plan.readOut()).toMatch(/floor 1′ \d.*″ above the ground/);
    // South of the wall, beside the drive.
    await plan.move(d[0] + 1, d[1] - 1.2);
    expect(await plan.readOut()).toMatch(/of fill · falls 5\.\d % to S/);
    expect(await plan.readOut()).toMatch(/measured · .* from corner D/);
    await plan.move(2.3, 28.9);
    expect(await plan.readOut()).toMatch(/guessed · .* from corner A/);
  });

  test("the building is selected, moved, pulled and turned by the mouse", async ({ page }) => {
    await plan.move(...middle);
    expect(await plan.hint()).toBe("Click to select the building");
    await plan.click(...middle);
    await plan.move(middle[0] + 1, middle[1] + 1.5);
    expect(await plan.hint()).toMatch(/Drag to move the building/);

    await plan.drag(
      [middle[0] + 1, middle[1] + 1.5],
      [middle[0] - 1, middle[1] + 1.5],
      [middle[0] - 2, middle[1] + 1.5],
    );
    expect(await plan.undoName()).toBe("Undo: move building");
    await undone(page);

    // The wall handle in the middle of D–A, pulled two metres west.
    await plan.drag([d[0], middle[1]], [d[0] - 1, middle[1]], [d[0] - 2, middle[1]]);
    expect(await plan.undoName()).toBe("Undo: pull a wall");
    await expect(page.getByRole("navigation")).toContainText(/3[89]×24/);
    await undone(page);

    await plan.drag([...c], [c[0] + 1, c[1] - 1]);
    expect(await plan.undoName()).toBe("Undo: pull a corner");
    await undone(page);

    // The turn handle stands 30 px off the upper wall.
    const [x, y] = plan.at((a[0] + b[0]) / 2, a[1]);
    await page.mouse.move(x, y - 30);
    expect(await plan.hint()).toBe("Drag to turn the building");
    await page.mouse.down();
    await page.mouse.move(x + 40, y - 20, { steps: 6 });
    await page.mouse.up();
    expect(await plan.undoName()).toBe("Undo: turn building");
    await undone(page);
    await expect(page.getByRole("navigation")).toContainText("32×24");
  });

  test("a click on a wall's handle asks for a length", async ({ page }) => {
    await plan.click(...middle);
    await plan.click(d[0], middle[1]);
    const field = page.locator(".length-ask input");
    await expect(field).toHaveValue("32′ 0″");
    await page.keyboard.type("nine");
    await page.keyboard.press("Enter");
    await expect(page.locator(".length-ask [role=alert]")).toContainText("nine");
    await field.fill("28'");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("navigation")).toContainText("28×24");
  });

  test("a distance is typed while the building is under the hand", async ({ page }) => {
    await plan.click(...middle);
    await plan.move(middle[0] + 1, middle[1] + 1.5);
    await page.mouse.down();
    await plan.move(middle[0] + 3, middle[1] + 1.5);
    await page.keyboard.type("6'");
    await expect(page.locator(".typed-chip")).toContainText("length 6'");
    await page.keyboard.press("Enter");
    await page.mouse.up();
    expect(await plan.undoName()).toBe("Undo: move building");
    // A corner that was measured stays as ground; the corner of the moved building lies 6 ft from it.
    await plan.move(a[0], a[1]);
    expect(await plan.readOut()).toMatch(/6′ 0″ from corner A|5′ 11.*″ from corner A/);
  });

  test("keys nudge and remove what is selected", async ({ page }) => {
    await plan.click(...middle);
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    expect(await plan.undoName()).toBe("Undo: move building");
    await undone(page);
    expect(await plan.undoName()).toBe("Undo");
    await page.keyboard.press("Delete");
    await expect(page.locator(".rod-empty")).toHaveText("Draw the building to set its floor.");
    await undone(page);
    expect(await floorOnRod(page)).toBe("99′ 5″");
  });

  test("the wheel zooms about the pointer, Space and drag pan, F fits", async ({ page }) => {
    const nearA = /· [0-3]?[⅛¼⅜½⅝¾⅞]?″ from corner A/;
    await plan.move(a[0], a[1]);
    expect(await plan.readOut()).toMatch(nearA);
    const bar = page.locator(".scale-bar text");
    const length = (await bar.textContent()) ?? "";
    for (let i = 0; i < 5; i++) await page.mouse.wheel(0, -120);
    await expect(bar).not.toHaveText(length);
    const [x, y] = plan.at(a[0], a[1]);
    await page.mouse.move(x + 1, y);
    await page.mouse.move(x, y);
    expect(await plan.readOut()).toMatch(nearA);

    await page.keyboard.down("Space");
    await page.mouse.down();
    await page.mouse.move(x + 80, y + 40, { steps: 5 });
    await page.mouse.up();
    await page.keyboard.up("Space");
    await page.mouse.move(x + 81, y + 40);
    expect(await plan.readOut()).toMatch(nearA);
    await page.keyboard.press("f");
    await expect(bar).toHaveText(length);
  });

  test("a shot is moved, and back by undo", async ({ page }) => {
    const shot = studio.survey.shots.find(({ place }) => place.kind === "at");
    if (shot?.place.kind !== "at") throw new Error("the demo has no shot of its own place");
    const { x, y } = shot.place;
    await plan.click(x, y);
    await plan.drag([x, y], [x + 1, y], [x + 1.5, y - 0.5]);
    expect(await plan.undoName()).toMatch(/^Undo: move shot/);
    await undone(page);
    expect(await plan.undoName()).toBe("Undo");
  });

  test("parts of the plan can be switched off, the key with its map", async ({ page }) => {
    await expect(page.getByRole("region", { name: "Key of cut and fill" })).toContainText("fill");
    await page.getByRole("button", { name: "What the plan shows" }).click();
    await page.getByRole("checkbox", { name: "Cut and fill" }).uncheck();
    await expect(page.getByRole("region", { name: "Key of cut and fill" })).toHaveCount(0);
    await page.keyboard.press("Escape");
    await expect(page.getByRole("checkbox", { name: "Cut and fill" })).toHaveCount(0);
  });

  test("the section names its way and its scale, and points at the plan", async ({ page }) => {
    const section = page.getByRole("img", { name: /^Section/ });
    await expect(section).toHaveAttribute("aria-label", /Section north to south .* heights drawn .* times/);
    const box = await section.boundingBox();
    if (!box) throw new Error("no section");
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    expect(await plan.readOut()).toMatch(/above the ground/);
  });

  test("another height of the dock fits the plan again, until a hand moves the view", async ({ page }) => {
    const bar = () => page.locator(".scale-bar").innerHTML();
    const whole = await bar();
    await page.getByRole("navigation").getByText("Shots", { exact: true }).click();
    await expect(page.getByRole("grid")).toBeVisible();
    await expect.poll(bar).not.toBe(whole);
    await page.getByRole("navigation").getByText("Floor", { exact: true }).click();
    await expect.poll(bar).toBe(whole);
    await page.mouse.move(...plan.at(middle[0], middle[1]));
    await page.mouse.wheel(0, -300);
    await expect.poll(bar).not.toBe(whole);
    const near = await bar();
    await page.getByRole("navigation").getByText("Shots", { exact: true }).click();
    await expect(page.getByRole("grid")).toBeVisible();
    expect(await bar()).toBe(near);
  });
});

test.describe("on a new plan", () => {
  let plan: PlanPage;
  test.beforeEach(async ({ page, openPage }) => {
    await openPage(page);
    await page.keyboard.press("Control+n");
    await page.getByRole("button", { name: "Start" }).click();
    plan = planPage(page);
    await expect(page.getByText("Nothing on the plan yet")).toBeVisible();
    await plan.fit();
  });

  test("a lot larger than the view is drawn: the plan moves in from its rim, and tells the area so far", async ({
    page,
  }) => {
    await page.getByTestId("tool-lot").click();
    await plan.fit();
    const box = await page.getByTestId("plan").boundingBox();
    if (!box) throw new Error("the plan is not on the page");
    const middle = box.y + box.height / 2;
    await page.mouse.click(box.x + box.width / 2, middle);
    // At the lower rim, clear of the buttons of the view, the plan comes up as long as the pointer rests.
    await page.mouse.move(box.x + box.width / 2, middle + 80);
    await page.mouse.move(box.x + box.width / 2 + 40, box.y + box.height - 3, { steps: 3 });
    await page.waitForTimeout(1400);
    await page.mouse.down();
    await page.mouse.up();
    await page.mouse.move(box.x + box.width / 2 + 120, middle, { steps: 3 });
    await page.mouse.down();
    await page.mouse.up();
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toMatch(/^Undo: draw lot/);
    const longest = await page.evaluate(() => document.querySelector(".side")?.textContent ?? "");
    const feet = [...longest.matchAll(/(\d+)′/g)].map(([, text]) => Number(text));
    // The whole plan was about 40' high in the first view.
    expect(Math.max(...feet)).toBeGreaterThan(60);
  });

  test("the building is drawn by typing its size", async ({ page }) => {
    await page.keyboard.press("b");
    expect(await plan.hint()).toMatch(/^Press at one corner and drag/);
    await plan.move(-4, -3);
    await page.keyboard.type("32'");
    await page.keyboard.press("Tab");
    await page.keyboard.type("24'");
    expect(await plan.hint()).toMatch(/Click to put it here/);
    await page.keyboard.press("Enter");
    await expect(page.getByRole("navigation")).toContainText("32×24");
    await expect(page.getByTestId("tool-select")).toHaveAttribute("aria-pressed", "true");
    await expect(page.getByTestId("rod-handle")).toBeVisible();
  });

  test("the building is drawn by a drag, then a door, a drive to it and a swale", async ({ page }) => {
    await page.getByTestId("tool-building").click();
    await expect(page.getByRole("region", { name: "Below the plan: section" })).toBeVisible();
    await plan.fit();
    await plan.drag([-5, -3], [0, 0], [5, 4]);
    await expect(page.getByRole("navigation")).toContainText(/\d+×\d+/);

    await page.keyboard.press("d");
    await plan.move(0.2, -3);
    expect(await plan.hint()).toMatch(/in the middle of wall C–D/);
    await plan.click(0.2, -3);
    expect(await plan.undoName()).toBe("Undo: add door");

    await page.keyboard.press("r");
    await plan.click(1, -9);
    await plan.click(0.5, -6);
    await plan.click(0.1, -3);
    expect(await plan.undoName()).toBe("Undo: draw drive");
    await expect(page.getByTestId("tool-select")).toHaveAttribute("aria-pressed", "true");

    await page.keyboard.press("w");
    await plan.click(-9, 5);
    await plan.click(0, 7);
    await plan.click(9, 5);
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: draw swale");
  });

  test("the lot is drawn by clicks and typed lengths, and closed by a click on its first corner", async ({
    page,
  }) => {
    await page.keyboard.press("l");
    await expect(page.getByRole("heading", { name: "Lot", exact: true })).toBeVisible();
    await plan.fit();
    await plan.click(-12, -8);
    await plan.move(0, -8);
    await page.keyboard.type("70'");
    await page.keyboard.press("Tab");
    await page.keyboard.type("90");
    await page.keyboard.press("Enter");
    await plan.click(9, 7);
    await plan.click(-12, 7);
    await plan.click(-12, -8);
    await expect(page.getByRole("navigation")).toContainText("4 corners");
  });

  test("a word typed where a length or a bearing goes is answered, and nothing is lost", async ({ page }) => {
    await page.keyboard.press("l");
    await expect(page.getByRole("heading", { name: "Lot", exact: true })).toBeVisible();
    await plan.fit();
    await plan.click(-6, -4);
    await plan.move(3, -4);
    await page.keyboard.type("70'");
    await page.keyboard.press("Tab");
    await expect(page.locator(".typed-chip")).toContainText("clockwise from north");
    await page.keyboard.type("west");
    await expect(page.getByText("Type a bearing clockwise from north")).toBeVisible();
    await expect(page.getByTestId("tool-lot")).toHaveAttribute("aria-pressed", "true");
    expect(await plan.hint()).toMatch(/^Click the next corner/);
  });

  test("shots are placed by clicks, and Esc leaves the tool", async ({ page }) => {
    await page.getByRole("button", { name: "Place shots" }).click();
    await expect(page.getByTestId("tool-shot")).toHaveAttribute("aria-pressed", "true");
    await plan.fit();
    await plan.click(-6, -3);
    await plan.click(6, -3);
    expect(await plan.undoName()).toMatch(/add shot/);
    await expect(page.getByText("3 more placed shots")).toBeVisible();
    await page.getByTestId("plan").press("Escape");
    await expect(page.getByTestId("tool-select")).toHaveAttribute("aria-pressed", "true");
  });

  test("the mark is made by a click", async ({ page }) => {
    await page.keyboard.press("m");
    await plan.click(-6, 4);
    expect(await plan.undoName()).toBe("Undo: add mark Mark");
  });
});
