import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nextSort, ordered, sortKeyOf } from "../../src/panels/table/order";
import { formatAboveBelow, formatLength } from "../../src/units";

const sorted = (texts: readonly string[], down = false) => ordered(texts, sortKeyOf, down);

describe("the order of cells", () => {
  it("goes by size, by letters with figures in them, empty cells last", () => {
    expect(sorted(["5′ 2⅝″", "", "−3″", "62⅝″", "5′ 2½″"])).toEqual(["−3″", "5′ 2½″", "5′ 2⅝″", "62⅝″", ""]);
    expect(sorted(["1′ above", "2′ below", "3″ below"])).toEqual(["2′ below", "3″ below", "1′ above"]);
    expect(sorted(["stake 10", "Stake 9", "", "oak"])).toEqual(["oak", "Stake 9", "stake 10", ""]);
    expect(sorted(["stake 10", "Stake 9", "", "oak"], true)).toEqual(["stake 10", "Stake 9", "oak", ""]);
  });

  it("lengths, and heights above and below, stand as their metres do in every notation", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -40_000, max: 40_000 }), { minLength: 2, maxLength: 30 }),
        fc.constantFrom(...(["ft-in", "ft", "in", "m", "cm", "mm"] as const)),
        fc.constantFrom(formatLength, formatAboveBelow),
        (millimetres, notation, format) => {
          const text = (mm: number) => format(mm / 1000, notation, /in$/.test(notation) ? 8 : 3);
          const bySize = [...millimetres].sort((a, b) => a - b).map(text);
          expect(sorted(millimetres.map(text))).toEqual(bySize);
        },
      ),
    );
  });

  it("a head is pressed up, down, and as it came", () => {
    const up = nextSort(null, 2);
    const down = nextSort(up, 2);
    expect([up, down, nextSort(down, 2)]).toEqual([
      { column: 2, down: false },
      { column: 2, down: true },
      null,
    ]);
    expect(nextSort(down, 1)).toEqual({ column: 1, down: false });
  });
});
