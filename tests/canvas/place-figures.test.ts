import { describe, expect, it } from "vitest";
import { placeFigures, type ScreenFigure } from "../../src/canvas/overlays/placeFigures";
import { textOnScreen } from "../../src/canvas/scene/written";
import { pxPerMm } from "../../src/canvas/screen";
import { toScreen, type View } from "../../src/canvas/view/view";
import type { TextMark } from "../../src/drawing/marks";

const screen = { width: 600, height: 400 };
const none = { handles: [], words: [] };
const level = (more: Partial<ScreenFigure> = {}): ScreenFigure => ({
  ends: [
    [100, 200],
    [300, 200],
  ],
  off: 17,
  width: 60,
  height: 19,
  fixed: false,
  ...more,
});
const upright = (more: Partial<ScreenFigure> = {}) =>
  level({
    ends: [
      [300, 100],
      [300, 300],
    ],
    ...more,
  });

describe("figures beside what they measure", () => {
  it("stand left of the middle of their piece; beside an upright one so far off that they don't lie on it", () => {
    expect(placeFigures([level()], screen, none)).toEqual([[200, 183]]);
    expect(placeFigures([upright()], screen, none)).toEqual([[300 + 17 + 30 - 9.5, 200]]);
  });

  it("go aside from words of the plan, but rather cover words than not be shown", () => {
    const word = { x: 200, y: 183, width: 50, height: 12 };
    expect(placeFigures([level()], screen, { ...none, words: [word] })).not.toEqual([[200, 183]]);
    const all = { x: 300, y: 200, width: 600, height: 400 };
    expect(placeFigures([level()], screen, { ...none, words: [all] })).toEqual([[200, 183]]);
  });

  it("never cover a handle or one another: the longer piece's stays where it is", () => {
    const handle = { x: 200, y: 200, width: 14, height: 14 };
    const [at] = placeFigures([level({ off: 0 })], screen, { ...none, handles: [handle] });
    expect(Math.abs((at?.[0] ?? 200) - 200)).toBeGreaterThanOrEqual(37);
    const short = level({
      ends: [
        [150, 205],
        [250, 205],
      ],
    });
    const [first, second] = placeFigures([short, level()], screen, none);
    expect(second).toEqual([200, 183]);
    const apart = Math.abs((first?.[0] ?? 200) - 200) >= 60 || Math.abs((first?.[1] ?? 183) - 183) >= 19;
    expect(apart).toBe(true);
  });

  it("of larger words stand farther off, clear of the handle in the middle of their piece", () => {
    const handles = [{ x: 200, y: 200, width: 14, height: 14 }];
    const [at] = placeFigures([level({ height: 28.5, width: 90 })], screen, { handles, words: [] });
    expect(at?.[0]).toBe(200);
    expect(200 - (at?.[1] ?? 200)).toBeGreaterThan((28.5 + 14) / 2);
  });

  it("stand in a second row outside where both sides of their piece are taken, before they are left out", () => {
    const words = [{ x: 200, y: 183, width: 300, height: 34 }];
    const handles = [{ x: 200, y: 217, width: 300, height: 30 }];
    const [at] = placeFigures([level({ off: 17 })], screen, { handles, words });
    // The inner side is left of the way; the second row stands beyond what is taken outside.
    expect(at?.[1]).toBeGreaterThan(232 + 9.5 - 1);
  });

  it("aren't shown on a piece that is hardly longer than a handle, nor beyond the rim", () => {
    const tiny = level({
      ends: [
        [100, 200],
        [120, 200],
      ],
    });
    const outside = level({
      ends: [
        [700, 200],
        [900, 200],
      ],
    });
    expect(placeFigures([tiny, outside], screen, none)).toEqual([null, null]);
  });
});

describe("a text of the plan on the screen", () => {
  it("has its box where it is painted, on a turned plan too", () => {
    const view: View = { centre: [2, 1], scale: 30, angle: 0.5, ...screen };
    const mark: TextMark = {
      kind: "text",
      at: [3, 2],
      text: "12.000 m",
      style: "dimension-label",
      anchor: "middle",
    };
    const [x, y] = toScreen(view, mark.at as [number, number]);
    const box = textOnScreen(mark, view);
    // It stands upright on the screen: its middle straight over its foot.
    expect(box.x).toBeCloseTo(x, 6);
    expect(y - box.y).toBeGreaterThan(0);
    expect(box.height).toBeLessThan(3 * pxPerMm);
    const along = textOnScreen({ ...mark, angle: Math.PI / 2 - 0.5 }, view);
    expect(along.height).toBeCloseTo(box.width, 6);
  });
});
