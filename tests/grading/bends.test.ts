/** Inside a bend two pieces of a line are equally near: the ground there is one surface, without a step. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { driveSchema } from "../../src/document/schema";
import { layDrive } from "../../src/grading";
import { driveOperator } from "../../src/grading/line-operators";

const bent = (turn: number) => {
  const drive = driveSchema.parse({
    id: "d",
    name: "drive",
    line: [
      [0, 0],
      [30, 0],
      [30 + 30 * Math.cos(turn), 30 * Math.sin(turn)],
    ],
    width: 4,
  });
  // Climbs 6 m in 60 m: 10 % throughout.
  return driveOperator(layDrive(drive, { roadHeight: 100, endHeight: 106, sillBelowFloor: null }));
};

function lowerAt(turn: number, x: number, y: number): number {
  const limits = { lower: 0, upper: 0, share: 0, core: false, stone: 0 };
  bent(turn).limitsAt(x, y, 0, limits);
  return limits.lower;
}

describe("inside a drive's bend", () => {
  it("the height goes over from piece to piece without a step", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1.8, noNaN: true }),
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        (turn, away) => {
          // Along a circle about the bend, from one leg to the other, over the bisector of the inner side.
          const steps = 400;
          const heights = Array.from({ length: steps + 1 }, (_, k) => {
            const angle = Math.PI - ((Math.PI - turn) * k) / steps;
            return lowerAt(turn, 30 + away * Math.cos(angle), away * Math.sin(angle));
          });
          const step = (away * (Math.PI - turn)) / steps;
          for (const [k, height] of heights.entries()) {
            const before = heights[k - 1];
            // Slopes of 1 in 2 at the sides, and the grade, which in a sharp bend is crowded on its inner side.
            if (before !== undefined) expect(Math.abs(height - before) / step).toBeLessThan(2.5);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it("is the bend's own on the bisector", () => {
    const turn = Math.PI / 3;
    const angle = (Math.PI + turn) / 2;
    for (const away of [0.5, 1, 1.9]) {
      expect(lowerAt(turn, 30 + away * Math.cos(angle), away * Math.sin(angle))).toBeCloseTo(103, 9);
    }
  });

  it("is that of the centreline elsewhere: on it, beside straight pieces and round the outside", () => {
    const turn = Math.PI / 3;
    expect(lowerAt(turn, 29, 0)).toBeCloseTo(102.9, 9);
    expect(lowerAt(turn, 20, 1.9)).toBeCloseTo(102, 9);
    expect(lowerAt(turn, 29.5, -1.9)).toBeCloseTo(102.95, 9);
    expect(lowerAt(turn, 30.5, -1.7)).toBeCloseTo(103, 9);
  });
});
