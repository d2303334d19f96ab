/** Times the plan under the hand, panned and zoomed by real events, and watches memory over undo and redo. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bringTimeStep } from "./time-step.mjs";

const steps = 240;

/**
 * @param {import("@playwright/test").Page} page
 * @param {string} address
 * @param {string} text the project's file
 * @param {number} patience ms that opening may take
 * @returns {Promise<{ pan: number[], zoom: number[], open: number }>} ms a step, waiting for the screen left out; and ms to open
 */
export async function timeView(page, address, text, patience = 30_000) {
  const folder = mkdtempSync(join(tmpdir(), "drysill-bench-"));
  try {
    await bringTimeStep(page);
    await page.goto(address);
    const file = join(folder, "bench.drysill.json");
    writeFileSync(file, text);
    // As an argument a large file would be too long.
    await page.evaluate(() => {
      const input = Object.assign(document.createElement("input"), { type: "file", id: "bench-file" });
      document.body.append(input);
    });
    await page.locator("#bench-file").setInputFiles(file);
    const open = await page.evaluate(dropChosen, patience);
    await page.waitForTimeout(3000);
    return { open, ...(await page.evaluate(panAndZoom, steps)) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Drops the file on the page and waits for the frame after the plan is there. Runs in the page. */
async function dropChosen(patience) {
  const input = document.querySelector("#bench-file");
  const data = new DataTransfer();
  data.items.add(input.files[0]);
  input.remove();
  const start = performance.now();
  document.body.dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  do await frame();
  while (!document.querySelector('[data-testid="rod-handle"]') && performance.now() - start < patience);
  if (!document.querySelector('[data-testid="rod-handle"]'))
    throw new Error("the project was not opened in time");
  return performance.now() - start;
}

/** Runs in the page. A step's time: the event's handlers and what they queue, and the next frame's drawing. */
async function panAndZoom(count) {
  const plan = document.querySelector('[data-testid="plan"]');
  if (!plan) throw new Error("there is no plan");
  const box = plan.getBoundingClientRect();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const common = { bubbles: true, cancelable: true };
  const pointer = (type, dx, dy) =>
    plan.dispatchEvent(
      new PointerEvent(type, {
        ...common,
        pointerId: 1,
        isPrimary: true,
        button: 1,
        buttons: 4,
        clientX: x + dx,
        clientY: y + dy,
      }),
    );
  const pan = [];
  pointer("pointerdown", 0, 0);
  for (let i = 1; i <= count; i++)
    pan.push(
      await window.timeStep(() => pointer("pointermove", 220 * Math.sin(i / 20), 140 * Math.sin(i / 27))),
    );
  pointer("pointerup", 0, 0);
  await new Promise((done) => setTimeout(done, 1500));
  const zoom = [];
  for (let i = 1; i <= count; i++) {
    // In by twelve notches, out by twelve.
    const deltaY = Math.floor((i - 1) / 12) % 2 === 0 ? -100 : 100;
    const wheel = () =>
      plan.dispatchEvent(new WheelEvent("wheel", { ...common, deltaY, clientX: x + 60, clientY: y - 40 }));
    zoom.push(await window.timeStep(wheel));
  }
  return { pan, zoom };
}

/**
 * Heap after `count` steps of undo and redo over that after a tenth as many, both after a full collection, MB.
 *
 * @param {import("@playwright/test").Page} page
 * @param {string} address
 * @param {number} count
 */
export async function memoryOverUndo(page, address, count) {
  await page.goto(`${address}/?demo=pottery-studio`);
  await page.getByTestId("rod-handle").waitFor();
  const client = await page.context().newCDPSession(page);
  await client.send("HeapProfiler.enable");
  const heap = async () => {
    // What is still being worked out is held beside what it replaces.
    await page.waitForTimeout(800);
    await page.locator('[data-testid="plan"][data-settled="true"]').waitFor();
    await client.send("HeapProfiler.collectGarbage");
    return (await client.send("Runtime.getHeapUsage")).usedSize / 1e6;
  };
  // Two kinds of edit in turn, so that each is a step of its own.
  for (let i = 0; i < 10; i++) {
    await page.keyboard.press("Alt+ArrowUp");
    await page.keyboard.press(">");
  }
  const go = async (many) => {
    for (let i = 0; i < many; i++)
      await page.keyboard.press(Math.floor(i / 20) % 2 === 0 ? "Control+z" : "Control+Shift+z");
  };
  // Both looks come after a whole number of turns: with the same state of the plan.
  await go(80);
  const before = await heap();
  await go(count);
  return (await heap()) - before;
}
