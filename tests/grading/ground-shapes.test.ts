/** Pads, berms, retaining walls, grade points, dishes, shoulders and the order of acts: hand-worked heights. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bermSchema,
  driveSchema,
  gradePointSchema,
  groundPadSchema,
  retainingWallSchema,
  swaleSchema,
} from "../../src/document/schema";
import type { Point } from "../../src/geometry";
import {
  bedHeight,
  finishHeights,
  type GradingPlan,
  inOrder,
  layBerm,
  layDrive,
  layPad,
  laySwale,
  layWall,
  placesAt,
  prepare,
} from "../../src/grading";
import { notchedSquare } from "../support/outlines";
import { planFor, rectangle } from "./plans";

const box = rectangle(10, 6);
const bare = { leave: new Uint8Array(4).fill(1) };
const level = (z: number) => () => z;

function heights(
  plan: GradingPlan,
  points: readonly Point[],
  ground: (at: Point) => number = level(100),
  floor = 100,
) {
  const prepared = prepare(placesAt(points, ground), plan, { low: 90, high: 110 });
  return [...finishHeights(prepared, floor, new Float64Array(points.length))];
}

const square: Point[] = [
  [20, 0],
  [30, 0],
  [30, 10],
  [20, 10],
];

const slopes = { fill: 3, cut: 2 };

describe("a parking pad", () => {
  const pad = groundPadSchema.parse({
    id: "q1",
    outline: square,
    level: { kind: "height", height: 101 },
    fall: 0.02,
    towards: 0,
    fillSlope: 3,
    cutSlope: 2,
  });
  const plan = planFor(box, bare, { pads: [layPad(pad, level(100))] });

  it.each<[string, Point, number]>([
    ["at its middle: as typed", [25, 5], 101],
    ["5 m on the way it falls: − 0.02 × 5", [29.999, 5], 100.9],
    ["5 m against it", [20.001, 5], 101.1],
    ["1.5 m off its low edge: 100.9 − 1.5 / 3", [31.5, 5], 100.4],
    ["where the slope has met the ground", [33, 5], 100],
    ["1 m off its side, half way: 101 − 1 / 3", [25, 11], 101 - 1 / 3],
  ])("%s", (_why, at, want) => {
    expect(heights(plan, [at])[0]).toBeCloseTo(want, 3);
  });

  it("goes with the floor when it is counted from it, and lies on the ground's mean when nothing is typed", () => {
    const withFloor = { ...pad, level: { kind: "floor" as const, above: -0.2 } };
    const onGround = { ...pad, level: { kind: "ground" as const } };
    const slope = ([x]: Point) => 100 + 0.1 * (x - 25);
    expect(
      heights(planFor(box, bare, { pads: [layPad(withFloor, slope)] }), [[25, 5]], slope, 103)[0],
    ).toBeCloseTo(102.8, 9);
    expect(heights(planFor(box, bare, { pads: [layPad(onGround, slope)] }), [[25, 5]], slope)[0]).toBeCloseTo(
      100,
      9,
    );
  });
});

describe("a berm", () => {
  const berm = bermSchema.parse({
    id: "e1",
    line: [
      [-20, 20],
      [20, 20],
    ],
    height: 0.5,
    topWidth: 1,
    sideSlope: 3,
  });

  it("stands its height over the ground, slopes off, and never cuts", () => {
    const plan = planFor(box, bare, { berms: [layBerm(berm, level(100))] });
    const [top, side, off] = heights(plan, [
      [0, 20.4],
      [0, 21.25],
      [0, 23],
    ]);
    expect(top).toBeCloseTo(100.5, 9);
    expect(side).toBeCloseTo(100.5 - 0.75 / 3, 9);
    expect(off).toBe(100);
    expect(heights(plan, [[0, 20]], level(103))[0]).toBe(103);
  });

  it("keeps that height where the ground along it rises", () => {
    const rising = ([x]: Point) => 100 + 0.05 * x;
    const plan = planFor(box, bare, { berms: [layBerm(berm, rising)] });
    expect(heights(plan, [[10, 20]], rising)[0]).toBeCloseTo(100.5 + 0.5, 6);
  });
});

describe("a grade point", () => {
  const point = gradePointSchema.parse({ id: "z1", at: [20, 0], height: 101, fillSlope: 4, cutSlope: 2 });

  it("holds its place and slopes off all round, up or down", () => {
    const plan = planFor(box, bare, { points: [point] });
    expect(
      heights(plan, [
        [20, 0],
        [22, 0],
        [20, 5],
      ]),
    ).toEqual([101, 100.5, 100]);
    expect(
      heights(
        plan,
        [
          [20, 0],
          [21, 0],
        ],
        level(102),
      ),
    ).toEqual([101, 101.5]);
  });
});

describe("a retaining wall", () => {
  const wall = retainingWallSchema.parse({
    id: "r1",
    line: [
      [-15, 7],
      [15, 7],
    ],
    lowSide: "left",
  });
  const fill = planFor(
    box,
    { width: 2, fall: 0.05, fillSlope: 10 },
    { walls: [layWall(wall, level(100), slopes)] },
  );

  it("keeps the ground in front of it as it is, and the fill behind", () => {
    const [behind, front] = heights(
      fill,
      [
        [0, 6.99],
        [0, 7.01],
      ],
      level(100),
      102,
    );
    // 2 − 0.05 × 2 at the apron's edge, then 1.99 m down 10 : 1.
    expect(behind).toBeCloseTo(101.9 - 0.199, 9);
    expect(front).toBe(100);
  });

  it("lets the earth run round its ends without a cliff", () => {
    const plan = planFor(
      box,
      { width: 2, fall: 0.05, fillSlope: 10 },
      {
        walls: [
          layWall(
            {
              ...wall,
              line: [
                [-3, 7],
                [3, 7],
              ],
            },
            level(100),
            slopes,
          ),
        ],
      },
    );
    const past = heights(
      plan,
      [
        [3.01, 7.05],
        [3.5, 7.05],
        [9, 7.05],
      ],
      level(100),
      102,
    );
    expect(past[0]).toBeCloseTo(100.005, 6);
    expect(past[1]).toBeCloseTo(100.25, 6);
    expect(past[2]).toBeGreaterThan(101);
  });

  it("that holds a cut keeps the ground behind it", () => {
    const cut = planFor(
      box,
      { width: 2, cutSlope: 10 },
      {
        walls: [layWall({ ...wall, holds: "cut", lowSide: "right" }, level(100), slopes)],
      },
    );
    const [front, behind] = heights(
      cut,
      [
        [0, 6.99],
        [0, 7.01],
      ],
      level(100),
      98,
    );
    expect(front).toBeLessThan(98.3);
    expect(behind).toBe(100);
  });
});

describe("a drive's section across", () => {
  const straight = (more: Record<string, unknown>) =>
    layDrive(
      driveSchema.parse({
        id: "v1",
        line: [
          [20, -20],
          [20, 20],
        ],
        width: 4,
        sideSlope: 3,
        cutSlope: 1,
        ...more,
      }),
      { roadHeight: 101, endHeight: 101, sillBelowFloor: null },
    );
  const at = (across: number): Point => [20 + across, 0];

  it("falls from a crown to both edges, over shoulders, then down the fill slope", () => {
    const line = straight({ across: { kind: "crown", fall: 0.02 }, shoulder: { width: 0.5, fall: 0.04 } });
    const plan = planFor(box, bare, { drives: [line] });
    const [middle, half, edge, shoulder, slope] = heights(plan, [at(0), at(-1), at(2), at(2.5), at(3.1)]);
    expect(middle).toBeCloseTo(101, 9);
    expect(half).toBeCloseTo(100.98, 9);
    expect(edge).toBeCloseTo(100.96, 9);
    expect(shoulder).toBeCloseTo(100.94, 9);
    expect(slope).toBeCloseTo(100.94 - 0.6 / 3, 9);
  });

  it("falls one way, to the left or right of somebody who looks towards the building", () => {
    const left = heights(
      planFor(box, bare, { drives: [straight({ across: { kind: "left", fall: 0.03 } })] }),
      [at(-2), at(2)],
    );
    expect(left[0]).toBeCloseTo(100.94, 9);
    expect(left[1]).toBeCloseTo(101.06, 9);
    const right = heights(
      planFor(box, bare, { drives: [straight({ across: { kind: "right", fall: 0.03 } })] }),
      [at(2)],
    );
    expect(right[0]).toBeCloseTo(100.94, 9);
  });

  it("climbs its own cut slope", () => {
    expect(heights(planFor(box, bare, { drives: [straight({})] }), [at(3)], level(105))[0]).toBeCloseTo(
      102,
      9,
    );
  });
});

describe("a swale's bed", () => {
  const swale = swaleSchema.parse({
    id: "w1",
    line: [
      [0, 0],
      [40, 0],
    ],
    depth: 0.3,
  });
  const site = { startGround: 100, outletGround: 98 };

  it("goes through typed heights, from its start and to its outlet", () => {
    const line = laySwale({ ...swale, beds: [{ at: 20, height: 99.4 }] }, site);
    expect([0, 10, 20, 30, 40].map((t) => bedHeight(line, t))).toEqual([
      99.7,
      expect.closeTo(99.55, 9),
      expect.closeTo(99.4, 9),
      expect.closeTo(98.7, 9),
      98,
    ]);
    expect(line.fall).toBeCloseTo(0.3 / 20, 9);
  });

  it("rises where its heights do, and says so by a negative fall", () => {
    expect(laySwale({ ...swale, beds: [{ at: 20, height: 101 }] }, site).fall).toBeLessThan(0);
  });

  it("follows the ground but keeps its least fall over a rise", () => {
    const hump = ([x]: Point) => 100 - 0.05 * x + (x > 10 && x < 20 ? 1 : 0);
    const line = laySwale({ ...swale, leastFall: 0.01 }, { ...site, ground: hump });
    expect(bedHeight(line, 5)).toBeCloseTo(100 - 0.25 - 0.3, 9);
    expect(bedHeight(line, 15)).toBeCloseTo(bedHeight(line, 10) - 0.05, 9);
    expect(line.fall).toBeCloseTo(0.01, 9);
  });

  it("as a dish is a parabola that runs into its sides: w² ∕ (2 · half · slope) over the bed", () => {
    const dish = laySwale({ ...swale, shape: "dish", bottomWidth: 2, sideSlope: 4, fall: 0 }, site);
    const plan = planFor(rectangle(4, 4, 0, -30, 0), bare, { swales: [dish] });
    const [bed, half, edge, side] = heights(plan, [
      [20, 0],
      [20, 0.5],
      [20, 1],
      [20, 1.2],
    ]);
    expect(bed).toBeCloseTo(99.7, 9);
    expect(half).toBeCloseTo(99.7 + 0.25 / 8, 9);
    expect(edge).toBeCloseTo(99.7 + 1 / 8, 9);
    expect(side).toBeCloseTo(99.7 + 1 / 8 + 0.2 / 4, 9);
  });
});

describe("sides with rules of their own", () => {
  const rule = { edgeAboveFloor: 0, fall: 0.05, width: 2, fillSlope: 3, cutSlope: 2 };
  const sides = [rule, { ...rule, fillSlope: 5 }, rule, { ...rule, edgeAboveFloor: -0.2 }];
  const plan = planFor(box, { ...rule, sides });

  it("hold in front of their walls", () => {
    const [north, east, west] = heights(
      plan,
      [
        [0, 3 + 4],
        [5 + 4, 0],
        [-5 - 1, 0],
      ],
      level(100),
      102,
    );
    expect(north).toBeCloseTo(101.9 - 2 / 3, 9);
    expect(east).toBeCloseTo(101.9 - 2 / 5, 9);
    expect(west).toBeCloseTo(101.8 - 0.05, 9);
  });

  it("run into each other round the corner without a step", () => {
    const round = Array.from({ length: 181 }, (_, i): Point => {
      const angle = (i * Math.PI) / 360;
      return [5 + 4 * Math.cos(angle), 3 + 4 * Math.sin(angle)];
    });
    const z = heights(plan, round, level(100), 102);
    expect(z[0]).toBeCloseTo(101.9 - 2 / 5, 6);
    expect(z[180]).toBeCloseTo(101.9 - 2 / 3, 6);
    z.slice(1).forEach((height, i) => {
      expect(Math.abs(height - (z[i] as number))).toBeLessThan(0.005);
    });
  });

  it("run into each other in an inner corner too", () => {
    const own = notchedSquare.map((_, i) => (i === 2 ? { ...rule, edgeAboveFloor: -0.3 } : rule));
    const across = Array.from({ length: 401 }, (_, i): Point => [6 + i * 0.005, 8 - i * 0.005]);
    const z = heights(planFor(notchedSquare, { ...rule, sides: own }), across, level(100), 102);
    z.slice(1).forEach((height, i) => {
      expect(Math.abs(height - (z[i] as number))).toBeLessThan(0.01);
    });
  });
});

describe("mitred corners", () => {
  const plan = planFor(box, { width: 1, fall: 0.05, fillSlope: 3, corners: "mitred" });

  it("are as high at the corner's diagonal as in front of the wall", () => {
    const [wall, corner] = heights(
      plan,
      [
        [0, 3 + 2.5],
        [5 + 2.5, 3 + 2.5],
      ],
      level(100),
      101,
    );
    expect(corner).toBeCloseTo(wall as number, 9);
  });
});

describe("the order of acts", () => {
  const named = (ids: string) => [...ids].map((id) => ({ id }));
  const ids = (list: readonly { id: string }[]) => list.map(({ id }) => id).join("");

  it("is the usual one but for what is named", () => {
    expect(ids(inOrder(named("abcd"), []))).toBe("abcd");
    expect(ids(inOrder(named("abcd"), ["d", "b"]))).toBe("adbc");
    expect(ids(inOrder(named("abcd"), ["d", "gone", "d", "a"]))).toBe("dabc");
  });

  it("keeps every thing once, whatever is named", () =>
    fc.assert(
      fc.property(fc.array(fc.constantFrom(..."abcdefgh")), (order) => {
        expect([...ids(inOrder(named("abcdef"), order))].sort().join("")).toBe("abcdef");
      }),
    ));

  it("decides who wins: the later act", () => {
    const low = gradePointSchema.parse({ id: "z1", at: [20, 0], height: 99 });
    const high = gradePointSchema.parse({ id: "z2", at: [20, 0], height: 101 });
    const plan = planFor(box, bare, { points: [low, high] });
    expect(heights(plan, [[20, 0]])[0]).toBe(101);
    expect(heights({ ...plan, order: ["z2", "z1"] }, [[20, 0]])[0]).toBe(99);
  });
});
