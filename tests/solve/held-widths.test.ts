import { describe, expect, it } from "vitest";
import { createSolver } from "../../src/solve/pipeline";
import { shed, site } from "./sites";

const lane = {
  id: "d",
  name: "lane",
  line: [
    [6, -30],
    [6, 0],
  ],
  door: "door",
};
const solved = (grading: object, rest: object = {}) =>
  createSolver().solve(
    site({
      building: { ...shed, doors: [{ id: "door", wall: 0, offset: 4.5, width: 3 }] },
      rest: { grading, ...rest },
    }),
  );
const told = (results: ReturnType<typeof solved>) =>
  results.problems.filter(({ code }) => code.endsWith("-held")).map(({ where, what }) => `${where}: ${what}`);

describe("a width that no job has", () => {
  it("is told and held, and the rest goes on", () => {
    const wide = solved({
      apron: { width: 1000, sides: [{ wall: 1, width: 500 }] },
      drives: [{ ...lane, shoulder: { width: 1000 } }],
    });
    expect(told(wide)).toEqual([
      "the apron: Its width says 1000.000 m; it is worked out as 100.000 m, the widest there is here.",
      "the apron, side 2: Its width says 500.000 m; it is worked out as 100.000 m, the widest there is here.",
      "lane: Its shoulder says 1000.000 m; it is worked out as 100.000 m, the widest there is here.",
    ]);
    expect(wide.earthwork?.outside.fill).toBeGreaterThan(0);
  });

  it("holds for a drive's own width and for how far high ground counts", () => {
    const wide = solved({ drives: [{ ...lane, width: 1000 }] }, { rules: { uphillReach: 1000 } });
    expect(told(wide)).toHaveLength(2);
    expect(wide.corners[0]?.ground).toBeCloseTo(100);
  });

  it("leaves a wide apron that can be worked out as it is", () => {
    expect(told(solved({ apron: { width: 60 } }))).toEqual([]);
  });
});
