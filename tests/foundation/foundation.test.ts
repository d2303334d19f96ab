import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foundationSchema } from "../../src/document/schema";
import { concrete, cornerResults, foundationLevels, trenchCorners } from "../../src/foundation";
import type { Point } from "../../src/geometry";

const inch = 0.0254;

describe("levels from the floor down", () => {
  const foundation = foundationSchema.parse({
    wallHeight: 48 * inch,
    footingThickness: 8 * inch,
    slabThickness: 5 * inch,
    baseThickness: 6 * inch,
  });
  // Heights in inches below the beam, the wall 10 in above the high corner: 40 1/4 → 88 1/4 → 96 1/4.
  const levels = foundationLevels(-40.25 * inch, 0, foundation);
  const corners = [50.25, 58, 70.75, 84.5].map((reading, i) => ({
    name: "ABCD".charAt(i),
    x: 0,
    y: 0,
    ground: -reading * inch,
    guessed: false,
    finished: -46.25 * inch,
  }));

  it("puts the trench's bottom wall and footing below the top of wall", () => {
    expect(levels.topOfFooting).toBeCloseTo(-88.25 * inch, 12);
    expect(levels.bottomOfTrench).toBeCloseTo(-96.25 * inch, 12);
    expect(levels.undersideOfBase).toBeCloseTo(-51.25 * inch, 12);
  });

  it("shows the wall at each corner: 10, 17 3/4, 30 1/2 and 44 1/4 in", () => {
    const shown = cornerResults(levels, corners);
    expect(shown.map(({ wallAboveGround }) => wallAboveGround / inch)).toEqual(
      [10, 17.75, 30.5, 44.25].map((want) => expect.closeTo(want, 9)),
    );
    expect(shown[0]?.wallAboveFinished).toBeCloseTo(6 * inch, 12);
    expect(shown[0]?.floorAboveGround).toBeCloseTo(10 * inch, 12);
  });

  it("digs 46, 38 1/4, 25 1/2 and 11 3/4 in below the ground as it is", () => {
    const trench = trenchCorners(levels, corners);
    expect(trench.map(({ belowGround }) => belowGround / inch)).toEqual(
      [46, 38.25, 25.5, 11.75].map((want) => expect.closeTo(want, 9)),
    );
    expect(trench[3]?.belowFinished).toBeCloseTo(50 * inch, 12);
  });

  it("keeps a top of wall off the floor", () => {
    expect(foundationLevels(10, -0.1, foundation).topOfWall).toBeCloseTo(9.9, 12);
  });
});

describe("concrete", () => {
  const foundation = foundationSchema.parse({
    wallThickness: 0.2,
    wallHeight: 1,
    footingWidth: 0.5,
    footingThickness: 0.25,
    slabThickness: 0.1,
    baseThickness: 0.15,
  });
  const ell: Point[] = [
    [0, 0],
    [8, 0],
    [8, 4],
    [4, 4],
    [4, 8],
    [0, 8],
  ];

  it("of an L counts every corner once: inside 48 − 32 × 0.2 + 4 × 0.04, centreline 32 − 0.8", () => {
    const cast = concrete(ell, foundation);
    expect(cast.floorArea).toBeCloseTo(41.76, 9);
    expect(cast.wall).toBeCloseTo(31.2 * 0.2, 9);
    expect(cast.footing).toBeCloseTo(31.2 * 0.5 * 0.25, 9);
    expect(cast.slab).toBeCloseTo(4.176, 9);
    expect(cast.base).toBeCloseTo(41.76 * 0.15, 9);
  });

  it("of a wall is what lies between outline and inside, whichever way the ring runs", () =>
    fc.assert(
      fc.property(fc.integer({ min: 2000, max: 30_000 }), fc.integer({ min: 2000, max: 30_000 }), (l, w) => {
        const [length, width] = [l / 1000, w / 1000];
        const ring: Point[] = [
          [0, 0],
          [0, width],
          [length, width],
          [length, 0],
        ];
        const cast = concrete(ring, foundation);
        expect(cast.wall).toBeCloseTo(length * width - (length - 0.4) * (width - 0.4), 8);
      }),
    ));
});
