/** Cells that an edge crosses, cut in parts: nothing is lost, and each side of the edge is whole. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { centroid, containsPoint, type Point, signedArea } from "../../src/geometry";
import { gridOver } from "../../src/grading";
import { cellsAbout } from "../../src/grading/cells";
import type { Edge } from "../../src/grading/operator";
import { partsOfCells } from "../../src/grading/parts";
import { stripEdges } from "../../src/grading/strip";
import { rectangle } from "./plans";

const box = { minX: -11.013, minY: -11.007, maxX: 11, maxY: 11 };
const sides = (ring: readonly Point[]): Edge[] =>
  ring.map((start, i) => [start, ring[(i + 1) % ring.length] as Point]);

const lying = fc
  .tuple(
    fc.integer({ min: 1000, max: 9000 }),
    fc.integer({ min: 1000, max: 9000 }),
    fc.constantFrom(0, 0.3, Math.PI / 2, 2.1),
    fc.integer({ min: -3000, max: 3000 }),
  )
  .map(([length, width, turn, off]) => rectangle(length / 1000, width / 1000, turn, off / 1000, off / 2000));
const cell = fc.integer({ min: 130, max: 900 }).map((mm) => mm / 1000);

function laid(building: readonly Point[], edges: readonly Edge[], size: number) {
  const grid = gridOver(box, 100_000, size);
  const cells = cellsAbout(grid, building);
  const parts = partsOfCells(grid, cells, building, edges);
  const cut = new Set(parts.cell);
  const all: { x: number; y: number; weight: number }[] = [];
  cells.weight.forEach((weight, i) => {
    if (weight > 0 && !cut.has(i)) all.push({ x: cells.x[i] as number, y: cells.y[i] as number, weight });
  });
  parts.weight.forEach((weight, k) => {
    all.push({ x: parts.x[k] as number, y: parts.y[k] as number, weight });
  });
  return { grid, cells, parts, all };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe("cells in parts", () => {
  it("cover all that isn't within the walls, with its moments, wherever a pad lies over building and grid", () =>
    fc.assert(
      fc.property(lying, lying, cell, (building, pad, size) => {
        const { grid, all } = laid(building, sides(pad), size);
        const [width, height] = [grid.columns * grid.cell, grid.rows * grid.cell];
        const area = Math.abs(signedArea(building));
        expect(sum(all.map(({ weight }) => weight))).toBeCloseTo(width * height - area, 4);
        const moment = width * height * (grid.x0 + width / 2) - area * centroid(building)[0];
        expect(sum(all.map(({ x, weight }) => x * weight))).toBeCloseTo(moment, 3);
      }),
      { numRuns: 60 },
    ));

  it("give a pad beside the building its own area to the last", () =>
    fc.assert(
      fc.property(lying, cell, (pad, size) => {
        const { all } = laid(rectangle(0.5, 0.5, 0, -10, 10), sides(pad), size);
        const within = all.filter(({ x, y }) => containsPoint(pad, x, y));
        expect(sum(within.map(({ weight }) => weight))).toBeCloseTo(Math.abs(signedArea(pad)), 4);
      }),
      { numRuns: 60 },
    ));

  it("leave a cell whole where an edge runs just along its side, and one within the walls out", () => {
    const along = laid(
      rectangle(2, 2),
      [
        [
          [-11.013, -10.007],
          [11, -10.007],
        ],
      ],
      0.5,
    );
    expect(along.parts.weight).toHaveLength(0);
    const covered = laid(
      rectangle(8, 8),
      [
        [
          [-2, 0.1],
          [2, 0.1],
        ],
      ],
      0.5,
    );
    expect(covered.parts.weight).toHaveLength(0);
  });

  it("are as sharp far from the origin", () => {
    const far = 4_123_000;
    const grid = { x0: far, y0: far, cell: 0.1, columns: 20, rows: 20 };
    const building = rectangle(0.3, 0.3, 0, far + 1.75, far + 1.75);
    const edges: Edge[] = [
      [
        [far + 0.53, far],
        [far + 0.57, far + 2],
      ],
    ];
    const { weight, x } = partsOfCells(grid, cellsAbout(grid, building), building, edges);
    expect(sum([...weight])).toBeCloseTo(20 * 0.01, 9);
    expect(Math.min(...x)).toBeGreaterThan(far + 0.5);
  });
});

describe("the outline of a strip", () => {
  it("runs round a bend within 2 mm, and square over its ends, the last one drawn on", () => {
    const line: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
    ];
    const edges = stripEdges(line, 2, 1);
    const has = (a: Point, b: Point) =>
      edges.some(
        ([from, to]) =>
          Math.hypot(from[0] - a[0], from[1] - a[1]) + Math.hypot(to[0] - b[0], to[1] - b[1]) < 1e-9,
      );
    expect(has([0, 2], [0, -2])).toBe(true);
    expect(has([8, 11], [12, 11])).toBe(true);
    expect(has([0, -2], [10, -2])).toBe(true);
    expect(has([12, 0], [12, 11])).toBe(true);
    const round = edges.filter(
      ([[x, y], [u, v]]) => x >= 10 - 1e-9 && y < 1e-9 && u > 10 && v < 1e-9 && v > -2,
    );
    expect(round.length).toBe(18);
    for (const [[x, y], [u, v]] of round) {
      const middle = Math.hypot((x + u) / 2 - 10, (y + v) / 2);
      expect(middle).toBeGreaterThan(1.998);
      expect(middle).toBeLessThanOrEqual(2);
    }
  });
});
