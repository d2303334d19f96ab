/** Water on the ground and away from walls against published figures. */
import { describe, expect, it } from "vitest";
import { rulesSchema } from "../../src/document/schema";
import { downhillArrows, flood, wallNormals, wallWater } from "../../src/drainage";
import { prepare } from "../../src/grading";
import { planFor, rectangle } from "../grading/plans";

describe("filling of hollows", () => {
  // R. Barnes, C. Lehman, D. Mulla, Priority-flood, Computers & Geosciences 62 (2014): a cell fills to the lowest,
  // over all ways to the edge, of the highest cell on the way. The grid is ours; its answer follows from that
  // definition by hand.
  const grid = [
    [9, 9, 9, 9, 9, 9],
    [9, 5, 4, 6, 7, 9],
    [9, 3, 1, 8, 5, 9],
    [9, 6, 4, 7, 4, 9],
    [9, 9, 9, 9, 6.5, 9],
    [9, 9, 9, 9, 6, 9],
  ];
  const filled = [
    [9, 9, 9, 9, 9, 9],
    [9, 6.5, 6.5, 6.5, 7, 9],
    [9, 6.5, 6.5, 8, 6.5, 9],
    [9, 6.5, 6.5, 7, 6.5, 9],
    [9, 9, 9, 9, 6.5, 9],
    [9, 9, 9, 9, 6, 9],
  ];

  it("raises every cell to its level and holds 20.5", () => {
    const { level, sill } = flood(Float64Array.from(grid.flat()), 6, 6);
    expect([...level]).toEqual(filled.flat());
    expect(level.reduce((sum, value, i) => sum + value - (grid.flat()[i] ?? 0), 0)).toBeCloseTo(20.5, 9);
    // All of it is held by the 6.5 in row 5.
    expect(sill[2 * 6 + 2]).toBe(4 * 6 + 4);
  });
});

describe("downhill direction", () => {
  // A plane, on which any difference formula is exact (Horn; Zevenbergen and Thorne): z = 100 − 0.03 x − 0.04 y
  // falls 0.05 towards 36.87° from north.
  it("is exact on a plane", () => {
    const size = 40;
    const z = Float64Array.from(
      { length: size * size },
      (_, i) => 100 - 0.03 * (i % size) - 0.04 * Math.floor(i / size),
    );
    const arrows = downhillArrows({
      grid: { x0: 0, y0: 0, cell: 1, columns: size, rows: size },
      z,
      guessed: new Uint8Array(z.length),
      blocked: new Uint8Array(z.length),
    });
    expect(arrows.length).toBeGreaterThan(100);
    for (const { dx, dy, slope } of arrows) {
      expect(slope).toBeCloseTo(0.05, 9);
      expect((Math.atan2(dx, dy) * 180) / Math.PI).toBeCloseTo(36.87, 2);
    }
  });
});

describe("ground away from the foundation", () => {
  // International Residential Code R401.3 (2012, unchanged in 2024): at least 6 in of fall within the first 10 ft;
  // International Building Code 1804.3 (2012) the same as 5 %; impervious surfaces 2 %.
  const needs = (fall: number) => {
    const plan = planFor(rectangle(12, 8), { fall, width: 3.048 });
    const normals = wallNormals(plan, () => 100);
    return wallWater(normals, prepare(normals.places, plan, { low: 99, high: 102 }), 101);
  };

  it("wants 6 in within 10 ft", () => {
    for (const wall of needs(0.05))
      expect(wall).toMatchObject({ needed: expect.closeTo(6 * 0.0254, 9), passes: true });
    for (const wall of needs(0.045)) expect(wall.passes).toBe(false);
  });
});

describe("grass swales", () => {
  // GSA Facilities Standards P100 (2003), 2.5: at least 1 %.
  it("fall at least 1 % unless the user says otherwise", () => {
    expect(rulesSchema.parse({}).leastSwaleFall).toBe(0.01);
  });
});
