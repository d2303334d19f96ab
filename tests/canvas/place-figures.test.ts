import { describe, expect, it } from "vitest";
import { type Covered, placeFigures, type ScreenFigure } from "../../src/canvas/overlays/placeFigures";
import { textOnScreen } from "../../src/canvas/scene/written";
import { pxPerMm } from "../../src/canvas/screen";
import { toScreen, type View } from "../../src/canvas/view/view";
import type { TextMark } from "../../src/drawing/marks";

const screen = { width: 600, height: 400 };
const placed = (figures: readonly ScreenFigure[], on: typeof screen, covered: Covered) =>
  placeFigures(figures, on, covered).map((place) => place?.at ?? null);
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
    expect(placed([level()], screen, none)).toEqual([[200, 183]]);
    expect(placed([upright()], screen, none)).toEqual([[300 + 17 + 30 - 9.5, 200]]);
  });

  it("go aside from words of the plan, but rather cover words than not be shown", () => {
    const word = { x: 200, y: 183, width: 50, height: 12 };
    expect(placed([level()], screen, { ...none, words: [word] })).not.toEqual([[200, 183]]);
    const all = { x: 300, y: 200, width: 600, height: 400 };
    expect(placed([level()], screen, { ...none, words: [all] })).toEqual([[200, 183]]);
  });

  it("never cover a handle or one another: the longer piece's stays where it is", () => {
    const handle = { x: 200, y: 200, width: 14, height: 14 };
    const [at] = placed([level({ off: 0 })], screen, { ...none, handles: [handle] });
    expect(Math.abs((at?.[0] ?? 200) - 200)).toBeGreaterThanOrEqual(37);
    const short = level({
      ends: [
        [150, 205],
        [250, 205],
      ],
    });
    const [first, second] = placed([short, level()], screen, none);
    expect(second).toEqual([200, 183]);
    const apart = Math.abs((first?.[0] ?? 200) - 200) >= 60 || Math.abs((first?.[1] ?? 183) - 183) >= 19;
    expect(apart).toBe(true);
  });

  it("of larger words stand farther off, clear of the handle in the middle of their piece", () => {
    const handles = [{ x: 200, y: 200, width: 14, height: 14 }];
    const [at] = placed([level({ height: 28.5, width: 90 })], screen, { handles, words: [] });
    expect(at?.[0]).toBe(200);
    expect(200 - (at?.[1] ?? 200)).toBeGreaterThan((28.5 + 14) / 2);
  });

  it("stand in a second row outside where both sides of their piece are taken, before they are left out", () => {
    const words = [{ x: 200, y: 183, width: 300, height: 34 }];
    const handles = [{ x: 200, y: 217, width: 300, height: 30 }];
    const [at] = placed([level({ off: 17 })], screen, { handles, words });
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
    expect(placed([tiny, outside], screen, none)).toEqual([null, null]);
  });
});

describe("words that go with a figure", () => {
  const tie = level({ off: 0, wider: [150, 110] });
  const formOf = (figures: readonly ScreenFigure[], covered: Covered) =>
    placeFigures(figures, screen, covered)[0]?.form;

  it("stand with it where there is room, shorter ones where there is less, and none where they would cover words", () => {
    expect(formOf([tie], none)).toBe(0);
    // Walls of words on both sides of the line leave 120 px between them, then 70.
    const between = (room: number) => [
      { x: 200 - room / 2 - 250, y: 200, width: 500, height: 300 },
      { x: 200 + room / 2 + 250, y: 200, width: 500, height: 300 },
    ];
    expect(formOf([tie], { ...none, words: between(120) })).toBe(1);
    expect(formOf([tie], { ...none, words: between(70) })).toBeNull();
  });

  it("push no other figure away: what is longer stands clear of it, or the figure stays bare", () => {
    const wall = level({
      ends: [
        [100, 222],
        [300, 222],
      ],
      off: 0,
      width: 190,
    });
    const places = placeFigures([tie, wall], screen, none);
    expect(places.every((place) => place !== null)).toBe(true);
    expect(places[1]).toEqual(placeFigures([{ ...tie, wider: [] }, wall], screen, none)[1]);
    const [[x, y], [wx, wy]] = places.map((place) => place?.at) as [[number, number], [number, number]];
    const width = [150, 110][places[0]?.form ?? 2] ?? 60;
    expect(Math.abs(x - wx) >= (width + 190) / 2 || Math.abs(y - wy) >= 19).toBe(true);
  });

  it("stand whole on the screen, though a bare figure may reach beyond its rim", () => {
    const atRim = level({
      ends: [
        [2, 200],
        [42, 200],
      ],
      off: 0,
      wider: [150],
    });
    expect(formOf([atRim], none)).toBeNull();
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
