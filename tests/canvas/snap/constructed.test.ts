/** Snaps that follow from lines and circles; each place is worked out by hand beside it. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Lock } from "../../../src/canvas/snap/lock";
import { nearestOf } from "../../../src/canvas/snap/nearby";
import { type SnapQuery, snap } from "../../../src/canvas/snap/snap";
import { type SnapPoint, snapTargets } from "../../../src/canvas/snap/targets";
import { buildingEdits, type Point, siteEdits } from "../../../src/document";
import { snapKinds } from "../../../src/store/snapping";
import { checkEdit } from "../../support/checkEdit";
import { metricProject } from "../support/hand";

/** A 10 by 6 building at the origin; a fence that crosses its east wall; a well that keeps 5 m clear. */
function site() {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, siteEdits.addFeature, {
    kind: "fence",
    points: [
      [4, -1],
      [16, 5],
    ],
  });
  return checkEdit(project, siteEdits.addFeature, { kind: "well", points: [[-20, 0]], keepClear: 5 });
}

const targets = snapTargets(site());
const found = (at: Point, more: Partial<SnapQuery> = {}) => snap({ at, targets, reach: 0.5, ...more });

function expectPlace(is: Point, x: number, y: number): void {
  expect(is[0]).toBeCloseTo(x, 9);
  expect(is[1]).toBeCloseTo(y, 9);
}

describe("snapping to what follows from lines", () => {
  it("where two lines cross: the fence y = (x − 6) / 2 meets the wall x = 10 at y = 2", () => {
    const place = found([10.1, 2.2]);
    expect(place.word).toBe("where wall B–C and the fence cross");
    expectPlace(place.at, 10, 2);
  });

  it("the foot from the place before: from (11, 13.5) square to the fence lies 10.51 m along it", () => {
    const from: Point = [11, 13.5];
    // Along the fence's direction (2, 1): ((11 − 6)·2 + 13.5) / 5 = 4.7, so (6 + 2·4.7, 4.7).
    const place = found([15.6, 4.7], { from, on: new Set(["feet"]) });
    expect(place.word).toBe("square to the fence");
    expectPlace(place.at, 15.4, 4.7);
    expect(place.guide).toEqual(from);
  });

  it("a line that touches a circle: from 13 m away a circle of 5 m is touched after 12 m", () => {
    const from: Point = [-20, 13];
    const place = found([-24.7, 2], { from, reach: 1 });
    expect(place.word).toBe("touching what the well keeps clear");
    expect(Math.hypot(place.at[0] + 20, place.at[1] - 13)).toBeCloseTo(12, 9);
    expect(Math.hypot(place.at[0] + 20, place.at[1])).toBeCloseTo(5, 9);
  });

  it("a circle itself: 3 and 4 of 5", () => {
    const place = found([-17.1, 4.1]);
    expect(place.word).toBe("on what the well keeps clear");
    expect(Math.hypot(place.at[0] + 20, place.at[1])).toBeCloseTo(5, 9);
  });

  it("a wall's extension, not too far from its end", () => {
    const place = found([13, 6.2]);
    expect(place.word).toBe("in line with wall A–B");
    expectPlace(place.at, 13, 6);
    expect(place.guide).toEqual([10, 6]);
    expect(found([30, 6.2]).word).toBeNull();
  });

  it("the grid only where it is on, and after all else", () => {
    const on = new Set(snapKinds);
    expect(found([-7.8, -9.3], { grid: 0.5 }).word).toBeNull();
    const place = found([-7.8, -9.3], { grid: 0.5, on });
    expect(place.word).toBe("on the grid");
    expectPlace(place.at, -8, -9.5);
    expect(found([9.8, 6.1], { grid: 0.5, on }).word).toBe("corner B");
  });
});

describe("each kind can be switched off", () => {
  it.each([
    ["places", [10.1, 6.1], "corner B"],
    ["middles", [5.1, 6.1], "middle of wall A–B"],
    ["crossings", [10.1, 2.2], "where wall B–C and the fence cross"],
    ["edges", [7.7, 6.2], "on wall A–B"],
    ["extensions", [13, 6.2], "in line with wall A–B"],
  ] as const)("%s", (kind, at, word) => {
    expect(found([...at]).word).toBe(word);
    const on = new Set(snapKinds.filter((each) => each !== kind && each !== "grid"));
    expect(found([...at], { on }).word).not.toBe(word);
  });

  it.each([
    ["feet", [15.6, 4.7], [11, 13.5], "square to the fence"],
    ["tangents", [-24.7, 2], [-20, 13], "touching what the well keeps clear"],
    ["directions", [-30.02, -5], [-30, -25], "square to wall A–B"],
  ] as const)("%s, with a place before", (kind, at, from, word) => {
    const more = { from: [...from] as Point, reach: 1 };
    const only = { ...more, on: new Set([kind]) };
    expect(found([...at], only).word).toBe(word);
    const on = new Set(snapKinds.filter((each) => each !== kind && each !== "grid"));
    expect(found([...at], { ...more, on }).word).not.toBe(word);
  });

  it("lengths, which are rounded where nothing else holds the place", () => {
    const at: Point = [-30 + 5.07 * 0.6, -25 + 5.07 * 0.8];
    const length = ([x, y]: Point) => Math.hypot(x + 30, y + 25);
    const on = new Set(snapKinds.filter((each) => each !== "lengths" && each !== "grid"));
    expect(length(found(at, { step: 0.5, from: [-30, -25] }).at)).toBeCloseTo(5, 9);
    expect(length(found(at, { step: 0.5, from: [-30, -25], on }).at)).toBeCloseTo(5.07, 9);
  });

  it("with all off the place is left alone", () => {
    const at: Point = [10.1, 6.1];
    expect(found(at, { on: new Set(), from: [9, 6], step: 0.25 })).toEqual({
      at,
      word: null,
      tie: null,
      guide: null,
    });
  });
});

describe("a locked direction", () => {
  const east: Lock = { key: "ArrowRight", along: [1, 0], oneWay: true, word: "locked east" };
  const from: Point = [-10, -4];

  it("is kept at a round length, wherever the pointer goes", () => {
    const place = found([-6.9, 3], { from, lock: east, step: 0.5 });
    expect(place.word).toBe("locked east");
    expectPlace(place.at, -7, -4);
    // Behind the start there is still a way to go.
    expect(found([-15, -9], { from, lock: east, step: 0.5 }).at[0]).toBeGreaterThan(-10);
  });

  it("ends across from a place that is pointed at", () => {
    const place = found([10.1, 6.1], { from, lock: east });
    expect(place.word).toBe("locked east, across from corner B");
    expectPlace(place.at, 10, -4);
  });

  it("meets a line that is pointed at", () => {
    const place = found([9, 1.6], { from: [-10, 1], lock: east });
    expect(place.word).toBe("locked east, on the fence");
    expectPlace(place.at, 8, 1);
  });
});

describe("places found by cells", () => {
  const spread = fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 })), {
    minLength: 64,
    maxLength: 300,
  });

  it("are those that looking at each one finds", () => {
    const at = fc.tuple(fc.integer({ min: -5, max: 45 }), fc.integer({ min: -5, max: 45 }));
    fc.assert(
      fc.property(spread, at, fc.integer({ min: 1, max: 20 }), (places, [x, y], reach) => {
        const points = places.map((place, i): SnapPoint => ({ at: place, word: String(i) }));
        let best: SnapPoint | null = null;
        let nearest = reach;
        for (const point of points) {
          const d = Math.hypot(point.at[0] - x, point.at[1] - y);
          if (d < nearest) [best, nearest] = [point, d];
        }
        expect(nearestOf(points, [x, y], reach, () => true)).toBe(best);
      }),
    );
  });

  it("look at few of ten thousand", () => {
    const points = Array.from(
      { length: 10_000 },
      (_, i): SnapPoint => ({
        at: [(i % 100) * 2, Math.floor(i / 100) * 2],
        word: String(i),
      }),
    );
    let looked = 0;
    const place = nearestOf(points, [101, 77.4], 1.5, () => {
      looked++;
      return true;
    });
    expect(place?.at).toEqual([100, 78]);
    expect(looked).toBeLessThan(20);
  });
});
