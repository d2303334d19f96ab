/** Times the building dragged across the plan by pointer events, and what its release takes until its earth, and then all, is fine again. */
import { bringTimeStep } from "./time-step.mjs";

const steps = 120;
const releases = 7;

/**
 * @param {import("@playwright/test").Page} page
 * @param {string} address
 * @param {string} text the project's file
 * @returns {Promise<{ drag: number[], earth: number[], release: number[] }>} ms a step; ms from letting go until the earth on the fine grid
 *   is drawn, and until water and limits are too
 */
export async function timeBuildingDrag(page, address, text) {
  await bringTimeStep(page);
  await page.goto(address);
  await page.evaluate((content) => {
    const data = new DataTransfer();
    data.items.add(new File([content], "bench.drysill.json", { type: "application/json" }));
    document.body.dispatchEvent(
      new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }),
    );
  }, text);
  await page.getByTestId("rod-handle").waitFor();
  await page.waitForTimeout(2500);
  await page.keyboard.press("Escape");
  // Nearer, so that the hand takes the building and not one of its handles or figures.
  await page.getByRole("button", { name: "Show the building" }).click();
  await page.waitForTimeout(1500);
  const at = await takeBuilding(page);
  const times = { drag: [], earth: [], release: [] };
  for (let i = 0; i < releases; i++) {
    const { drag, earth, release } = await page.evaluate(dragAndLetGo, {
      count: Math.ceil(steps / releases),
      ...at,
    });
    times.drag.push(...drag);
    times.earth.push(earth);
    times.release.push(release);
    await page.waitForTimeout(800);
  }
  const undo = await page.getByRole("button", { name: /^Undo/ }).textContent();
  if (!/move .*building/.test(undo ?? "")) throw new Error(`the building didn't move: ${undo}`);
  return times;
}

/** Selects the building by a click where no shot lies, and answers with the place, px in the window. */
async function takeBuilding(page) {
  const box = await page.getByTestId("plan").boundingBox();
  if (!box) throw new Error("there is no plan");
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  for (let i = 0; i < 24; i++) {
    // The fitted building stands above the middle: what is said lies below the plan.
    const at = { x: middle.x + 30 + 9 * (i % 6), y: middle.y - 70 + 9 * Math.floor(i / 6) };
    await page.mouse.click(at.x, at.y);
    await page.waitForTimeout(400);
    const chosen = page.getByTestId("inspector").filter({ hasText: "building" });
    if (await chosen.count()) return at;
  }
  throw new Error("no place of the building could be clicked");
}

/** Runs in the page. */
async function dragAndLetGo({ count, x, y }) {
  const plan = document.querySelector('[data-testid="plan"]');
  if (!plan) throw new Error("there is no plan");
  const send = (type, dx, dy, buttons) =>
    plan.dispatchEvent(
      new PointerEvent(type, {
        pointerId: 1,
        isPrimary: true,
        button: 0,
        buttons,
        clientX: x + dx,
        clientY: y + dy,
        bubbles: true,
        cancelable: true,
      }),
    );
  const drag = [];
  send("pointermove", 0, 0, 0);
  send("pointerdown", 0, 0, 1);
  for (let i = 1; i <= count; i++) {
    const [dx, dy] = [30 * Math.sin(i / 4), 20 * Math.sin(i / 5)];
    drag.push(await window.timeStep(() => send("pointermove", dx, dy, 1)));
  }
  // Back near the start, so that the next round finds it in the middle again; a hand rests before it lets go.
  await window.timeStep(() => send("pointermove", 4, 3, 1));
  await new Promise((done) => setTimeout(done, 300));
  const start = performance.now();
  send("pointerup", 4, 3, 0);
  await window.untilEarthFine();
  const earth = performance.now() - start;
  await window.untilSettled();
  return { drag, earth, release: performance.now() - start };
}
