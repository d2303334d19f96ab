/**
 * Squaring, tape ties and lot lines against printed examples.
 */
import { describe, expect, it } from "vitest";
import { circlesMeet, type Point, signedArea } from "../../src/geometry";
import {
  closeTraverse,
  type DeedCall,
  levelLength,
  plannedDiagonals,
  squareUp,
  threeFourFive,
} from "../../src/plot";
import { parseDeedBearing } from "../../src/units";

function calls(legs: readonly (readonly [string, number])[]): DeedCall[] {
  return legs.map(([text, distance]) => {
    const bearing = parseDeedBearing(text);
    if (!bearing.ok) throw new Error(bearing.message);
    return { bearing: bearing.radians, distance, curve: null };
  });
}

function closed(legs: readonly (readonly [string, number])[]) {
  const found = closeTraverse(calls(legs));
  if (!found.ok) throw new Error(found.what);
  return found.traverse;
}

function expectNear(found: readonly number[], printed: readonly number[], off: number): void {
  expect(found).toHaveLength(printed.length);
  found.forEach((value, i) => {
    expect(Math.abs(value - (printed[i] ?? Number.NaN))).toBeLessThanOrEqual(off);
  });
}

// Purdue University, course ASM 215 "Surveying", page on traverse calculations; ft.
describe("a field of five sides", () => {
  const field = closed([
    ["N26-10E", 285.1],
    ["S75-25E", 610.45],
    ["S15-30W", 720.48],
    ["N1-42W", 203.0],
    ["N53-06W", 647.02],
  ]);

  it("latitudes and departures", () => {
    expectNear(
      field.courses.map((c) => c.latitude),
      [255.88, -153.7, -694.28, 202.91, 388.48],
      0.011,
    );
    expectNear(
      field.courses.map((c) => c.departure),
      [125.72, 590.78, -192.54, -6.02, -517.41],
      0.011,
    );
  });

  it("misses by 0.89 in 2466.05, about 1 in 2771", () => {
    expect(field.perimeter).toBeCloseTo(2466.05, 9);
    expect(Math.abs(field.latitude - -0.71)).toBeLessThan(0.011);
    expect(Math.abs(field.departure - 0.53)).toBeLessThan(0.011);
    expect(Math.abs(field.misclosure - 0.89)).toBeLessThan(0.011);
    // The page rounds the misclosure before it divides.
    expect(Math.abs((field.precision ?? 0) / 2771 - 1)).toBeLessThan(0.02);
  });

  it("compass rule from N 10000, E 10000", () => {
    expectNear(
      field.adjusted.map(({ y }) => 10_000 + y),
      [10255.96, 10102.44, 9408.37, 9611.34, 10000],
      0.02,
    );
    expectNear(
      field.adjusted.map(({ x }) => 10_000 + x),
      [10125.66, 10716.31, 10523.62, 10517.55, 10000],
      0.02,
    );
  });
});

// US Navy, Engineering Aid (NAVEDTRA 14071/14070), chapter 7, the same field in coordinates; ft.
it("coordinates of a balanced traverse from A at x 0, y 591.64", () => {
  const legs = [
    [255.96, 125.66],
    [-153.53, 590.65],
    [-694.07, -192.69],
    [591.64, -523.62],
  ] as const;
  const found = closeTraverse(
    legs.map(([lat, dep]) => ({
      bearing: Math.atan2(dep, lat),
      distance: Math.hypot(lat, dep),
      curve: null,
    })),
  );
  if (!found.ok) throw new Error(found.what);
  expectNear(
    found.traverse.adjusted.flatMap(({ x, y }) => [x, 591.64 + y]),
    [125.66, 847.6, 716.31, 694.07, 523.62, 0, 0, 591.64],
    0.006,
  );
});

// Jerry Mahun, Open Access Surveying Library, chapters G and I on traverses; ft.
describe("a loop by bearings to the second", () => {
  const loop = closed([
    ["S68-05-35W", 472.68],
    ["N19-46-00W", 216.13],
    ["N45-55-20E", 276.52],
    ["S54-59-15E", 382.24],
  ]);

  it("latitudes, departures and their sums", () => {
    expectNear(
      loop.courses.map((c) => c.latitude),
      [-176.357, 203.395, 192.357, -219.312],
      0.0015,
    );
    expectNear(
      loop.courses.map((c) => c.departure),
      [-438.548, -73.093, 198.651, 313.065],
      0.0015,
    );
    expectNear([loop.latitude, loop.departure, loop.perimeter], [0.083, 0.075, 1347.57], 0.0015);
  });

  it("compass rule from N 500, E 2000, and the area within", () => {
    expectNear(
      loop.adjusted.map(({ y }) => 500 + y),
      [323.614, 526.996, 719.336, 500],
      0.0012,
    );
    expectNear(
      loop.adjusted.map(({ x }) => 2000 + x),
      [1561.426, 1488.321, 1686.956, 2000],
      0.0012,
    );
    expect(Math.abs(loop.area - 102_935.75)).toBeLessThan(0.7);
  });
});

// Course slides "Area Computation", double meridian distances; m.
it("area of a six-sided traverse by its adjusted latitudes and departures", () => {
  const lat = [490.71, 587.12, -327.41, -1002.76, -122.67, 375.01];
  const dep = [47.27, 608.89, 786.78, 218.32, -1116.62, -544.64];
  let [x, y] = [0, 0];
  const ring = lat.map((north, i): Point => {
    x += dep[i] ?? 0;
    y += north;
    return [x, y];
  });
  expect(Math.abs(2 * Math.abs(signedArea(ring)) - 3_430_192.54)).toBeLessThan(1);
});

// UMBC course material (J. Squire), printed run of a circle-circle intersection program.
it("two tapes of 2.0 and 2.1 from (-0.1, -0.2) and (2.0, 1.0)", () => {
  const meet = circlesMeet([-0.1, -0.2], 2, [2, 1], 2.1);
  expectNear(
    [...(meet?.right ?? []), ...(meet?.left ?? [])],
    [1.696964, -1.078021, 0.055856, 1.793918],
    1e-6,
  );
});

// Builders' rule (a question answered in trade forums); the same rule in US Army subcourse EN0069: √(a² + b²); ft.
describe("a building of 24 by 32", () => {
  it("has diagonals of 40", () => {
    const diagonals = plannedDiagonals([
      [0, 0],
      [24, 0],
      [24, 32],
      [0, 32],
    ]);
    expect(diagonals.map(({ length }) => length)).toEqual([40, 40]);
  });

  it("is itself the largest 3-4-5 in whole feet", () => {
    expect(threeFourFive(24, 32, 1)).toEqual({ along: 24, across: 32, diagonal: 40 });
  });

  it("comes out of its six tapes", () => {
    const found = squareUp([
      { from: "A", to: "B", distance: 24 },
      { from: "B", to: "C", distance: 32 },
      { from: "C", to: "D", distance: 24 },
      { from: "D", to: "A", distance: 32 },
      { from: "A", to: "C", distance: 40 },
      { from: "B", to: "D", distance: 40 },
    ]);
    if (!found.ok) throw new Error(found.what);
    expectNear(
      found.squared.corners.flatMap(({ x, y }) => [x, y]),
      [0, 0, 24, 0, 24, 32, 0, 32],
      1e-9,
    );
  });
});

// Worked by arithmetic: 46 1/4 in of fall in 48 ft taped along the ground loses 1.9 in.
it("a tape along the slope", () => {
  const level = levelLength(48 * 12, 46.25);
  expect(48 * 12 - (level ?? 0)).toBeCloseTo(1.86, 2);
});
