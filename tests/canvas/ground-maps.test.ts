/** Maps of heights and steepness: what they show is the ground, and their legend says what is seen. */
import { describe, expect, it } from "vitest";
import { heightMap, slopeMap } from "../../src/canvas/paint/groundMaps";
import { newProject } from "../../src/document";
import { heightClasses, slopeClasses } from "../../src/drawing/map-classes";
import { heightColours, slopeColours } from "../../src/look/schemes";
import { createSolver } from "../../src/solve/pipeline";
import { groundAt, makeGround, triangulate } from "../../src/terrain";
import { demoProject } from "../support/demo";

/** A plane that rises 5 % to the east and 12 % to the north: 13 % in all. */
function plane() {
  const tin = triangulate(
    Float64Array.of(0, 40, 40, 0, 20),
    Float64Array.of(0, 0, 30, 30, 15),
    Float64Array.of(100, 102, 105.6, 103.6, 102.8),
  );
  if (!tin.ok) throw new Error("a plane has a surface");
  const ground = makeGround(tin.tin, { minX: -5, minY: -5, maxX: 45, maxY: 35 });
  return { ...createSolver().solve(newProject()), ground };
}

describe("the maps", () => {
  it("show the heights of the shots' ground", () => {
    const results = plane();
    const map = heightMap(results, "existing");
    if (!map) throw new Error("there is ground");
    const { grid } = map;
    for (const k of [0, 777, grid.columns * 40 + 100]) {
      const x = grid.x0 + ((k % grid.columns) + 0.5) * grid.cell;
      const y = grid.y0 + (Math.floor(k / grid.columns) + 0.5) * grid.cell;
      expect(map.depth[k]).toBeCloseTo(groundAt(results.ground, x, y)?.z ?? Number.NaN, 4);
    }
    expect(map.low).toBeGreaterThan(99.99);
    expect(map.high).toBeLessThan(105.61);
  });

  it("show the steepness of a plane everywhere: 13 %", () => {
    const map = slopeMap(plane(), "existing");
    expect(map?.low).toBeCloseTo(0.13, 3);
    expect(map?.high).toBeCloseTo(0.13, 3);
  });

  it("show an even slope of just 10 % in one class: all cells have the same steepness", () => {
    const tin = triangulate(
      Float64Array.of(0, 37, 37, 0, 20),
      Float64Array.of(0, 0, 30, 30, 15),
      Float64Array.of(100, 103.7, 103.7, 100, 102),
    );
    if (!tin.ok) throw new Error("a plane has a surface");
    const ground = makeGround(tin.tin, { minX: -5, minY: -5, maxX: 45, maxY: 35 });
    const map = slopeMap({ ...createSolver().solve(newProject()), ground }, "existing");
    expect(new Set([...(map?.depth ?? [])].filter((value) => !Number.isNaN(value))).size).toBe(1);
  });

  it("have no value on guessed ground or under the building, and the finished height where earth is moved", () => {
    const results = createSolver().solve(demoProject("pottery-studio"));
    const [was, is] = [heightMap(results, "existing"), heightMap(results, "finished")];
    if (!was || !is || !results.surface) throw new Error("the studio has ground");
    const { surface } = results;
    const at = (x: number, y: number) =>
      Math.floor((y - is.grid.y0) / is.grid.cell) * is.grid.columns +
      Math.floor((x - is.grid.x0) / is.grid.cell);
    const middle = surface.inside.indexOf(1);
    const place = (k: number): [number, number] => [
      surface.grid.x0 + ((k % surface.grid.columns) + 0.5) * surface.grid.cell,
      surface.grid.y0 + (Math.floor(k / surface.grid.columns) + 0.5) * surface.grid.cell,
    ];
    expect(is.depth[at(...place(middle + 3 * surface.grid.columns + 8))]).toBeNaN();
    const spot = surface.greatestFill?.at ?? [0, 0];
    const k = at(spot[0], spot[1]);
    const raised = [k - 2, k - 1, k, k + 1, k + 2, k + is.grid.columns, k - is.grid.columns].map(
      (one) => (is.depth[one] ?? Number.NaN) - (was.depth[one] ?? Number.NaN),
    );
    expect(Math.max(...raised.filter((one) => !Number.isNaN(one)))).toBeGreaterThan(
      0.8 * (surface.greatestFill?.depth ?? 0),
    );
  });
});

describe("their classes", () => {
  const { display } = demoProject("pottery-studio");

  it("are of equal round height, at most nine, and cover the ground", () => {
    for (const [low, high] of [
      [29.9, 30.7],
      [0, 0.02],
      [-12, 260],
      [30, 30],
    ] as const) {
      for (const length of ["ft-in", "in", "ft", "m", "mm"] as const) {
        const { edges, colours, words } = heightClasses(low, high, { ...display, length }, 30);
        expect(colours.length).toBe(edges.length + 1);
        expect(words.length).toBe(colours.length);
        expect(colours.length).toBeLessThanOrEqual(9);
        const steps = edges.slice(1).map((edge, i) => edge - (edges[i] as number));
        for (const step of steps) expect(step).toBeCloseTo(steps[0] as number, 9);
        if (edges.length > 0) {
          expect(edges[0]).toBeGreaterThan(low - 1e-9);
          expect(edges[edges.length - 1]).toBeLessThanOrEqual(high + 1e-9);
        }
      }
    }
  });

  it("are told from the mark: half a metre above and below it", () => {
    const { edgeTexts } = heightClasses(29.6, 30.7, { ...display, length: "m" }, 30);
    expect(edgeTexts).toEqual(["−0.20 m", "0", "+0.20 m", "+0.40 m", "+0.60 m"]);
    const inFeet = heightClasses(29.6, 30.7, { ...display, length: "ft-in" }, 30);
    expect(inFeet.edgeTexts).toEqual(["−1′", "−6″", "0", "+6″", "+1′", "+1′ 6″", "+2′"]);
    expect(inFeet.words[0]).toBe("under −1′");
    expect(inFeet.words[inFeet.words.length - 1]).toBe("over +2′");
  });

  it("of steepness read in the plan's notation", () => {
    expect(slopeClasses({ ...display, slope: "percent" }, "light").edgeTexts).toEqual([
      "1 %",
      "2 %",
      "5 %",
      "10 %",
      "20 %",
      "33 %",
    ]);
    expect(slopeClasses({ ...display, slope: "ratio" }, "light").edgeTexts[2]).toBe("1 in 20");
  });

  it("run evenly from dark to light, or from the sheet's own tone", () => {
    expect(heightColours(2)).toEqual(["#00204d", "#ffea46"]);
    expect(heightColours(10)[4]).toBe("#707173");
    const lightness = heightColours(9).map(
      (colour) => Number.parseInt(colour.slice(1, 3), 16) + Number.parseInt(colour.slice(3, 5), 16),
    );
    expect([...lightness].sort((p, q) => p - q)).toEqual(lightness);
    expect(slopeColours("dark")[0]).toBe(slopeColours("light")[6]);
  });
});
