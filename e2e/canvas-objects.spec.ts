/** Notes, dimensions, section lines, windows, features and measuring, by real mouse and keyboard. */
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { expect, test } from "./support/fixtures";
import { pdfText } from "./support/pdfText";
import { demoProject, type PlanPage, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");
type XY = [number, number];
const [a, b, c, d] = (studio.building?.outline ?? []) as XY[] as [XY, XY, XY, XY];
const undone = (page: Page) => page.keyboard.press("Control+z");

test.describe("on the pottery studio", () => {
  let plan: PlanPage;
  test.beforeEach(async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    plan = planPage(page);
    await plan.fit(studio);
  });

  test("a note is written in a box over the plan, rewritten by a double click, and moved", async ({
    page,
  }) => {
    await page.keyboard.press("n");
    expect(await plan.hint()).toBe(
      "Click or type where the words go, or drag to there from what they are about",
    );
    await plan.drag([c[0] + 4, c[1] - 2], [c[0] + 4, c[1] - 5], [c[0] + 5, c[1] - 8]);
    const box = page.getByRole("textbox", { name: "Words of the note" });
    await expect(box).toBeFocused();
    await page.keyboard.type("spring in March");
    await page.keyboard.press("Enter");
    await expect(box).toHaveCount(0);
    expect(await plan.undoName()).toBe("Undo: write note");

    const words: XY = [c[0] + 6, c[1] - 8];
    await plan.move(...words);
    expect(await plan.hint()).toMatch(/^Drag to move the note, double-click to change its words/);
    await page.mouse.dblclick(...plan.at(...words));
    await expect(box).toHaveValue("spring in March");
    await page.keyboard.type("dry from June");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: rewrite note");

    await plan.drag(words, [words[0] - 1, words[1]], [words[0] - 2, words[1] + 1]);
    expect(await plan.undoName()).toBe("Undo: move note");
    await page.keyboard.press("Delete");
    expect(await plan.undoName()).toBe("Undo: remove note");
  });

  test("a shot that has a place is placed anew by a click, from its row and from the menu", async ({
    page,
  }) => {
    await page.getByRole("button", { name: /^Shots\b.*:/ }).click();
    await page.getByRole("gridcell", { name: "14′ 0″, 94′ 0″" }).click();
    await page.getByRole("button", { name: "Click its place anew" }).click();
    expect(await plan.hint()).toMatch(/^Click where “shot uphill, west” is/);
    await plan.fit(studio);
    await plan.click(d[0] - 6, d[1] - 6);
    expect(await plan.undoName()).toMatch(/^Undo: move shot/);
    await expect(page.getByTestId("inspector")).toContainText("Shot uphill, west");
    await plan.move(d[0] - 6, d[1] - 6);
    await page.mouse.click(...plan.at(d[0] - 6, d[1] - 6), { button: "right" });
    await page.getByRole("menuitem", { name: /^Place by a click/ }).click();
    await plan.click(d[0] - 8, d[1] - 4);
    expect(await plan.undoName()).toMatch(/^Undo: move shot/);
    await undone(page);
    await undone(page);
    await expect(page.getByRole("gridcell", { name: "14′ 0″, 94′ 0″" })).toBeVisible();
  });

  test("a retaining wall is drawn, picked, pulled, dragged, listed and removed; each step has its name", async ({
    page,
  }) => {
    const [from, to]: [XY, XY] = [
      [d[0] - 8, d[1] - 3],
      [d[0] - 8, d[1] - 9],
    ];
    await page.keyboard.press("Control+k");
    await page.keyboard.type("pad, terrace");
    await page.keyboard.press("Enter");
    await page.getByTestId("choices").getByRole("button", { name: "retaining wall" }).click();
    await plan.fit(studio);
    await plan.click(...from);
    await plan.click(...to);
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: draw retaining wall");
    await plan.fit(studio);
    await plan.click(from[0], (from[1] + to[1]) / 2);
    const inspector = page.getByTestId("inspector");
    await expect(inspector).toContainText("Retaining wall");
    const card = page.locator(".told-selected");
    await expect(card.getByRole("textbox", { name: "Down to its footing's bottom" })).toHaveValue("1′ 0″");
    await expect(card.getByRole("textbox", { name: "Down to its footing's bottom" })).toBeInViewport();
    await plan.drag(to, [to[0], to[1] - 1], [to[0] - 2, to[1] - 2]);
    expect(await plan.undoName()).toBe("Undo: change the retaining wall");
    const quarter: XY = [from[0] - 0.5, from[1] - 2];
    await plan.drag(quarter, [quarter[0] - 1, quarter[1]], [quarter[0] - 2, quarter[1]]);
    expect(await plan.undoName()).toBe("Undo: move retaining wall");
    await page.keyboard.press("Control+Shift+O");
    await expect(page.getByRole("dialog")).toContainText("Shapes of the ground");
    await page.keyboard.press("Escape");
    await page.mouse.click(...plan.at(quarter[0] - 2, quarter[1]), { button: "right" });
    await page.getByRole("menuitem", { name: /^Delete/ }).click();
    expect(await plan.undoName()).toBe("Undo: remove retaining wall");
  });

  test("a test pit is put, picked, moved and removed on the plan", async ({ page }) => {
    const at: XY = [d[0] - 5, d[1] - 5];
    await page.keyboard.press("Control+k");
    await page.keyboard.type("test pit");
    await page.keyboard.press("Enter");
    await plan.click(...at);
    await page.keyboard.press("Escape");
    await page.keyboard.press("v");
    await plan.click(...at);
    await expect(page.getByTestId("inspector")).toContainText("Pit 1");
    await page.getByTestId("inspector").getByLabel("Rock at").fill("3'");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: type a depth in a pit");
    await plan.drag(at, [at[0] - 1, at[1]], [at[0] - 2, at[1] - 1]);
    expect(await plan.undoName()).toBe("Undo: move a test pit");
    await page.keyboard.press("Delete");
    expect(await plan.undoName()).toBe("Undo: remove test pit");
  });

  test("Esc leaves a note unwritten; a press elsewhere keeps what was written", async ({ page }) => {
    await page.keyboard.press("n");
    await plan.click(c[0] + 4, c[1] - 6);
    await page.keyboard.type("never mind");
    await page.keyboard.press("Escape");
    expect(await plan.undoName()).toBe("Undo");
    await plan.click(c[0] + 4, c[1] - 6);
    await page.keyboard.type("hedge");
    await plan.click(d[0] - 4, d[1] - 6);
    expect(await plan.undoName()).toBe("Undo: write note");
  });

  test("a dimension is drawn between two corners and pulled farther off", async ({ page }) => {
    await page.getByTestId("tool-dimension").click();
    await plan.click(...d);
    await plan.click(...c);
    const line: XY = [(c[0] + d[0]) / 2 - 2.6, c[1] - 4];
    await plan.move(...line);
    expect(await plan.hint()).toMatch(/type how far it stands off/);
    await plan.click(...line);
    expect(await plan.undoName()).toBe("Undo: draw dimension");
    // Pulled by its middle handle.
    const middle: XY = [(c[0] + d[0]) / 2, c[1] - 4];
    await plan.drag(middle, [middle[0], middle[1] - 1], [middle[0], middle[1] - 3]);
    expect(await plan.undoName()).toBe("Undo: move dimension");
    await undone(page);
    await undone(page);
    expect(await plan.undoName()).toBe("Undo");
  });

  test("a typed stand-off and a typed length make a dimension without the mouse's help", async ({ page }) => {
    await page.keyboard.press("i");
    await plan.click(...a);
    await page.keyboard.type("20'");
    await page.keyboard.press("Tab");
    await page.keyboard.type("270");
    await page.keyboard.press("Enter");
    await page.keyboard.type("5'");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: draw dimension");
  });

  test("a section line is drawn by two clicks and pulled by its end", async ({ page }) => {
    await page.keyboard.press("x");
    const [from, to]: [XY, XY] = [
      [d[0] - 6, d[1] + 2.4],
      [c[0] + 6, c[1] + 2.4],
    ];
    await plan.click(...from);
    await plan.click(...to);
    expect(await plan.undoName()).toBe("Undo: draw section line");
    const strip = page.locator(".section-strip");
    await expect(strip).toContainText("Along section P, west to east");
    await page.mouse.dblclick(...plan.at(from[0] + 2, from[1]));
    await page.getByRole("textbox", { name: "Name of the section line" }).fill("section by the bench");
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: name section line");
    await expect(strip).toContainText("Along section by the bench");
    await undone(page);
    await plan.drag(to, [to[0] + 0.5, to[1]], [to[0] + 1, to[1] + 1]);
    expect(await plan.undoName()).toBe("Undo: change the section line");
    await plan.move(from[0] + 2, from[1] + 0.1);
    await page.keyboard.press("Delete");
    expect(await plan.undoName()).toBe("Undo: remove section line");
    await expect(strip).toContainText("through the building");
  });

  test("a section line drawn in the drive's step is shown, and the drive's long section when it is let go", async ({
    page,
  }) => {
    await page
      .getByRole("button", { name: /^Drive/ })
      .first()
      .click();
    await expect(page.locator(".profile")).toBeVisible();
    await page.keyboard.press("x");
    await plan.click(d[0] - 6, d[1] + 2.4);
    await plan.click(c[0] + 6, c[1] + 2.4);
    await expect(page.locator(".section-strip")).toContainText("Along section P, west to east");
    await page.keyboard.press("Escape");
    await expect(page.locator(".profile")).toBeVisible();
  });

  test("measuring tells distance, angle and area, keeps nothing, and becomes a dimension", async ({
    page,
  }) => {
    await page.keyboard.press("q");
    const reading = page.getByTestId("reading");
    await plan.click(...a);
    await plan.move(...b);
    await expect(reading).toContainText("32′ 0″");
    await plan.click(...b);
    await plan.move(...c);
    await expect(reading).toContainText("90.0°");
    await plan.click(...c);
    await plan.click(...a);
    // Half of 32 by 24 feet; the hypotenuse is 40.
    await expect(reading).toContainText("384 ft²");
    await expect(reading).toContainText("96′ 0″");
    expect(await plan.undoName()).toBe("Undo");
    await page.keyboard.press("Escape");
    await expect(reading).toHaveCount(0);

    await plan.click(...a);
    await plan.click(...b);
    await page.keyboard.press("Enter");
    await expect(reading).toContainText(/ground as it is\s*falls \d/);
    await expect(reading).toContainText("finished");
    await page.getByRole("button", { name: "Make it a dimension" }).click();
    await plan.click((a[0] + b[0]) / 2 + 1.7, a[1] + 5);
    expect(await plan.undoName()).toBe("Undo: draw dimension");
  });

  test("features: kinds by icon and word, a typed distance to keep clear, cautions, lines and areas", async ({
    page,
  }) => {
    await page.keyboard.press("t");
    const choices = page.getByTestId("choices");
    await choices.getByRole("button", { name: "well" }).click();
    await expect(choices).toContainText("Keep cut, fill and running water away from it.");
    await page.keyboard.type("12'");
    await plan.click(d[0] - 6, d[1] - 6);
    expect(await plan.undoName()).toBe("Undo: add well");
    await plan.click(d[0] - 3, d[1] - 8);
    await expect(page.getByRole("textbox", { name: "Keep clear by" }).last()).toHaveValue("12′ 0″");

    await choices.getByRole("button", { name: "other kinds…" }).click();
    await choices.getByRole("button", { name: "buried line" }).click();
    await expect(choices).toContainText("located and marked before any digging");
    await plan.click(d[0] - 7, d[1] - 3);
    await plan.click(c[0] + 5, c[1] - 6);
    await page.keyboard.press("Enter");
    expect(await plan.undoName()).toBe("Undo: add buried line");
    await page.keyboard.press("Escape");
    await expect(choices).toHaveCount(0);
  });

  test("a window goes on a wall, not over a door, and is slid and taken away", async ({ page }) => {
    await page.keyboard.press("o");
    const onWall: XY = [a[0] + 2.5, a[1]];
    await plan.move(onWall[0], onWall[1] + 0.2);
    expect(await plan.hint()).toMatch(/^Click to put a window of 4′ 0″ on wall A–B/);
    await page.keyboard.type("5'");
    await plan.click(onWall[0], onWall[1] + 0.1);
    expect(await plan.undoName()).toBe("Undo: add window");
    await plan.drag([onWall[0], onWall[1]], [onWall[0] + 1, onWall[1]], [onWall[0] + 2, onWall[1]]);
    expect(await plan.undoName()).toBe("Undo: change window");
    await page.keyboard.press("Delete");
    expect(await plan.undoName()).toBe("Undo: remove window");

    const door = studio.building?.doors[0];
    if (!door) throw new Error("the studio has no door");
    await page.keyboard.press("o");
    const along = door.offset + door.width / 2;
    // The big door is in wall C–D, which runs west from C.
    await plan.move(c[0] - along, c[1] - 0.1);
    expect(await plan.hint()).toMatch(/There is a door \(.*\) there already/);
  });
});

test("what was written and drawn is on the printed site plan", async ({ page, openPage, folder }) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await plan.fit(studio);
  await page.keyboard.press("n");
  await plan.click(d[0] - 8, d[1] - 6);
  await page.keyboard.type("hedge stays");
  await page.keyboard.press("Enter");
  await page.keyboard.press("x");
  await plan.click(d[0] - 7, d[1] + 2.4);
  await plan.click(c[0] + 6, c[1] + 2.4);
  await page.getByRole("button", { name: "Site plan…" }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Export as PDF" }).click();
  const path = join(folder, "plan.pdf");
  await (await download).saveAs(path);
  expect(await pdfText(path)).toMatch(/hedge stays/);
});
