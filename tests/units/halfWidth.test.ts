import { describe, expect, it } from "vitest";
import { halfWidth, parseAngle, parseBearing, parseLength, parseNumber, parseSlope } from "../../src/units";

const metres = (text: string, notation: "m" | "ft-in" = "m") => {
  const read = parseLength(text, notation);
  return read.ok ? read.m : read.message;
};

describe("figures of full width, as input methods write them", () => {
  it("count as their usual kin in lengths, angles, bearings, slopes and numbers", () => {
    expect(metres("１２．３５")).toBeCloseTo(12.35, 12);
    expect(metres("１２３５㎜")).toBeCloseTo(1.235, 12);
    expect(metres("４０＇６＂", "ft-in")).toBeCloseTo(40.5 * 0.3048, 12);
    expect(metres("５　１／２＂", "ft-in")).toBeCloseTo(5.5 * 0.0254, 12);
    expect(parseAngle("１５°")).toMatchObject({
      ok: true,
      radians: expect.closeTo((15 * Math.PI) / 180, 12),
    });
    expect(parseBearing("Ｎ ４５ Ｅ")).toMatchObject({ ok: true, radians: expect.closeTo(Math.PI / 4, 12) });
    expect(parseSlope("２％", "percent")).toMatchObject({ ok: true, ratio: expect.closeTo(0.02, 12) });
    expect(parseNumber("１．２５")).toBe(1.25);
    expect(parseNumber("−３,５")).toBe(-3.5);
  });

  it("leave ready fractions, primes and words alone; nothing and words are no number", () => {
    expect(halfWidth("5′ 2⅝″ Ａｂ ア")).toBe("5′ 2⅝″ Ab ア");
    expect(parseNumber("  ")).toBeNaN();
    expect(parseNumber("three")).toBeNaN();
  });
});
