import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  boundsOf,
  centroid,
  containsPoint,
  convexPieces,
  counterClockwise,
  isRightAngled,
  nearestOnRing,
  type Point,
  perimeter,
  ringsSelfCross,
  selfCrossing,
  signedArea,
  turn,
  turned,
} from "../../src/geometry";

const square: Point[] = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
];
const ell: Point[] = [
  [0, 0],
  [6, 0],
  [6, 2],
  [2, 2],
  [2, 5],
  [0, 5],
];
const bow: Point[] = [
  [0, 0],
  [2, 2],
  [2, 0],
  [0, 2],
];

/** Star-shaped rings round the origin, so simple by making, often not convex. */
const star: fc.Arbitrary<Point[]> = fc
  .array(fc.integer({ min: 100, max: 9000 }), { minLength: 3, maxLength: 14 })
  .map((radii) =>
    radii.map((mm, i): Point => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [(mm * Math.cos(angle)) / 1000, (mm * Math.sin(angle)) / 1000];
    }),
  );

describe("rings, worked by hand", () => {
  it("area, centre, length", () => {
    expect(signedArea(square)).toBe(4);
    expect(signedArea([...square].reverse())).toBe(-4);
    expect(signedArea(ell)).toBe(18);
    expect(signedArea([])).toBe(0);
    // 12 at (3, 1) and 6 at (1, 3.5)
    expect(centroid(ell)).toEqual([(12 * 3 + 6 * 1) / 18, (12 * 1 + 6 * 3.5) / 18]);
    expect(
      centroid([
        [0, 0],
        [2, 2],
        [4, 4],
      ]),
    ).toEqual([2, 2]);
    expect(perimeter(ell)).toBe(22);
  });

  it("way round", () => {
    expect(counterClockwise(square)).toBe(square);
    expect(signedArea(counterClockwise([...ell].reverse()))).toBe(18);
  });

  it("inside, and the nearest place on the edge", () => {
    expect(containsPoint(ell, 1, 4)).toBe(true);
    expect(containsPoint(ell, 3, 3)).toBe(false);
    expect(containsPoint(ell, -1, 0)).toBe(false);
    expect(nearestOnRing(ell, 3, 3)).toEqual({ distance: 1, x: 3, y: 2, segment: 2, t: 0.75 });
    expect(nearestOnRing(ell, 8, -1)).toMatchObject({ x: 6, y: 0, distance: Math.hypot(2, 1) });
    expect(nearestOnRing(ell, -1, 3)).toMatchObject({ x: 0, y: 3, segment: 5 });
  });

  it.each<[string, Point[], readonly [number, number] | null]>([
    ["a square", square, null],
    ["an L", ell, null],
    ["a bow tie", bow, [0, 2]],
    [
      "a corner on another side",
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ],
      [0, 2],
    ],
    [
      "a side folded back",
      [
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 3],
      ],
      [0, 1],
    ],
    [
      "a corner twice",
      [
        [0, 0],
        [4, 0],
        [4, 0],
        [0, 3],
      ],
      [0, 1],
    ],
    [
      "folded back at the first corner",
      [
        [2, 0],
        [4, 0],
        [4, 3],
        [3, 0],
      ],
      [0, 2],
    ],
  ])("crossing itself: %s", (_name, ring, sides) => {
    expect(selfCrossing(ring)).toEqual(sides);
    expect(ringsSelfCross(ring)).toBe(sides !== null);
  });
});

describe("any ring", () => {
  it("keeps area and turns its centre with it", () => {
    fc.assert(
      fc.property(star, fc.integer({ min: 0, max: 359 }), (ring, degrees) => {
        const angle = (degrees * Math.PI) / 180;
        const other = ring.map((corner) => turned(corner, [3, -7], angle));
        expect(signedArea(other)).toBeCloseTo(signedArea(ring), 9);
        const [x, y] = turned(centroid(ring), [3, -7], angle);
        expect(centroid(other)[0]).toBeCloseTo(x, 7);
        expect(centroid(other)[1]).toBeCloseTo(y, 7);
      }),
    );
  });

  it("far from the origin loses no more than the coordinates do", () => {
    const far = ell.map(([x, y]): Point => [x + 512_345, y + 5_403_210]);
    expect(signedArea(far)).toBeCloseTo(18, 8);
    expect(centroid(far)[0] - 512_345).toBeCloseTo(42 / 18, 8);
  });
});

describe("convex pieces", () => {
  const isConvex = (ring: readonly Point[]) =>
    ring.every((b, i) => {
      const a = ring[(i + ring.length - 1) % ring.length] as Point;
      const c = ring[(i + 1) % ring.length] as Point;
      return turn(a[0], a[1], b[0], b[1], c[0], c[1]) >= 0;
    });

  it("leave a convex ring whole and cut an L in two", () => {
    expect(convexPieces([...square].reverse())).toHaveLength(1);
    expect(convexPieces(ell)).toHaveLength(2);
  });

  it("pass over corners in line, doubled corners, and rings without area", () => {
    const flatFirst: Point[] = [
      [1, 0],
      [2, 0],
      [2, 2],
      [0, 2],
      [0, 0],
      [0, 0],
    ];
    expect(convexPieces(flatFirst).map((piece) => [piece.length, signedArea(piece)])).toEqual([[4, 4]]);
    expect(
      convexPieces([
        [0, 0],
        [1, 0],
        [2, 0],
        [2, 0],
        [2, 2],
        [0, 2],
        [0, 1],
      ]),
    ).toEqual([
      expect.arrayContaining([
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ]),
    ]);
    expect(
      convexPieces([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toEqual([]);
  });

  it("are none of a ring that crosses itself", () => {
    expect(convexPieces(bow)).toEqual([]);
  });

  it("of any simple ring are convex and add up to its area", () => {
    fc.assert(
      fc.property(star, fc.boolean(), (ring, backwards) => {
        const pieces = convexPieces(backwards ? [...ring].reverse() : ring);
        for (const piece of pieces) expect(isConvex(piece)).toBe(true);
        const sum = pieces.reduce((area, piece) => area + signedArea(piece), 0);
        expect(sum).toBeCloseTo(Math.abs(signedArea(ring)), 9);
        for (const piece of pieces) {
          const [x, y] = centroid(piece);
          expect(containsPoint(ring, x, y)).toBe(true);
        }
      }),
    );
  });

  it("of a comb with many teeth too", () => {
    const comb: Point[] = [
      [0, 0],
      [40, 0],
    ];
    for (let x = 40; x > 0; x -= 2) comb.push([x, 5], [x - 1, 1]);
    comb.push([0, 5]);
    expect(selfCrossing(comb)).toBeNull();
    const sum = convexPieces(comb).reduce((area, piece) => area + signedArea(piece), 0);
    expect(sum).toBeCloseTo(signedArea(comb), 9);
  });
});

it("bounds hold all points; of none they are turned inside out", () => {
  expect(boundsOf(ell)).toEqual({ minX: 0, minY: 0, maxX: 6, maxY: 5 });
  expect(boundsOf([]).minX).toBeGreaterThan(boundsOf([]).maxX);
});

it("an L turned by any angle is right-angled; a skewed one, a triangle and one that lost a side aren't", () => {
  const turnedEll = ell.map(([x, y]): Point => [x * 0.8 - y * 0.6, x * 0.6 + y * 0.8]);
  const skewed = ell.map(([x, y]): Point => [x + y * 0.01, y]);
  expect([ell, turnedEll].map(isRightAngled)).toEqual([true, true]);
  const twice = [ell[0] as Point, ...ell];
  expect([skewed, ell.slice(0, 3), twice].map(isRightAngled)).toEqual([false, false, false]);
});
