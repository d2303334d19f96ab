import { describe, expect, it } from "vitest";
import { summary } from "../../src/cli/summary";
import { createSolver } from "../../src/solve/pipeline";
import { plane, shed, site } from "../solve/sites";

const page = (foundation: object, display: object = {}) => {
  const project = site({
    surface: plane(100, 0.08, 0),
    building: { ...shed, floor: 101, foundation },
    rest: { display: { length: "m", volume: "m3", slope: "percent", rounding: 3, ...display } },
  });
  return summary(project, createSolver().solve(project));
};

describe("the foundation on the page that solve prints", () => {
  it("tells kind, cover both ways, what a level footing takes, steps, trench, fill, doors and concrete", () => {
    const text = page({ frostDepth: 0.9, steps: { on: true } });
    expect(text).toContain("Foundation: stem wall of poured concrete on strip footing, slab inside");
    expect(text).toMatch(/below the ground as it is, which counts for frost: least \d\.\d{3} m at /);
    expect(text).toMatch(/into undisturbed ground: least /);
    expect(text).toMatch(
      /a level footing (takes \d\.\d{3} m of fall along the walls|would have to lie \d\.\d{3} m deeper even on level ground); there is 0\.\d{3} m/,
    );
    expect(text).toMatch(/\d+ steps of 0\.203 m, \d+ down at most/);
    expect(text).toMatch(
      /trench: [\d.]+ m³ to dig, in the bank; [\d.]+ m³ goes back, compacted; [\d.]+ m³ left over, in the bank/,
    );
    expect(text).toMatch(/concrete: footing /);
  });

  it("counts blocks and holes, and speaks feet and inches", () => {
    expect(page({ wall: "block" })).toMatch(/blocks: \d+ \(6 courses of \d+\)/);
    const posts = page({ kind: "posts" }, { length: "ft-in", rounding: 8, volume: "yd3" });
    expect(posts).toContain("Foundation: posts in holes, slab inside");
    expect(posts).toMatch(/\d+ holes/);
    expect(posts).toMatch(/into undisturbed ground: least 4′/);
  });
});
