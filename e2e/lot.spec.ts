/** The lot by its deed, setbacks, the taped building and test pits, by keyboard and mouse. */
import { expect, test } from "./support/fixtures";
import { demoProject, planPage } from "./support/planPage";

const studio = demoProject("pottery-studio");

test.describe("the lot by its deed", () => {
  test("a deed typed by keyboard is closed, drawn, and set back from", async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    const plan = planPage(page);
    await page.getByRole("button", { name: /^Lot/ }).first().click();
    await page.getByRole("button", { name: "Type the deed's courses" }).click();
    await page.getByLabel("Next course, bearing").focus();
    // A square of 200 ft whose last course is a foot short.
    for (const [bearing, distance] of [
      ["N 0-00-00 E", "200'"],
      ["due east", "200'"],
      ["S 0 E", "200'"],
      ["270", "199'"],
    ] as const) {
      await page.keyboard.type(bearing);
      await page.keyboard.press("Enter");
      await page.keyboard.type(distance);
      await page.keyboard.press("Enter");
    }
    await expect(page.getByText("1 in 799 of its length")).toBeVisible();
    await expect(
      page.getByRole("img", { name: "The lot by its 4 courses, the deed's north up" }),
    ).toBeVisible();
    await expect(page.locator(".deed-gap")).toHaveCount(1);

    await page.getByText("Spread the misclosure (compass rule)").click();
    await expect(page.locator(".deed-gap")).toHaveCount(0);
    await page.getByRole("button", { name: "Draw the lot anew by the deed" }).click();
    await expect(page.getByText("The lot on the plan is as the deed has it.")).toBeVisible();
    expect(await plan.undoName()).toBe("Undo: draw the lot from its deed");

    const all = page.getByLabel("All lines");
    await all.fill("25'");
    await all.press("Enter");
    await expect(page.getByLabel(/^Line 4, south/)).toHaveValue("25′ 0″");
    expect(await plan.undoName()).toBe("Undo: type setbacks");
    await expect(page.getByText("The building keeps clear of all setbacks.")).toBeVisible();
    // What crosses is told, with its place.
    const south = page.getByLabel(/^Line 4, south/);
    await south.fill("50'");
    await south.press("Enter");
    await expect(page.locator(".crossing")).toContainText(
      "The building stands 6′ 0″ in the setback of line 4",
    );
  });

  test("a bearing that isn't understood stays as typed, with how to write it", async ({ page, openPage }) => {
    await openPage(page, { demo: "pottery-studio" });
    await page.getByRole("button", { name: /^Lot/ }).first().click();
    await page.getByRole("button", { name: "Type the deed's courses" }).click();
    await page.getByLabel("Next course, bearing").fill("N 95 E");
    await page.getByLabel("Next course, distance").fill("100'");
    await page.getByLabel("Next course, distance").press("Enter");
    await expect(page.getByRole("alert")).toContainText("a quadrant bearing goes from 0 to 90 degrees");
    await expect(page.getByLabel("Next course, bearing")).toHaveValue("N 95 E");
  });
});

test("sides and diagonals as taped say which corner to move, in the panel and on the plan", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  await page
    .getByRole("button", { name: /^Building/ })
    .first()
    .click();
  const type = async (name: string, text: string) => {
    const field = page.getByLabel(`${name} as taped`);
    await field.fill(text);
    await field.press("Enter");
  };
  const planned = await page.locator(".tape-planned").allInnerTexts();
  const names = await page.locator(".tape .coordinate-name").allInnerTexts();
  expect(names).toEqual(["A–B", "B–C", "C–D", "A–D", "A–C", "B–D"]);
  for (const [i, name] of names.entries()) if (name !== "B–D") await type(name, planned[i] ?? "");
  await expect(page.getByText("Nothing checks these tapes")).toBeVisible();
  await expect(page.getByText("It stands as planned")).toBeVisible();
  const diagonal = page.getByLabel("A–C as taped");
  await diagonal.fill(`${planned[4]?.replace(/″$/, "")}″`);
  await type("A–C", "41'");
  await expect(page.getByText(/^Out of square by /)).toBeVisible();
  const moved = page.locator(".fact", { hasText: "Corner C" });
  await expect(moved).toContainText(/(towards|away from) [BD]/);
  // With the other diagonal as planned, the tape that is a foot long is named before any corner is told to move.
  await type("B–D", planned[5] ?? "");
  await expect(
    page.getByText(/A–C doesn't fit the others: about 1′ 0″ too long, as with a foot misread/).first(),
  ).toBeVisible();
  await expect(page.getByText("Without A–C: It stands as planned")).toBeVisible();
});

test("pits are put on the plan, their depths typed, and the strip takes what they show", async ({
  page,
  openPage,
}) => {
  await openPage(page, { demo: "pottery-studio" });
  const plan = planPage(page);
  await plan.fit(studio);
  const [a = [0, 0]] = studio.building?.outline ?? [];
  await page.keyboard.press("h");
  await plan.click(a[0] - 3, a[1] + 3);
  expect(await plan.undoName()).toBe("Undo: add a test pit");
  // Its depths are there to be typed as soon as it is put down.
  const topsoil = page.getByTestId("inspector").getByLabel("Topsoil down to");
  await topsoil.fill('9"');
  await topsoil.press("Enter");
  await page.getByRole("button", { name: "Let go of what is selected" }).click();
  await page
    .getByRole("button", { name: /^Foundation/ })
    .first()
    .click();
  await page.getByLabel("Water at").fill("2'");
  await page.getByLabel("Water at").press("Enter");
  await expect(page.getByRole("table", { name: "Ground below the trench's corners" })).toContainText("A");
  await page
    .getByRole("button", { name: /^Quantities/ })
    .first()
    .click();
  await expect(page.getByText("1 test pit: 9″ of topsoil.")).toBeVisible();
  await page.getByRole("button", { name: "Take 9″" }).click();
  await expect(page.getByLabel("Strip topsoil")).toHaveValue("9″");
});
