import { describe, expect, it } from "vitest";
import { parseBearing } from "../../src/units";

describe("a bearing typed while drawing", () => {
  it.each([
    ["0", 0],
    ["90", 90],
    ["268.5", 268.5],
    ["268.5°", 268.5],
    ["360", 0],
    ["N 45 E", 45],
    ["n45e", 45],
    ["S 45° E", 135],
    ["S 88.5° W", 268.5],
    ["N 1° 30' W", 358.5],
    ["N 0 W", 0],
    ["S 90 W", 270],
  ])("%s is %d degrees clockwise from north", (text, expected) => {
    const parsed = parseBearing(text);
    if (!parsed.ok) throw new Error(parsed.message);
    expect((parsed.radians * 180) / Math.PI).toBeCloseTo(expected, 9);
  });

  it.each(["", "N 91 E", "N E", "400", "west-ish"])("%j is refused, with what can be written", (text) => {
    const parsed = parseBearing(text);
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) expect(parsed.message).toMatch(/Write a bearing/);
  });
});
