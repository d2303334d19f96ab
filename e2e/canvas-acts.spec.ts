/** Acts of the hand that have no other test in the browser: shapes of the ground, snaps, held directions, steps of the arrow keys. */
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { demoProject, type PlanPage, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");
type XY = [number, number];
const [a, b, c, d] = (studio.building?.outline ?? []) as XY[] as [XY, XY, XY, XY];
const middle: XY = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];
const FOOT = 0.3048;
const well = studio.lot.features.find(({ kind }) => kind === "well");
const inspector = (page: Page) => page.getByTestId("inspector");
/** The part of the step that tells of the selected thing. */
const tells = (page: Page) => page.locator(".told-selected");
const locks = (page: Page) => page.locator(".plan-locks");

async function pickEarth(page: Page, plan: PlanPage, kind: string): Promise<void> {
  await page.keyboard.press("p");
  await page.getByTestId("choices").getByRole("button", { name: kind, exact: true }).click();
  // The step's panel and dock are another's.
  await plan.fit(studio);
}

/** Draws a line of places and ends it, then picks it up with the select tool. */
async function drawn(page: Page, plan: PlanPage, places: readonly XY[]): Promise<void> {
  for (const place of places) await plan.click(...place);
  await page.keyboard.press("Enter");
  await plan.fit(studio);
}

test.describe("on the pottery studio", () => {
  let plan: PlanPage;
  test.beforeEach(async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    plan = planPage(page);
    await plan.fit(studio);
  });

  test("a tool that is clicked, in the bar or a panel, or found by name doesn't take away what is half drawn", async ({
    page,
  }) => {
    await page.keyboard.press("w");
    await plan.click(...a);
    await plan.click(a[0] + 12, a[1] + 9);
    await page.getByTestId("tool-measure").click();
    const kept = page.getByText("What you draw isn't finished.");
    await expect(kept).toBeVisible();
    await page.getByRole("button", { name: /yourself$/ }).click();
    await expect(kept).toContainText("(2 times)");
    await page.keyboard.press("ControlOrMeta+k");
    await page.keyboard.type("stump");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("dialog")).toHaveCount(0);
    await expect(kept).toContainText("(3 times)");
    await expect(page.getByTestId("plan")).toBeFocused();
    await page.keyboard.press("Enter");
    await expect(inspector(page)).toContainText("Swale");
    await page.getByTestId("tool-measure").click();
    await expect(page.getByTestId("tool-measure")).toHaveAttribute("aria-pressed", "true");
  });

  test("a terrace, a berm, a grade point and a breakline are drawn, dragged, mirrored and turned", async ({
    page,
  }) => {
    await pickEarth(page, plan, "terrace");
    await drawn(page, plan, [
      [d[0] - 8, d[1] - 2],
      [d[0] - 4, d[1] - 6],
    ]);
    expect(await plan.undoName()).toBe("Undo: draw terrace");
    const inTerrace: XY = [d[0] - 6.6, d[1] - 4.4];
    await plan.click(...inTerrace);
    await expect(inspector(page)).toContainText(/terrace/i);
    await plan.drag(inTerrace, [inTerrace[0] - 0.5, inTerrace[1]], [inTerrace[0] - 1, inTerrace[1] + 1]);
    expect(await plan.undoName()).toBe("Undo: move terrace");
    // Turned by a typed angle about a corner of the building.
    await page.keyboard.press("Shift+T");
    await page.keyboard.type("15");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: turn terrace");
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");

    await pickEarth(page, plan, "berm");
    const [from, to]: [XY, XY] = [
      [d[0] - 8, d[1] - 3],
      [d[0] - 8, d[1] - 8],
    ];
    await drawn(page, plan, [from, to]);
    expect(await plan.undoName()).toBe("Undo: draw berm");
    const onBerm: XY = [from[0], from[1] - 1.6];
    await plan.click(...onBerm);
    await expect(inspector(page).getByLabel("East of 1")).toBeVisible();
    await plan.drag(onBerm, [onBerm[0] + 0.5, onBerm[1]], [onBerm[0] + 2, onBerm[1]]);
    expect(await plan.undoName()).toBe("Undo: move berm");
    const east = inspector(page).getByLabel("East of 1");
    const before = await east.inputValue();
    // About the line of wall A–D, by one click on it.
    await page.keyboard.press("Shift+M");
    await plan.click(a[0], a[1] + (d[1] - a[1]) * 0.3);
    expect(await plan.undoName()).toBe("Undo: mirror berm");
    await expect(east).not.toHaveValue(before);
    await page.keyboard.press("Control+z");
    await expect(east).toHaveValue(before);
    await page.keyboard.press("Delete");
    expect(await plan.undoName()).toBe("Undo: remove berm");

    await pickEarth(page, plan, "grade point");
    const point: XY = [d[0] - 6, d[1] - 6];
    await plan.click(...point);
    expect(await plan.undoName()).toBe("Undo: put grade point");
    await page.keyboard.press("Escape");
    await page.keyboard.press("v");
    await plan.fit(studio);
    await plan.click(...point);
    await tells(page).getByLabel("Height").fill("98'");
    await page.keyboard.press("Enter");
    await plan.drag(point, [point[0] + 0.5, point[1]], [point[0] + 1, point[1] - 1]);
    expect(await plan.undoName()).toBe("Undo: move a grade point");
    await page.keyboard.press("Delete");
    expect(await plan.undoName()).toBe("Undo: remove grade point");

    await page.keyboard.press("e");
    await page.getByTestId("choices").getByRole("button", { name: "ridge" }).click();
    await plan.fit(studio);
    await drawn(page, plan, [from, to]);
    expect(await plan.undoName()).toMatch(/^Undo: draw /);
    await page.keyboard.press("v");
    await plan.click(...onBerm);
    await expect(inspector(page)).toContainText(/ridge/i);
    await plan.drag(onBerm, [onBerm[0] + 0.5, onBerm[1]], [onBerm[0] + 2, onBerm[1]]);
    expect(await plan.undoName()).toMatch(/^Undo: move /);
    await page.keyboard.press("Delete");
    expect(await plan.undoName()).toMatch(/^Undo: remove /);
  });

  test("a line may begin below the card of kinds: what is pressed beside a kind counts", async ({ page }) => {
    await page.keyboard.press("e");
    const choices = page.getByTestId("choices");
    const pressed = async (part: ReturnType<typeof choices.locator>) => {
      const box = await part.boundingBox();
      if (!box) throw new Error("not on the page");
      await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    };
    await pressed(choices.locator("p").first());
    await expect(choices.getByRole("button")).toHaveCount(1);
    await expect(choices.getByRole("button")).toBeDisabled();
    await pressed(choices.getByRole("button"));
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toMatch(/^Undo: draw /);
  });

  test("places catch exactly, each kind of snap by the distance that is measured", async ({ page }) => {
    const reading = page.getByTestId("reading");
    /** Measured between two places that the hand only comes near. */
    const measured = async (from: XY, to: XY): Promise<string> => {
      await page.keyboard.press("Escape");
      await page.keyboard.press("q");
      const near = ([x, y]: XY) => {
        const [px, py] = plan.at(x, y);
        return [px + 3, py - 2] as const;
      };
      for (const place of [from, to]) {
        await page.mouse.move(...near(place));
        await page.mouse.down();
        await page.mouse.up();
      }
      await page.keyboard.press("Enter");
      return reading.innerText();
    };
    // Corners, the middle of a wall, shots.
    expect(await measured(a, b)).toContain("32′ 0″");
    expect(await measured(a, [(a[0] + b[0]) / 2, a[1]])).toContain("16′ 0″");
    const shots = studio.survey.shots.flatMap(({ place }) =>
      place.kind === "at" ? [[place.x, place.y] as XY] : [],
    );
    const [one, other] = shots as [XY, XY];
    // 14′ and 56′ east, 94′ and 97′ north: 42′ and 3′ apart.
    expect([one, other].flat().map((m) => Math.round(m / FOOT))).toEqual([14, 94, 56, 97]);
    expect(await measured(one, other)).toContain("42′ 1¼″");
    // On the grid of 10 feet, from and to places that nothing else is near.
    await page.getByRole("button", { name: "What the hand snaps to" }).click();
    const list = page.getByRole("region", { name: "Snaps" });
    await list.getByRole("button", { name: "None of them" }).click();
    await list.getByRole("checkbox", { name: /^Grid/ }).check();
    await page.keyboard.press("Escape");
    expect(await measured([100 * FOOT, 10 * FOOT], [100 * FOOT, 30 * FOOT])).toContain("20′ 0″");
  });

  test("directions are held: along a wall, as they are, and touching what the well keeps clear", async ({
    page,
  }) => {
    if (!well?.points[0]) throw new Error("the studio has a well");
    const [wx, wy] = well.points[0];
    const line = async (): Promise<readonly string[]> => {
      await page.keyboard.press("Enter");
      await expect(inspector(page).getByLabel("East of 2")).toBeVisible();
      return Promise.all(
        ["East of 1", "North of 1", "East of 2", "North of 2"].map((name) =>
          inspector(page).getByLabel(name).inputValue(),
        ),
      );
    };
    await page.keyboard.press("w");
    await plan.click(d[0] - 6, d[1] - 6);
    await plan.move(a[0], (2 * a[1] + d[1]) / 3);
    await page.keyboard.press("a");
    await expect(locks(page)).toContainText("locked parallel to wall");
    await plan.move(d[0] - 2, d[1] - 12);
    await page.keyboard.type("10'");
    await page.keyboard.press("Enter");
    const [east1, , east2] = await line();
    // Wall D–A runs north: the swale keeps its east.
    expect(east2).toBe(east1);

    await page.keyboard.press("w");
    await plan.fit(studio);
    await plan.click(d[0] - 6, d[1] - 6);
    await plan.move(d[0] - 3, d[1] - 9);
    await page.keyboard.press("k");
    await expect(locks(page)).toContainText("direction kept");
    await page.keyboard.press("k");
    await expect(locks(page)).toHaveText("Arrows, A, P, T, K lock the direction");
    await page.keyboard.press("t");
    await expect(page.getByText("Point at something round first")).toBeVisible();
    await plan.move(wx, wy);
    await page.keyboard.press("t");
    await expect(locks(page)).toContainText("locked touching what");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
  });

  test("a piece of a wall goes in for a U, its width typed over; Alt lets its right angles go", async ({
    page,
  }) => {
    const pullFrom = async (first: XY, last: XY) => {
      await page.keyboard.press("b");
      await page.getByTestId("choices").getByRole("button", { name: "pull a wall" }).click();
      await plan.fit(studio);
      await plan.click(...first);
      await plan.click(...last);
    };
    await pullFrom([a[0] + 10 * FOOT, a[1]], [a[0] + 20 * FOOT, a[1]]);
    await plan.move(a[0] + 15 * FOOT, a[1] - 16 * FOOT);
    await page.getByRole("button", { name: /^width of the piece:/ }).click();
    await page.keyboard.type("12'");
    await page.keyboard.press("Enter");
    await page.keyboard.type("6'");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: push a piece of a wall in");
    await expect(inspector(page).getByLabel("C–D", { exact: true })).toHaveValue("12′ 0″");
    await expect(inspector(page).getByLabel("B–C", { exact: true })).toHaveValue("6′ 0″");
    const eastOf = (corner: string) => page.getByLabel(`Corner ${corner}, east`).inputValue();
    expect(await eastOf("B")).toBe(await eastOf("C"));
    await page.keyboard.press("Control+z");

    await pullFrom([a[0] + 10 * FOOT, a[1]], [a[0] + 20 * FOOT, a[1]]);
    await page.keyboard.down("Alt");
    await plan.move(a[0] + 20 * FOOT, a[1] + 8 * FOOT);
    await plan.click(a[0] + 20 * FOOT, a[1] + 8 * FOOT);
    await page.keyboard.up("Alt");
    expect(await plan.undoName()).toBe("Undo: pull a piece of a wall out");
    expect(await eastOf("B")).not.toBe(await eastOf("C"));
  });

  test("arrow keys move by the step that is set, ten of them with Shift", async ({ page }) => {
    await plan.click(middle[0] + 1, middle[1] + 1);
    const step = inspector(page).getByLabel(/^Arrow keys move it by/);
    await step.fill("1'");
    await step.press("Enter");
    const east = inspector(page).getByLabel("East of A");
    const feet = async () => Number.parseInt(await east.inputValue(), 10);
    const before = await feet();
    await page.getByTestId("plan").focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(feet).toBe(before + 1);
    await page.keyboard.press("Shift+ArrowLeft");
    await expect.poll(feet).toBe(before - 9);
  });

  test("stakes are laid by two clicks on the plan, shown before they are laid", async ({ page }) => {
    await page.getByRole("navigation").getByText("Shots", { exact: true }).click();
    await page.getByRole("button", { name: /^Grid of stakes/ }).click();
    const sheet = page.getByRole("dialog", { name: "Grid of stakes" });
    await sheet.getByLabel("Between stakes").fill("10'");
    await sheet.getByLabel("Between rows").fill("8'");
    await sheet.getByRole("button", { name: "Click the first stake and the row's direction" }).click();
    await expect(sheet).toHaveCount(0);
    await plan.fit(studio);
    await plan.click(...d);
    await plan.click(...c);
    await expect(sheet.getByLabel("First stake")).not.toHaveValue("");
    await expect(sheet.getByRole("status")).toHaveText("20 stakes, shown on the plan.");
    await sheet.getByLabel("Rows", { exact: true }).fill("2");
    await expect(sheet.getByRole("status")).toHaveText("10 stakes, shown on the plan.");
    await sheet.getByRole("button", { name: "Lay the stakes" }).click();
    await expect(sheet).toHaveCount(0);
    await expect(inspector(page)).toContainText("1-1");
    expect(await plan.undoName()).toMatch(/stakes/);
  });
});
