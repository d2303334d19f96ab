import { describe, expect, it } from "vitest";
import { createSolver } from "../../src/solve";
import { catchmentAt } from "../../src/solve/place-catchment";
import { plane, site } from "./sites";

describe("what drains to a place, on ground that falls 4 % south", () => {
  // No building: the ground alone. A strip as wide as the place's own cells runs north of it to the edge of the shots.
  const bare = site({ surface: plane(100, 0, 0.04), reach: 30, spacing: 5 });
  const results = createSolver().solve({ ...bare, building: null });

  it("is a strip straight uphill, longer the farther down it lies", () => {
    const [high, low] = [catchmentAt(results, [6, 20]), catchmentAt(results, [6, -10])];
    if (!high || !low) throw new Error("there is ground");
    expect(low.longest - high.longest).toBeCloseTo(30, 0);
    expect(low.fall - high.fall).toBeCloseTo(0.04 * 30, 1);
    expect(low.area / low.longest).toBeCloseTo(high.area / high.longest, 0);
    expect(low.touchesEdge).toBe(true);
  });

  it("isn't known beyond the ground", () => {
    expect(catchmentAt(results, [5000, 0])).toBeNull();
  });

  it("isn't asked within the walls", () => {
    const built = createSolver().solve(bare);
    const [x, y] = [6, 4];
    expect(built.water.flow).not.toBeNull();
    expect(catchmentAt(built, [x, y])).toBeNull();
  });

  it("is a line of single cells where water is followed to the steepest neighbour alone", () => {
    const project = { ...bare, building: null };
    const d8 = createSolver().solve({
      ...project,
      drainage: { ...project.drainage, flow: { method: "d8" } },
    });
    const { flow } = d8.water;
    expect(flow?.share.every((share) => share === 1)).toBe(true);
    // On a slope to a side of the grid at a slant of 20 degrees D-infinity shares; both drain as much in all.
    const slanted = site({ surface: plane(100, 0.0146, 0.04), reach: 30, spacing: 5 });
    const shared = createSolver().solve({ ...slanted, building: null }).water.flow;
    expect(shared?.share.some((share) => share > 0 && share < 1)).toBe(true);
  });
});
