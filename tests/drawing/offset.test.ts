import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { offsetLine } from "../../src/drawing/offset";
import { nearestOnPolyline, type Point } from "../../src/geometry";

describe("a line moved sideways", () => {
  it("straight east, 2 m to the left, lies 2 m north", () => {
    expect(
      offsetLine(
        [
          [0, 0],
          [10, 0],
        ],
        2,
      ),
    ).toEqual([
      [0, 2],
      [10, 2],
    ]);
  });

  it("inside a right-angled bend meets in one corner, outside runs round an arc", () => {
    const bend: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
    ];
    const inner = offsetLine(bend, 2);
    expect(inner).toHaveLength(3);
    expect(inner[1]?.[0]).toBeCloseTo(8, 9);
    expect(inner[1]?.[1]).toBeCloseTo(2, 9);
    const outer = offsetLine(bend, -2);
    expect(outer.length).toBeGreaterThan(8);
    for (const [x, y] of outer.slice(1, -1)) expect(Math.hypot(x - 10, y)).toBeCloseTo(2, 9);
  });

  it("keeps its distance from a gently bent line", () => {
    const turn = fc.integer({ min: -40, max: 40 });
    fc.assert(
      fc.property(fc.array(turn, { minLength: 1, maxLength: 5 }), fc.boolean(), (turns, left) => {
        let angle = 0;
        const line: Point[] = [
          [0, 0],
          [12, 0],
        ];
        for (const degrees of turns) {
          angle += (degrees * Math.PI) / 180;
          const [x, y] = line[line.length - 1] as Point;
          line.push([x + 12 * Math.cos(angle), y + 12 * Math.sin(angle)]);
        }
        if (Math.abs(angle) > 2) return;
        for (const [x, y] of offsetLine(line, left ? 1.8 : -1.8)) {
          expect(nearestOnPolyline(line, x, y).distance).toBeCloseTo(1.8, 6);
        }
      }),
    );
  });

  it("skips doubled corners", () => {
    expect(
      offsetLine(
        [
          [0, 0],
          [0, 0],
          [10, 0],
        ],
        1,
      ),
    ).toHaveLength(2);
    expect(
      offsetLine(
        [
          [0, 0],
          [0, 0],
        ],
        1,
      ),
    ).toEqual([]);
  });
});
