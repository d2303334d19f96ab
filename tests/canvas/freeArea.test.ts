import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pxPerMm } from "../../src/canvas/screen";
import { type Box, coveredPaper, freeBox, freePadding } from "../../src/canvas/view/freeArea";
import { fittedTo, toScreen, toWorld, type View } from "../../src/canvas/view/view";
import { boxesOverlap } from "../../src/drawing/labels";

const plan = { width: 600, height: 400 };
const box = (left: number, top: number, right: number, bottom: number): Box => ({ left, top, right, bottom });

describe("what is free between the things over a plan", () => {
  it("is all of it where nothing lies over it", () => {
    expect(freeBox(plan, [], [4, 3])).toEqual(box(0, 0, 600, 400));
  });

  it("lies beside tools that are as high as the plan, and above a key that is as wide as it", () => {
    const over = [box(0, 0, 90, 400), box(0, 350, 600, 400)];
    expect(freeBox(plan, over, [4, 3])).toEqual(box(90, 0, 600, 350));
  });

  it("goes where what is shown stands larger: something wide below short tools, something high beside them", () => {
    const tools = [box(0, 0, 200, 200)];
    expect(freeBox(plan, tools, [3, 1])).toEqual(box(0, 200, 600, 400));
    expect(freeBox(plan, tools, [1, 1])).toEqual(box(200, 0, 600, 400));
  });

  it("heeds nothing that lies outside the plan, and gives the whole plan where no room is left", () => {
    expect(freeBox(plan, [box(0, 400, 600, 450)], [1, 1])).toEqual(box(0, 0, 600, 400));
    expect(freeBox(plan, [box(-5, -5, 605, 405)], [1, 1])).toEqual(box(0, 0, 600, 400));
  });

  const side = fc.integer({ min: 0, max: 600 });
  const anyBox = fc
    .tuple(side, side, fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }))
    .map(([left, top, w, h]) => box(left, top, left + w, top + h));

  it("never covers anything, unless all of the plan is taken", () => {
    fc.assert(
      fc.property(fc.array(anyBox, { maxLength: 4 }), side, side, (over, w, h) => {
        const free = freeBox(plan, over, [w + 1, h + 1]);
        const whole = free.right - free.left === 600 && free.bottom - free.top === 400;
        const covers = over.some(
          (o) => o.left < free.right && free.left < o.right && o.top < free.bottom && free.top < o.bottom,
        );
        expect(covers && !whole).toBe(false);
      }),
    );
  });

  it("shows a plan between tools, buttons and key with room round it for what is written there", () => {
    const view: View = { centre: [0, 0], scale: 1, angle: 0.3, ...plan };
    const over = [box(0, 0, 90, 300), box(550, 0, 600, 250), box(0, 340, 350, 400)];
    const places = [
      [0, 0],
      [40, 0],
      [40, 30],
      [0, 30],
    ] as const;
    const fit = fittedTo(view, places, (span) => freePadding(plan, over, span));
    for (const place of places) {
      const [x, y] = toScreen(fit, place);
      expect(
        over.some((o) => x > o.left - 20 && x < o.right + 20 && y > o.top - 15 && y < o.bottom + 15),
      ).toBe(false);
    }
  });

  it("is told as paper, so that no text is written under a tool or over the rim, on a turned plan too", () => {
    const view: View = { centre: [3, -2], scale: 20, angle: 0.4, ...plan };
    const [tool, ...rim] = coveredPaper(view, [box(0, 0, 90, 300)]);
    const mm = view.scale / pxPerMm;
    const [x, y] = toScreen(view, [(tool?.x ?? 0) / mm, (tool?.y ?? 0) / mm]);
    expect([x, y]).toEqual([expect.closeTo(45, 9), expect.closeTo(150, 9)]);
    expect(tool).toMatchObject({ width: 90 / pxPerMm, height: 300 / pxPerMm, angle: -0.4 });
    const touching = (px: number, py: number) => {
      const [wx, wy] = toWorld(view, [px, py]);
      const dot = { x: wx * mm, y: wy * mm, width: 0.01, height: 0.01, angle: 0 };
      return rim.some((side) => boxesOverlap(side, dot));
    };
    expect([touching(300, 200), touching(5, 5), touching(-5, 200), touching(300, 405)]).toEqual([
      false,
      false,
      true,
      true,
    ]);
  });
});
