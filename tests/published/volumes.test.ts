/**
 * Published figures for earthwork volumes, and closed forms.
 *
 * Sources
 *   [Moscow]  Moscow Mathematical Papyrus, problem 14 (as given by a Harvard Math 1a exhibit page).
 *   [AH590]   USDA NRCS, Agriculture Handbook 590, Ponds: Planning, Design, Construction: volume of an excavated pond
 *             (figures from memory, recomputed).
 *   [3908]    FOSSEE Scilab Textbook Companion no. 3908 (solved examples of a surveying textbook), examples 10.18, 10.20:
 *             data of the companion's code, answers of its formulas.
 *   [Filo]    Exam problem with solution on askfilo.com: nine reduced levels, formation 50. Only the net is compared:
 *             gross cut and fill depend on how a cell with both is divided.
 *   Spot-level rule of the textbooks: a cell counts its area times the mean of its four corners. Four triangles from
 *   a middle point at that mean have the same volume.
 */
import { describe, expect, it } from "vitest";
import { tinPlaneVolume, tinToTinVolume, volumeCurve } from "../../src/earthwork";
import type { Point } from "../../src/geometry";
import { type Breakline, makeGround, type Tin, triangulateWithLines } from "../../src/terrain";
import { columns, type Spot, surfaceOf } from "../terrain/surfaces";

/** Spot levels row by row, with a middle point at the mean of each cell and the cells' sides as breaklines. */
function spotLevels(levels: readonly (readonly number[])[], width: number, depth: number): Tin {
  const at = (row: number, column: number) => (levels[row] as number[])[column] as number;
  const corners = levels.map((row, j) => row.map((z, i): Spot => [i * width, j * depth, z]));
  const middles = levels.slice(1).flatMap((row, j) =>
    row.slice(1).map((_, i): Spot => {
      const mean = (at(j, i) + at(j, i + 1) + at(j + 1, i) + at(j + 1, i + 1)) / 4;
      return [(i + 0.5) * width, (j + 0.5) * depth, mean];
    }),
  );
  const rows = corners.map((row, j) => lineThrough(`row ${j}`, row));
  const across = (corners[0] as Spot[]).map((_, i) =>
    lineThrough(
      `column ${i}`,
      corners.map((row) => row[i] as Spot),
    ),
  );
  return linedSurface([...corners.flat(), ...middles], [...rows, ...across]);
}

function lineThrough(name: string, corners: readonly Spot[]): Breakline {
  return { name, x: corners.map((c) => c[0]), y: corners.map((c) => c[1]), z: corners.map((c) => c[2]) };
}

function linedSurface(spots: readonly Spot[], lines: readonly Breakline[]): Tin {
  const made = triangulateWithLines(...columns(spots), lines);
  if (!made.ok) throw new Error(made.reason);
  return made.tin;
}

describe("spot levels", () => {
  it("two by two squares of 10 m with depths: 1115 cubic metres [3908, 10.18]", () => {
    const depths = [
      [2.8, 3.2, 2.6],
      [2.6, 3.1, 2.4],
      [2.4, 2.9, 2.2],
    ];
    const { cut, fill, planArea } = tinPlaneVolume(spotLevels(depths, 10, 10), null, 0);
    expect(cut).toBeCloseTo(1115, 9);
    expect(fill).toBe(0);
    expect(planArea).toBeCloseTo(400, 9);
    // On the nine points alone each square is halved one way or the other; here either gives the same.
    const halved = surfaceOf(depths.flatMap((row, j) => row.map((z, i): Spot => [10 * i, 10 * j, z])));
    expect(tinPlaneVolume(halved, null, 0).cut).toBeCloseTo(1115, 9);
  });

  it("cells of 15 by 12 m against formation 50: net cut 1138.5 cubic metres [Filo]", () => {
    const levels = [
      [45.2, 48.5, 55.6],
      [47.3, 51.2, 56.6],
      [50.0, 53.2, 58.5],
    ];
    const { cut, fill } = tinPlaneVolume(spotLevels(levels, 15, 12), null, 50);
    expect(cut - fill).toBeCloseTo(1138.5, 9);
    expect(Math.min(cut, fill)).toBeGreaterThan(0);
  });

  it("the same net as a curve against height and as a volume between surfaces [Filo]", () => {
    const tin = spotLevels(
      [
        [45.2, 48.5, 55.6],
        [47.3, 51.2, 56.6],
        [50.0, 53.2, 58.5],
      ],
      15,
      12,
    );
    const ground = makeGround(tin, { minX: 0, minY: 0, maxX: 30, maxY: 24 });
    const { cut, fill, guessedCut, guessedFill } = volumeCurve(ground, [
      [0, 0],
      [30, 0],
      [30, 24],
      [0, 24],
    ]).at(50);
    expect(cut - fill).toBeCloseTo(1138.5, 8);
    expect(guessedCut + guessedFill).toBeCloseTo(0, 8);
    const formation = surfaceOf([
      [-5, -5, 50],
      [40, -5, 50],
      [40, 30, 50],
      [-5, 30, 50],
    ]);
    const between = tinToTinVolume(tin, formation, null);
    expect(between.cut - between.fill).toBeCloseTo(1138.5, 8);
  });
});

describe("triangular prisms", () => {
  it("a square of 30 m in four triangles from its middle: 2685 cubic metres [3908, 10.20]", () => {
    const tin = surfaceOf([
      [0, 0, 2.85],
      [30, 0, 2.45],
      [30, 30, 3.15],
      [0, 30, 3.55],
      [15, 15, 2.95],
    ]);
    expect(tinPlaneVolume(tin, null, 0).cut).toBeCloseTo(2685, 9);
  });
});

/** A level rectangle inside another, joined by plane sides: hips from corner to corner as breaklines. */
function frustum(inner: readonly [number, number], out: number, innerZ: number, outerZ: number): Tin {
  const [w, l] = inner;
  const corners = (a: number, z: number): Spot[] => [
    [-a, -a, z],
    [w + a, -a, z],
    [w + a, l + a, z],
    [-a, l + a, z],
  ];
  const [near, far] = [corners(0, innerZ), corners(out, outerZ)];
  const hips = near.map((corner, i) => lineThrough(`hip ${i}`, [corner, far[i] as Spot]));
  return linedSurface([...near, ...far], hips);
}

describe("frustums", () => {
  it("base 4, top 2, height 6: 56 [Moscow]", () => {
    const { cut, fill, cutArea } = tinPlaneVolume(frustum([2, 2], 1, 6, 0), null, 0);
    expect(cut).toBeCloseTo(56, 12);
    expect(fill).toBe(0);
    expect(cutArea).toBe(16);
  });

  it("a pond 12 ft deep, bottom 40 by 100, sides 2 to 1: 3613 cubic yards; areas 13 024 and 7936 [AH590]", () => {
    const pond = frustum([40, 100], 24, -12, 0);
    const full = tinPlaneVolume(pond, null, 0);
    expect(Math.abs(full.fill / 27 - 3613)).toBeLessThan(1);
    expect(full.planArea).toBeCloseTo(13_024, 8);
    expect(tinPlaneVolume(pond, null, -6).fillArea).toBeCloseTo(7936, 8);
  });

  it.each([
    [12, 9, 1.5, 2],
    [18.29, 12.19, 0.9, 3],
    [7.3, 30, 4, 1.5],
  ])(
    "a pad %d by %d, %d high, sides %d to 1: L W h + s h2 (L + W) + 4/3 s2 h3 [closed form]",
    (l, w, h, s) => {
      const closed = l * w * h + s * h * h * (l + w) + (4 / 3) * s * s * h ** 3;
      const pad = frustum([l, w], s * h, 100 + h, 100);
      const found = tinPlaneVolume(pad, null, 100).cut;
      expect(Math.abs(found / closed - 1)).toBeLessThan(1e-9);
      const level = surfaceOf([
        [-90, -90, 100],
        [90, -90, 100],
        [90, 90, 100],
        [-90, 90, 100],
        [3, 3, 100],
      ]);
      expect(Math.abs(tinToTinVolume(level, pad, null).fill / closed - 1)).toBeLessThan(1e-9);
    },
  );
});

describe("a plane over a polygon [closed form: area times the depth at its centre]", () => {
  const plan: Point[] = [
    [2, 1],
    [14, 3],
    [13, 9],
    [8, 8],
    [6, 12],
    [1, 10],
  ];
  const area = 94; // shoelace: (-8 + 87 + 32 + 48 + 48 - 19) / 2
  const plane = (x: number, y: number) => 101.3 + 0.083 * x - 0.046 * y;

  it("within 1e-9 of the closed form, at the origin and at map coordinates", () => {
    for (const [ox, oy] of [
      [0, 0],
      [512_000, 5_403_000],
    ] as const) {
      const spots: Spot[] = [];
      for (let i = 0; i < 60; i++) {
        const [x, y] = [-5 + ((i * 37) % 61) * 0.43, -4 + ((i * 23) % 59) * 0.38];
        spots.push([ox + x, oy + y, plane(x, y)]);
      }
      const ground = makeGround(surfaceOf(spots), { minX: ox, minY: oy, maxX: ox + 20, maxY: oy + 20 });
      const ring = plan.map(([x, y]): Point => [ox + x, oy + y]);
      const [cx, cy] = centreByTriangles(plan);
      const curve = volumeCurve(ground, ring);
      expect(Math.abs(curve.area / area - 1)).toBeLessThan(1e-9);
      for (const floor of [100.2, 101.5, 103]) {
        const { cut, fill } = curve.at(floor);
        expect(Math.abs(fill - cut - area * (floor - plane(cx, cy)))).toBeLessThan(1e-9 * area * 3);
      }
    }
  });

  /** Centre of area from triangles about the first corner, each weighted by its area. */
  function centreByTriangles(ring: readonly Point[]): Point {
    const [a] = ring as [Point];
    let [sum, x, y] = [0, 0, 0];
    for (let i = 2; i < ring.length; i++) {
      const [b, c] = [ring[i - 1], ring[i]] as [Point, Point];
      const weight = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
      sum += weight;
      x += (weight * (a[0] + b[0] + c[0])) / 3;
      y += (weight * (a[1] + b[1] + c[1])) / 3;
    }
    return [x / sum, y / sum];
  }
});
