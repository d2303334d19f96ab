import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { displaySchema } from "../../src/document/schema";
import { checkBarLength, scaleBar } from "../../src/sheets/furniture";
import { sheetLayout } from "../../src/sheets/papers";
import { chooseSheet, scaleFor, standardScales } from "../../src/sheets/scales";

const feet = displaySchema.parse({ length: "ft-in" });
const metric = displaySchema.parse({ length: "m" });
const square = (side: number) => ({ minX: 0, minY: 0, maxX: side, maxY: side });

describe("choosing a scale", () => {
  it("20 m square on A3 in metres: 1:75 is 267 mm, too much for the 261 mm there are; 1:100 fits", () => {
    expect(chooseSheet(square(20), "a3", metric).scale).toEqual({ ratio: 100, words: "1:100" });
  });

  it("in feet takes a scale that is on a ruler: 100 ft on tabloid at 1/8 in to the foot is 12.5 in, too long", () => {
    const { scale } = chooseSheet(square(30.48), "tabloid", feet);
    expect(scale.words).toBe("³⁄₃₂″ = 1′");
    expect(30_480 / scale.ratio).toBeLessThan(244.4);
  });

  it("turns the paper upright only where that allows a larger scale", () => {
    const tall = { minX: 0, minY: 0, maxX: 20, maxY: 55 };
    expect(chooseSheet(tall, "a3", metric).layout.portrait).toBe(true);
    expect(chooseSheet(square(20), "a3", metric).layout.portrait).toBe(false);
  });

  it("fits whatever must be shown, and the next larger standard scale would not", () => {
    const side = fc.integer({ min: 4000, max: 400_000 }).map((millimetres) => millimetres / 1000);
    fc.assert(
      fc.property(side, side, fc.boolean(), (width, height, useFeet) => {
        const display = useFeet ? feet : metric;
        const bounds = { minX: -width, minY: 0, maxX: 0, maxY: height };
        const { layout, scale } = chooseSheet(bounds, "a4", display);
        expect((width * 1000) / scale.ratio).toBeLessThan(layout.plan.width);
        expect((height * 1000) / scale.ratio).toBeLessThan(layout.plan.height);
        const larger = standardScales(display, "a4")
          .filter((one) => one.ratio < scale.ratio)
          .pop();
        if (!larger) return;
        for (const portrait of [false, true]) {
          const { plan } = sheetLayout("a4", portrait);
          const fits =
            (width * 1000) / larger.ratio + 14 <= plan.width &&
            (height * 1000) / larger.ratio + 14 <= plan.height;
          expect(fits).toBe(false);
        }
      }),
    );
  });

  it("keeps a scale that was asked for and names it", () => {
    expect(chooseSheet(square(20), "a4", feet, 240).scale.words).toBe("1″ = 20′");
    expect(scaleFor(333, metric, "a4").words).toBe("1:333");
  });

  it("goes on beyond the standard list", () => {
    const { scale, layout } = chooseSheet(square(5000), "a4", metric);
    expect(scale.ratio % 1000).toBe(0);
    expect(5_000_000 / scale.ratio).toBeLessThan(layout.plan.height);
  });
});

describe("the layout of a paper", () => {
  it.each(["letter", "tabloid", "a4", "a3"] as const)(
    "on %s keeps plan, strip, columns and title apart",
    (paper) => {
      for (const portrait of [false, true]) {
        const { frame, plan, strip, title, columns } = sheetLayout(paper, portrait);
        const parts = [plan, strip, title, ...columns];
        for (const [i, a] of parts.entries()) {
          expect(a.x + a.width).toBeLessThanOrEqual(frame.x + frame.width + 1e-9);
          expect(a.y + a.height).toBeLessThanOrEqual(frame.y + frame.height + 1e-9);
          for (const b of parts.slice(i + 1)) {
            const apart =
              a.x + a.width <= b.x + 1e-9 ||
              b.x + b.width <= a.x + 1e-9 ||
              a.y + a.height <= b.y + 1e-9 ||
              b.y + b.height <= a.y + 1e-9;
            expect(apart).toBe(true);
          }
        }
      }
    },
  );
});

describe("scale bar and check bar", () => {
  it("at 1:100 a division of 2 m is 20 mm; the whole stays within its room", () => {
    expect(scaleBar(scaleFor(100, metric, "a4"), metric, 90)).toEqual({
      step: 2,
      stepMm: 20,
      divisions: 4,
      unit: " m",
    });
  });

  it("at 1 in to 20 ft a division of 10 ft is half an inch", () => {
    const bar = scaleBar(scaleFor(240, feet, "letter"), feet, 70);
    expect(bar.step).toBe(10);
    expect(bar.stepMm).toBeCloseTo(12.7, 9);
  });

  it("check bars are 4 in and 100 mm", () => {
    expect(checkBarLength(feet)).toBeCloseTo(4 * 25.4, 12);
    expect(checkBarLength(metric)).toBe(100);
  });
});
