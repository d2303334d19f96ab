import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drainageSchema } from "../../src/document/schema";
import { roofParts } from "../../src/drainage";

const rectangle = (w: number, d: number): [number, number][] => [
  [0, 0],
  [w, 0],
  [w, d],
  [0, d],
];
const roof = (change: object) => drainageSchema.parse({ roof: { overhang: 0, ...change } }).roof;

describe("slope sides of a roof", () => {
  it("of a gable are its two halves, at the long walls; across, at the short ones", () => {
    expect(
      roofParts(rectangle(12, 8), roof({ shape: "gable" }))?.map(({ wall, area }) => [wall, area]),
    ).toEqual([
      [0, 48],
      [2, 48],
    ]);
    expect(
      roofParts(rectangle(12, 8), roof({ shape: "gable-across" }))
        ?.map(({ wall }) => wall)
        .sort(),
    ).toEqual([1, 3]);
  });

  it("grow by the overhang: (12 + 1) (8 + 1) in all for 0.5 m round 12 × 8", () => {
    const parts = roofParts(rectangle(12, 8), roof({ shape: "one-way", lowWall: 2, overhang: 0.5 })) ?? [];
    expect(parts).toHaveLength(1);
    expect(parts[0]).toMatchObject({
      wall: 2,
      eave: [
        [12, 8.5],
        [0, 8.5],
      ],
    });
    expect(parts[0]?.area).toBeCloseTo(13 * 9, 9);
  });

  it("of a hip are two trapezoids and two triangles (closed form): 12 × 8 gives 32 and 16", () => {
    const areas = roofParts(rectangle(12, 8), roof({ shape: "hip" }))?.map(({ area }) => area) ?? [];
    // Hips at 45°: triangles of half 8 × 4, the rest shared by the long sides.
    [32, 16, 32, 16].forEach((area, i) => {
      expect(areas[i]).toBeCloseTo(area, 9);
    });
  });

  it("aren't told before the shape is, nor for a hip over a bent outline", () => {
    expect(roofParts(rectangle(12, 8), roof({}))).toBeNull();
    const bent: [number, number][] = [
      [0, 0],
      [10, 0],
      [10, 4],
      [4, 4],
      [4, 10],
      [0, 10],
    ];
    expect(roofParts(bent, roof({ shape: "hip" }))).toBeNull();
    const halves = roofParts(bent, roof({ shape: "gable" })) ?? [];
    expect(halves.reduce((sum, { area }) => sum + area, 0)).toBeCloseTo(64, 9);
  });

  it("add up to the roof, whichever way the building is turned and its corners run", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 30 }),
        fc.integer({ min: 3, max: 30 }),
        fc.integer({ min: 0, max: 359 }),
        fc.constantFrom("gable", "gable-across", "hip", "one-way"),
        fc.boolean(),
        (w, d, degrees, shape, reversed) => {
          const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
          const turned = rectangle(w, d).map(([x, y]): [number, number] => [
            c * x - s * y + 5,
            s * x + c * y - 3,
          ]);
          const parts = roofParts(reversed ? turned.reverse() : turned, roof({ shape, overhang: 0.4 })) ?? [];
          expect(parts.reduce((sum, { area }) => sum + area, 0)).toBeCloseTo((w + 0.8) * (d + 0.8), 6);
        },
      ),
    );
  });
});
