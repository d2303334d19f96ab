import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry";
import {
  byKnownDistances,
  cornersOnPlan,
  type Placement,
  pictureToPlan,
  placedByOnePoint,
  placedByTwoPoints,
  planToPicture,
  scaledAbout,
  showsPlace,
  turnedAbout,
} from "../../src/underlay";

const plain: Placement = { width: 400, height: 200, at: [10, 20], scale: 0.05, turn: 0 };

const mm = fc.integer({ min: -200_000, max: 200_000 }).map((n) => n / 1000);
const placeOnPlan = fc.tuple(mm, mm);
const pixel = fc.tuple(fc.integer({ min: 0, max: 4096 }), fc.integer({ min: 0, max: 4096 }));
const placement = fc.record({
  width: fc.integer({ min: 1, max: 4096 }),
  height: fc.integer({ min: 1, max: 4096 }),
  at: placeOnPlan,
  scale: fc.integer({ min: 1, max: 5000 }).map((n) => n / 1000),
  turn: fc.integer({ min: -314, max: 314 }).map((n) => n / 100),
});

function near(a: Point, b: Point, by = 1e-6): void {
  expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(by);
}

describe("where a picture lies", () => {
  it("upright: 400 × 200 px at 5 cm is 20 × 10 m about its middle, top left first", () => {
    expect(cornersOnPlan(plain)).toEqual([
      [0, 25],
      [20, 25],
      [20, 15],
      [0, 15],
    ]);
  });

  it("turned a quarter counter-clockwise, its top left corner lies at the bottom left", () => {
    const [topLeft, topRight] = cornersOnPlan({ ...plain, turn: Math.PI / 2 });
    near(topLeft, [5, 10]);
    near(topRight, [5, 30]);
  });

  it("goes to the plan and back for any placement", () => {
    fc.assert(
      fc.property(placement, pixel, (placed, px) =>
        near(planToPicture(placed, pictureToPlan(placed, px)), px, 1e-4),
      ),
    );
  });

  it("is hit inside its turned frame alone", () => {
    const turned = { ...plain, turn: Math.PI / 2 };
    expect(showsPlace(plain, [1, 20])).toBe(true);
    expect(showsPlace(turned, [1, 20])).toBe(false);
    expect(showsPlace(turned, [10, 29])).toBe(true);
    expect(showsPlace(plain, [10, 29])).toBe(false);
  });
});

describe("placing by points", () => {
  it("one point moves the picture and keeps scale and turn", () => {
    const placed = placedByOnePoint({ ...plain, turn: 0.3 }, [37, 91], [-4, 7]);
    near(pictureToPlan(placed, [37, 91]), [-4, 7]);
    expect([placed.scale, placed.turn]).toEqual([0.05, 0.3]);
  });

  it("two points by hand: 100 px to the right laid on 25 m due north", () => {
    const placed = placedByTwoPoints(
      plain,
      { picture: [100, 100], plan: [0, 0] },
      { picture: [200, 100], plan: [0, 25] },
    );
    expect(placed?.scale).toBeCloseTo(0.25, 12);
    expect(placed?.turn).toBeCloseTo(Math.PI / 2, 12);
    // The middle, 100 px right of the first point, lies 25 m north of it.
    near(placed?.at ?? [9, 9], [0, 25]);
  });

  it("two points always lie on their places afterwards, and distances stay in proportion", () => {
    fc.assert(
      fc.property(placement, pixel, pixel, placeOnPlan, placeOnPlan, pixel, (old, p, q, a, b, r) => {
        fc.pre(Math.hypot(p[0] - q[0], p[1] - q[1]) > 20 && Math.hypot(a[0] - b[0], a[1] - b[1]) > 0.5);
        const placed = placedByTwoPoints(old, { picture: p, plan: a }, { picture: q, plan: b });
        if (!placed) throw new Error("not placed");
        near(pictureToPlan(placed, p), a, 1e-5);
        near(pictureToPlan(placed, q), b, 1e-5);
        const third = pictureToPlan(placed, r);
        const metres = Math.hypot(third[0] - a[0], third[1] - a[1]);
        expect(metres).toBeCloseTo(Math.hypot(r[0] - p[0], r[1] - p[1]) * placed.scale, 4);
      }),
    );
  });

  it("coinciding places give no scale", () => {
    const here = { picture: [5, 5] as Point, plan: [1, 1] as Point };
    expect(placedByTwoPoints(plain, here, { ...here, plan: [2, 1] })).toBeNull();
    expect(placedByTwoPoints(plain, here, { ...here, picture: [9, 5] })).toBeNull();
  });
});

describe("scaling by known distances", () => {
  it("one distance fits exactly and its start stays where it lies", () => {
    const stays = pictureToPlan(plain, [50, 40]);
    const fitted = byKnownDistances(plain, [{ from: [50, 40], to: [350, 40], m: 60 }]);
    expect(fitted?.placement.scale).toBeCloseTo(0.2, 12);
    expect(fitted?.misfit).toBeCloseTo(0, 12);
    if (fitted) near(pictureToPlan(fitted.placement, [50, 40]), stays);
  });

  it("two that disagree: least squares by hand, and the worse misfit is told", () => {
    // 300 px for 60 m and 100 px for 22 m: (60·300 + 22·100) / (300² + 100²) = 20 200 / 100 000 = 0.202.
    const fitted = byKnownDistances(plain, [
      { from: [0, 0], to: [300, 0], m: 60 },
      { from: [0, 0], to: [0, 100], m: 22 },
    ]);
    expect(fitted?.placement.scale).toBeCloseTo(0.202, 12);
    expect(fitted?.misfit).toBeCloseTo(22 / 20.2 - 1, 12);
  });

  it("needs a distance longer than nothing on both", () => {
    expect(byKnownDistances(plain, [])).toBeNull();
    expect(byKnownDistances(plain, [{ from: [3, 3], to: [3, 3], m: 4 }])).toBeNull();
    expect(byKnownDistances(plain, [{ from: [0, 0], to: [3, 3], m: 0 }])).toBeNull();
  });
});

describe("pulling and turning", () => {
  it("scaling about a corner keeps that corner and its turn", () => {
    fc.assert(
      fc.property(placement, fc.integer({ min: 100, max: 9000 }), (old, thousandths) => {
        const about = cornersOnPlan(old)[3];
        const scaled = scaledAbout(old, about, thousandths / 1000);
        near(cornersOnPlan(scaled)[3], about, 1e-4);
        expect(scaled.scale).toBeCloseTo((old.scale * thousandths) / 1000, 9);
      }),
    );
  });

  it("turning about a place keeps it, and the turn stays within one turn", () => {
    fc.assert(
      fc.property(placement, placeOnPlan, mm, (old, about, angle) => {
        const turned = turnedAbout(old, about, angle);
        near(pictureToPlan(turned, planToPicture(old, about)), about, 1e-4);
        expect(Math.abs(turned.turn)).toBeLessThanOrEqual(Math.PI);
      }),
    );
  });
});
