import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatBearing, parseBearing } from "../../src/units";

const degrees = (text: string): number => {
  const parsed = parseBearing(text);
  if (!parsed.ok) throw new Error(parsed.message);
  return (parsed.radians * 180) / Math.PI;
};

describe("bearings", () => {
  it.each([
    ["0", 0],
    ["90", 90],
    ["268.5°", 268.5],
    ["360", 0],
    ["-10", 350],
    ["N 45 E", 45],
    ["n45e", 45],
    ["S 45° E", 135],
    ["S 88.5° W", 268.5],
    ["N 1° 30' W", 358.5],
    ["N 0 W", 0],
    ["S 90 W", 270],
  ])("%s is %d degrees clockwise from north", (text, expected) => {
    expect(degrees(text)).toBeCloseTo(expected, 9);
  });

  it.each(["", "north", "N 91 E", "S -5 W", "N E", "400", "N 45"])(
    "refuses %j and says what it takes",
    (text) => {
      const parsed = parseBearing(text);
      expect(parsed.ok).toBe(false);
      if (!parsed.ok) expect(parsed.message).toMatch(/clockwise from north, like 268.5°, or like S 88.5° W/);
    },
  );

  it("are written from 0° up to, and never as, 360°", () => {
    expect(formatBearing(-Math.PI / 2)).toBe("270.0°");
    expect(formatBearing(2 * Math.PI - 1e-9)).toBe("0.0°");
    expect(formatBearing(Number.NaN)).toBe("–");
  });

  it("read back what was written, within half of the last decimal", () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3599 }), (tenths) => {
        expect(degrees(formatBearing((tenths / 10) * (Math.PI / 180)))).toBeCloseTo(tenths / 10, 9);
      }),
    ));
});
