import { describe, expect, it } from "vitest";

import { createSolver } from "../../src/solve";
import { plane, site } from "./sites";

const toWalls = (grading: Record<string, unknown>) =>
  createSolver().solve(site({ surface: plane(100, 0, 0.05), rest: { grading } })).water.toWalls;

describe("ground whose water comes to a wall", () => {
  it("is none where an apron falls away all round", () => {
    for (const area of toWalls({})) expect(area).toBeLessThan(5);
  });

  it("is the slope above it where the ground is left as it is: the uphill wall alone, over its length at least", () => {
    // Ground falls south; wall C-D, the third, looks north and uphill: 12 m long, some 50 m of slope above it.
    const [south = 0, , north = 0] = toWalls({ apron: { leave: [0, 1, 2, 3] } });
    expect(north).toBeGreaterThan(12 * 45);
    expect(south).toBeLessThan(5);
  });
});
