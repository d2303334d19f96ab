import { describe, expect, it } from "vitest";
import type { Project } from "../../src/document";
import { createSolver } from "../../src/solve";
import { plane, shed, site } from "./sites";

/** The shed with every side's ground left as it is: only the earth within the walls moves. */
function insideOnly(surface: ReturnType<typeof plane>, materials: Record<string, number>): Project {
  return site({
    surface,
    building: { ...shed, foundation: { slabThickness: 0, baseThickness: 0, slabFill: { kind: "earth" } } },
    rest: { grading: { apron: { leave: [0, 1, 2, 3] } }, materials: { swell: 1.25, ...materials } },
  });
}

const balanced = (project: Project) => createSolver().solve(project).balance;

describe("the floor at which cut makes fill", () => {
  it("is the mean height of the ground under the floor where a bank volume fills as much: first principles", () => {
    // 12 m east at 4 % from 100: the mean is 100.24 at 6 m.
    const found = balanced(insideOnly(plane(100, 0.04), { stripDepth: 0, shrink: 1 }));
    expect(found?.floor).toBeCloseTo(100.24, 3);
    expect(found?.cut).toBeCloseTo(found?.fill ?? 0, 2);
    // A wedge of 6 m × 0.24 m × 8 m ÷ 2.
    expect(found?.cut).toBeCloseTo(5.76, 1);
  });

  it("lies lower by the strip where the topsoil goes first", () => {
    const found = balanced(insideOnly(plane(100, 0.04), { stripDepth: 0.15, shrink: 1 }));
    expect(found?.floor).toBeCloseTo(100.09, 3);
  });

  it("lies lower where a bank volume makes less fill: the plane's wedges in closed form", () => {
    // Cut L² and fill (12 − L)² share the slope: L² · 0.9 = (12 − L)², so L = 12 / (1 + √0.9) of the length is cut.
    const cutLength = 12 / (1 + Math.sqrt(0.9));
    const found = balanced(insideOnly(plane(100, 0.04), { stripDepth: 0, shrink: 0.9 }));
    expect(found?.floor).toBeCloseTo(100 + 0.04 * (12 - cutLength), 3);
    expect((found?.cut ?? 0) * 0.9).toBeCloseTo(found?.fill ?? 0, 2);
  });

  it("with aprons and slopes too the cut makes the fill", () => {
    const project = site({
      surface: plane(100, 0.04),
      rest: { materials: { shrink: 0.9, stripDepth: 0.1 } },
    });
    const found = balanced(project);
    expect(found?.why).toBeNull();
    expect((found?.cut ?? 0) * 0.9).toBeCloseTo(found?.fill ?? 0, 1);
    // The whole plan at that floor says the same, on its finer grid.
    const { bill } = createSolver().solve(project, { floor: found?.floor ?? 0 });
    const quantity = (id: string) => bill.find((item) => item.id === id)?.quantity ?? 0;
    expect(quantity("cut") * 0.9 - quantity("fill-outside")).toBeCloseTo(0, 0);
    expect(quantity("left-over") + quantity("short")).toBeCloseTo(0, 0);
    expect(quantity("slab-fill-loose")).toBeCloseTo(
      quantity("fill-inside") * project.materials.stoneLoose,
      9,
    );
  });

  it("is missing, with what there is more of, where no floor of the range balances", () => {
    const found = balanced(insideOnly(plane(100), { stripDepth: 3, shrink: 1 }));
    expect(found).toEqual({ floor: null, cut: null, fill: null, why: "fill at every floor" });
  });

  it("is not asked without a building", () => {
    expect(createSolver().solve(site({ building: null })).balance).toBeNull();
  });
});
