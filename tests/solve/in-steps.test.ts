/** A full solve in steps says what a solve at once says. */
import { describe, expect, it } from "vitest";
import { createSolver } from "../../src/solve";
import { demoProject } from "../support/demo";

describe("solving in steps", () => {
  const project = demoProject("pottery-studio");

  it("tells rising shares, and ends with the same results", () => {
    const steps = createSolver().solveInSteps(project);
    const shares: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) shares.push(step.value);
    expect(shares.length).toBeGreaterThan(4);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBeLessThan(1);
    const atOnce = createSolver().solve(project);
    expect(step.value.corners).toEqual(atOnce.corners);
    expect(step.value.earthwork).toEqual(atOnce.earthwork);
    expect(step.value.problems).toEqual(atOnce.problems);
  });

  it("leaves nothing of the ground to be worked out again", () => {
    const solver = createSolver();
    const steps = solver.solveInSteps(project);
    let step = steps.next();
    while (!step.done) step = steps.next();
    expect(solver.solve(project).ground).toBe(step.value.ground);
  });

  it("stopped half way leaves the next solve as it would have been", () => {
    const solver = createSolver();
    const before = solver.solve(project);
    const { survey } = project;
    const lower = { ...project, survey: { ...survey, shots: survey.shots.slice(0, -1) } };
    const steps = solver.solveInSteps(lower);
    steps.next();
    steps.next();
    steps.return(before);
    expect(solver.solve(project).corners).toEqual(before.corners);
  });
});
