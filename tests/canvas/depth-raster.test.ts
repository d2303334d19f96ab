import { describe, expect, it } from "vitest";
import { colouredCells, rasterDepth } from "../../src/canvas/paint/depthRaster";
import type { GroundGrid } from "../../src/solve/results";

/** Cells of 1 m from (0, 0); depths by a function of the cell's centre. */
function surface(columns: number, rows: number, depthAt: (x: number, y: number) => number): GroundGrid {
  const depth = new Float32Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) depth[j * columns + i] = depthAt(i + 0.5, j + 0.5);
  }
  const blank = new Float64Array(columns * rows);
  return {
    grid: { x0: 0, y0: 0, cell: 1, columns, rows },
    existing: blank,
    finished: blank,
    depth,
    guessed: new Uint8Array(columns * rows),
    inside: new Uint8Array(columns * rows),
    greatestFill: null,
    greatestCut: null,
  };
}

const red = 0xff0000ff;
const blue = 0xffff0000;
/** Cut below −0.1 in red, fill from 0.1 in blue, between them nothing. */
const table = { edges: [-0.1, 0.1], colours: Uint32Array.from([red, 0, blue]) };

function raster(ground: GroundGrid, step: number, width: number, height: number): Uint32Array {
  const pixels = new Uint32Array(width * height).fill(7);
  const top = ground.grid.rows;
  rasterDepth(ground, table, { x: 0, y: top, step, width, height }, pixels);
  return pixels;
}

describe("the depth map as pixels", () => {
  it("fills with one colour what is of one class, and clears what isn't", () => {
    const pixels = raster(
      surface(10, 10, (x) => (x < 5 ? 1 : 0)),
      0.5,
      20,
      20,
    );
    // Row in the middle: x = 3.25 lies in the fill, x = 7.25 where nothing changes.
    expect(pixels[10 * 20 + 6]).toBe(blue);
    expect(pixels[10 * 20 + 14]).toBe(0);
  });

  it("has north on top: fill in the northern half only", () => {
    const pixels = raster(
      surface(10, 10, (_x, y) => (y > 5 ? 1 : 0)),
      0.5,
      20,
      20,
    );
    expect(pixels[4 * 20 + 10]).toBe(blue);
    expect(pixels[15 * 20 + 10]).toBe(0);
  });

  it("puts an edge where the depth passes it: depth x - 5 passes 0.1 at x = 5.1 and -0.1 at 4.9", () => {
    const pixels = raster(
      surface(10, 10, (x) => x - 5),
      0.01,
      1000,
      1000,
    );
    const row = 500 * 1000;
    const at = (x: number) => pixels[row + Math.round(x / 0.01 - 0.5)];
    expect(at(4.885)).toBe(red);
    expect(at(4.915)).toBe(0);
    expect(at(5.085)).toBe(0);
    expect(at(5.115)).toBe(blue);
  });

  it("mixes the pixel that an edge goes through: half of it, half as opaque", () => {
    // Pixels of 0.2 m: the one from 5.0 to 5.2 has the edge at 5.1 in its very middle.
    const pixels = raster(
      surface(10, 10, (x) => x - 5),
      0.2,
      50,
      50,
    );
    const mixed = pixels[25 * 50 + 25] as number;
    expect(mixed >>> 24).toBeGreaterThanOrEqual(126);
    expect(mixed >>> 24).toBeLessThanOrEqual(129);
    expect(mixed & 0xffffff).toBe(blue & 0xffffff);
  });

  it("reaches up to the wall: cells inside lend no depth, their outer neighbours fill the gap", () => {
    const pixels = raster(
      surface(10, 10, (x) => (x > 5 ? Number.NaN : 1)),
      0.5,
      20,
      20,
    );
    // Between the last cell outside (4.5) and the first inside (5.5).
    expect(pixels[10 * 20 + 9]).toBe(blue);
    expect(pixels[10 * 20 + 10]).toBe(blue);
    expect(pixels[10 * 20 + 14]).toBe(0);
  });

  it("knows the block of cells that have a colour", () => {
    const ground = surface(10, 10, (x, y) => (x > 3 && x < 6 && y > 7 ? 1 : 0));
    expect(colouredCells(ground, table)).toEqual([3, 7, 5, 9]);
    expect(
      colouredCells(
        surface(5, 5, () => 0.05),
        table,
      ),
    ).toBeNull();
  });

  it("is the same in every pixel whether colours are told by the quad or one by one", () => {
    // Relief with many edges that run every way; a window of one pixel has no run to tell at once.
    const height = (x: number, y: number) => 0.3 * Math.sin(x) * Math.cos(y / 2) + 0.02 * x - 0.1;
    const coarse = surface(12, 12, height);
    const wide = raster(coarse, 0.05, 240, 240);
    const single = new Uint32Array(1);
    for (let v = 13; v < 227; v += 5)
      for (let u = 13; u < 227; u += 3) {
        const [x, y] = [u * 0.05, 12 - v * 0.05];
        rasterDepth(coarse, table, { x, y, step: 0.05, width: 1, height: 1 }, single);
        expect(wide[v * 240 + u], `pixel ${u}, ${v}`).toBe(single[0]);
      }
  });
});
