import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  depthInWords,
  formatAboveBelow,
  formatLength,
  formatSigned,
  INCH,
  type LengthNotation,
  parseLength,
  roundingFor,
  roundingStep,
} from "../../src/units";

describe("formatLength", () => {
  it.each<[number, LengthNotation, number, string]>([
    [1.590675, "ft-in", 8, "5′ 2⅝″"],
    [1.590675, "in", 8, "62⅝″"],
    [1.590675, "ft", 2, "5.22′"],
    [1.590675, "m", 3, "1.591 m"],
    [1.590675, "cm", 1, "159.1 cm"],
    [1.590675, "mm", 0, "1591 mm"],
    [62.6875 * INCH, "in", 16, "62¹¹⁄₁₆″"],
    [62.6875 * INCH, "in", 8, "62¾″"],
    [62.6875 * INCH, "ft-in", 16, "5′ 2¹¹⁄₁₆″"],
    [(1 / 32) * INCH, "in", 32, "¹⁄₃₂″"],
    [0.5 * INCH, "in", 32, "½″"],
    [40 * 12 * INCH, "ft-in", 8, "40′ 0″"],
    [(60 + 5 / 8) * INCH, "ft-in", 8, "5′ 0⅝″"],
    [11.99 * INCH, "ft-in", 8, "1′ 0″"],
    [6.5 * INCH, "ft-in", 8, "6½″"],
    [5.625 * INCH, "in", 1, "6″"],
    [-14 * INCH, "ft-in", 8, "−1′ 2″"],
    [-0.0001, "ft-in", 8, "0″"],
    [-0.0001, "m", 3, "0.000 m"],
    [0, "mm", 0, "0 mm"],
    [-0.0127, "mm", 1, "−12.7 mm"],
    [1.5, "m", 3, "1.500 m"],
    [1.0005, "m", 3, "1.001 m"],
    [Number.NaN, "m", 3, "–"],
    [Number.POSITIVE_INFINITY, "in", 8, "–"],
  ])("%d m as %s at %d: %s", (m, notation, rounding, text) => {
    expect(formatLength(m, notation, rounding)).toBe(text);
  });

  it("falls back to the usual rounding where the chosen one makes no sense", () => {
    expect(formatLength(1.591, "m", 8)).toBe("1.591 m");
    expect(formatLength(1.591, "mm", 3)).toBe("1591 mm");
    expect(formatLength(62.625 * INCH, "in", 3)).toBe("62⅝″");
    expect(formatLength(62.625 * INCH, "in", 0)).toBe("62⅝″");
  });

  it("takes the usual rounding for a notation of another kind than the project's lengths", () => {
    expect(roundingFor("in", { length: "ft-in", rounding: 16 })).toBe(16);
    expect(roundingFor("in", { length: "ft", rounding: 2 })).toBe(8);
    expect(roundingFor("mm", { length: "m", rounding: 3 })).toBe(0);
    expect(roundingFor("m", { length: "m", rounding: 2 })).toBe(2);
  });
});

describe("signs and words", () => {
  it("puts a sign before both directions and none before nothing", () => {
    expect(formatSigned(0.3556, "ft-in", 8)).toBe("+1′ 2″");
    expect(formatSigned(-0.3556, "ft-in", 8)).toBe("−1′ 2″");
    expect(formatSigned(0.0004, "m", 3)).toBe("0.000 m");
    expect(formatSigned(Number.NaN, "m", 3)).toBe("–");
  });

  it("says above, below or level", () => {
    expect(formatAboveBelow(0.3556, "ft-in", 8)).toBe("1′ 2″ above");
    expect(formatAboveBelow(-0.3556, "ft-in", 8)).toBe("1′ 2″ below");
    expect(formatAboveBelow(-0.0004, "m", 3)).toBe("level");
  });

  it("positive depth is fill, negative is cut", () => {
    expect(depthInWords(0.3556, "ft-in", 8)).toBe("1′ 2″ of fill");
    expect(depthInWords(-3.5 * INCH, "ft-in", 8)).toBe("3½″ of cut");
    expect(depthInWords(0.001, "ft-in", 8)).toBe("no change");
    expect(depthInWords(-0.25, "m", 2)).toBe("0.25 m of cut");
    expect(depthInWords(Number.NaN, "m", 2)).toBe("–");
  });
});

describe("what is printed can be typed again", () => {
  const choices: [LengthNotation, number][] = [
    ["ft-in", 1],
    ["ft-in", 2],
    ["ft-in", 8],
    ["ft-in", 16],
    ["ft-in", 32],
    ["in", 4],
    ["in", 8],
    ["in", 16],
    ["in", 32],
    ["ft", 0],
    ["ft", 2],
    ["ft", 3],
    ["m", 0],
    ["m", 2],
    ["m", 3],
    ["m", 4],
    ["cm", 0],
    ["cm", 1],
    ["mm", 0],
    ["mm", 1],
  ];
  const tenthsOfMillimetres = fc.integer({ min: -5_000_000, max: 5_000_000 });

  it.each(choices)("%s at %d, to half a step", (notation, rounding) => {
    const half = roundingStep(notation, rounding) / 2;
    fc.assert(
      fc.property(tenthsOfMillimetres, fc.constantFrom<LengthNotation>("in", "m"), (tenths, column) => {
        const m = tenths / 10_000;
        const parsed = parseLength(formatLength(m, notation, rounding), column);
        if (!parsed.ok) throw new Error(parsed.message);
        expect(Math.abs(parsed.m - m)).toBeLessThanOrEqual(half + 1e-12);
      }),
    );
  });

  it.each(choices)("%s at %d, and prints the same", (notation, rounding) => {
    fc.assert(
      fc.property(tenthsOfMillimetres, (tenths) => {
        const text = formatLength(tenths / 10_000, notation, rounding);
        const parsed = parseLength(text, "m");
        expect(parsed.ok && formatLength(parsed.m, notation, rounding)).toBe(text);
      }),
    );
  });
});
