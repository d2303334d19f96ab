import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  between,
  clipConvexByConvex,
  clipConvexByHalfPlane,
  cornerDistances,
  crossingShares,
  distance,
  distanceToSegment,
  flatArea,
  inCircle,
  nearestOnPolyline,
  type Point,
  pointAlong,
  polylineLength,
  segmentsMeet,
  signedArea,
  turn,
} from "../../src/geometry";

const millimetres = fc.integer({ min: -9000, max: 9000 }).map((mm) => mm / 1000);
const point: fc.Arbitrary<Point> = fc.tuple(millimetres, millimetres);

describe("predicates", () => {
  it("count to the left and inside as positive", () => {
    expect(turn(0, 0, 1, 0, 0, 1)).toBeGreaterThan(0);
    expect(turn(0, 0, 1, 0, 0, -1)).toBeLessThan(0);
    expect(turn(0, 0, 1, 1, 2, 2)).toBe(0);
    expect(inCircle(0, 0, 2, 0, 0, 2, 1, 1)).toBeGreaterThan(0);
    expect(inCircle(0, 0, 2, 0, 0, 2, 2, 2)).toBe(0);
    expect(inCircle(0, 0, 2, 0, 0, 2, 3, 3)).toBeLessThan(0);
  });

  it("are right where plain arithmetic is not: a hair off a long line", () => {
    const hair = 2 ** -52;
    expect(turn(0, 0, 1e3, 1e3, 1 + hair, 1)).toBeLessThan(0);
    expect(turn(0, 0, 1e3, 1e3, 1, 1 + hair)).toBeGreaterThan(0);
    expect(turn(0.5, 0.5, 12, 12, 24, 24)).toBe(0);
  });
});

describe("segments", () => {
  it.each<[string, Point, Point, Point, Point, boolean]>([
    ["cross", [0, 0], [2, 2], [0, 2], [2, 0], true],
    ["touch at an end", [0, 0], [2, 2], [2, 2], [5, 0], true],
    ["touch in the middle", [0, 0], [4, 0], [2, 0], [2, 3], true],
    ["overlap in line", [0, 0], [4, 0], [3, 0], [9, 0], true],
    ["lie apart in line", [0, 0], [1, 0], [2, 0], [3, 0], false],
    ["run side by side", [0, 0], [4, 0], [0, 1], [4, 1], false],
    ["would cross further on", [0, 0], [1, 1], [0, 9], [9, 0], false],
  ])("that %s", (_how, a, b, c, d, meet) => {
    expect(segmentsMeet(a, b, c, d)).toBe(meet);
    expect(segmentsMeet(d, c, a, b)).toBe(meet);
  });

  it("cross at these shares", () => {
    expect(crossingShares([0, 0], [4, 0], [1, -1], [1, 3])).toEqual([0.25, 0.25]);
    expect(crossingShares([0, 0], [4, 0], [0, 1], [4, 1])).toBeNull();
  });

  it("are so far away", () => {
    expect(distanceToSegment([0, 0], [4, 0], 2, 3)).toBe(3);
    expect(distanceToSegment([0, 0], [4, 0], 7, 4)).toBe(5);
    expect(distanceToSegment([1, 1], [1, 1], 4, 5)).toBe(5);
  });
});

describe("lines", () => {
  const bent: Point[] = [
    [0, 0],
    [3, 0],
    [3, 4],
  ];

  it("have a length, and places along them", () => {
    expect(polylineLength(bent)).toBe(7);
    expect([...cornerDistances(bent)]).toEqual([0, 3, 7]);
    expect(pointAlong(bent, 2)).toEqual({ at: [2, 0], direction: [1, 0], segment: 0 });
    expect(pointAlong(bent, 5)).toEqual({ at: [3, 2], direction: [0, 1], segment: 1 });
    expect(pointAlong(bent, 3)).toEqual({ at: [3, 0], direction: [1, 0], segment: 0 });
    expect(pointAlong(bent, -4).at).toEqual([0, 0]);
    expect(pointAlong(bent, 99).at).toEqual([3, 4]);
    expect(
      pointAlong(
        [
          [1, 1],
          [1, 1],
        ],
        0,
      ).at,
    ).toEqual([1, 1]);
    expect(between([0, 0], [4, 8], 0.25)).toEqual([1, 2]);
    expect(distance([0, 0], [3, 4])).toBe(5);
  });

  it("have a nearest place", () => {
    expect(nearestOnPolyline(bent, 5, 2)).toEqual({ distance: 2, x: 3, y: 2, segment: 1, t: 0.5, along: 5 });
    expect(nearestOnPolyline(bent, -3, -4)).toMatchObject({ distance: 5, along: 0 });
  });

  it("give back the distance of a place taken along them", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7000 }), (mm) => {
        const { at } = pointAlong(bent, mm / 1000);
        expect(nearestOnPolyline(bent, at[0], at[1]).along).toBeCloseTo(mm / 1000, 9);
      }),
    );
  });
});

describe("clipping", () => {
  const square = [0, 0, 4, 0, 4, 4, 0, 4];

  it("keeps the left side", () => {
    expect(clipConvexByHalfPlane(square, [1, 0], [1, 1])).toEqual([0, 0, 1, 0, 1, 4, 0, 4]);
    expect(clipConvexByHalfPlane(square, [1, 1], [1, 0])).toEqual([1, 0, 4, 0, 4, 4, 1, 4]);
    expect(clipConvexByHalfPlane(square, [9, 1], [9, 0])).toEqual([]);
    expect(clipConvexByHalfPlane([], [0, 0], [1, 0])).toEqual([]);
  });

  it("parts a polygon in two that add up", () => {
    fc.assert(
      fc.property(point, point, (a, b) => {
        fc.pre(a[0] !== b[0] || a[1] !== b[1]);
        const left = clipConvexByHalfPlane(square, a, b);
        const right = clipConvexByHalfPlane(square, b, a);
        const area = (polygon: number[]) => (polygon.length < 6 ? 0 : flatArea(polygon));
        expect(area(left) + area(right)).toBeCloseTo(16, 9);
      }),
    );
  });

  it("by a triangle is the same whichever is clipped", () => {
    fc.assert(
      fc.property(point, point, point, (a, b, c) => {
        const ring = signedArea([a, b, c]) < 0 ? [a, c, b] : [a, b, c];
        fc.pre(signedArea(ring) > 0.001);
        const corners: Point[] = [
          [0, 0],
          [4, 0],
          [4, 4],
          [0, 4],
        ];
        const area = (polygon: number[]) => (polygon.length < 6 ? 0 : flatArea(polygon));
        const one = area(clipConvexByConvex(square, ring));
        const other = area(clipConvexByConvex(ring.flat(), corners));
        expect(one).toBeCloseTo(other, 9);
      }),
    );
  });
});
