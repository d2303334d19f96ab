import { describe, expect, it } from "vitest";

import { buildingEdits, optionEdits, type Project } from "../../src/document";
import { createSolver } from "../../src/solve";
import { numberPaths } from "../../src/solve/about";
import { isTaken, optionFigures, solveOption, unitsOfOptions, withOption } from "../../src/solve/compare";
import { plane, site } from "./sites";

function must(edit: ReturnType<(typeof optionEdits.keepOption)["run"]>): Project {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

/** Two options a foot of floor apart on the same falling ground; the plan is as the first. */
function twoFloors(): Project {
  const low = must(optionEdits.keepOption.run(site({ surface: plane(100, 0.03) }), { name: "low" }));
  const raised = must(buildingEdits.setFloor.run(low, { floor: 100.8 }));
  const both = must(optionEdits.keepOption.run(raised, { name: "high" }));
  return must(optionEdits.takeOption.run(both, { id: "o1" }));
}

describe("options side by side", () => {
  it("tell for each just what the plan would tell with it taken", () => {
    const project = twoFloors();
    const solver = createSolver();
    for (const option of project.options) {
      const taken = must(optionEdits.takeOption.run(project, { id: option.id }));
      const figures = optionFigures(option.id, option.name, taken, createSolver().solve(taken));
      expect(solveOption(solver, project, option).figures).toEqual(figures);
    }
  });

  it("differ as the floor does: more fill and wall where it is higher, by the floor's rise inside the walls", () => {
    const project = twoFloors();
    const solver = createSolver();
    const [low, high] = project.options.map((option) => solveOption(solver, project, option));
    if (!low || !high) throw new Error("two options are kept");
    expect((high.figures.floor ?? 0) - (low.figures.floor ?? 0)).toBeCloseTo(0.3, 12);
    // Inside the walls d(fill − cut) = footprint area × rise: first principles.
    const net = ({ results }: typeof low) =>
      (results.earthwork?.inside.fill ?? 0) - (results.earthwork?.inside.cut ?? 0);
    expect(net(high) - net(low)).toBeCloseTo(12 * 8 * 0.3, 6);
    expect(high.figures.fill).toBeGreaterThan(low.figures.fill ?? 0);
    expect(high.figures.fillLoads).toBeGreaterThan(low.figures.fillLoads ?? 0);
  });

  it("tell the wall that shows above the finished ground, and the floor above the ground as it is, wherever along the walls they are most", () => {
    // A hollow of 0.4 m at the middle of A-B, whose side is left as it is.
    const surface = (x: number, y: number) => 100 - 0.4 * Math.exp(-((x - 6) ** 2 + y ** 2) / 4);
    const hollow = (more: object) => site({ surface, reach: 30, spacing: 2, rest: { grading: more } });
    const figures = (project: Project) => optionFigures(null, "now", project, createSolver().solve(project));
    const graded = figures(hollow({}));
    expect(graded.mostShowing).toEqual({ m: expect.closeTo(0.1524, 6), at: "A" });
    expect(graded.floorAboveGround).toEqual({ m: expect.closeTo(0.9, 6), at: "wall A-B" });
    const left = figures(hollow({ apron: { leave: [0] } }));
    expect(left.mostShowing).toEqual({ m: expect.closeTo(0.9, 6), at: "wall A-B" });
    const falling = figures(site({ surface: plane(100, 0.03) }));
    expect(falling.floorAboveGround).toEqual({ m: expect.closeTo(0.5, 9), at: "A" });
  });

  it("have a unit for every figure", () => {
    const project = twoFloors();
    const figures = optionFigures(null, "now", project, createSolver().solve(project));
    const units = unitsOfOptions({ now: figures, options: [figures] });
    expect(Object.keys(units)).toEqual(numberPaths({ now: figures, options: [figures] }));
    expect(units["options[].mostShowing.m"]).toMatchObject({ unit: "m" });
    expect(units["now.floorAboveGround.m"]).toMatchObject({ unit: "m" });
    expect(Object.values(units).every(({ rule }) => rule.length > 10)).toBe(true);
  });

  it("say which of them the plan is now", () => {
    const project = twoFloors();
    expect(project.options.map((option) => isTaken(project, option))).toEqual([true, false]);
    const moved = must(buildingEdits.setFloor.run(project, { floor: 100.61 }));
    expect(moved.options.map((option) => isTaken(moved, option))).toEqual([false, false]);
  });

  it("name the limit that a floor breaks", () => {
    const project = must(buildingEdits.setFloor.run(twoFloors(), { floor: 98 }));
    const kept = must(optionEdits.keepOption.run(project, { name: "sunk" }));
    const sunk = kept.options[2];
    if (!sunk) throw new Error("it is kept");
    const { figures, results } = solveOption(createSolver(), kept, sunk);
    const names = results.band.rules.filter(({ on }) => on).map(({ name }) => name);
    expect(figures.breaks).not.toBeNull();
    expect(names).toContain(figures.breaks);
  });

  it("leave the plan as it is", () => {
    const project = twoFloors();
    const before = JSON.stringify(project);
    const [option] = project.options;
    if (!option) throw new Error("it is kept");
    withOption(project, option);
    solveOption(createSolver(), project, option);
    expect(JSON.stringify(project)).toBe(before);
  });

  it("tell the cost once something is priced, and the limit broken where no floor keeps them all", () => {
    const project = twoFloors();
    const [option] = project.options;
    if (!option) throw new Error("an option is kept");
    expect(solveOption(createSolver(), project, option).figures.cost).toBeNull();
    const priced = { ...project, prices: { slab: 100 } };
    const { figures, results } = solveOption(createSolver(), priced, option);
    expect(figures.cost).toBeCloseTo(results.cost.total, 9);
    const clashing = { ...project, rules: { ...project.rules, aboveUphillGround: 5, mostShowing: 0.1 } };
    const empty = solveOption(createSolver(), clashing, option);
    expect(empty.results.band.empty).toBe(true);
    expect(empty.figures.breaks).toBe("top of wall above the high ground beside it");
  });
});
