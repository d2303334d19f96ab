import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beyondHull, splitAtHull } from "../../src/drawing/hull";
import { flatArea } from "../../src/geometry";

const square = [0, 0, 10, 0, 10, 10, 0, 10];
const lengthOf = (line: Float64Array) => {
  let sum = 0;
  for (let i = 2; i < line.length; i += 2) {
    sum += Math.hypot((line[i] ?? 0) - (line[i - 2] ?? 0), (line[i + 1] ?? 0) - (line[i - 1] ?? 0));
  }
  return sum;
};
const total = (lines: readonly Float64Array[]) => lines.reduce((sum, line) => sum + lengthOf(line), 0);

describe("a line at the hull", () => {
  it("from x = -5 to 15 through a 10 m square: 10 m inside, 5 m before and 5 m after", () => {
    const { inside, outside } = splitAtHull([-5, 5, 15, 5], square);
    expect(inside.map((run) => [...run])).toEqual([[0, 5, 10, 5]]);
    expect(outside.map((run) => [...run])).toEqual([
      [-5, 5, 0, 5],
      [10, 5, 15, 5],
    ]);
  });

  it("keeps one run whole as long as it stays on one side", () => {
    expect(splitAtHull([1, 1, 5, 5, 9, 1], square).inside).toHaveLength(1);
    expect(splitAtHull([20, 1, 25, 5, 29, 1], square)).toEqual({
      inside: [],
      outside: [Float64Array.from([20, 1, 25, 5, 29, 1])],
    });
  });

  it("loses and adds no length", () => {
    const coordinate = fc.integer({ min: -15_000, max: 25_000 }).map((millimetres) => millimetres / 1000);
    const points = fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(points, (list) => {
        const line = Float64Array.from(list.flat());
        const { inside, outside } = splitAtHull(line, square);
        expect(total(inside) + total(outside)).toBeCloseTo(lengthOf(line), 6);
        for (const run of inside) for (const value of run) expect(value).toBeGreaterThan(-1e-9);
        for (const run of inside) for (const value of run) expect(value).toBeLessThan(10 + 1e-9);
      }),
    );
  });
});

describe("ground beyond the hull", () => {
  it("of a 20 × 20 lot round a 10 × 10 hull is 300 m²", () => {
    const rings = beyondHull(
      [
        [-5, -5],
        [15, -5],
        [15, 15],
        [-5, 15],
      ],
      square,
    );
    expect(rings.reduce((sum, ring) => sum + flatArea(ring), 0)).toBeCloseTo(300, 9);
  });

  it("of an L-shaped lot counts each part once: 12 × 12 less a 6 × 6 corner, hull in its lower left 4 × 4", () => {
    const lot: [number, number][] = [
      [0, 0],
      [12, 0],
      [12, 6],
      [6, 6],
      [6, 12],
      [0, 12],
    ];
    const rings = beyondHull(lot, [0, 0, 4, 0, 4, 4, 0, 4]);
    expect(rings.reduce((sum, ring) => sum + flatArea(ring), 0)).toBeCloseTo(144 - 36 - 16, 9);
  });

  it("is nothing for a lot that was shot all over", () => {
    expect(
      beyondHull(
        [
          [1, 1],
          [9, 1],
          [5, 8],
        ],
        square,
      ),
    ).toEqual([]);
  });
});
