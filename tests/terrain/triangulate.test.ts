import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { triangulate } from "../../src/terrain";
import {
  columns,
  edgesThatAreNotDelaunay,
  expectCounterClockwise,
  expectSound,
  planAreaOf,
  type Spot,
  surfaceOf,
} from "./surfaces";

/** Places on whole millimetres, or on a coarse grid where ties and lines are common. */
const millimetres = fc.integer({ min: 0, max: 60_000 }).map((mm) => mm / 1000);
const coarse = fc.integer({ min: 0, max: 5 });
const height = fc.integer({ min: -3000, max: 3000 }).map((mm) => mm / 1000);
const spots = (place: fc.Arbitrary<number>, most: number) =>
  fc.uniqueArray(fc.tuple(place, place, height), {
    minLength: 3,
    maxLength: most,
    selector: ([x, y]) => `${x} ${y}`,
  });

function inOneLine(points: readonly Spot[]): boolean {
  const [[ax, ay], [bx, by]] = points as [Spot, Spot];
  return points.every(([x, y]) => (bx - ax) * (y - ay) === (by - ay) * (x - ax));
}

describe("triangulate, what can be said of any points", () => {
  it("gives linked, counter-clockwise Delaunay triangles over all points (millimetre places)", () => {
    fc.assert(
      fc.property(spots(millimetres, 60), (points) => {
        const made = triangulate(...columns(points));
        fc.pre(made.ok);
        expect(made.dropped).toEqual([]);
        expectSound(made.tin, points.length);
      }),
    );
  });

  it("is exact where many points share lines and circles (places on a grid)", () => {
    fc.assert(
      fc.property(spots(coarse, 36), (points) => {
        const made = triangulate(...columns(points));
        expect(made.ok).toBe(!inOneLine(points));
        if (!made.ok) return;
        expectSound(made.tin, points.length);
        expectCounterClockwise(made.tin);
        expect(edgesThatAreNotDelaunay(made.tin)).toBe(0);
      }),
    );
  });

  it("gives the same triangles whatever the order of the points", () => {
    const shuffled = spots(coarse, 30).chain((points) =>
      fc.tuple(fc.constant(points), fc.shuffledSubarray(points, { minLength: points.length })),
    );
    const named = (points: readonly Spot[]) => {
      const made = triangulate(...columns(points));
      if (!made.ok) return made.reason;
      const { triangles, x, y } = made.tin;
      const corner = (i: number) => `${x[i]} ${y[i]}`;
      return Array.from({ length: triangles.length / 3 }, (_, t) =>
        [0, 1, 2].map((k) => corner(triangles[3 * t + k] as number)).sort(),
      ).sort();
    };
    fc.assert(
      fc.property(shuffled, ([points, again]) => {
        expect(named(again)).toEqual(named(points));
      }),
    );
  });
});

describe("triangulate, turned lattices", () => {
  const lattice = (columns: number, rows: number, spacing: number, angle: number, shift = 0): Spot[] => {
    const points: Spot[] = [];
    for (let i = 0; i < columns; i++)
      for (let j = 0; j < rows; j++)
        points.push([
          shift + spacing * (i * Math.cos(angle) - j * Math.sin(angle)),
          10 * shift + spacing * (i * Math.sin(angle) + j * Math.cos(angle)),
          0.1 * i - 0.2 * j,
        ]);
    return points;
  };

  it.each([
    [6, 4, 3, 0.3, 0],
    [5, 5, 7.62, 1.1, 0],
    [9, 3, 0.5, 2.7, 0],
    [12, 12, 10, 0.7, 451_000],
  ])(
    "%i by %i at %d m turned by %d, origin %d: squares halved, nothing flat on the outside",
    (n, m, s, a, o) => {
      const tin = surfaceOf(lattice(n, m, s, a, o));
      expectSound(tin, n * m);
      expect(tin.triangles.length / 3).toBe(2 * (n - 1) * (m - 1));
      expect(tin.hull.length).toBe(2 * (n + m) - 4);
      expect(Math.abs(planAreaOf(tin) - (n - 1) * (m - 1) * s * s)).toBeLessThan(1e-6 * s * s);
    },
  );
});

describe("triangulate, what can go wrong", () => {
  it.each<[string, Spot[]]>([
    ["none", []],
    ["one", [[1, 2, 3]]],
    [
      "two",
      [
        [0, 0, 0],
        [1, 0, 0],
      ],
    ],
    [
      "three at two places",
      [
        [0, 0, 0],
        [1, 0, 0],
        [1, 0, 5],
      ],
    ],
  ])("too few: %s", (_name, points) => {
    expect(triangulate(...columns(points))).toEqual({ ok: false, reason: "too-few" });
  });

  it("all in one line, also one that rounding bends", () => {
    const along = (dx: number, dy: number): Spot[] => [0, 1, 2, 3, 4, 5].map((i) => [i * dx, i * dy, i]);
    expect(triangulate(...columns(along(1, 0)))).toEqual({ ok: false, reason: "in-line" });
    expect(triangulate(...columns(along(0.1, 0.3)))).toEqual({ ok: false, reason: "in-line" });
    expect(triangulate(...columns(along(Math.cos(1), Math.sin(1))))).toEqual({
      ok: false,
      reason: "in-line",
    });
  });

  it("reports doubled points and keeps the first of each place", () => {
    const made = triangulate(
      ...columns([
        [0, 0, 1],
        [4, 0, 1],
        [0, 0, 9],
        [0, 4, 1],
        [4, 0, 1],
        [4.0000001, 0, 2],
      ]),
    );
    if (!made.ok) throw new Error(made.reason);
    expect(made.dropped).toEqual([
      { index: 2, sameAs: 0 },
      { index: 4, sameAs: 1 },
      { index: 5, sameAs: 1 },
    ]);
    expect([...made.tin.triangles].sort()).toEqual([0, 1, 3]);
  });

  it("keeps measured coordinates and heights as they were given", () => {
    const points: Spot[] = [
      [0.123456789, 0, 1.1],
      [10.000000001, 0.2, 1.2],
      [5, 7.77777777, 1.3],
    ];
    const { x, y, z } = surfaceOf(points);
    expect([...x]).toEqual(points.map((p) => p[0]));
    expect([...y]).toEqual(points.map((p) => p[1]));
    expect([...z]).toEqual(points.map((p) => p[2]));
  });

  it("refuses a place that is not a number, naming the point", () => {
    expect(() => triangulate([0, 1, Number.NaN], [0, 0, 1], [0, 0, 0])).toThrow("point 2");
    expect(() => triangulate([0, 1], [0, 0, 1], [0, 0, 0])).toThrow("do not match");
  });

  it.each([1e-6, 1e-3, 1e3, 1e6, 1e9])("works at any size: coordinates times %d", (scale) => {
    const tin = surfaceOf(
      (
        [
          [0, 0, 0],
          [1, 0, 0],
          [1, 1, 0],
          [0, 1, 0],
          [0.3, 0.6, 1],
        ] as Spot[]
      ).map(([x, y, z]): Spot => [x * scale, y * scale, z]),
    );
    expectSound(tin, 5);
    expect(planAreaOf(tin) / scale ** 2).toBeCloseTo(1, 12);
  });
});
