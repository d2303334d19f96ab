import { describe, expect, it } from "vitest";
import { createSolver } from "../../src/solve/pipeline";
import { plane, shed, site } from "./sites";

const billOf = (foundation: object) => {
  const project = site({ surface: plane(100, 0.08, 0), building: { ...shed, floor: 101, foundation } });
  const { bill, foundation: result } = createSolver().solve(project);
  return { of: (id: string) => bill.find((item) => item.id === id), takeOff: result?.takeOff };
};

describe("concrete in the bill", () => {
  it("is what the foundation's own take-off says, kind by kind", () => {
    const stem = billOf({});
    expect(stem.of("wall")?.quantity).toBe(stem.takeOff?.wall);
    expect(stem.of("edge")).toBeUndefined();
    const edge = billOf({ kind: "thickened-edge" });
    expect(edge.of("edge")?.quantity).toBe(edge.takeOff?.edge);
    expect(edge.of("wall")).toBeUndefined();
    const posts = billOf({ kind: "posts" });
    expect(posts.of("pads")?.quantity).toBeGreaterThan(0);
    expect(posts.of("footing")).toBeUndefined();
  });

  it("grows with the steps of a stepped footing, and blocks are counted", () => {
    const stepped = billOf({ frostDepth: 0.9, steps: { on: true } });
    expect(stepped.of("wall")?.quantity).toBeGreaterThan(billOf({}).of("wall")?.quantity ?? 0);
    const blocks = billOf({ wall: "block" });
    expect(blocks.of("wall")).toBeUndefined();
    expect(blocks.of("blocks")).toMatchObject({ unit: "pieces", quantity: blocks.takeOff?.blocks?.count });
    expect(blocks.of("blocks")?.how).toMatch(/^6 courses/);
  });
});
