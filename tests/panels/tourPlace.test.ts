import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cardPlace } from "../../src/panels/help/tourPlace";

const window = { width: 1280, height: 800 };
const card = { width: 320, height: 170 };

describe("the tour's card", () => {
  it("stands right of a rail, left of a panel, below a head, above a dock", () => {
    expect(cardPlace({ left: 0, top: 52, width: 176, height: 748 }, card, window)).toEqual({
      left: 190,
      top: 76,
    });
    expect(cardPlace({ left: 952, top: 52, width: 328, height: 748 }, card, window)).toEqual({
      left: 618,
      top: 76,
    });
    expect(cardPlace({ left: 0, top: 0, width: 1280, height: 52 }, card, window)).toEqual({
      left: 480,
      top: 66,
    });
    expect(cardPlace({ left: 0, top: 600, width: 1280, height: 200 }, card, window)).toEqual({
      left: 480,
      top: 416,
    });
  });

  it("stands inside what fills the window, and amid the window where there is nothing to point at", () => {
    expect(cardPlace({ left: 0, top: 0, ...window }, card, window)).toEqual({ left: 480, top: 616 });
    expect(cardPlace(null, card, window)).toEqual({ left: 480, top: 315 });
  });

  it("always stands wholly inside the window", () => {
    const px = (most: number) => fc.integer({ min: 0, max: most });
    fc.assert(
      fc.property(px(1280), px(800), px(1280), px(800), (left, top, width, height) => {
        const at = cardPlace({ left, top, width, height }, card, window);
        expect(at.left).toBeGreaterThanOrEqual(0);
        expect(at.top).toBeGreaterThanOrEqual(0);
        expect(at.left + card.width).toBeLessThanOrEqual(window.width);
        expect(at.top + card.height).toBeLessThanOrEqual(window.height);
      }),
    );
  });
});
