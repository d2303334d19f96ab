import { describe, expect, it } from "vitest";
import { nearestOnRing } from "../../src/geometry";
import { daylightLines, gradingReach, layOut } from "../../src/grading";
import { planeGround, planFor, rectangle } from "./plans";

describe("daylight lines", () => {
  const ring = rectangle(12, 8);
  const range = { low: 98, high: 103 };
  const lines = (floor: number, gx: number) => {
    const plan = planFor(ring, { width: 3, fall: 0.05, fillSlope: 3, cutSlope: 2 });
    const ground = planeGround(100, gx);
    const { bounds } = gradingReach(plan, ground, range);
    return daylightLines(layOut(plan, ground, { bounds, range }), floor);
  };
  const distances = (line: Float64Array) =>
    Array.from(
      { length: line.length / 2 },
      (_, i) => nearestOnRing(ring, line[2 * i] ?? 0, line[2 * i + 1] ?? 0).distance,
    );

  it.each([
    ["fill: 3 + (1 − 0.15) × 3 = 5.55 m out", 101, 5.55],
    ["cut: 3 + (1 + 0.15) × 2 = 5.3 m out", 99, 5.3],
  ])("run round the pad on level ground, %s", (_why, floor, out) => {
    const found = lines(floor, 0);
    expect(found).toHaveLength(1);
    for (const distance of distances(found[0] as Float64Array))
      expect(Math.abs(distance - out)).toBeLessThan(0.01);
  });

  it("reach farther on the low side: 3 + (1 + 0.05 × 9 − 0.15) / (1/3 − 0.05) on 5 % ground", () => {
    const all = lines(101, 0.05).flatMap((line) => Array.from(line).filter((_, i) => i % 2 === 0));
    const low = 3 + (1 + 0.05 * 9 - 0.15) / (1 / 3 - 0.05);
    expect(Math.min(...all)).toBeCloseTo(-6 - low, 1);
  });
});
