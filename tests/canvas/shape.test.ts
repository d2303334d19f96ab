import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  moveCorner,
  pullCorner,
  pullForLength,
  pullWall,
  snapTurn,
  turnedOutline,
} from "../../src/canvas/select/shape";
import { buildingEdits, type Point } from "../../src/document";
import { distance } from "../../src/geometry";

/** A (0,6) B (10,6) C (10,0) D (0,0). */
const rectangle = buildingEdits.rectangleOutline([0, 0], 10, 6);
/** An L: a 10 by 6 with a 4 by 3 bite out of its north-east corner. */
const ell: Point[] = [
  [0, 6],
  [6, 6],
  [6, 3],
  [10, 3],
  [10, 0],
  [0, 0],
];

const near = (got: readonly Point[] | null, want: readonly Point[]) => {
  expect(got).not.toBeNull();
  for (const [i, [x, y]] of want.entries()) {
    expect(got?.[i]?.[0]).toBeCloseTo(x, 9);
    expect(got?.[i]?.[1]).toBeCloseTo(y, 9);
  }
};

describe("a wall that is pulled", () => {
  it("goes out of the building: wall B–C by 2", () =>
    near(pullWall(rectangle, 1, 2), [
      [0, 6],
      [12, 6],
      [12, 0],
      [0, 0],
    ]));

  it("goes in where negative, and out of a ring drawn the other way round too", () => {
    const reversed = [...rectangle].reverse();
    near(pullWall(reversed, 0, -1), [
      [0, 1],
      [10, 1],
      [10, 6],
      [0, 6],
    ]);
  });

  it("changes an L where it is pulled and nowhere else: inner wall (6,6)-(6,3) out by 1", () =>
    near(pullWall(ell, 1, 1), [
      [0, 6],
      [7, 6],
      [7, 3],
      [10, 3],
      [10, 0],
      [0, 0],
    ]));

  it("can be asked for a length: side A–B of 12.5 pulls B–C by 2.5", () => {
    // Wall 0 is A–B; pulling wall 3 (D–A) changes wall 0 after it; pulling wall 0 changes wall 1 (B–C).
    expect(pullForLength(rectangle, 0, 8)).toBeCloseTo(2, 12);
    near(pullWall(rectangle, 3, pullForLength(rectangle, 3, 12.5)), [
      [-2.5, 6],
      [10, 6],
      [10, 0],
      [-2.5, 0],
    ]);
  });

  it("is refused where its neighbours would shrink to nothing or turn round", () => {
    expect(pullWall(rectangle, 1, -9.8)).toBeNull();
    expect(pullWall(rectangle, 1, -15)).toBeNull();
    expect(pullWall(ell, 1, 4)).toBeNull();
    expect(pullWall(rectangle, 1, -9.7)).not.toBeNull();
  });

  it("keeps every angle, whatever the turn", () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 6283 }),
        fc.integer({ min: 0, max: 5 }),
        // Further out than 2.7 m a short arm of the L would be gone.
        fc.integer({ min: -2600, max: 2600 }),
        (thousandths, wall, mm) => {
          const turned = turnedOutline(ell, [3, 3], thousandths / 1000);
          const pulled = pullWall(turned, wall, mm / 1000) ?? [];
          const direction = (ring: readonly Point[], i: number) => {
            const [a, b] = [ring[i] as Point, ring[(i + 1) % 6] as Point];
            const length = distance(a, b);
            return [(b[0] - a[0]) / length, (b[1] - a[1]) / length] as const;
          };
          for (let i = 0; i < 6; i++) {
            const [was, is] = [direction(turned, i), direction(pulled, i)];
            expect(was[0] * is[0] + was[1] * is[1]).toBeCloseTo(1, 6);
          }
        },
      ),
    ));
});

describe("a corner that is pulled", () => {
  it("takes its two walls along: B to (12, 7)", () =>
    near(pullCorner(rectangle, 1, [12, 7]), [
      [0, 7],
      [12, 7],
      [12, 0],
      [0, 0],
    ]));

  it("goes alone when told to", () =>
    near(moveCorner(rectangle, 1, [12, 7]), [
      [0, 6],
      [12, 7],
      [10, 0],
      [0, 0],
    ]));
});

describe("a turn", () => {
  const degrees = (d: number) => (d * Math.PI) / 180;
  const lot: Point[] = [
    [-20, -20],
    [40, -10],
    [30, 40],
  ];

  it("stops square with the lot line: its first side runs at atan(10/60) = 9.46°", () => {
    const { angle, word } = snapTurn(rectangle, lot, degrees(8));
    expect(angle).toBeCloseTo(Math.atan2(10, 60), 12);
    expect(word).toBe("square with the lot line");
  });

  it("stops at each 15° of the plan, also for a building that is askew", () => {
    const askew = turnedOutline(rectangle, [0, 0], degrees(4));
    const { angle, word } = snapTurn(askew, [], degrees(27.5));
    expect(angle).toBeCloseTo(degrees(26), 12);
    expect(word).toBe("a step of 15°");
  });

  it("goes free between the stops", () => {
    expect(snapTurn(rectangle, [], degrees(22))).toEqual({ angle: degrees(22), word: null });
  });
});
