/**
 * Heights and contours of one triangulated surface against other programs' answers on an open data set.
 *
 * Source  `data/terrain.json`: SciPy's LinearNDInterpolator and Matplotlib's contours on triangles, made once by
 *         `tests/support/python/terrain_reference.py`; its versions stand in the file. Data: `volcano.json` of
 *         vega-datasets, BSD-3-Clause, some of its places, moved off the lattice at random.
 */
import { describe, expect, it } from "vitest";
import { tinAt, tinContours } from "../../src/terrain";
import { surfaceOf } from "../terrain/surfaces";
import reference from "./data/terrain.json";

const tin = surfaceOf(reference.x.map((x, i) => [x, reference.y[i] as number, reference.z[i] as number]));

describe("a surface of 600 places", () => {
  it("has as many triangles as SciPy's", () => {
    expect(tin.triangles.length / 3).toBe(reference.triangles);
  });

  it("has SciPy's heights, and none where SciPy has none", () => {
    const known = reference.heights.filter(([, , z]) => z !== null);
    expect(known.length).toBeGreaterThan(120);
    for (const [x, y, z] of reference.heights) {
      const found = tinAt(tin, x as number, y as number);
      if (z === null) expect(found).toBeNull();
      else expect(Math.abs((found?.z ?? Number.NaN) - (z as number))).toBeLessThan(1e-9);
    }
  });

  it("has Matplotlib's contours: as many lines, as long", () => {
    const lines = tinContours(
      tin,
      reference.contours.map(({ level }) => level),
    );
    reference.contours.forEach((contour, i) => {
      expect(lines[i]).toHaveLength(contour.lines);
      const length = (lines[i] ?? []).reduce((sum, line) => sum + lengthOf(line), 0);
      expect(Math.abs(length / contour.length - 1)).toBeLessThan(1e-9);
    });
  });
});

function lengthOf(line: Float64Array): number {
  let sum = 0;
  for (let i = 2; i < line.length; i += 2) {
    sum += Math.hypot(
      (line[i] as number) - (line[i - 2] as number),
      (line[i + 1] as number) - (line[i - 1] as number),
    );
  }
  return sum;
}
