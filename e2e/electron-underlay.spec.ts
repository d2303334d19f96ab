/** Pictures under the plan in the Electron window: chosen with the native dialog, unpacked by its own Chromium. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "./support/fixtures";
import {
  cameraJpeg,
  expectColour,
  isBlue,
  isGreen,
  isRed,
  newPicture,
  scannedPage,
  twoPages,
} from "./support/pictures";

test("a camera's turned photograph, a page of a PDF and a scan in JPEG 2000", async ({
  launchElectron,
  folder,
}) => {
  const { app, page } = await launchElectron();
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  const choose = async (path: string | null) => {
    await app.evaluate(({ dialog }, path) => {
      const filePaths = path === null ? [] : [path];
      dialog.showOpenDialog = async () => ({ canceled: path === null, filePaths });
    }, path);
    await page.getByRole("button", { name: "Place a picture…" }).click();
  };
  await page.getByRole("button", { name: "New plan" }).first().click();
  await page.getByRole("button", { name: "Start" }).click();
  await page.getByRole("button", { name: /^Lot/ }).first().click();
  const [photo, plat, scan] = ["camera.jpg", "plat.pdf", "scan.pdf"].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ];
  writeFileSync(photo, await cameraJpeg(page));
  writeFileSync(plat, await twoPages());
  writeFileSync(scan, scannedPage());

  await choose(null);
  await choose(photo);
  const camera = page.getByRole("group", { name: "Picture camera" });
  await expect(camera).toBeVisible();
  const { middle, high } = await newPicture(page, 150, 300);
  const onPhoto = (px: number, py: number): [number, number] => [
    middle[0] + ((px - 75) * high) / 300,
    middle[1] + ((py - 150) * high) / 300,
  ];
  await expectColour(page, onPhoto(120, 30), isGreen);
  await expectColour(page, onPhoto(30, 30), isRed);
  await expectColour(page, onPhoto(30, 270), isBlue);
  await camera.getByRole("button", { name: "Remove camera" }).click();

  await choose(plat);
  await page.getByRole("button", { name: "Page after" }).click();
  await page.getByRole("button", { name: "Place this page" }).click();
  await expect(page.getByRole("group", { name: "Picture plat" })).toBeVisible();
  const { wide } = await newPicture(page, 400, 200);
  const onPage = (x: number, y: number): [number, number] => [
    middle[0] + ((x - 200) * wide) / 400,
    middle[1] + ((y - 100) * wide) / 400,
  ];
  await expectColour(page, onPage(60, 60), isRed);
  await expectColour(page, onPage(340, 60), isBlue);
  await page.getByRole("button", { name: "Remove plat" }).click();

  await choose(scan);
  await expect(page.getByRole("group", { name: "Picture scan" })).toBeVisible();
  await expectColour(page, onPage(60, 60), isRed);
  await expectColour(page, onPage(340, 60), isBlue);
  expect(complaints).toEqual([]);
});
