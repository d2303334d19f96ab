/**
 * Published figures for areas, triangulations and heights on triangles.
 *
 * Sources
 *   [JTS]    JTS Topology Suite (Eclipse LocationTech), unit tests TriangleTest and DelaunayTest.
 *   [deBerg] M. de Berg, O. Cheong, M. van Kreveld, M. Overmars, Computational Geometry, Springer, 3rd ed. 2008,
 *            theorem 9.1 (numbering from memory).
 *   [Mahun]  J. Mahun, Open Access Surveying Library, Traverse Computations, chapter G, example 1.
 *   [DMD]    Course slides "Area Computation", example by double meridian distances (a six-sided traverse).
 *   [3782]   FOSSEE Scilab Textbook Companion no. 3782 (solved examples of a surveying textbook), examples 7.1, 8.10:
 *            data of the companion's code, answers of its formulas.
 */
import { describe, expect, it } from "vitest";
import { type Point, signedArea } from "../../src/geometry";
import { planArea, surfaceArea, tinAt, trianglePlane, triangulate } from "../../src/terrain";
import { columns, expectSound, type Spot, surfaceOf } from "../terrain/surfaces";

describe("areas by coordinates", () => {
  it("a four-sided field, 102 935.75 square feet [Mahun]", () => {
    const corners: Point[] = [
      [2000, 500],
      [1561.426, 323.614],
      [1488.321, 526.996],
      [1686.956, 719.336],
    ];
    expect(Math.abs(Math.abs(signedArea(corners)) - 102_935.75)).toBeLessThan(0.5);
  });

  it("a traverse by latitudes and departures: twice the area is 3 430 192.54 square metres [DMD]", () => {
    const latitudes = [490.71, 587.12, -327.41, -1002.76, -122.67, 375.01];
    const departures = [47.27, 608.89, 786.78, 218.32, -1116.62, -544.64];
    let [east, north] = [0, 0];
    const corners = latitudes.map((latitude, i): Point => {
      north += latitude;
      east += departures[i] as number;
      return [east, north];
    });
    expect([Math.abs(east), Math.abs(north)]).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
    expect(Math.abs(2 * Math.abs(signedArea(corners)) - 3_430_192.54)).toBeLessThan(1);
  });

  it("a field off a chain line, 6975 square metres [3782, 7.1]", () => {
    const field: Point[] = [
      [0, 0],
      [20, 42],
      [65, 58],
      [110, 0],
      [90, -60],
      [40, -20],
    ];
    expect(Math.abs(signedArea(field))).toBe(6975);
  });

  it("two cross-sections of many levels, 21.1375 and 25.9875 square metres [3782, 8.10]", () => {
    const first: Point[] = [
      [-3, 0],
      [-5.5, 2.2],
      [-3, 1.75],
      [0, 1.5],
      [5.25, 4.75],
      [7.3, 6.4],
      [3, 0],
    ];
    const second: Point[] = [
      [-3, 0],
      [-5.25, 3.1],
      [-3, 2.2],
      [0, 2],
      [6, 5.25],
      [8.5, 7.4],
      [3, 0],
    ];
    expect(Math.abs(signedArea(first))).toBeCloseTo(21.1375, 10);
    expect(Math.abs(signedArea(second))).toBeCloseTo(25.9875, 10);
  });
});

describe("heights on a triangle", () => {
  const triangle = surfaceOf([
    [1, 1, 0],
    [2, 1, 0],
    [1, 2, 10],
  ]);

  it("5 and 2 inside; -10 on its plane outside, where a surface has no answer [JTS interpolateZ]", () => {
    expect(tinAt(triangle, 1.5, 1.5)?.z).toBeCloseTo(5, 9);
    expect(tinAt(triangle, 1.2, 1.2)?.z).toBeCloseTo(2, 9);
    expect(trianglePlane(triangle, 0, 0, 0).z).toBeCloseTo(-10, 9);
    expect(tinAt(triangle, 0, 0)).toBeNull();
  });

  it.each<[string, Spot[], number]>([
    [
      "a right-angled one",
      [
        [0, 0, 10],
        [100, 0, 110],
        [100, 100, 110],
      ],
      5000,
    ],
    [
      "one with a level side",
      [
        [0, 0, 10],
        [100, 0, 10],
        [50, 100, 110],
      ],
      5000,
    ],
  ])("area along the slope 7071.067 811 865 475, %s [JTS area3D]", (_which, corners, above) => {
    const tin = surfaceOf(corners);
    expect(surfaceArea(tin)).toBeCloseTo(7071.067811865475, 9);
    expect(planArea(tin)).toBeCloseTo(above, 9);
  });
});

describe("Delaunay triangles", () => {
  it("of eight points: 16 edges, 9 triangles, these edges [JTS DelaunayTest]", () => {
    const points: Spot[] = (
      [
        [50, 40],
        [140, 70],
        [80, 100],
        [130, 140],
        [30, 150],
        [70, 180],
        [190, 110],
        [120, 20],
      ] as const
    ).map(([x, y]) => [x, y, 0]);
    const published =
      "70 180, 190 110|30 150, 70 180|30 150, 50 40|50 40, 120 20|190 110, 120 20|120 20, 140 70|" +
      "190 110, 140 70|130 140, 140 70|130 140, 190 110|70 180, 130 140|80 100, 130 140|70 180, 80 100|" +
      "30 150, 80 100|50 40, 80 100|80 100, 120 20|80 100, 140 70";
    const sorted = (edge: string) => edge.split(", ").sort().join(", ");
    const { triangles, x, y } = surfaceOf(points);
    const edges = new Set<string>();
    for (let e = 0; e < triangles.length; e++) {
      const [from, to] = [triangles[e] as number, triangles[e % 3 === 2 ? e - 2 : e + 1] as number];
      edges.add(sorted(`${x[from]} ${y[from]}, ${x[to]} ${y[to]}`));
    }
    expect(triangles.length / 3).toBe(9);
    expect([...edges].sort()).toEqual(published.split("|").map(sorted).sort());
    expect(edges.size).toBe(16);
  });

  it("of n points, k of them on the hull: 2n - 2 - k, with 3n - 3 - k edges (n 200, k 11: 387 and 586) [deBerg]", () => {
    // Eleven points on a circle round 189 others.
    const points: Spot[] = Array.from({ length: 11 }, (_, i) => [
      100 * Math.cos((2 * Math.PI * i) / 11),
      100 * Math.sin((2 * Math.PI * i) / 11),
      0,
    ]);
    for (let i = 0; i < 189; i++) {
      const radius = 60 * Math.sqrt((i + 0.5) / 189);
      points.push([radius * Math.cos(2.4 * i), radius * Math.sin(2.4 * i), 0]);
    }
    const made = triangulate(...columns(points));
    if (!made.ok) throw new Error(made.reason);
    expectSound(made.tin, 200);
    expect(made.tin.hull.length).toBe(11);
    expect(made.tin.triangles.length / 3).toBe(387);
    const open = made.tin.halfedges.filter((twin) => twin < 0).length;
    expect((made.tin.halfedges.length + open) / 2).toBe(586);
  });
});
