import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { driveSchema } from "../../src/document/schema";
import { wallNormals, wallWater } from "../../src/drainage";
import type { Point } from "../../src/geometry";
import { type GradingPlan, layDrive, prepare } from "../../src/grading";
import { planFor, rectangle } from "../grading/plans";

const box = rectangle(10, 6);
const range = { low: 95, high: 105 };

function walls(plan: GradingPlan, ground: (at: Point) => number, floor = 101) {
  const normals = wallNormals(plan, ground);
  return wallWater(normals, prepare(normals.places, plan, range), floor);
}

describe("walls and water", () => {
  it.each([
    ["5 % over 10 ft falls 6 in: enough", 0.05, 3.048, 0.1524, true],
    ["5 % over 3 m and up a cut slope: within an eighth of an inch", 0.05, 3, 0.15, true],
    ["2 % falls 2.4 in: not enough", 0.02, 3.048, 0.06096, false],
  ])("%s", (_why, fall, width, want, passes) => {
    const plan = planFor(box, { fall, width });
    for (const wall of walls(plan, () => 102)) {
      expect(wall.fallAway).toBeCloseTo(want, 2);
      expect(wall.needed).toBeCloseTo(0.1524, 9);
      expect(wall.fallsEnough).toBe(passes);
      expect(wall.runsTowards).toBe(0);
    }
  });

  it("run towards a wall whose uphill side is left as it is", () => {
    const plan = planFor(box, { leave: Uint8Array.from([0, 0, 1, 0]) });
    const [low, , high] = walls(plan, ([, y]) => 100 + 0.1 * y);
    expect(high).toMatchObject({
      name: "C-D",
      fallsEnough: false,
      fallAway: expect.closeTo(-0.3048, 9),
    });
    expect(high?.runsTowards).toBeGreaterThan(0.9);
    expect(low).toMatchObject({ name: "A-B", fallsEnough: true, runsTowards: 0 });
  });

  it("ask 2 % where a drive meets the wall", () => {
    const drive = driveSchema.parse({
      id: "d",
      line: [
        [0, -30],
        [0, -3],
      ],
      width: 9.9,
      door: "door",
      landing: { length: 5, fall: 0.021 },
    });
    const line = layDrive(drive, { roadHeight: 99, endHeight: 100, sillBelowFloor: 0 });
    const [wall] = walls(planFor(box, {}, { drives: [line] }), () => 100);
    expect(wall?.needed).toBeCloseTo(0.02 * 3.048, 9);
    expect(wall?.fallsEnough).toBe(true);
    expect(wall?.rule).toContain("2 %");
    expect(wall).toMatchObject({ paved: true, within: 3.048 });
  });

  it("ask over a shorter way where another wall faces them", () => {
    const court: Point[] = [
      [0, 0],
      [9, 0],
      [9, 8],
      [6, 8],
      [6, 2],
      [3, 2],
      [3, 8],
      [0, 8],
    ];
    const inner = walls(planFor(court, { width: 3.048 }), () => 100, 100.5)[3];
    expect(inner?.name).toBe("D-E");
    expect(inner?.within).toBeLessThanOrEqual(1.55);
    expect(inner?.paved).toBe(false);
    expect(inner?.needed).toBeCloseTo(0.05 * (inner?.within ?? 0), 9);
    expect(inner?.fallsEnough).toBe(true);
  });

  it("beside an inner corner are asked over the whole 10 ft where they have it: the corner's own few feet don't speak for them", () => {
    const ell: Point[] = [
      [0, 0],
      [8, 0],
      [8, 4],
      [4, 4],
      [4, 8],
      [0, 8],
    ];
    const inner = walls(planFor(ell, { width: 3.048 }), () => 100, 100.5)[2];
    expect(inner).toMatchObject({ name: "C-D", within: 3.048, fallsEnough: true });
    expect(inner?.needed).toBeCloseTo(0.1524, 9);
  });

  it("with the pad alone a raised floor makes no wall's own apron worse, whatever the ground", () => {
    const slopes = fc.double({ min: -0.3, max: 0.3, noNaN: true });
    const waves = fc.double({ min: 0, max: 0.6, noNaN: true });
    const floors = fc.double({ min: 96, max: 104, noNaN: true });
    const raises = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(slopes, slopes, waves, floors, raises, (gx, gy, wave, floor, raise) => {
        const ground = ([x, y]: Point) =>
          100 + gx * x + gy * y + wave * Math.sin(0.9 * x) * Math.cos(0.7 * y);
        const plan = planFor(box, { fall: 0.05, width: 3.048 });
        const [before, after] = [walls(plan, ground, floor), walls(plan, ground, floor + raise)];
        before.forEach(({ fallAway, fallsEnough }, wall) => {
          expect(after[wall]?.fallAway).toBeGreaterThanOrEqual(fallAway - 1e-9);
          if (fallsEnough) expect(after[wall]?.fallsEnough).toBe(true);
        });
      }),
    );
  });
});
