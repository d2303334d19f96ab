import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { centroid, type Point, signedArea } from "../../src/geometry";
import { gridOver } from "../../src/grading";
import { cellsAbout } from "../../src/grading/cells";
import { narrowEll } from "../support/outlines";
import { rectangle } from "./plans";

const turned = (ring: readonly Point[], angle: number): Point[] =>
  ring.map(([x, y]) => [
    x * Math.cos(angle) - y * Math.sin(angle),
    x * Math.sin(angle) + y * Math.cos(angle),
  ]);

describe("cells about a building", () => {
  const ring = fc
    .tuple(
      fc.integer({ min: 1000, max: 9000 }),
      fc.integer({ min: 1000, max: 9000 }),
      fc.integer({ min: 0, max: 6283 }),
      fc.boolean(),
    )
    .map(([length, width, angle, bent]) =>
      bent ? turned(narrowEll, angle / 1000) : rectangle(length / 1000, width / 1000, angle / 1000),
    );
  const cell = fc.integer({ min: 130, max: 900 }).map((mm) => mm / 1000);
  const box = { minX: -11.013, minY: -11.007, maxX: 11, maxY: 11 };

  it("leave out exactly the building's area and moments, so linear depths integrate without error", () =>
    fc.assert(
      fc.property(ring, cell, (outline, size) => {
        const grid = gridOver(box, 100_000, size);
        const cells = cellsAbout(grid, outline);
        const width = grid.columns * grid.cell;
        const height = grid.rows * grid.cell;
        const area = Math.abs(signedArea(outline));
        const [cx, cy] = centroid(outline);
        const sum = (value: (i: number) => number) =>
          cells.weight.reduce((total, weight, i) => total + (weight > 0 ? weight * value(i) : 0), 0);
        expect(sum(() => 1)).toBeCloseTo(width * height - area, 8);
        const momentX = width * height * (grid.x0 + width / 2) - area * cx;
        const momentY = width * height * (grid.y0 + height / 2) - area * cy;
        expect(sum((i) => cells.x[i] ?? 0)).toBeCloseTo(momentX, 6);
        expect(sum((i) => cells.y[i] ?? 0)).toBeCloseTo(momentY, 6);
      }),
      { numRuns: 60 },
    ));

  it("flag the cells whose centre is within the walls", () => {
    const grid = { x0: -2, y0: -2, cell: 1, columns: 4, rows: 4 };
    const { inside, covered } = cellsAbout(grid, rectangle(2.2, 2.2));
    expect([...inside].map((flag, i) => (flag ? i : -1)).filter((i) => i >= 0)).toEqual([5, 6, 9, 10]);
    expect(covered).toEqual(inside);
  });

  it("keep a cell that the wall halves, at the centroid of its outer half", () => {
    const grid = { x0: -2, y0: -2, cell: 1, columns: 4, rows: 4 };
    const { weight, x, inside } = cellsAbout(grid, [
      [-0.5, -9],
      [9, -9],
      [9, 9],
      [-0.5, 9],
    ]);
    expect(inside[1]).toBe(1);
    expect(weight[1]).toBeCloseTo(0.5, 12);
    expect(x[1]).toBeCloseTo(-0.75, 12);
  });
});
