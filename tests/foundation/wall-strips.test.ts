/** Fill inside the walls where the underside of the base crosses the ground: what the walls stand in is taken off exactly. */
import { describe, expect, it } from "vitest";
import { earthBelowFloor } from "../../src/document/foundationMeasures";
import { volumeCurve } from "../../src/earthwork";
import { wallStrips } from "../../src/foundation";
import { type Point, signedArea } from "../../src/geometry";
import { createSolver } from "../../src/solve";
import { demoProject } from "../support/demo";
import { narrowEll } from "../support/outlines";

describe("the ground under the walls", () => {
  it("is the outline less what lies inside it: an L of 26 m², walls of 0.2 m, 26 × 0.2 − 4 × 0.2² of it", () => {
    for (const ring of [narrowEll, [...narrowEll].reverse()]) {
      const area = (wallStrips(ring, 0.2) ?? []).reduce((sum, strip) => sum + Math.abs(signedArea(strip)), 0);
      expect(area).toBeCloseTo(26 * 0.2 - 4 * 0.04, 12);
    }
  });

  it("isn't told where walls meet in the middle", () => {
    expect(wallStrips(narrowEll, 1.1)).toBeNull();
  });
});

it.each([-0.45, -0.3, 0])("fill inside is what lies within the inner faces, floor moved by %d m", (up) => {
  const demo = demoProject("joinery-shed");
  const { building, materials } = demo;
  if (!building?.floor) throw new Error("the demo has a floor");
  const { wallThickness } = building.foundation;
  const floor = building.floor + up;
  const project = { ...demo, building: { ...building, floor } };
  const { bill, ground } = createSolver().solve(project);
  const found = bill.find(({ id }) => id === "fill-inside");
  const outline = building.outline.map(([x, y]): Point => [x, y]);
  const inner = (wallStrips(outline, wallThickness) ?? []).map((strip) => strip[3] as Point);
  if (!ground) throw new Error("the demo has ground");
  const level = floor - earthBelowFloor(building) + materials.stripDepth;
  const { fill, cut } = volumeCurve(ground, inner).at(level);
  expect(found?.quantity).toBeCloseTo(fill, 6);
  if (up < 0) expect(Math.min(cut, fill)).toBeGreaterThan(0.1);
});
