/** A picture under the plan as a person lays it: chosen or dropped, placed, faded, saved and opened again. */
import { readFileSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { drawingEdits, newProject, openProject, projectText } from "../src/document";
import { expect, test } from "./support/fixtures";
import {
  cameraJpeg,
  colourAt,
  expectColour,
  flag,
  isBlue,
  isGreen,
  isRed,
  newPicture,
  png,
  red,
  scannedPage,
  twoPages,
} from "./support/pictures";
import { type PlanPage, planPage } from "./support/planPage";

async function choose(page: Page, name: string, mimeType: string, buffer: Buffer): Promise<void> {
  const asked = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Place a picture…" }).click();
  await (await asked).setFiles({ name, mimeType, buffer });
}

let plan: PlanPage;

test.beforeEach(async ({ page, openPage }) => {
  await openPage(page);
  await page.getByRole("button", { name: "New plan" }).first().click();
  await page
    .getByRole("radio", { name: /metres/i })
    .first()
    .click({ force: true });
  await page.getByRole("button", { name: "Start" }).click();
  await page.getByRole("button", { name: /^Lot/ }).first().click();
  plan = planPage(page);
  await plan.fit(newProject());
});

test("a picture is chosen, laid by two known points, turned, faded, saved and opened again", async ({
  page,
}) => {
  await choose(page, "flag.png", "image/png", flag);
  const card = page.getByRole("group", { name: "Picture flag" });
  await expect(card).toBeVisible();
  expect(await plan.undoName()).toBe("Undo: place picture");

  // It lies in the middle, 70 % of the view wide: red, white, blue from left to right.
  const { middle, wide } = await newPicture(page, 400, 200);
  const onPicture = (px: number, py: number): [number, number] => [
    middle[0] + ((px - 200) * wide) / 400,
    middle[1] + ((py - 100) * wide) / 400,
  ];
  await expectColour(page, onPicture(60, 60), isRed);
  await expectColour(page, onPicture(340, 60), isBlue);

  // Two places of the picture, 240 px apart, laid on 12 m due north: 5 cm a pixel, a quarter turn.
  await card.getByRole("button", { name: "Two known points" }).click();
  await page.keyboard.down("Shift");
  const clickAt = async (at: readonly [number, number]) => {
    await page.mouse.move(at[0], at[1]);
    await page.mouse.down();
    await page.mouse.up();
  };
  expect(await plan.hint()).toContain("1 of 4");
  await clickAt(onPicture(80, 100));
  await clickAt(plan.at(-6, -6));
  expect(await plan.hint()).toContain("3 of 4");
  const [dx, dy] = [plan.at(-6, -6)[0] - onPicture(80, 100)[0], plan.at(-6, -6)[1] - onPicture(80, 100)[1]];
  const second = onPicture(320, 100);
  await clickAt([second[0] + dx, second[1] + dy]);
  await clickAt(plan.at(-6, 6));
  await page.keyboard.up("Shift");
  expect(await plan.undoName()).toBe("Undo: place picture by two points");
  await expect(card.getByLabel("Width on the ground")).toHaveValue(/^(19\.9|20)/);
  await expectColour(page, plan.at(-5, -7), isRed);
  await expectColour(page, plan.at(-7, 7), isBlue);
  await expectColour(page, plan.at(-2, -7), isRed);
  expect(isRed(await colourAt(page, plan.at(2, -7)))).toBe(false);

  // Turned upright again by typing, faded by keys, and both undone by name.
  await card.getByLabel("Turned clockwise").fill("0");
  await page.keyboard.press("Enter");
  await expectColour(page, plan.at(-13, 1), isRed);
  const strong = await colourAt(page, plan.at(-13, 1));
  await card.getByLabel(/Strength/).focus();
  for (let i = 0; i < 6; i++) await page.keyboard.press("ArrowLeft");
  await expect(card.getByLabel(/Strength/)).toHaveValue("20");
  await expect.poll(async () => (await colourAt(page, plan.at(-13, 1)))[1]).toBeGreaterThan(strong[1] + 30);
  expect(await plan.undoName()).toBe("Undo: fade picture");

  // Locked, the hand goes through it to the plan.
  await card.getByRole("button", { name: "Lock flag where it lies" }).click();
  await expect(card.getByText("Locked where it lies.")).toBeVisible();

  const saved = page.waitForEvent("download");
  await page.keyboard.press("Control+s");
  const file = await (await saved).path();
  const text = readFileSync(file, "utf8");
  const read = openProject(text);
  if (!read.ok) throw new Error("the saved plan does not open");
  const [underlay] = read.project.drawing.underlays;
  expect(underlay?.data).toBe(flag.toString("base64"));
  expect(underlay?.scale).toBeCloseTo(0.05, 3);
  expect(underlay?.strength).toBe(0.2);

  const asked = page.waitForEvent("filechooser");
  await page.keyboard.press("Control+o");
  await (await asked).setFiles({
    name: "again.drysill.json",
    mimeType: "application/json",
    buffer: Buffer.from(text),
  });
  await page.getByRole("button", { name: /^Lot/ }).first().click();
  await expect(card.getByLabel(/Strength/)).toHaveValue("20");
  await plan.fit(read.project);
  await expectColour(page, plan.at(-13, 1), ([r, g, b]) => r > g + 10 && r > b + 10);
});

test("the finder opens the choice of a picture by keyboard alone", async ({ page }) => {
  await page.keyboard.press("Control+k");
  await page.keyboard.type("underlay");
  const asked = page.waitForEvent("filechooser");
  await page.keyboard.press("Enter");
  await (await asked).setFiles({ name: "sketch.png", mimeType: "image/png", buffer: png(8, 8, () => red) });
  await expect(page.getByTestId("inspector")).toContainText("Sketch");
});

test("a photograph that its camera turned stands upright, whatever the browser heeds", async ({ page }) => {
  await choose(page, "camera.jpg", "image/jpeg", await cameraJpeg(page));
  await expect(page.getByRole("group", { name: "Picture camera" })).toBeVisible();

  // Orientation 6 is turned clockwise by whoever shows it: red on top, blue below, the patch at the top right.
  const { middle, high } = await newPicture(page, 150, 300);
  const onPicture = (px: number, py: number): [number, number] => [
    middle[0] + ((px - 75) * high) / 300,
    middle[1] + ((py - 150) * high) / 300,
  ];
  await expectColour(page, onPicture(120, 30), isGreen);
  await expectColour(page, onPicture(30, 120), isRed);
  await expectColour(page, onPicture(30, 30), isRed);
  await expectColour(page, onPicture(30, 270), isBlue);
});

test("two known distances set the scale, and one that doesn't agree is told", async ({ page }) => {
  await choose(page, "flag.png", "image/png", flag);
  const card = page.getByRole("group", { name: "Picture flag" });
  await card.getByRole("button", { name: "A known distance" }).click();
  const { middle, wide } = await newPicture(page, 400, 200);
  const clickOn = async (px: number, py: number) => {
    await page.mouse.move(middle[0] + ((px - 200) * wide) / 400, middle[1] + ((py - 100) * wide) / 400, {
      steps: 2,
    });
    await page.mouse.down();
    await page.mouse.up();
  };
  // The whole width but 20 px on each side: 360 px for 18 m is 20 m for all of it.
  // Below the tools, which stand over its left edge.
  await clickOn(20, 180);
  await clickOn(380, 180);
  await page.getByLabel("how long it is on the ground").fill("18 m");
  await page.keyboard.press("Enter");
  await expect(card.getByLabel("Width on the ground")).toHaveValue(/^(19\.9|20)/);
  expect(await plan.undoName()).toBe("Undo: scale picture by a known distance");
  expect(await plan.hint()).toContain("Click another known distance");
  // The picture is small now; its first end stayed. 100 px down from there would be 5 m, and 6 m is typed.
  const [x, y] = [middle[0] - (180 * wide) / 400, middle[1] + (80 * wide) / 400];
  const metre = plan.at(1, 0)[0] - plan.at(0, 0)[0];
  for (const down of [-4.5, 0.5]) {
    await page.mouse.move(x + 2 * metre, y + down * metre, { steps: 2 });
    await page.mouse.down();
    await page.mouse.up();
  }
  await page.getByLabel("how long it is on the ground").fill("6 m");
  await page.keyboard.press("Enter");
  await expect(page.getByText(/The two distances don't agree: one is 1\d\.\d % off/)).toBeVisible();
  await page.keyboard.press("Escape");
});

test("a page of a PDF is chosen by number, and the reader keeps to the page's policy", async ({ page }) => {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  await choose(page, "plat.pdf", "application/pdf", await twoPages());
  const dialog = page.getByRole("dialog", { name: "Which page?" });
  await expect(dialog).toContainText("plat.pdf has 2 pages.");
  await expect(dialog.locator("canvas[data-page='1']")).toBeVisible();
  await dialog.getByLabel("Page", { exact: true }).fill("3");
  await expect(dialog.getByRole("alert")).toHaveText("Type a page number from 1 to 2.");
  await dialog.getByLabel("Page", { exact: true }).fill("2");
  await expect(dialog.locator("canvas[data-page='2']")).toBeVisible();
  await page.keyboard.press("Enter");

  const card = page.getByRole("group", { name: "Picture plat, page 2" });
  await expect(card).toBeVisible();
  const { middle, wide } = await newPicture(page, 400, 200);
  const onPage = (x: number, y: number): [number, number] => [
    middle[0] + ((x - 200) * wide) / 400,
    middle[1] + ((y - 100) * wide) / 400,
  ];
  await expectColour(page, onPage(60, 60), isRed);
  await expectColour(page, onPage(340, 60), isBlue);
  expect(complaints).toEqual([]);
});

test("a scan in JPEG 2000 on a page of its own is decoded within the page's policy", async ({ page }) => {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  await choose(page, "scan.pdf", "application/pdf", scannedPage());
  await expect(page.getByRole("group", { name: "Picture scan" })).toBeVisible();
  const { middle, wide } = await newPicture(page, 400, 200);
  await expectColour(page, [middle[0] - wide * 0.3, middle[1]], isRed);
  await expectColour(page, [middle[0] + wide * 0.3, middle[1]], isBlue);
  expect(complaints).toEqual([]);
});

test("a picture is dropped where it should lie; the hand moves it and pulls it larger", async ({ page }) => {
  const [x, y] = plan.at(3, 1);
  const transfer = await page.evaluateHandle(
    (bytes) => {
      const held = new DataTransfer();
      held.items.add(new File([Uint8Array.from(bytes)], "dropped.png", { type: "image/png" }));
      return held;
    },
    [...flag],
  );
  await page.getByTestId("plan").dispatchEvent("drop", { dataTransfer: transfer, clientX: x, clientY: y });
  const card = page.getByRole("group", { name: "Picture dropped" });
  await expect(card).toBeVisible();
  const { wide } = await newPicture(page, 400, 200);
  const metre = plan.at(1, 0)[0] - plan.at(0, 0)[0];
  await expectColour(page, [x - wide * 0.4, y], isRed);

  await plan.drag([3, 1], [2, 0], [0, -1]);
  expect(await plan.undoName()).toBe("Undo: move picture");
  const corner: [number, number] = [wide / 2 / metre, wide / 4 / metre - 1];
  await plan.drag(corner, [corner[0] * 0.8, corner[1] * 0.8], [0, -1]);
  expect(await plan.undoName()).toBe("Undo: scale picture");
  await expect(card.getByLabel("Width on the ground")).toHaveValue(
    new RegExp(`^${Math.floor(wide / metre / 2)}`),
  );
});

test("what is too large is made smaller or refused, what can't be read is refused, in words", async ({
  page,
  folder,
}) => {
  await choose(
    page,
    "long.png",
    "image/png",
    png(6000, 60, () => red),
  );
  await expect(
    page.getByText(
      "“long.png” was made smaller, from 6000 × 60 to 4096 × 41 pixels, so that the project file stays light.",
    ),
  ).toBeVisible();

  const large = join(folder, "large.png");
  writeFileSync(large, flag);
  truncateSync(large, 80_000_001);
  const asked = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Place a picture…" }).click();
  await (await asked).setFiles(large);
  await expect(
    page.getByText("“large.png” has 81 MB; a picture under the plan may have 80 MB."),
  ).toBeVisible();

  await choose(page, "spoilt.png", "image/png", flag.subarray(0, 60));
  await expect(
    page.getByText("“spoilt.png” can't be read: the file is damaged, or cut short."),
  ).toBeVisible();
  await choose(page, "vast.png", "image/png", vast());
  await expect(page.getByText("“vast.png” is 20000 × 20000 pixels large, too many to unpack.")).toBeVisible();
  await choose(page, "notes.pdf", "application/pdf", Buffer.from("%PDF-1.7 and nothing more"));
  await expect(page.getByText("“notes.pdf” can't be read as a PDF: the file is damaged")).toBeVisible();
  await expect(page.getByRole("group", { name: /^Picture / })).toHaveCount(1);
});

test("a file whose picture is spoilt opens all the same, and says so", async ({ page }) => {
  const bare = { media: "image/png", data: "AAAA", width: 4, height: 2, scale: 1 } as const;
  const made = drawingEdits.addUnderlay.run(newProject("spoilt"), {
    underlay: { ...bare, at: [0, 0], name: "old plat", turn: 0, strength: 1 },
  });
  if (!made.ok) throw new Error(made.why);
  const asked = page.waitForEvent("filechooser");
  await page.keyboard.press("Control+o");
  const buffer = Buffer.from(projectText(made.project));
  await (await asked).setFiles({ name: "spoilt.drysill.json", mimeType: "application/json", buffer });
  await expect(page.getByText("The picture “old plat” can't be read any more.")).toBeVisible();
  await expect(page.getByTestId("plan")).toBeVisible();
});

/** Only its header: nothing of it is unpacked. */
function vast(): Buffer {
  const bytes = Buffer.from(flag.subarray(0, 60));
  bytes.writeUInt32BE(20_000, 16);
  bytes.writeUInt32BE(20_000, 20);
  return bytes;
}
