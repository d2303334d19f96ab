import { describe, expect, it } from "vitest";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

describe("raising the floor by h", () => {
  it.each(["pottery-studio", "joinery-shed", "potting-barn"])(
    "in %s shows h more at every corner above the ground as it is, and digs h less",
    (name) => {
      const project = demoProject(name);
      const solver = createSolver();
      const floor = project.building?.floor ?? 0;
      const at = (height: number) => {
        const { corners, trench, foundation } = solver.solve(project, { floor: height, detail: "drag" });
        return { corners, trench, foundation };
      };
      const before = at(floor);
      for (const h of [0.01, 0.37, -0.2]) {
        const after = at(floor + h);
        before.corners.forEach((corner, i) => {
          expect((after.corners[i]?.wallAboveGround ?? 0) - corner.wallAboveGround).toBeCloseTo(h, 9);
          const dug = (after.trench[i]?.belowGround ?? 0) - (before.trench[i]?.belowGround ?? 0);
          expect(dug).toBeCloseTo(-h, 9);
        });
        const levels = [before, after].map(({ foundation }) => foundation?.levelFooting?.exposure ?? 0);
        expect((levels[1] ?? 0) - (levels[0] ?? 0)).toBeCloseTo(h, 9);
      }
    },
  );
});
