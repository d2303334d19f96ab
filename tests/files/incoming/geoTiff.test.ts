/**
 * GeoTIFF in the forms that terrain is given out in, against files of one known ground from an independent writer
 * (rasterio 1.4.4, made by geotiff/make.py).
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { inMetres, readIncoming } from "../../../src/files/incoming";

const ROWS = 40;
const COLUMNS = 50;
const read = (name: string) =>
  readIncoming(
    `${name}.tif`,
    new Uint8Array(readFileSync(join(import.meta.dirname, "geotiff", `${name}.tif`))),
  );

/** Height of the cell whose middle lies there; none in row 2, column 3. */
function expectGround(points: { x: Float64Array; y: Float64Array; z: Float64Array }, factor = 1): void {
  expect(points.x.length).toBe(ROWS * COLUMNS - 1);
  for (let i = 0; i < points.x.length; i++) {
    const column = ((points.x[i] as number) - 500_000.25) / 0.5;
    const row = (4_599_999.75 - (points.y[i] as number)) / 0.5;
    expect([row, column]).not.toEqual([2, 3]);
    expect(points.z[i]).toBeCloseTo((100 + column / 4 - row / 8) * factor, 9);
  }
}

describe("GeoTIFF", () => {
  it.each([
    "strips",
    "lzw-predictor-2-int32",
    "tiles-deflate-predictor-3",
    "tiles-lzw-predictor-3",
    "tiles-float64-deflate",
    "packbits",
    "zstandard",
    "big-endian-tiles",
    "bigtiff",
    "three-bands",
    "scaled",
  ])("reads %s: each height in its place", async (name) => {
    const result = await read(name);
    if (!result.ok) throw new Error(result.message);
    expect(result.incoming).toMatchObject({ units: { known: true, unit: "m" }, warnings: [] });
    expectGround(result.incoming.points);
  });

  it.each([
    ["heights-in-us-feet", 1200 / 3937, "feet (US survey)"],
    ["heights-in-feet-by-band", 0.3048, "feet (international)"],
  ] as const)("%s: turned into the unit of the coordinates, and said", async (name, factor, words) => {
    const result = await read(name);
    if (!result.ok) throw new Error(result.message);
    expectGround(result.incoming.points, factor);
    expect(result.incoming.warnings).toEqual([
      `${name}.tif: its heights are in ${words}; they were turned into metres.`,
    ]);
  });

  it("asks for the heights' unit where the file names one for its places alone", async () => {
    const asked = async (name: string) => {
      const result = await read(name);
      return result.ok && result.incoming.heightsAsked;
    };
    expect(await asked("strips")).toBe(true);
    expect(await asked("heights-in-us-feet")).toBe(false);
    expect(await asked("heights-in-feet-by-band")).toBe(false);
    const result = await read("strips");
    if (!result.ok) throw new Error(result.message);
    const { points, heightsAsked } = inMetres(result.incoming, "m", [0, 0], "ft");
    expect(heightsAsked).toBe(false);
    expectGround({ ...points, z: points.z.map((z) => z / 0.3048) });
  });

  it.each([
    ["big-endian-predictor-3", "can't be read here (deflate with predictor 3, high byte first)"],
    ["float64-predictor-2", "Its packing: deflate with predictor 2. Save it anew"],
    ["turned", "its rows are turned against north"],
    ["coloured", "it is a coloured picture, not terrain"],
  ])("refuses %s rather than misread it", async (name, why) => {
    const result = await read(name);
    if (result.ok) throw new Error("It was read.");
    expect(result.message).toContain(why);
  });
});
