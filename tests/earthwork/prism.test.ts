import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { prismCutFill } from "../../src/earthwork";

type Row = [
  why: string,
  area: number,
  offsets: [number, number, number],
  cut: number,
  fill: number,
  cutArea: number,
];

describe("a prism, worked by hand", () => {
  it.each<Row>([
    ["wholly above: area x height", 2, [3, 3, 3], 6, 0, 2],
    ["wholly above and tilted: area x mean height", 2, [1, 3, 5], 6, 0, 2],
    ["wholly below: area x mean depth", 2, [-1, -2, -3], 0, 4, 0],
    ["lone high corner: 12 x 1/2 x 1/2 = 3 of area, x 1/3; net 12 x -1/3", 12, [1, -1, -1], 1, 5, 3],
    ["lone low corner: the mirror of that", 12, [1, 1, -1], 5, 1, 9],
    ["zero line through a corner: two halves", 6, [1, 0, -1], 1, 1, 3],
    ["a corner on the plane, the others above", 3, [0, 2, 1], 3, 0, 3],
    ["a side on the plane, the other corner below", 3, [0, 0, -2], 0, 2, 0],
    ["level with the plane: neither", 5, [0, 0, 0], 0, 0, 0],
    ["no plan area", 0, [1, -1, 2], 0, 0, 0],
    ["unlike sides: lone 2 against -1 and -3: 15 x 2/3 x 2/5 = 4 of area", 15, [-3, 2, -1], 8 / 3, 38 / 3, 4],
  ])("%s", (_why, area, [a, b, c], cut, fill, cutArea) => {
    const got = prismCutFill(area, a, b, c);
    expect(got.cut).toBeCloseTo(cut, 12);
    expect(got.fill).toBeCloseTo(fill, 12);
    expect(got.cutArea).toBeCloseTo(cutArea, 12);
    expect(got.fillArea).toBeCloseTo(a === 0 && b === 0 && c === 0 ? 0 : area - cutArea, 12);
  });
});

describe("any prism", () => {
  const area = fc.integer({ min: 1, max: 10_000 });
  const offset = fc.integer({ min: -50_000, max: 50_000 }).map((mm) => mm / 1000);
  const holds = (check: (area: number, a: number, b: number, c: number) => void) =>
    fc.assert(fc.property(area, offset, offset, offset, check));
  const near = (got: number, want: number, scale: number) =>
    expect(Math.abs(got - want)).toBeLessThanOrEqual(1e-12 * scale);

  it("has no negative volume, and a net of area x mean offset", () => {
    holds((area, a, b, c) => {
      const got = prismCutFill(area, a, b, c);
      expect(Math.min(got.cut, got.fill, got.cutArea, got.fillArea)).toBeGreaterThanOrEqual(0);
      near(got.cut - got.fill, (area * (a + b + c)) / 3, area * 100);
    });
  });

  it("swaps cut and fill when ground and target change places", () => {
    holds((area, a, b, c) => {
      const there = prismCutFill(area, a, b, c);
      const back = prismCutFill(area, -a, -b, -c);
      near(there.cut, back.fill, area * 100);
      near(there.cutArea, back.fillArea, area);
    });
  });

  it("is the same in two halves, whichever the order of the corners", () => {
    holds((area, a, b, c) => {
      const middle = (b + c) / 2;
      const halves = [prismCutFill(area / 2, middle, a, b), prismCutFill(area / 2, c, middle, a)];
      const whole = prismCutFill(area, a, b, c);
      near(
        halves.reduce((sum, half) => sum + half.cut, 0),
        whole.cut,
        area * 100,
      );
      near(
        halves.reduce((sum, half) => sum + half.fillArea, 0),
        whole.fillArea,
        area,
      );
    });
  });
});
