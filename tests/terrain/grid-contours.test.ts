import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Grid, gridContours, gridRegions } from "../../src/terrain";

function filled(grid: Grid, value: (x: number, y: number) => number): Float64Array {
  return Float64Array.from({ length: grid.columns * grid.rows }, (_, at) =>
    value(
      grid.x0 + ((at % grid.columns) + 0.5) * grid.cell,
      grid.y0 + (Math.floor(at / grid.columns) + 0.5) * grid.cell,
    ),
  );
}

const isClosed = (line: Float64Array) => line[0] === line.at(-2) && line[1] === line.at(-1);

function areaOf(ring: Float64Array): number {
  let twice = 0;
  for (let i = 2; i < ring.length; i += 2)
    twice +=
      (ring[i - 2] as number) * (ring[i + 1] as number) - (ring[i] as number) * (ring[i - 1] as number);
  return twice / 2;
}

describe("lines on a grid", () => {
  const grid: Grid = { x0: -10, y0: -10, cell: 0.1, columns: 200, rows: 200 };

  it("a cone: a closed circle, counter-clockwise round the greater values", () => {
    const [lines] = gridContours(
      filled(grid, (x, y) => 8 - Math.hypot(x, y)),
      grid,
      [3],
    ) as [Float64Array[]];
    expect(lines).toHaveLength(1);
    const [ring] = lines as [Float64Array];
    expect(isClosed(ring)).toBe(true);
    expect(areaOf(ring)).toBeCloseTo(Math.PI * 25, 1);
    for (let i = 0; i < ring.length; i += 2)
      expect(Math.hypot(ring[i] as number, ring[i + 1] as number)).toBeCloseTo(5, 3);
  });

  it("a slope: one open line a level, exactly straight", () => {
    const found = gridContours(
      filled(grid, (x) => x),
      grid,
      [-2.5, 0, 7.13],
    );
    expect(found.map((lines) => lines.length)).toEqual([1, 1, 1]);
    found.forEach(([line], k) => {
      for (let i = 0; i < (line as Float64Array).length; i += 2)
        expect((line as Float64Array)[i]).toBeCloseTo([-2.5, 0, 7.13][k] as number, 12);
      expect((line as Float64Array).length / 2).toBe(200);
    });
  });

  it("end where cells are left out, by NaN or by choice", () => {
    const values = filled(grid, (x) => x);
    for (let j = 90; j < 110; j++) values[j * 200 + 100] = Number.NaN;
    const [nan] = gridContours(values, grid, [0.02]) as [Float64Array[]];
    expect(nan).toHaveLength(2);
    const keep = (at: number) => Math.floor(at / 200) < 50;
    const [kept] = gridContours(values, grid, [0.02], keep) as [Float64Array[]];
    expect(kept.map((line) => line.length / 2)).toEqual([50]);
  });

  it("count a centre at the level as above: the line runs through it", () => {
    const row: Grid = { x0: 0, y0: 0, cell: 1, columns: 3, rows: 2 };
    const values = Float64Array.from([0, 1, 2, 0, 1, 2]);
    expect(gridContours(values, row, [1])[0]?.map((line) => [...line])).toEqual([[1.5, 1.5, 1.5, 0.5]]);
    expect(gridContours(values, row, [2])[0]?.map((line) => [...line])).toEqual([[2.5, 1.5, 2.5, 0.5]]);
    expect(gridContours(values, row, [0])[0]).toEqual([]);
  });

  it("join the pair that the mean of a saddle says", () => {
    const square: Grid = { x0: 0, y0: 0, cell: 1, columns: 2, rows: 2 };
    const lines = (values: number[], level: number) =>
      (gridContours(Float64Array.from(values), square, [level])[0] as Float64Array[]).map((line) => [
        ...line,
      ]);
    // Corners: bottom left 1, bottom right 0, top left 0, top right 1; mean 0.5.
    expect(lines([1, 0, 0, 1], 0.4)).toEqual(
      [
        [1.1, 0.5, 1.5, 0.9],
        [0.9, 1.5, 0.5, 1.1],
      ].map((line) => line.map((v) => expect.closeTo(v, 12))),
    );
    expect(lines([1, 0, 0, 1], 0.6)).toEqual(
      [
        [0.9, 0.5, 0.5, 0.9],
        [1.1, 1.5, 1.5, 1.1],
      ].map((line) => line.map((v) => expect.closeTo(v, 12))),
    );
  });

  it("use each crossed side once, at the level's value, whatever the values", () => {
    const columns = 7;
    const values = fc.array(fc.integer({ min: 0, max: 8 }), { minLength: 42, maxLength: 42 });
    fc.assert(
      fc.property(values, fc.integer({ min: 0, max: 16 }), (heights, halves) => {
        const level = halves / 2 + 0.25; // never a centre's own value: each crossing is a place of its own
        const small: Grid = { x0: 0, y0: 0, cell: 1, columns, rows: 6 };
        const [lines] = gridContours(Float64Array.from(heights), small, [level]) as [Float64Array[]];
        let sides = 0;
        for (let j = 0; j < 6; j++)
          for (let i = 0; i < columns; i++) {
            const above = (heights[j * columns + i] as number) > level;
            if (i + 1 < columns && above !== (heights[j * columns + i + 1] as number) > level) sides++;
            if (j + 1 < 6 && above !== (heights[(j + 1) * columns + i] as number) > level) sides++;
          }
        const places = lines.map((line) => line.length / 2 - (isClosed(line) ? 1 : 0));
        expect(places.reduce((a, b) => a + b, 0)).toBe(sides);
      }),
    );
  });
});

describe("regions of a grid", () => {
  const grid: Grid = { x0: 0, y0: 0, cell: 2, columns: 4, rows: 3 };

  it("all at or over the threshold: the border of the grid, corners cut between cell edges", () => {
    const [ring, ...others] = gridRegions(
      filled(grid, () => 1),
      grid,
      1,
    ) as [Float64Array];
    expect(others).toEqual([]);
    expect(isClosed(ring)).toBe(true);
    // 8 x 6 less four corner triangles of one by one.
    expect(areaOf(ring)).toBeCloseTo(48 - 4 * 0.5, 12);
  });

  it("none: no ring; one cell of NaN: a hole, clockwise", () => {
    expect(
      gridRegions(
        filled(grid, () => 0),
        grid,
        1,
      ),
    ).toEqual([]);
    const wide: Grid = { x0: 0, y0: 0, cell: 1, columns: 5, rows: 5 };
    const values = filled(wide, () => 3);
    values[12] = Number.NaN;
    const areas = gridRegions(values, wide, 1)
      .map(areaOf)
      .sort((a, b) => a - b);
    expect(areas.map((a) => Math.round(a * 1e9) / 1e9)).toEqual([-0.5, 24.5]);
  });

  it("a dome cut by the border closes along it", () => {
    const wide: Grid = { x0: 0, y0: 0, cell: 0.05, columns: 200, rows: 200 };
    const rings = gridRegions(
      filled(wide, (x, y) => 4 - Math.hypot(x, y - 5)),
      wide,
      0,
    );
    expect(rings).toHaveLength(1);
    expect(isClosed(rings[0] as Float64Array)).toBe(true);
    expect(areaOf(rings[0] as Float64Array)).toBeCloseTo((Math.PI * 16) / 2, 1);
  });
});
