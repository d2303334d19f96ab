import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  CUBIC_YARD,
  FOOT,
  formatAngle,
  formatArea,
  formatSlope,
  formatVolume,
  INCH,
  parseAngle,
  parseSlope,
  type SlopeKind,
  SQUARE_FOOT,
} from "../../src/units";

describe("the constants, exact by the definition of the international foot", () => {
  it("agree with 0.3048 m", () => {
    expect(FOOT).toBe(0.3048);
    expect(INCH).toBe(0.0254);
    expect(SQUARE_FOOT).toBeCloseTo(0.3048 ** 2, 15);
    expect(CUBIC_YARD).toBeCloseTo(0.9144 ** 3, 15);
  });
});

describe("areas and volumes", () => {
  it("in square feet and cubic yards", () => {
    expect(formatArea(1536 * SQUARE_FOOT, "ft2")).toBe("1,536 ft²");
    expect(formatArea(9.96 * SQUARE_FOOT, "ft2")).toBe("10.0 ft²");
    expect(formatArea(99.96 * SQUARE_FOOT, "ft2")).toBe("100 ft²");
    expect(formatVolume(37.44 * CUBIC_YARD, "yd3")).toBe("37.4 yd³");
    expect(formatVolume(-12_345.6 * CUBIC_YARD, "yd3")).toBe("−12,346 yd³");
  });

  it("in metres", () => {
    expect(formatArea(142.66, "m2")).toBe("142.7 m²");
    expect(formatVolume(28.65, "m3")).toBe("28.7 m³");
    expect(formatVolume(1_234_567, "m3")).toBe("1\u202f234\u202f567 m³");
    expect(formatVolume(-0.01, "m3")).toBe("0.0 m³");
    expect(formatVolume(Number.NaN, "m3")).toBe("–");
  });
});

describe("formatSlope", () => {
  it.each<[number, SlopeKind, string]>([
    [0.05, "percent", "5.0 %"],
    [-0.123, "percent", "−12.3 %"],
    [-0.00004, "percent", "0.0 %"],
    [-0.0003, "percent", "−0.03 %"],
    [0.0003, "in-per-10ft", "¹⁄₃₂″ in 10′"],
    [0.00004, "in-per-10ft", "0″ in 10′"],
    [0.05, "ratio", "1 in 20"],
    [1 / 48, "ratio", "1 in 48"],
    [1 / 3, "ratio", "1 in 3"],
    [1 / 2.5, "ratio", "1 in 2.5"],
    [-0.05, "ratio", "−1 in 20"],
    [0, "ratio", "level"],
    [0.05, "in-per-10ft", "6″ in 10′"],
    [-0.02, "in-per-10ft", "−2⅜″ in 10′"],
    [Number.POSITIVE_INFINITY, "percent", "–"],
  ])("%d as %s: %s", (ratio, kind, text) => {
    expect(formatSlope(ratio, kind)).toBe(text);
  });
});

describe("parseSlope", () => {
  it.each<[string, SlopeKind, number]>([
    ["5 %", "ratio", 0.05],
    ["5%", "in-per-10ft", 0.05],
    ["12,5 percent", "ratio", 0.125],
    ["5", "percent", 0.05],
    ["20", "ratio", 0.05],
    ["6", "in-per-10ft", 0.05],
    ["6 1/2", "in-per-10ft", 6.5 / 120],
    ["1 in 20", "percent", 0.05],
    ["1:20", "percent", 0.05],
    ["3:1", "percent", 1 / 3],
    ["1:3", "percent", 1 / 3],
    ["1/20", "percent", 0.05],
    ["6\" in 10'", "percent", 0.05],
    ["6″ in 10′", "ratio", 0.05],
    ["6 in in 10 ft", "percent", 0.05],
    ["6 inches per 10 feet", "percent", 0.05],
    ['1/4" per ft', "percent", 1 / 48],
    ["1/4 in/ft", "percent", 1 / 48],
    ["¼″ per foot", "percent", 1 / 48],
    ["20 mm per m", "percent", 0.02],
    ["-2 %", "percent", -0.02],
    ["−1 in 50", "percent", -0.02],
    ["0", "percent", 0],
    ["-0 %", "percent", 0],
  ])("%s in a field of %s", (text, kind, ratio) => {
    const parsed = parseSlope(text, kind);
    expect(parsed.ok && parsed.ratio).toBeCloseTo(ratio, 12);
    expect(parsed.ok && Object.is(parsed.ratio, -0)).toBe(false);
  });

  it.each(["", "steep", "5 % up", "1 in", "NaN", "1 in 0", "0:0", "1:2:3", "6\" in 0'", "6 in", "5 ft"])(
    "refuses %j",
    (text) => {
      const parsed = parseSlope(text, "percent");
      expect(parsed.ok).toBe(false);
      if (!parsed.ok) expect(parsed.message).toContain("Write a slope like 5 %, 1 in 20");
    },
  );

  it("reads back what formatSlope prints", () => {
    const permille = fc.integer({ min: -600, max: 600 }).map((p) => p / 1000);
    fc.assert(
      fc.property(permille, fc.constantFrom<SlopeKind>("percent", "in-per-10ft"), (ratio, kind) => {
        const parsed = parseSlope(formatSlope(ratio, kind), "ratio");
        expect(parsed.ok && Math.abs(parsed.ratio - ratio)).toBeLessThan(0.00054);
      }),
    );
  });
});

describe("angles", () => {
  it.each<[string, number]>([
    ["15", 15],
    ["15.5°", 15.5],
    ["15,5 deg", 15.5],
    ["15 degrees", 15],
    ["15° 30'", 15.5],
    ["15°30′36″", 15.51],
    ["15-30-36", 15.51],
    ["315-30-00", 315.5],
    ["15:30", 15.5],
    ["15 30 36", 15.51],
    ["-90°", -90],
    ["360", 360],
    ["-0", 0],
  ])("reads %s", (text, degrees) => {
    const parsed = parseAngle(text);
    expect(parsed.ok && parsed.radians).toBeCloseTo((degrees * Math.PI) / 180, 12);
    expect(parsed.ok && Object.is(parsed.radians, -0)).toBe(false);
  });

  it.each(["", "north", "15° 75'", "15° 60'", "15° 0' 60\"", "400", "15 30", "15°x", "NaN"])(
    "refuses %j",
    (text) => {
      const parsed = parseAngle(text);
      expect(parsed.ok).toBe(false);
      if (!parsed.ok) expect(parsed.message).toContain("Write an angle like 15");
    },
  );

  it("prints degrees", () => {
    expect(formatAngle(Math.PI / 2)).toBe("90.0°");
    expect(formatAngle(-0.27, 2)).toBe("−15.47°");
    expect(formatAngle(-1e-9)).toBe("0.0°");
    expect(formatAngle(Number.NaN)).toBe("–");
  });
});
