import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { driveSchema, swaleSchema } from "../../src/document/schema";
import type { Point } from "../../src/geometry";
import {
  driveHeight,
  finishHeights,
  type GradingPlan,
  layDrive,
  laySwale,
  placesAt,
  prepare,
} from "../../src/grading";
import { planFor, rectangle } from "./plans";

const box = rectangle(10, 6);
const range = { low: 90, high: 110 };

function heights(plan: GradingPlan, floor: number, points: readonly Point[], ground: (at: Point) => number) {
  const prepared = prepare(placesAt(points, ground), plan, range);
  return [...finishHeights(prepared, floor, new Float64Array(points.length))];
}

const level = (z: number) => () => z;
const north = (out: number): Point => [0, 3 + out];

describe("pad, apron and side slopes on level ground at 100", () => {
  const plan = planFor(box, { edgeAboveFloor: -0.15, fall: 0.05, width: 2, fillSlope: 3, cutSlope: 2 });

  it.each([
    ["at the wall: floor 101 − 0.15", 0, 100.85],
    ["half way over the apron: − 0.05 × 1", 1, 100.8],
    ["at the apron's edge: − 0.05 × 2", 2, 100.75],
    ["1.5 m down the fill slope: − 1.5 / 3", 3.5, 100.25],
    ["just before it meets the ground: 2 + 0.75 × 3 = 4.25", 4.249, 100 + 0.001 / 3],
    ["beyond: the ground as it is", 5, 100],
  ])("fill, %s", (_why, out, want) => {
    expect(heights(plan, 101, [north(out)], level(100))[0]).toBeCloseTo(want, 9);
  });

  it.each([
    ["the apron falls away in cut too: 99 − 0.15 − 0.05", 1, 98.8],
    ["at the apron's edge", 2, 98.75],
    ["1 m up the cut slope: + 1 / 2", 3, 99.25],
    ["beyond 2 + 1.25 × 2 = 4.5 m: the ground as it is", 4.6, 100],
  ])("cut, %s", (_why, out, want) => {
    expect(heights(plan, 99, [north(out)], level(100))[0]).toBeCloseTo(want, 9);
  });

  it("runs round corners as a cone", () => {
    const out = 3.5 / Math.SQRT2;
    expect(heights(plan, 101, [[5 + out, 3 + out]], level(100))[0]).toBeCloseTo(100.25, 9);
  });
});

describe("sides left as they are", () => {
  const leave = Uint8Array.from([0, 0, 1, 0]);
  const plan = planFor(box, { leave });

  it("keep the ground in front of the middle of the wall", () => {
    expect(heights(plan, 101, [north(0), north(1), north(4)], level(100))).toEqual([100, 100, 100]);
  });

  it("let the neighbour's earth slope off past the corner without a cliff", () => {
    const along = (x: number): Point => [x, 3.01];
    const [corner, before] = heights(plan, 101, [along(5.0), along(4.4)], level(100));
    expect(corner).toBeCloseTo(101, 1);
    expect((corner ?? 0) - (before ?? 0)).toBeCloseTo(0.2, 1);
  });

  it("with no wall graded, nothing changes", () => {
    const still = planFor(box, { leave: new Uint8Array(4).fill(1) });
    expect(heights(still, 105, [north(1), [9, 9]], level(100))).toEqual([100, 100]);
  });
});

describe("a drive", () => {
  const drive = driveSchema.parse({
    id: "d",
    line: [
      [0, -33],
      [0, -3],
    ],
    width: 4,
    sideSlope: 3,
    door: "door",
    landing: { length: 5, fall: 0.02 },
  });
  const line = layDrive(drive, { roadHeight: 99, endHeight: 100, sillBelowFloor: 0.1 });
  const plan = planFor(box, { width: 0.1, fillSlope: 0.5 }, { drives: [line] });
  const along = (distance: number, across = 0): Point => [across, -33 + distance];

  it.each<[string, Point, number]>([
    ["at the road", along(0), 99],
    ["12.5 m on: half way up to the landing at 100.4 − 0.1", along(12.5), 99.7 - 0.05],
    ["at the landing's edge: sill 100.4 − 0.02 × 5", along(25), 100.3],
    ["at its sill", along(30), 100.4],
    ["level across", along(12.5, 1.9), 99.65],
    ["on its side slope 1 m off the edge: up towards the ground at 100", along(12.5, 3), 99.65 + 1 / 3],
    ["beyond the slope: the ground", along(12.5, 4), 100],
  ])("%s", (_why, at, want) => {
    expect(heights(plan, 100.5, [at], level(100))[0]).toBeCloseTo(want, 9);
  });

  it("is cut square at the road", () => {
    expect(heights(plan, 100.5, [along(-0.3)], level(100))[0]).toBeCloseTo(99.1, 9);
  });

  it("goes on to the wall where its line stops short of it", () => {
    const short = layDrive(
      {
        ...drive,
        line: [
          [0, -33],
          [0, -3.4],
        ],
      },
      { roadHeight: 99, endHeight: 100, sillBelowFloor: 0.1 },
    );
    const near = planFor(box, { width: 0.1, fillSlope: 0.5 }, { drives: [short] });
    expect(heights(near, 100.5, [[0, -3.1]], level(100))[0]).toBeCloseTo(100.4, 9);
  });
});

describe("a swale", () => {
  const swale = swaleSchema.parse({
    id: "s",
    line: [
      [-20, 8],
      [20, 8],
    ],
    depth: 0.2,
    fall: 0.01,
    bottomWidth: 1,
    sideSlope: 4,
  });
  const line = laySwale(swale, { startGround: 100, outletGround: 99 });
  const plan = planFor(box, { edgeAboveFloor: -50 }, { swales: [line] });
  const still = planFor(box, { leave: new Uint8Array(4).fill(1) }, { swales: [line] });

  it.each<[string, Point, number]>([
    ["at its high end", [-20, 8], 99.8],
    ["half way: 0.2 m lower", [0, 8], 99.6],
    ["on its bed's edge", [0, 8.5], 99.6],
    ["up its side", [0, 9.3], 99.8],
    ["beyond its side: the ground", [0, 12], 100],
  ])("%s", (_why, at, want) => {
    expect(heights(still, 100, [at], level(100))[0]).toBeCloseTo(want, 9);
  });

  it("only ever cuts", () => {
    expect(heights(still, 100, [[0, 8]], level(99))[0]).toBe(99);
  });

  it("cuts through what the pad has filled", () => {
    const filled = { ...plan, pad: { ...plan.pad, edgeAboveFloor: 0, width: 10 } };
    expect(heights(filled, 102, [[0, 8]], level(100))[0]).toBeCloseTo(99.6, 9);
  });
});

describe("a swale that crosses a drive, on level ground at 100", () => {
  // The drive runs north at 100.6, 4 m wide with sides of 2 : 1; the swale's bed runs east along y = -20, 0.4 m deep, with sides of 3 : 1.
  const drive = driveSchema.parse({
    id: "d",
    line: [
      [0, -60],
      [0, -10],
    ],
    width: 4,
    sideSlope: 2,
    shoulder: { width: 0, fall: 0 },
    across: { kind: "level", fall: 0 },
  });
  const swale = swaleSchema.parse({
    id: "s",
    line: [
      [-30, -20],
      [30, -20],
    ],
    depth: 0.4,
    fall: 0,
    bottomWidth: 1,
    sideSlope: 3,
  });
  const plan = (rest: Partial<GradingPlan>) =>
    planFor(
      box,
      { leave: new Uint8Array(4).fill(1) },
      {
        drives: [layDrive(drive, { roadHeight: 100.6, endHeight: 100.6, sillBelowFloor: null })],
        swales: [laySwale(swale, { startGround: 100, outletGround: 100 })],
        ...rest,
      },
    );
  const z = (rest: Partial<GradingPlan>, places: readonly Point[]) =>
    heights(plan(rest), 100, places, level(100));

  it.each<[string, Point, number]>([
    ["on the drive over the bed: the drive", [0, -20], 100.6],
    ["on the drive's edge over the bed: the drive", [1.99, -20], 100.6],
    ["1 m down the drive's side: - 1 / 2", [3, -20], 100.1],
    ["1.8 m down the drive's side, under the ground and over the bed", [3.8, -20], 99.7],
    ["beyond the toe, 2 × (100.6 − 99.6) = 2 m from the edge: the swale's bed", [4.01, -20], 99.6],
    ["1 m up the swale's side, beyond the drive's toe: + 1 / 3", [5, -21.5], 99.6 + 1 / 3],
    ["on the drive, far from the swale", [0, -40], 100.6],
  ])("goes under it in a pipe: %s", (_why, at, want) => {
    expect(z({ piped: true }, [at])[0]).toBeCloseTo(want, 9);
  });

  it("is open where a dip is chosen: the drive is cut down to the bed", () => {
    expect(z({}, [[0, -20]])[0]).toBeCloseTo(99.6, 9);
  });

  it("stays open for water that is followed through the pipe", () => {
    const places = placesAt([[0, -20]], level(100));
    for (const order of [[], ["s", "d"]]) {
      const prepared = prepare(places, plan({ piped: true, order }), range, { openPipes: true });
      expect(finishHeights(prepared, 100, new Float64Array(1))[0]).toBeCloseTo(99.6, 9);
    }
  });

  it("is filled by the drive as before where the drive comes later in the order", () => {
    expect(z({ piped: true, order: ["s", "d"] }, [[3, -20]])[0]).toBeCloseTo(100.1, 9);
  });

  it("cuts a drive that it doesn't cross, but runs along", () => {
    const along = laySwale(
      {
        ...swale,
        line: [
          [1, -50],
          [1, -20],
        ],
      },
      { startGround: 100, outletGround: 100 },
    );
    expect(z({ piped: true, swales: [along] }, [[1, -40]])[0]).toBeCloseTo(99.6, 9);
  });
});

describe("any place at any floor", () => {
  const millimetres = (min: number, max: number) => fc.integer({ min, max }).map((mm) => mm / 1000);
  const drive = driveSchema.parse({
    id: "d",
    line: [
      [14, -30],
      [-4, -16],
      [0, -3],
    ],
    width: 4,
    door: "door",
  });
  const swale = swaleSchema.parse({
    id: "s",
    line: [
      [-18, 7],
      [4, 9],
      [16, -8],
    ],
  });
  const ground = ([x, y]: Point) => 100 + 0.05 * x + 0.03 * y;
  const plan = planFor(
    box,
    { leave: Uint8Array.from([0, 1, 0, 0]) },
    {
      drives: [layDrive(drive, { roadHeight: 99.5, endHeight: 100, sillBelowFloor: 0.05 })],
      swales: [laySwale(swale, { startGround: 99.3, outletGround: 100.5 })],
    },
  );
  const at = (places: readonly Point[], floor: number, low: number, high: number) => {
    const prepared = prepare(placesAt(places, ground), plan, { low, high });
    return [...finishHeights(prepared, floor, new Float64Array(places.length))];
  };
  const place = fc.tuple(millimetres(-40_000, 40_000), millimetres(-40_000, 40_000));

  it("is the same whatever range of floors was prepared for", () =>
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 20, maxLength: 60 }),
        millimetres(97_000, 104_000),
        millimetres(0, 6000),
        millimetres(0, 6000),
        (places, floor, below, above) => {
          expect(at(places, floor, floor - below, floor + above)).toEqual(at(places, floor, 0, 300));
        },
      ),
    ));

  it("lies at or under the swale, and on the drive's strip at the drive's height where no swale cuts it", () => {
    const bed = at([[-18, 7]], 101, 90, 110)[0] ?? 0;
    expect(bed).toBeCloseTo(99.3 - 0.2032, 9);
    const onStrip = at([[-4, -16]], 101, 90, 110)[0] ?? 0;
    const line = plan.drives[0] as NonNullable<(typeof plan.drives)[0]>;
    const height = driveHeight(line, line.distances[1] ?? 0);
    expect(onStrip).toBeCloseTo(height.base + 101 * height.share, 9);
  });
});
