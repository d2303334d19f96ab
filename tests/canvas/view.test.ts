import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  fitted,
  held,
  isSeen,
  panBy,
  scaleLimits,
  seenBounds,
  toScreen,
  toWorld,
  type View,
  zoomAt,
} from "../../src/canvas/view/view";

const view: View = { centre: [10, 20], scale: 8, angle: 0, width: 800, height: 600 };

const coordinate = fc.integer({ min: -900_000_000, max: 900_000_000 }).map((mm) => mm / 1000);
const anyView = fc.record({
  centre: fc.tuple(coordinate, coordinate),
  scale: fc.integer({ min: 50, max: 400_000 }).map((n) => n / 1000),
  angle: fc.integer({ min: -3141, max: 3141 }).map((n) => n / 1000),
  width: fc.integer({ min: 200, max: 3000 }),
  height: fc.integer({ min: 200, max: 2000 }),
});
const pixel = fc.integer({ min: -500, max: 3500 });

describe("the view, worked by hand", () => {
  it("puts its centre in the middle, east to the right and north up", () => {
    expect(toScreen(view, [10, 20])).toEqual([400, 300]);
    expect(toScreen(view, [11, 20])).toEqual([408, 300]);
    expect(toScreen(view, [10, 21])).toEqual([400, 292]);
  });

  it("turns the plan counter-clockwise: a quarter turn brings east up", () => {
    const [x, y] = toScreen({ ...view, angle: Math.PI / 2 }, [11, 20]);
    expect(x).toBeCloseTo(400, 9);
    expect(y).toBeCloseTo(292, 9);
  });

  it("fits bounds into what the padding leaves: 40 by 30 m into 700 by 450 px is 15 px a metre", () => {
    const fit = fitted(
      view,
      { minX: 0, minY: 0, maxX: 40, maxY: 30 },
      { top: 100, bottom: 50, left: 60, right: 40 },
    );
    expect(fit.scale).toBe(15);
    // The middle of the bounds lies in the middle of what is left: x 60..760, y 100..550.
    expect(toScreen(fit, [20, 15])).toEqual([410, 325]);
  });

  it("shows something for an empty plan and for a single place", () => {
    const padding = { top: 0, right: 0, bottom: 0, left: 0 };
    const empty = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
    expect(fitted(view, empty, padding).centre).toEqual([0, 0]);
    const single = fitted(view, { minX: 5, minY: 5, maxX: 5, maxY: 5 }, padding);
    expect(toScreen(single, [5, 5])).toEqual([400, 300]);
    expect(single.scale).toBeLessThan(scaleLimits.most);
  });
});

describe("the view, for any", () => {
  it("goes from screen to plan and back", () =>
    fc.assert(
      fc.property(anyView, pixel, pixel, (any, x, y) => {
        const [px, py] = toScreen(any, toWorld(any, [x, y]));
        // Coordinates of hundreds of kilometres leave some micrometres, times the scale.
        expect(Math.abs(px - x)).toBeLessThan(1e-3);
        expect(Math.abs(py - y)).toBeLessThan(1e-3);
      }),
    ));

  it("zooms about the pointer: the place under it stays", () =>
    fc.assert(
      fc.property(anyView, pixel, pixel, fc.integer({ min: 1, max: 5000 }), (any, x, y, thousandths) => {
        const place = toWorld(any, [x, y]);
        const [px, py] = toScreen(zoomAt(any, [x, y], thousandths / 1000), place);
        expect(Math.hypot(px - x, py - y)).toBeLessThan(1e-2);
      }),
    ));

  it("pans by what the hand moved", () =>
    fc.assert(
      fc.property(anyView, pixel, pixel, (any, dx, dy) => {
        const [x, y] = toScreen(panBy(any, dx, dy), toWorld(any, [0, 0]));
        expect(Math.hypot(x - dx, y - dy)).toBeLessThan(1e-2);
      }),
    ));

  it("keeps its scale within limits", () =>
    fc.assert(
      fc.property(anyView, fc.constantFrom(1e-9, 1e9), (any, factor) => {
        const { scale } = zoomAt(any, [0, 0], factor);
        expect(scale).toBeGreaterThanOrEqual(scaleLimits.least);
        expect(scale).toBeLessThanOrEqual(scaleLimits.most);
      }),
    ));

  it("sees the corners of its own bounds on or beyond its rim", () =>
    fc.assert(
      fc.property(anyView, (any) => {
        const box = seenBounds(any);
        const [x, y] = toScreen(any, [box.minX, box.minY]);
        expect(x > 1 && x < any.width - 1 && y > 1 && y < any.height - 1).toBe(false);
      }),
    ));
});

describe("a view that wandered off", () => {
  const lot = { minX: 0, minY: 0, maxX: 40, maxY: 30 };

  it("is held so that the plan can be found again", () => {
    const far = held({ ...view, centre: [10_000, 15] }, lot);
    const reach = Math.hypot(800, 600) / 2 / 8;
    expect(far.centre).toEqual([40 + reach, 15]);
  });

  it("is left alone near the plan", () => {
    expect(held(view, lot)).toBe(view);
  });

  it("knows what is in sight, with a margin", () => {
    expect(isSeen(view, [10, 20], 60)).toBe(true);
    expect(isSeen(view, [10 + 340 / 8, 20], 59)).toBe(true);
    expect(isSeen(view, [10 + 345 / 8, 20], 60)).toBe(false);
  });
});
