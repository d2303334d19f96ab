import { describe, expect, it } from "vitest";
import { downhillArrows } from "../../src/drainage";

function arrowsOn(height: (x: number, y: number) => number, blocked = new Uint8Array(3600)) {
  const grid = { x0: -30, y0: -30, cell: 1, columns: 60, rows: 60 };
  const z = Float64Array.from({ length: 3600 }, (_, i) => height((i % 60) - 29.5, Math.floor(i / 60) - 29.5));
  return downhillArrows({ grid, z, guessed: new Uint8Array(3600), blocked });
}

describe("downhill arrows", () => {
  it("point away from the top of a cone", () => {
    const arrows = arrowsOn((x, y) => -0.1 * Math.hypot(x, y));
    expect(arrows.length).toBeGreaterThan(800);
    for (const { x, y, dx, dy, slope } of arrows) {
      const r = Math.hypot(x, y);
      if (r < 4) continue;
      expect(dx).toBeCloseTo(x / r, 1);
      expect(dy).toBeCloseTo(y / r, 1);
      expect(slope).toBeCloseTo(0.1, 2);
    }
  });

  it("stand for every place outside the walls, and point nowhere where the ground is flat", () => {
    const flat = arrowsOn((x) => 0.001 * x);
    expect(flat).toHaveLength(3600);
    for (const { dx, dy, slope } of flat) {
      expect([dx, dy]).toEqual([0, 0]);
      expect(slope).toBeCloseTo(0.001, 9);
    }
    expect(arrowsOn((x) => x, new Uint8Array(3600).fill(1))).toEqual([]);
  });
});
