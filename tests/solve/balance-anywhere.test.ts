/** The height at which the cut makes the fill belongs to the ground: wherever the floor is now, it is the same. */
import { expect, it } from "vitest";
import { createSolver } from "../../src/solve/pipeline";
import { plane, site } from "./sites";

it("doesn't depend on the floor that is set, near or a hundred metres up", () => {
  const project = site({ surface: plane(100, 0.04, -0.02) });
  const balanced = [101, 200].map((floor) => createSolver().solve(project, { floor }).balance?.floor);
  expect(balanced[0]).not.toBeNull();
  expect(balanced[1]).toBe(balanced[0]);
});
