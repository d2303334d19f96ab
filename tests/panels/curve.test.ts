import { describe, expect, it } from "vitest";
import { axisHeights } from "../../src/panels/curve";
import { curveAt, moreForOneStep } from "../../src/solve/one-step";

const curve = [
  { floor: 1, cut: 8, fill: 0 },
  { floor: 2, cut: 2, fill: 4 },
  { floor: 4, cut: 0, fill: 20 },
];

describe("reading the curve", () => {
  it("goes in a straight line between its points and no further", () => {
    expect(curveAt(curve, 1.5)).toEqual({ floor: 1.5, cut: 5, fill: 2 });
    expect(curveAt(curve, 1)).toEqual({ floor: 1, cut: 8, fill: 0 });
    expect(curveAt(curve, 4)).toEqual({ floor: 4, cut: 0, fill: 20 });
    expect(curveAt(curve, 0.99)).toBeNull();
    expect(curveAt(curve, 4.01)).toBeNull();
    expect(curveAt([], 1)).toBeNull();
  });

  it("says what one step more costs", () => {
    expect(moreForOneStep(curve, 3, 0.5)?.fill).toBeCloseTo(4, 12);
    expect(moreForOneStep(curve, 3, 0.5)?.cut).toBeCloseTo(-0.5, 12);
    expect(moreForOneStep(curve, 4, 0.5)).toBeNull();
  });
});

describe("heights on the axis", () => {
  it("are whole feet or round parts of a metre", () => {
    expect(axisHeights(29.9, 31.2, true, 5).map((m) => Math.round(m / 0.3048))).toEqual([99, 100, 101, 102]);
    expect(axisHeights(54.02, 54.98, false, 5).map((m) => Number(m.toFixed(3)))).toEqual([
      54.2, 54.4, 54.6, 54.8,
    ]);
  });
});
