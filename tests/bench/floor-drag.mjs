/** Times a scripted drag of the floor on the rod, by pointer events at the handle as a hand makes them. */
import { bringTimeStep } from "./time-step.mjs";

const steps = 300;

/**
 * @param {import("@playwright/test").Page} page
 * @param {string} address
 * @param {string} text the project's file
 * @returns {Promise<{ drag: number[], release: number[], open: number[] }>} ms a step, waiting for the screen left out; ms from
 *   letting go to all of it drawn; and ms to open the file
 */
export async function timeFloorDrag(page, address, text) {
  await bringTimeStep(page);
  const open = [];
  for (let i = 0; i < 3; i++) {
    // On a page anew: one that has a plan already would be done before it began.
    await page.goto(address);
    open.push(await page.evaluate(dropFile, text));
  }
  await page.getByTestId("rod-handle").waitFor();
  await page.waitForTimeout(1500);
  return { ...(await dragOpenFloor(page)), open };
}

/** As `timeFloorDrag`, on a page that has the plan open. */
export function dragOpenFloor(page) {
  return page.evaluate(dragAndTime, steps);
}

/** Drops the file on the page and waits for the frame after the plan is there. Runs in the page. */
async function dropFile(text) {
  const data = new DataTransfer();
  data.items.add(new File([text], "bench.drysill.json", { type: "application/json" }));
  const start = performance.now();
  document.body.dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  do await frame();
  while (!document.querySelector('[data-testid="rod-handle"]') && performance.now() - start < 20_000);
  return performance.now() - start;
}

/** Runs in the page. A step's time: the event's handlers and what they queue, and the next frame's drawing. */
async function dragAndTime(count) {
  const handle = document.querySelector('[data-testid="rod-handle"]');
  if (!handle) throw new Error("the rod has no handle");
  const box = handle.getBoundingClientRect();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const send = (type, clientY) =>
    handle.dispatchEvent(
      new PointerEvent(type, {
        pointerId: 1,
        isPrimary: true,
        button: 0,
        buttons: 1,
        clientX: x,
        clientY,
        bubbles: true,
        cancelable: true,
      }),
    );
  const times = [];
  send("pointerdown", y);
  for (let i = 1; i <= count; i++) {
    times.push(await window.timeStep(() => send("pointermove", y + 40 * Math.sin(i / 15))));
  }
  send("pointerup", y);
  const release = [];
  for (let i = 0; i < 7; i++) {
    send("pointerdown", y);
    await window.timeStep(() => send("pointermove", y + 4 + i));
    await new Promise((done) => setTimeout(done, 300));
    const start = performance.now();
    send("pointerup", y + 4 + i);
    await window.untilSettled();
    release.push(performance.now() - start);
    await new Promise((done) => setTimeout(done, 500));
  }
  return { drag: times, release };
}
