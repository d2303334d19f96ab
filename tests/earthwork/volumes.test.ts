import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tinPlaneVolume, tinToTinVolume, type Volume, volumeCurve } from "../../src/earthwork";
import { containsPoint, type Point, signedArea, turned } from "../../src/geometry";
import { groundAt, makeGround, type Tin, triangulate } from "../../src/terrain";
import { columns, planAreaOf, type Spot, surfaceOf } from "../terrain/surfaces";

const millimetres = fc.integer({ min: -30_000, max: 30_000 }).map((mm) => mm / 1000);
const height = fc.integer({ min: -3000, max: 3000 }).map((mm) => mm / 1000);
const spots = fc.uniqueArray(fc.tuple(millimetres, millimetres, height), {
  minLength: 4,
  maxLength: 40,
  selector: ([x, y]) => `${x} ${y}`,
});
const surface = spots.map((points) => triangulate(...columns(points))).filter((made) => made.ok);
const tins: fc.Arbitrary<Tin> = surface.map((made) => made.tin);
const centimetres = fc.integer({ min: 300, max: 2500 }).map((cm) => cm / 100);

/** An L, turned and moved: not convex, not along the axes. */
const footprint: fc.Arbitrary<Point[]> = fc
  .tuple(centimetres, centimetres, millimetres, millimetres, fc.integer({ min: 0, max: 359 }))
  .map(([a, b, x, y, degrees]) =>
    (
      [
        [0, 0],
        [a, 0],
        [a, b / 2],
        [a / 3, b / 2],
        [a / 3, b],
        [0, b],
      ] as Point[]
    ).map((corner) =>
      turned([corner[0] + x / 3, corner[1] + y / 3], [x / 3, y / 3], (degrees * Math.PI) / 180),
    ),
  );
const wide = { minX: -90, minY: -90, maxX: 90, maxY: 90 };
const grounds = tins.map((tin) => makeGround(tin, wide));

const near = (got: number, want: number, scale: number) =>
  expect(Math.abs(got - want)).toBeLessThanOrEqual(1e-9 * Math.max(1, scale));

describe("a surface against a plane", () => {
  it("over any footprint a tilted plane gives area x depth at the centre, and covers the footprint", () => {
    fc.assert(
      fc.property(spots, footprint, height, (points, ring, level) => {
        const made = triangulate(...columns(points.map(([x, y]): Spot => [x, y, 0.07 * x - 0.03 * y])));
        fc.pre(made.ok);
        const { tin } = makeGround(made.tin, wide);
        const got = tinPlaneVolume(tin, ring, level);
        const area = signedArea(ring);
        const [cx, cy] = centreOfL(ring);
        near(got.planArea, area, area);
        near(got.cut - got.fill, area * (0.07 * cx - 0.03 * cy - level), area * 10);
      }),
    );
  });

  it("adds up over a cut of the footprint in two", () => {
    fc.assert(
      fc.property(grounds, footprint, height, ({ tin }, ring, level) => {
        const whole = tinPlaneVolume(tin, ring, level);
        const [a, b, c, d, e, f] = ring as [Point, Point, Point, Point, Point, Point];
        const stem = tinPlaneVolume(tin, [a, d, e, f], level);
        const foot = tinPlaneVolume(tin, [a, b, c, d], level);
        for (const key of ["cut", "fill", "cutArea", "fillArea", "planArea"] as const)
          near(stem[key] + foot[key], whole[key], whole.planArea * 10);
      }),
    );
  });

  it("without a footprint reckons on all of the surface", () => {
    fc.assert(
      fc.property(tins, height, (tin, level) => {
        const got = tinPlaneVolume(tin, null, level);
        near(got.planArea, planAreaOf(tin), got.planArea);
        near(got.cutArea + got.fillArea, got.planArea, got.planArea);
      }),
    );
  });

  it("is unchanged by moving the origin and turning the axes", () => {
    fc.assert(
      fc.property(spots, footprint, fc.integer({ min: 0, max: 359 }), (points, ring, degrees) => {
        const first = triangulate(...columns(points));
        fc.pre(first.ok);
        const move = ([x, y]: Point): Point => {
          const [tx, ty] = turned([x, y], [3, -2], (degrees * Math.PI) / 180);
          return [tx + 1234, ty - 567];
        };
        // Turned triangles rather than turned points: four points on a circle may be halved either way.
        const movedPoints = points.map(([x, y]) => move([x, y]));
        const moved: Tin = {
          ...first.tin,
          x: Float64Array.from(movedPoints, (p) => p[0]),
          y: Float64Array.from(movedPoints, (p) => p[1]),
        };
        const before = tinPlaneVolume(first.tin, ring, 0.1);
        const after = tinPlaneVolume(moved, ring.map(move), 0.1);
        for (const key of ["cut", "fill", "planArea"] as const)
          near(after[key], before[key], before.planArea * 30);
      }),
    );
  });

  it("gives nothing where the footprint lies beside the surface", () => {
    const tin = surfaceOf([
      [0, 0, 1],
      [4, 0, 2],
      [0, 4, 3],
    ]);
    const beside: Point[] = [
      [50, 0],
      [60, 0],
      [60, 10],
    ];
    expect(tinPlaneVolume(tin, beside, 0)).toEqual({ cut: 0, fill: 0, cutArea: 0, fillArea: 0, planArea: 0 });
  });
});

it("no volume is reckoned for a footprint that crosses itself", () => {
  const tin = surfaceOf([
    [0, 0, 1],
    [4, 0, 2],
    [0, 4, 3],
  ]);
  const bow: Point[] = [
    [0, 0],
    [1, 1],
    [1, 0],
    [0, 1],
  ];
  expect(() => tinPlaneVolume(tin, bow, 0)).toThrow("crosses itself");
});

describe("the volume curve", () => {
  it("is the direct volume at every height", () => {
    fc.assert(
      fc.property(grounds, footprint, height, fc.nat(), (ground, ring, level, pick) => {
        const curve = volumeCurve(ground, ring);
        const someCorner = ground.tin.z[pick % ground.measuredPoints] as number;
        for (const h of [level, someCorner, -50, 50]) {
          const direct = tinPlaneVolume(ground.tin, ring, h);
          const got = curve.at(h);
          for (const key of ["cut", "fill", "cutArea", "fillArea"] as const)
            near(got[key], direct[key], direct.planArea * 60);
        }
        near(curve.area, signedArea(ring), curve.area);
      }),
    );
  });

  it("falls in cut and grows in fill with the height; the net changes by the area", () => {
    fc.assert(
      fc.property(grounds, footprint, height, centimetres, (ground, ring, level, rise) => {
        const curve = volumeCurve(ground, ring);
        const low = curve.at(level);
        const high = curve.at(level + rise / 10);
        const slack = 1e-9 * curve.area;
        expect(high.cut).toBeLessThanOrEqual(low.cut + slack);
        expect(high.fill).toBeGreaterThanOrEqual(low.fill - slack);
        near(high.fill - high.cut - (low.fill - low.cut), (curve.area * rise) / 10, curve.area * 30);
      }),
    );
  });

  it("tells guessed from measured, and the deepest places", () => {
    fc.assert(
      fc.property(tins, footprint, height, (tin, ring, level) => {
        const ground = makeGround(tin, wide);
        const curve = volumeCurve(ground, ring);
        const at = curve.at(level);
        const measured = tinPlaneVolume(tin, ring, level);
        near(at.cut - at.guessedCut, measured.cut, curve.area * 30);
        near(at.fill - at.guessedFill, measured.fill, curve.area * 30);
        near(curve.area - curve.guessedArea, measured.planArea, curve.area);
        const { lowest, highest } = curve;
        expect(lowest && groundAt(ground, lowest.x, lowest.y)?.z).toBeCloseTo(lowest?.z as number, 6);
        expect(at.greatestCut).toBe(Math.max(0, (highest?.z as number) - level));
        expect(at.greatestFill).toBe(Math.max(0, level - (lowest?.z as number)));
        for (let i = 0; i < ground.measuredPoints; i++) {
          const [x, y, z] = [ground.tin.x[i], ground.tin.y[i], ground.tin.z[i]] as [number, number, number];
          if (!containsPoint(ring, x, y)) continue;
          expect(z).toBeGreaterThanOrEqual((lowest?.z as number) - 1e-9);
          expect(z).toBeLessThanOrEqual((highest?.z as number) + 1e-9);
        }
      }),
    );
  });

  it("counts level ground at the plane as neither cut nor fill", () => {
    const level = makeGround(
      surfaceOf([
        [0, 0, 2],
        [9, 0, 2],
        [9, 9, 2],
        [0, 9, 2],
      ]),
      {
        minX: 0,
        minY: 0,
        maxX: 9,
        maxY: 9,
      },
    );
    const ring: Point[] = [
      [1, 1],
      [5, 1],
      [5, 4],
      [1, 4],
    ];
    const curve = volumeCurve(level, ring);
    expect(curve.at(2)).toMatchObject({ cut: 0, fill: 0, cutArea: 0, fillArea: 0, greatestCut: 0 });
    expect(curve.at(2.5).fill).toBeCloseTo(6, 12);
    expect(curve.at(1).cut).toBeCloseTo(12, 12);
  });

  it("has no ground where the footprint lies beyond it", () => {
    const ground = makeGround(
      surfaceOf([
        [0, 0, 2],
        [9, 0, 2],
        [9, 9, 2],
      ]),
      { minX: 0, minY: 0, maxX: 9, maxY: 9 },
    );
    const curve = volumeCurve(ground, [
      [500, 0],
      [510, 0],
      [510, 10],
    ]);
    expect([curve.area, curve.lowest, curve.highest]).toEqual([0, null, null]);
    expect(curve.at(1)).toMatchObject({ cut: 0, fill: 0, greatestCut: 0, greatestFill: 0 });
  });
});

describe("a surface against another", () => {
  const swapped = ({ cut, fill, cutArea, fillArea, planArea }: Volume): Volume => ({
    cut: fill,
    fill: cut,
    cutArea: fillArea,
    fillArea: cutArea,
    planArea,
  });

  it("is antisymmetric", () => {
    fc.assert(
      fc.property(tins, tins, fc.option(footprint), (a, b, ring) => {
        const there = tinToTinVolume(a, b, ring);
        const back = swapped(tinToTinVolume(b, a, ring));
        for (const key of ["cut", "fill", "cutArea", "fillArea", "planArea"] as const)
          near(there[key], back[key], there.planArea * 6);
      }),
    );
  });

  it("agrees with the plane volume where the other is level, and is nothing against itself", () => {
    fc.assert(
      fc.property(tins, height, (tin, level) => {
        const flat: Spot[] = [
          [-99, -99, level],
          [99, -99, level],
          [99, 99, level],
          [-99, 99, level],
          [1, 2, level],
        ];
        const plane = tinPlaneVolume(tin, null, level);
        const against = tinToTinVolume(tin, surfaceOf(flat), null);
        for (const key of ["cut", "fill", "cutArea", "fillArea", "planArea"] as const)
          near(against[key], plane[key], plane.planArea * 6);
        const self = tinToTinVolume(tin, tin, null);
        near(self.cut + self.fill, 0, plane.planArea);
        near(self.planArea, plane.planArea, plane.planArea);
      }),
    );
  });

  it("against itself raised by a height is that height x area, all fill", () => {
    fc.assert(
      fc.property(tins, footprint, (tin, ring) => {
        const raised: Tin = { ...tin, z: tin.z.map((z) => z + 0.25) };
        const { cut, fill, planArea } = tinToTinVolume(tin, raised, ring);
        near(cut, 0, planArea);
        near(fill, 0.25 * planArea, planArea);
      }),
    );
  });

  it("reckons only where the two overlap", () => {
    const a = surfaceOf([
      [0, 0, 1],
      [4, 0, 1],
      [4, 4, 1],
      [0, 4, 1],
    ]);
    const b = surfaceOf([
      [3, 1, 0],
      [9, 1, 0],
      [9, 2, 0],
      [3, 2, 0],
    ]);
    const overlap = tinToTinVolume(a, b, null);
    expect(overlap.fill + overlap.fillArea).toBe(0);
    for (const one of [overlap.cut, overlap.cutArea, overlap.planArea]) expect(one).toBeCloseTo(1, 12);
    const apart = surfaceOf([
      [30, 1, 0],
      [39, 1, 0],
      [39, 2, 0],
    ]);
    expect(tinToTinVolume(a, apart, null).planArea).toBe(0);
  });
});

/** Centre of area of the L, from its two rectangles. */
function centreOfL([a, b, c, d, e, f]: readonly Point[]): Point {
  const parts = [
    [a, b, c, d],
    [a, d, e, f],
  ] as Point[][];
  let sum = 0;
  let x = 0;
  let y = 0;
  for (const part of parts) {
    const [p, q, r, s] = part as [Point, Point, Point, Point];
    for (const [k, l, m] of [
      [p, q, r],
      [p, r, s],
    ] as const) {
      const area = signedArea([k, l, m]);
      sum += area;
      x += (area * (k[0] + l[0] + m[0])) / 3;
      y += (area * (k[1] + l[1] + m[1])) / 3;
    }
  }
  return [x / sum, y / sum];
}
