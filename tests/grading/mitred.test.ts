/**
 * Mitred corners between sides of different rules: each side is its planes, and they meet in a hip or a valley.
 * Closed form: cut level by level, a rectangle's fill or cut is a rectangle with each side moved out by its own rule.
 */
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry";
import {
  daylightLines,
  finish,
  finishHeights,
  fitToLine,
  type GradingPlan,
  gradingReach,
  layOut,
  type PadRule,
  placesAt,
  prepare,
  type SideRule,
  sideReaches,
} from "../../src/grading";
import { notchedSquare } from "../support/outlines";
import { planeGround, planFor, rectangle } from "./plans";

const usual: SideRule = { edgeAboveFloor: -0.15, fall: 0.05, width: 3, fillSlope: 3, cutSlope: 2 };
const flat = () => 0;
const unstripped = { stripDepth: 0, respread: 0 };

/** Sides in order: south, east, north, west of a rectangle; what isn't named is as usual. */
function mitred(
  ring: readonly Point[],
  own: Readonly<Record<number, Partial<SideRule>>>,
  more: Partial<PadRule> = {},
) {
  const sides = ring.map((_, i) => ({ ...usual, ...own[i] }));
  return planFor(ring, { ...usual, corners: "mitred", sides, ...more });
}

function laid(plan: GradingPlan, floor: number) {
  const ground = planeGround(0);
  const range = { low: floor, high: floor };
  const layout = layOut(plan, ground, { bounds: gradingReach(plan, ground, range).bounds, range });
  return { ground, layout, outside: finish(layout, floor, unstripped).outside };
}

/** Sum over levels by Simpson's rule. */
function overLevels(low: number, high: number, areaAt: (z: number) => number): number {
  const pieces = 4000;
  const h = (high - low) / pieces;
  let sum = 0;
  for (let i = 0; i < pieces; i++) {
    const z = low + i * h;
    sum += ((areaAt(z) + 4 * areaAt(z + h / 2) + areaAt(z + h)) * h) / 6;
  }
  return sum;
}

const rimOf = (rule: SideRule, floor: number) => floor + rule.edgeAboveFloor - rule.fall * rule.width;
/** How far off the wall a side's apron, and beyond it its fill slope, is down at a level. */
const filledTo = (rule: SideRule, floor: number, z: number) => {
  const rim = rimOf(rule, floor);
  return z < rim ? rule.width + rule.fillSlope * (rim - z) : (floor + rule.edgeAboveFloor - z) / rule.fall;
};
/** How far off the wall a side's cut slope is up at a level, and where its apron's plane is down at it. */
const cutTo = (rule: SideRule, floor: number, z: number) =>
  rule.width + rule.cutSlope * (z - rimOf(rule, floor));
const apronTo = (rule: SideRule, floor: number, z: number) => (floor + rule.edgeAboveFloor - z) / rule.fall;

type Four = readonly [number, number, number, number];
const sized = (l: number, w: number, [south, east, north, west]: Four) =>
  Math.max(0, l + east + west) * Math.max(0, w + south + north);
const four = (of: (i: number) => number): Four => [of(0), of(1), of(2), of(3)];

function exactFill(l: number, w: number, rules: readonly SideRule[], floor: number): number {
  const rule = (i: number) => rules[i] as SideRule;
  return overLevels(
    0,
    floor + rule(0).edgeAboveFloor,
    (z) =>
      sized(
        l,
        w,
        four((i) => filledTo(rule(i), floor, z)),
      ) -
      l * w,
  );
}

/** What is dug at each level: within all cut slopes, but not in the aprons' hips, which still stand at that level. */
function exactCut(l: number, w: number, rules: readonly SideRule[], floor: number): number {
  const rule = (i: number) => rules[i] as SideRule;
  const lowest = Math.min(...rules.map((one) => rimOf(one, floor)));
  return overLevels(lowest, 0, (z) => {
    const banks = four((i) => cutTo(rule(i), floor, z));
    const standing = four((i) => Math.min(banks[i] as number, Math.max(0, apronTo(rule(i), floor, z))));
    return sized(l, w, banks) - sized(l, w, standing);
  });
}

const box = rectangle(10, 8);
const cases: [string, Record<number, Partial<SideRule>>][] = [
  ["all sides alike", {}],
  ["one side at 4 : 1", { 1: { fillSlope: 4, cutSlope: 4 } }],
  ["one side at 5 : 1", { 1: { fillSlope: 5, cutSlope: 3 } }],
  ["one side at 8 : 1", { 1: { fillSlope: 8, cutSlope: 6 } }],
  [
    "a steep side between two flat ones",
    { 0: { fillSlope: 6 }, 1: { fillSlope: 1.5, cutSlope: 1 }, 2: { cutSlope: 5 } },
  ],
  ["a wider apron on one side", { 2: { width: 5 } }],
  ["a steeper fall on one side", { 3: { fall: 0.1 } }],
  [
    "everything its own",
    { 0: { width: 1, fillSlope: 2 }, 1: { fall: 0.02 }, 2: { width: 4.5, cutSlope: 3 }, 3: { fillSlope: 5 } },
  ],
];

describe("a mitred pad 10 × 8 whose sides have rules of their own, on level ground", () => {
  it.each(cases)("holds its planes' fill within 0.1 %%: %s", (_what, own) => {
    const plan = mitred(box, own);
    const exact = exactFill(10, 8, plan.pad.sides ?? [], 1.2);
    expect(Math.abs(laid(plan, 1.2).outside.fill / exact - 1)).toBeLessThan(0.001);
  });

  it.each(cases)("digs its planes' cut within 0.1 %%: %s", (_what, own) => {
    const plan = mitred(box, own);
    const exact = exactCut(10, 8, plan.pad.sides ?? [], -1.2);
    expect(Math.abs(laid(plan, -1.2).outside.cut / exact - 1)).toBeLessThan(0.001);
  });

  it.each([1.2, -1.2])("has its toe where each side's slope meets the ground, floor %d", (floor) => {
    const plan = mitred(box, { 1: { fillSlope: 8, cutSlope: 4 } });
    const { layout, ground } = laid(plan, floor);
    const toe = daylightLines(layout, floor, ground).flatMap((line) => [...line]);
    const [x, y] = [0, 1].map((at) => toe.filter((_, i) => i % 2 === at)) as [number[], number[]];
    // In fill the rim stands 0.9 over the ground: 3 + 0.9 × 3 = 5.7 and 3 + 0.9 × 8 = 10.2; in cut 1.5 under it: 3 + 1.5 × 2 and × 4.
    const [usually, east] = floor > 0 ? [5.7, 10.2] : [6, 9];
    expect(Math.max(...y)).toBeCloseTo(4 + usually, 2);
    expect(Math.min(...y)).toBeCloseTo(-4 - usually, 2);
    expect(Math.min(...x)).toBeCloseTo(-5 - usually, 2);
    expect(Math.max(...x)).toBeCloseTo(5 + east, 2);
  });

  it("meets in a hip: on it both planes are at one height, to each side the lower one is built", () => {
    const plan = mitred(box, { 1: { fillSlope: 6 } });
    // From the corner of both aprons' edges the hip goes 2 out from the flat side for each 1 from the steep one.
    const places: Point[] = [
      [5 + 3 + 4, 4 + 3 + 2],
      [5 + 3 + 4, 4 + 3 + 1],
      [5 + 3 + 1, 4 + 3 + 2],
    ];
    const rim = 1.2 - 0.15 - 0.15;
    expect(heights(plan, 1.2, places)).toEqual(
      [4 / 6, 4 / 6, 2 / 3].map((down) => expect.closeTo(rim - down, 9)),
    );
  });
});

function heights(plan: GradingPlan, floor: number, places: readonly Point[]): number[] {
  const prepared = prepare(placesAt(places, flat), plan, { low: floor, high: floor });
  return [...finishHeights(prepared, floor, new Float64Array(places.length))];
}

describe("lot-line advice beside a mitred corner of unequal slopes", () => {
  const plan = mitred(box, { 1: { fillSlope: 8 } });
  const northLine = (off: number) => ({
    name: "north",
    points: [
      [-40, 4 + off],
      [40, 4 + off],
    ] as Point[],
  });

  it("is silent where the steep side's slope ends before the line", () => {
    expect(fitToLine(plan, flat, 1.2, northLine(6.5))).toEqual([]);
    expect(fitToLine(plan, flat, 1.2, northLine(5.72))).toEqual([]);
  });

  it("asks for the slope that ends just there where it doesn't: (5 − 3) / 0.9", () => {
    expect(fitToLine(plan, flat, 1.2, northLine(5))).toMatchObject([
      {
        what: "fill",
        sides: ["C-D"],
        slope: expect.closeTo(2 / 0.9, 6),
        wallHeight: expect.closeTo(0.9 - 2 / 3, 6),
      },
    ]);
  });

  it("says the same as the reach of the sides", () => {
    const reach = sideReaches(plan, flat, 1.2).map(({ fill }) => fill?.distance);
    expect(reach).toEqual([5.7, 10.2, 5.7, 5.7].map((out) => expect.closeTo(out, 5)));
  });

  it("keeps the reach of a short flat side to where its neighbours' planes cut it off", () => {
    const cut: Point[] = [
      [-5, -4],
      [4.5, -4],
      [5, -3.5],
      [5, 4],
      [-5, 4],
    ];
    const chamfered = mitred(cut, { 1: { fillSlope: 20 } });
    // South and east slopes have come down where both are 5.7 out: 5.95 × √2 from the middle of the chamfer between them.
    const reach = sideReaches(chamfered, flat, 1.2)[1]?.fill?.distance;
    expect(reach).toBeCloseTo(5.95 * Math.SQRT2, 5);
    const beyond: Point[] = [5.94, 5.96].map((out) => [4.75 + out, -3.75 - out]);
    const [justWithin, past] = heights(chamfered, 1.2, beyond);
    expect(justWithin).toBeGreaterThan(0);
    expect(past).toBe(0);
  });
});

describe("a mitred L", () => {
  const ellCases: [string, Record<number, Partial<SideRule>>][] = [
    ["all sides alike", {}],
    ["a flat side at the inner corner", { 3: { fillSlope: 6, cutSlope: 5 } }],
    [
      "unequal sides all round",
      { 0: { fillSlope: 2 }, 1: { cutSlope: 4 }, 2: { fillSlope: 4 }, 4: { fillSlope: 5, cutSlope: 3 } },
    ],
  ];

  it.each(ellCases)("holds its planes' fill: %s", (_what, own) => {
    const plan = mitred(notchedSquare, own);
    const rules = plan.pad.sides ?? [];
    const exact = overLevels(0, 1.05, (z) => {
      const out = rules.map((rule) => filledTo(rule, 1.2, z)) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      const whole = (12 + out[1] + out[5]) * (12 + out[0] + out[4]);
      return whole - (7 + out[1] - out[3]) * (7 + out[4] - out[2]) - 95;
    });
    expect(Math.abs(laid(plan, 1.2).outside.fill / exact - 1)).toBeLessThan(0.001);
  });

  it("keeps the finished ground at its walls where it is wanted", () => {
    const plan = mitred(notchedSquare, { 2: { fillSlope: 2 }, 3: { fillSlope: 8, edgeAboveFloor: -0.4 } });
    const [atNotchSouth, atNotchWest] = heights(plan, 1.2, [
      [9, 5],
      [5, 9],
    ]);
    expect(atNotchSouth).toBeCloseTo(1.05, 9);
    expect(atNotchWest).toBeCloseTo(0.8, 9);
  });
});

describe("mitred corners of a plan with a bump in its notch", () => {
  // What stands in a notch doesn't reach the ground beyond the arms beside it.
  const ring: Point[] = [
    [0, 0],
    [20, 0],
    [20, 12],
    [15, 12],
    [15, 4],
    [12, 4],
    [12, 6],
    [8, 6],
    [8, 4],
    [5, 4],
    [5, 12],
    [0, 12],
  ];
  it("slopes off in front of every side as in front of that side alone", () => {
    const plan = mitred(ring, {});
    const rim = 1.2 - 0.3;
    const out: Point[] = [
      [17, 12 + 4],
      [20 + 4, 9],
      [2, 12 + 4],
      [-4, 9],
      [10, -4],
      [10, 6 + 4],
    ];
    expect(heights(plan, 1.2, out.slice(0, 5))).toEqual(Array(5).fill(expect.closeTo(rim - 1 / 3, 9)));
    // On the bump's front 4 m from its face, the arms' aprons end 2 m off: there the higher of all counts.
    expect(heights(plan, 1.2, [[10, 6 + 4]])[0]).toBeCloseTo(rim - 1 / 3, 9);
  });
});

describe("mitred corners beside a side that is left as it is", () => {
  it("leave the other corners to their planes, and the earth runs round the free ends", () => {
    const leave = Uint8Array.from([0, 0, 1, 0]);
    const plan = mitred(box, { 1: { fillSlope: 8 } }, { leave });
    const rim = 0.9;
    const [hip, freeEnd, edge] = heights(plan, 1.2, [
      [5 + 3 + 1, -(4 + 3 + 2)],
      [5 + 4 * Math.SQRT1_2, 4 + 4 * Math.SQRT1_2],
      [5.01, 4.01],
    ]);
    expect(hip).toBeCloseTo(rim - 2 / 3, 9);
    expect(freeEnd).toBeCloseTo(rim - 1 / 8, 6);
    expect(edge).toBeCloseTo(1.05, 2);
  });
});

describe("two walls in one line with rules of their own", () => {
  const ring: Point[] = [
    [-10, -4],
    [0, -4],
    [10, -4],
    [10, 4],
    [-10, 4],
  ];
  it.each(["mitred", "round"] as const)("each keep to theirs, %s corners", (corners) => {
    const plan = mitred(ring, { 1: { fillSlope: 6 } }, { corners });
    const [west, joint, east] = heights(plan, 1.2, [
      [-4, -4 - 5],
      [0, -4 - 5],
      [4, -4 - 5],
    ]);
    expect(west).toBeCloseTo(0.9 - 2 / 3, 9);
    expect(east).toBeCloseTo(0.9 - 2 / 6, 9);
    expect(joint).toBeGreaterThan(west as number);
    expect(joint).toBeLessThan(east as number);
  });
});

/** The greatest difference between places 5 mm apart on a line. */
function roughest(plan: GradingPlan, floor: number, from: Point, to: Point): number {
  const count = Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / 0.005);
  const places = Array.from({ length: count + 1 }, (_, i): Point => {
    const t = i / count;
    return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
  });
  const z = heights(plan, floor, places);
  return Math.max(...z.slice(1).map((height, i) => Math.abs(height - (z[i] as number))));
}

describe("no cliff stands in the finished ground", () => {
  const tee: Point[] = [
    [-2, 0],
    [2, 0],
    [2, 5],
    [10, 5],
    [10, 10],
    [-10, 10],
    [-10, 5],
    [-2, 5],
  ];
  const zed: Point[] = [
    [0, 0],
    [10, 0],
    [10, 6],
    [18, 6],
    [18, 14],
    [6, 14],
    [6, 8],
    [0, 8],
  ];
  const own = Object.fromEntries(
    tee.map((_, i) => [
      i,
      {
        fillSlope: 2 + ((i * 3) % 7),
        cutSlope: 1 + ((i * 5) % 4),
        fall: 0.02 + 0.01 * (i % 5),
        width: 1 + (i % 4),
      },
    ]),
  );
  const across = (plan: GradingPlan, floor: number) =>
    Math.max(
      ...[-12, -3, 1, 4, 7, 9, 13, 19].flatMap((at) => [
        roughest(plan, floor, [-25, at], [35, at]),
        roughest(plan, floor, [at, -25], [at, 35]),
        roughest(plan, floor, [at - 20, -20], [at + 20, 20]),
      ]),
    );

  it.each([
    ["a T", tee],
    ["a Z", zed],
  ] as const)("about %s whose sides all have rules of their own", (_what, ring) => {
    const plan = mitred(ring, own);
    // The steepest slope, 1 : 1, changes by 5 mm in 5 mm.
    expect(across(plan, 1.5)).toBeLessThan(0.0075);
    expect(across(plan, -1.5)).toBeLessThan(0.0075);
  });

  it.each(["mitred", "round"] as const)(
    "before the middle of a side that is left as it is, between sides of unequal slopes, %s corners",
    (corners) => {
      const leave = Uint8Array.from([0, 0, 1, 0]);
      const plan = mitred(box, { 1: { fillSlope: 8, cutSlope: 6 } }, { leave, corners });
      for (const floor of [1.5, -1.5]) expect(roughest(plan, floor, [-12, 5], [12, 5])).toBeLessThan(0.0075);
    },
  );
});
