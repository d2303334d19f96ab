import { describe, expect, it } from "vitest";
import { axisHeights } from "../../src/panels/curve";
import { loadsWords } from "../../src/solve/load-words";
import { curveAt } from "../../src/solve/one-step";

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
});

describe("one step of the floor in words", () => {
  it("says what comes in and what goes out, each the right way", () => {
    expect(loadsWords({ loadsIn: 1.8, loadsOut: 0 })).toBe("about 1.8 loads more to bring");
    expect(loadsWords({ loadsIn: 0, loadsOut: -0.66 })).toBe("about 0.7 loads fewer to take away");
    expect(loadsWords({ loadsIn: 0.1, loadsOut: -0.66 })).toBe(
      "about 0.1 loads more to bring, 0.7 loads fewer to take away",
    );
    expect(loadsWords({ loadsIn: 0.01, loadsOut: -0.04 })).toBe("less than a tenth of a load");
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
