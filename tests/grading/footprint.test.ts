import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry";
import { cornerName, footprint, onWall } from "../../src/grading";
import { rectangle, shape } from "./plans";

describe("footprint", () => {
  it.each([
    ["counter-clockwise", rectangle(6, 4)],
    ["clockwise", rectangle(6, 4).reverse()],
  ])("points its walls away from the building, drawn %s", (_way, ring) => {
    const made = shape(ring);
    expect(made.area).toBeCloseTo(24, 12);
    expect(made.perimeter).toBeCloseTo(20, 12);
    for (const wall of made.walls) {
      const [x, y] = onWall(wall, wall.length / 2, 1);
      expect(Math.max(Math.abs(x) - 3, Math.abs(y) - 2)).toBeCloseTo(1, 12);
    }
  });

  it("names its walls by their corners", () => {
    expect(shape(rectangle(6, 4)).walls.map(({ name }) => name)).toEqual(["A-B", "B-C", "C-D", "D-A"]);
    expect([0, 25, 26, 27, 52].map(cornerName)).toEqual(["A", "Z", "AA", "AB", "BA"]);
  });

  it.each<[string, Point[]]>([
    [
      "too-few",
      [
        [0, 0],
        [1, 0],
      ],
    ],
    [
      "repeated",
      [
        [0, 0],
        [4, 0],
        [4, 0],
        [4, 4],
      ],
    ],
    [
      "repeated",
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [0, 0],
      ],
    ],
    [
      "crosses",
      [
        [0, 0],
        [4, 4],
        [4, 0],
        [0, 4],
      ],
    ],
    [
      "crosses",
      [
        [0, 0],
        [4, 0],
        [8, 0],
      ],
    ],
    [
      "flat",
      [
        [0, 0],
        [4, 0],
        [4, 0.004],
      ],
    ],
  ])("refuses an outline: %s", (why, ring) => {
    const made = footprint(ring);
    expect(made.ok ? "accepted" : made.fault.why).toBe(why);
  });
});
