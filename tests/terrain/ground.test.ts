import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { containsPoint, nearestOnRing, type Point } from "../../src/geometry";
import {
  fittedPlane,
  groundAt,
  locate,
  makeGround,
  profile,
  sampleGrid,
  tinAt,
  triangulate,
} from "../../src/terrain";
import { columns, expectSound, forEachTriangle, type Spot, surfaceOf } from "./surfaces";

const millimetres = fc.integer({ min: -40_000, max: 40_000 }).map((mm) => mm / 1000);
const coarse = fc.integer({ min: -4, max: 4 }).map((step) => step * 5);
const height = fc.integer({ min: -3000, max: 3000 }).map((mm) => mm / 1000);
const spots = fc
  .oneof(millimetres, coarse)
  .chain(() => fc.constantFrom(millimetres, coarse))
  .chain((place) =>
    fc.uniqueArray(fc.tuple(place, place, height), {
      minLength: 3,
      maxLength: 40,
      selector: ([x, y]) => `${x} ${y}`,
    }),
  );
const box = fc.tuple(millimetres, millimetres, millimetres, millimetres).map(([a, b, c, d]) => ({
  minX: Math.min(a, b) * 2,
  maxX: Math.max(a, b) * 2,
  minY: Math.min(c, d) * 2,
  maxY: Math.max(c, d) * 2,
}));

describe("ground", () => {
  it("is one sound surface that reaches every corner of the box, guessed exactly outside the hull", () => {
    fc.assert(
      fc.property(spots, box, (points, reach) => {
        const made = triangulate(...columns(points));
        fc.pre(made.ok);
        const ground = makeGround(made.tin, reach);
        expectSound(ground.tin, ground.tin.x.length);
        const hull: Point[] = [...made.tin.hull].map((i) => [
          made.tin.x[i] as number,
          made.tin.y[i] as number,
        ]);
        for (const [x, y] of [
          [reach.minX, reach.minY],
          [reach.maxX, reach.minY],
          [reach.maxX, reach.maxY],
          [reach.minX, reach.maxY],
        ] as const) {
          const at = groundAt(ground, x, y);
          expect(at).not.toBeNull();
          if (nearestOnRing(hull, x, y).distance > 1e-6) expect(at?.guessed).toBe(!containsPoint(hull, x, y));
        }
      }),
    );
  });

  it("turns no triangle over, and its outer edge is convex", () => {
    fc.assert(
      fc.property(spots, box, (points, reach) => {
        const made = triangulate(...columns(points));
        fc.pre(made.ok);
        const { tin, guessed } = makeGround(made.tin, reach);
        forEachTriangle(tin, (a, b, c, index) => {
          if (guessed[index]) expect(turnOf(tin, a, b, c)).toBeGreaterThan(0);
        });
        const n = tin.hull.length;
        const scale = 1e-9 * Math.max(...tin.x.map(Math.abs), ...tin.y.map(Math.abs)) ** 2;
        for (let i = 0; i < n; i++) {
          const [a, b, c] = [0, 1, 2].map((k) => tin.hull[(i + k) % n] as number) as [number, number, number];
          expect(turnOf(tin, a, b, c)).toBeGreaterThan(-scale);
        }
      }),
    );
  });

  it("continues a plane as that plane", () => {
    const points: Spot[] = (
      [
        [0, 0],
        [20, 3],
        [18, 22],
        [-4, 17],
        [9, 9],
      ] as const
    ).map(([x, y]) => [x, y, 100 + 0.05 * x - 0.12 * y]);
    const ground = makeGround(surfaceOf(points), { minX: -60, minY: -60, maxX: 80, maxY: 80 });
    for (const [x, y] of [
      [-60, -60],
      [80, 80],
      [10, -55],
      [-1, 40],
      [9, 9],
    ] as const) {
      const at = groundAt(ground, x, y);
      expect(at?.z).toBeCloseTo(100 + 0.05 * x - 0.12 * y, 9);
      expect(at?.gx).toBeCloseTo(0.05, 9);
      expect(at?.gy).toBeCloseTo(-0.12, 9);
    }
    expect(groundAt(ground, 1e4, 0)).toBeNull();
  });
});

describe("fitted plane", () => {
  it("keeps its digits far from the origin", () => {
    const points: Spot[] = (
      [
        [0, 0],
        [30, 0],
        [30, 20],
        [0, 20],
      ] as const
    ).map(([x, y]) => [x + 512_000, y + 5_403_000, 0.03 * x - 0.07 * y]);
    const { gx, gy } = fittedPlane(...columns(points));
    expect(gx).toBeCloseTo(0.03, 9);
    expect(gy).toBeCloseTo(-0.07, 9);
  });

  it("has no slope across a line of points", () => {
    const { a, gx, gy } = fittedPlane([0, 1, 2, 3], [0, 1, 2, 3], [5, 6, 7, 8]);
    expect([a, gx, gy].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([5, 0.5, 0.5]);
    expect(fittedPlane([2, 2], [3, 3], [4, 6])).toEqual({ a: 5, gx: 0, gy: 0 });
  });
});

describe("locate and heights", () => {
  it("agree with a look through all triangles, from any start", () => {
    fc.assert(
      fc.property(spots, millimetres, millimetres, fc.nat(80), (points, x, y, from) => {
        const made = triangulate(...columns(points));
        fc.pre(made.ok);
        const found = locate(made.tin, x, y, from);
        let best = -1;
        let bestDepth = Number.NEGATIVE_INFINITY;
        forEachTriangle(made.tin, (a, b, c, index) => {
          const depth = depthInside(made.tin, a, b, c, x, y);
          if (depth > bestDepth) [best, bestDepth] = [index, depth];
        });
        if (bestDepth < -1e-9) expect(found).toBe(-1);
        if (bestDepth > 1e-9) expect(found).toBe(best);
      }),
      { numRuns: 500 },
    );
  });

  it("give each point its own height, and a plane its heights", () => {
    fc.assert(
      fc.property(spots, millimetres, millimetres, (points, px, py) => {
        const made = triangulate(...columns(points));
        fc.pre(made.ok);
        for (const [x, y, z] of points) expect(tinAt(made.tin, x, y)?.z).toBeCloseTo(z, 9);
        const tilted = surfaceOf(points.map(([x, y]) => [x, y, 3 + 0.2 * x - 0.1 * y]));
        const at = tinAt(tilted, px, py);
        if (at) expect(at.z).toBeCloseTo(3 + 0.2 * px - 0.1 * py, 7);
      }),
    );
  });
});

describe("the rim", () => {
  it("belongs to the surface: every point of a turned lattice, and places a tenth of a millimetre beyond it don't", () => {
    // The middle of one outside is the very origin, where rounding is all there is.
    for (let turn = 0; turn < 60; turn++) {
      const [angle, shift] = [0.1 * turn, turn % 4 === 3 ? 451_000 : 0];
      const at = (i: number, j: number): Spot => [
        shift + 7.62 * (i * Math.cos(angle) - j * Math.sin(angle)),
        -shift + 7.62 * (i * Math.sin(angle) + j * Math.cos(angle)),
        i + j,
      ];
      const lattice = Array.from({ length: 81 }, (_, k) => at(k % 9, Math.floor(k / 9) - 4));
      const tin = surfaceOf(lattice);
      for (let k = 0; k < 81; k++) {
        const [x, y, z] = lattice[k] as Spot;
        expect(tinAt(tin, x, y, k)?.z).toBeCloseTo(z, 6);
      }
      for (const outside of [8.0001, 9, -0.0001]) {
        const [x, y] = at(outside, 0.5);
        expect(tinAt(tin, x, y)).toBeNull();
      }
    }
  });
});

describe("grids and profiles", () => {
  const ground = makeGround(
    surfaceOf([
      [0, 0, 1],
      [30, 0, 2],
      [30, 30, 4],
      [0, 30, 2],
      [14, 11, 6],
    ]),
    { minX: -10, minY: -10, maxX: 40, maxY: 40 },
  );

  it("sample what a single query gives", () => {
    const grid = { x0: -10, y0: -10, cell: 0.9, columns: 55, rows: 55 };
    const { z, guessed } = sampleGrid(ground, grid);
    for (let at = 0; at < z.length; at += 7) {
      const x = grid.x0 + ((at % 55) + 0.5) * grid.cell;
      const y = grid.y0 + (Math.floor(at / 55) + 0.5) * grid.cell;
      const single = groundAt(ground, x, y);
      expect(z[at]).toBeCloseTo(single?.z as number, 10);
      expect(guessed[at]).toBe(single?.guessed ? 1 : 0);
    }
  });

  it("say NaN and guessed beyond the skirt", () => {
    const { z, guessed } = sampleGrid(ground, { x0: 900, y0: 0, cell: 1, columns: 2, rows: 1 });
    expect([...z, ...guessed]).toEqual([Number.NaN, Number.NaN, 1, 1]);
  });

  it("run along a line by steps no longer than asked, through its corners", () => {
    const run = profile(
      ground,
      [
        [5, 5],
        [15, 5],
        [15, 12],
      ],
      4,
    );
    expect([...run.distance]).toEqual([0, 10 / 3, 20 / 3, 10, 13.5, 17]);
    run.distance.forEach((along, i) => {
      const [x, y] = along <= 10 ? [5 + along, 5] : [15, along - 5];
      expect(run.z[i]).toBeCloseTo(groundAt(ground, x, y)?.z as number, 10);
    });
    expect([
      ...profile(
        ground,
        [
          [5, 5],
          [6, 5],
        ],
        0.5,
      ).distance,
    ]).toEqual([0, 0.5, 1]);
    expect([...run.guessed]).toEqual([0, 0, 0, 0, 0, 0]);
    expect(() =>
      profile(
        ground,
        [
          [0, 0],
          [1, 1],
        ],
        0,
      ),
    ).toThrow("step above zero");
  });
});

function turnOf({ x, y }: { x: Float64Array; y: Float64Array }, a: number, b: number, c: number): number {
  const [ax, ay] = [x[a] as number, y[a] as number];
  return (
    ((x[b] as number) - ax) * ((y[c] as number) - ay) - ((y[b] as number) - ay) * ((x[c] as number) - ax)
  );
}

/** Distance inside the nearest side, negative outside, m. */
function depthInside(
  tin: { x: Float64Array; y: Float64Array },
  a: number,
  b: number,
  c: number,
  x: number,
  y: number,
) {
  const sides = [
    [a, b],
    [b, c],
    [c, a],
  ] as const;
  return Math.min(
    ...sides.map(([p, q]) => {
      const [px, py] = [tin.x[p] as number, tin.y[p] as number];
      const [ux, uy] = [(tin.x[q] as number) - px, (tin.y[q] as number) - py];
      return (ux * (y - py) - uy * (x - px)) / Math.hypot(ux, uy);
    }),
  );
}
