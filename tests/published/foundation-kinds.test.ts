/** Footings, trenches, steps, fill against walls and under slabs, blocks: against published figures. */
import { describe, expect, it } from "vitest";
import { foundationSchema } from "../../src/document/schema";
import {
  fillLimit,
  footingSizes,
  leastFootingWidth,
  soilSlopes,
  stepOverlap,
  stepsFor,
  unbalancedOutside,
} from "../../src/foundation";
import type { Point } from "../../src/geometry";
import { atFloor, flat, foot, inch, onGround, plane } from "../foundation/sites";

describe("frost cover and the depth into undisturbed ground", () => {
  // Worked by hand for a house of 32 × 48 ft: readings 50 1/4, 58, 70 3/4, 84 1/2 in at the corners; 10 in of
  // wall showing at the high one, wall 48 in, footing 8 in, 42 in of frost, a 6 in strip.
  const corners = [50.25, 58, 84.5, 70.75];
  const outline: Point[] = [
    [0, 0],
    [48 * foot, 0],
    [48 * foot, -32 * foot],
    [0, -32 * foot],
  ];
  const [a, b, c, d] = corners.map((reading) => -reading * inch) as [number, number, number, number];
  const height = ([x, y]: Point) => {
    const [u, v] = [x / (48 * foot), -y / (32 * foot)];
    return a * (1 - u) * (1 - v) + b * u * (1 - v) + c * u * v + d * (1 - u) * v;
  };
  const result = onGround(outline, height, {
    floor: -40.25 * inch,
    strip: 6 * inch,
    foundation: { wallHeight: 48 * inch, footingThickness: 8 * inch, frostDepth: 42 * inch },
  });

  it("leaves 46, 38 1/4, 11 3/4 and 25 1/2 in below the ground as it is", () => {
    const below = result.walls.map(({ existing, bottom }) => ((existing[0] ?? 0) - (bottom[0] ?? 0)) / inch);
    expect(below).toEqual([46, 38.25, 11.75, 25.5].map((want) => expect.closeTo(want, 6)));
  });

  it("so a level footing takes 4 in of fall, of the 34 1/4 in there are", () => {
    const { levelFooting } = result;
    expect((levelFooting?.takes ?? 0) / inch).toBeCloseTo(4, 6);
    expect((levelFooting?.fall ?? 0) / inch).toBeCloseTo(34.25, 6);
    expect(levelFooting?.enough).toBe(false);
    expect(levelFooting?.lowest.place).toBe("corner C");
  });

  it("stands 5 3/4 in into the ground at the low corner, under the 12 in of IRC R403.1.4 (2012)", () => {
    const { bearing, undisturbed } = result.cover;
    expect(bearing.needed).toBeCloseTo(12 * inch, 12);
    expect(bearing.least / inch).toBeCloseTo(5.75, 6);
    expect(bearing.failing).toEqual(["C"]);
    expect(undisturbed.failing).toEqual(["B", "C", "D"]);
  });

  it("three corners fail where frost counts from the finished ground just where it isn't raised", () => {
    const finished = onGround(outline, height, {
      floor: -40.25 * inch,
      strip: 6 * inch,
      showing: null,
      foundation: { wallHeight: 48 * inch, footingThickness: 8 * inch, frostDepth: 42 * inch },
    });
    expect(finished.cover.finished.failing).toEqual(["B", "C", "D"]);
  });
});

describe("when a footing must step", () => {
  // IRC R403.1.5 (2012): the bottom may slope up to 1 in 10; 40 ft of building over 3, 4 and 6 ft of fall.
  it.each([
    [3, false],
    [4, false],
    [6, true],
  ])("40 ft of wall over %s ft of fall: %s", (fall, asked) => {
    const result = onGround(
      [
        [0, 0],
        [40 * foot, 0],
        [40 * foot, -1 * foot],
        [0, -1 * foot],
      ],
      ([x]) => -(x / (40 * foot)) * fall * foot,
      { floor: 0.3, foundation: { wallHeight: 12 * foot } },
    );
    expect(result.stepped?.asked.some((why) => why.includes("1 in 10"))).toBe(asked);
  });

  it("laps by twice the step, at least 300 mm (NHBC Standards 4.3)", () => {
    expect(stepOverlap(0.2, 0.2, null)).toBeCloseTo(0.4, 12);
    expect(stepOverlap(0.1, 0.2, null)).toBeCloseTo(0.3, 12);
    expect(stepOverlap(0.1, 0.45, null)).toBeCloseTo(0.45, 12);
    expect(stepOverlap(0.1, 0.9, null)).toBeCloseTo(0.5, 12);
  });
});

describe("trench sides, 29 CFR 1926 subpart P", () => {
  it.each([
    ["A", 53],
    ["B", 45],
    ["C", 34],
  ] as const)("soil %s at %s°", (soil, angle) => {
    expect(Math.abs((Math.atan(1 / soilSlopes[soil]) * 180) / Math.PI - angle)).toBeLessThan(0.5);
  });

  it("6 ft deep and 2 ft wide in soil C is 20 ft wide at the top, 66 sq ft, 97.8 cu yd in 40 ft", () => {
    const { dig } = onGround(flat(20 * foot), plane(0), {
      floor: 1 * foot,
      strip: 0,
      showing: null,
      foundation: {
        wallHeight: 6 * foot,
        footingThickness: 1 * foot,
        footingWidth: 2 * foot,
        wallThickness: 1e-9,
        trench: { ...foundationSchema.parse({}).trench, soil: "C", workingSpace: 0 },
      },
    });
    expect((dig?.widestTop ?? 0) / foot).toBeCloseTo(20, 6);
    expect(dig?.sides).toBe("sloped");
    const cubicYards = (dig?.volume ?? 0) / foot ** 3 / 27;
    expect(Math.abs(cubicYards / 2 - 97.8)).toBeLessThan(0.05);
  });

  it("stays upright below 5 ft where nobody asks for slopes", () => {
    const { dig } = onGround(flat(10), plane(0), {
      floor: 1 * foot,
      strip: 0,
      showing: null,
      foundation: { wallHeight: 5 * foot, footingThickness: 0.9 * foot },
    });
    expect(dig?.sides).toBe("upright");
    expect(dig?.sideSlope).toBe(0);
  });
});

describe("fill that a wall holds on one side", () => {
  const limit = (
    kind: "poured" | "block",
    thickness: number,
    height: number,
    soil: "gravel-sand" | "silty" | "clay",
  ) => {
    const found = fillLimit({
      kind,
      thickness: thickness * inch,
      height: height * foot,
      soil,
      held: true,
    }).limit;
    return found === null ? null : found / foot;
  };

  // IRC (2012) as in the California Residential Code 2013, table R404.1.1(1), hollow blocks: the thickness that a wall
  // of this height and fill needs in each soil; null: solid blocks or steel.
  it.each([
    [8, 4, [8, 8, 8]],
    [8, 5, [8, 10, 12]],
    [8, 6, [10, 12, null]],
    [8, 7, [12, null, null]],
    [9, 5, [8, 10, 12]],
    [9, 6, [10, 12, null]],
  ] as const)("plain blocks, wall %s ft, fill %s ft", (height, fill, thicknesses) => {
    (["gravel-sand", "silty", "clay"] as const).forEach((soil, i) => {
      const needed = thicknesses[i] ?? null;
      const enough = [8, 10, 12].find((t) => (limit("block", t, height, soil) ?? 0) >= fill - 1e-9) ?? null;
      expect(enough).toBe(needed);
    });
  });

  // The same, table R404.1.2(8): the thinnest flat concrete wall without upright steel.
  it.each([
    [10, 4, [6, 6, 6]],
    [10, 5, [6, 8, 8]],
    [10, 7, [8, 10, 12]],
    [8, 7, [8, 10, 10]],
  ] as const)("plain concrete, wall %s ft, fill %s ft", (height, fill, thicknesses) => {
    (["gravel-sand", "silty", "clay"] as const).forEach((soil, i) => {
      const enough = [6, 8, 10, 12].find((t) => (limit("poured", t, height, soil) ?? 0) >= fill - 1e-9);
      expect(enough).toBe(thicknesses[i]);
    });
  });

  it("a wall outside the tables has no limit to read", () => {
    expect(limit("block", 6, 8, "gravel-sand")).toBeNull();
    expect(limit("poured", 8, 11, "gravel-sand")).toBeNull();
  });

  it("a stem wall that is free at its top holds 48 in (R404.1, 2012)", () => {
    const free = fillLimit({
      kind: "poured",
      thickness: 8 * inch,
      height: 6 * foot,
      soil: "clay",
      held: false,
    });
    expect((free.limit ?? 0) / inch).toBeCloseTo(48, 9);
  });

  // California Building Code 2013, 1807.1.2: outside 101.5 ft, top of footing 96, slab 100.
  it("is 1.5 ft against a slab and 5.5 ft without one", () => {
    const wall = { topOfFooting: 96, inside: 100 };
    expect(unbalancedOutside(101.5, { ...wall, slabTop: 100 })).toBeCloseTo(1.5, 12);
    expect(unbalancedOutside(101.5, { ...wall, slabTop: null })).toBeCloseTo(5.5, 12);
  });
});

describe("fill under a slab, IRC R506.2.1 (2012)", () => {
  it.each([
    ["sand-gravel", 24],
    ["earth", 8],
  ] as const)("%s: at most %s in", (kind, most) => {
    const fill = (over: number) =>
      atFloor({
        floor: (most + over + 9) * inch,
        strip: 0,
        foundation: {
          slabThickness: 5 * inch,
          baseThickness: 4 * inch,
          slabFill: { kind, lift: 6 * inch, approved: null },
        },
      }).slabFill;
    expect(fill(0)?.passes).toBe(true);
    expect(fill(0.01)?.passes).toBe(false);
    expect(fill(0)?.lifts).toBe(Math.ceil(most / 6));
  });
});

describe("least footing widths, IRC table R403.1 (2012, as in the California Residential Code 2013)", () => {
  // By 1500, 2000, 3000 and 4000 psf, in inches.
  it.each([
    ["light-frame", 1, [12, 12, 12, 12]],
    ["light-frame", 2, [15, 12, 12, 12]],
    ["light-frame", 3, [23, 17, 12, 12]],
    ["veneer", 1, [12, 12, 12, 12]],
    ["veneer", 2, [21, 16, 12, 12]],
    ["veneer", 3, [32, 24, 16, 12]],
    ["masonry", 1, [16, 12, 12, 12]],
    ["masonry", 2, [29, 21, 14, 12]],
    ["masonry", 3, [42, 32, 21, 16]],
  ] as const)("%s, %s storeys", (built, storeys, inches) => {
    const found = (["clay", "sand", "gravel", "rock"] as const).map(
      (soil) => leastFootingWidth({ built, storeys, soil }) / inch,
    );
    expect(found).toEqual(inches.map((want) => expect.closeTo(want, 9)));
  });

  it("thickness from 6 in, projection from 2 in up to the thickness (R403.1.1), slab from 3 1/2 in (R506.1)", () => {
    const failing = (part: object) =>
      footingSizes({ ...foundationSchema.parse({}), ...part })
        .filter(({ passes }) => !passes)
        .map(({ what }) => what);
    expect(failing({})).toEqual([]);
    expect(failing({ footingThickness: 5.9 * inch })).toEqual(["footing thickness"]);
    expect(failing({ footingWidth: 8 * inch + 3.9 * inch })).toContain("footing beyond the wall, each side");
    expect(failing({ footingWidth: 40 * inch })).toEqual(["footing beyond the wall, each side"]);
    expect(failing({ slabThickness: 3.4 * inch })).toEqual(["slab"]);
    expect(failing({ slabThickness: 3.5 * inch })).toEqual([]);
  });
});

describe("blocks", () => {
  // NAVEDTRA 14043, Builder (US Navy), chapter 8: 3/4 of the length and 3/2 of the height in feet: 20 × 8 ft takes
  // 15 a course, 12 courses, 180 blocks.
  it("20 ft by 8 ft of wall is 15 × 12 = 180", () => {
    const { takeOff } = onGround(flat(5 * foot), plane(0), {
      floor: 0,
      foundation: { wall: "block", wallHeight: 8 * foot, wallThickness: 1e-9 },
    });
    expect(takeOff.blocks).toEqual({ perCourse: 15, courses: 12, count: 180 });
  });
});

describe("concrete with its waste", () => {
  // NAVEDTRA 14070, chapter 5: 527.4 cu ft and 10 % more are 21.5 cu yd, with 8 in as 0.67 ft and 4 in as 0.33.
  it("is 21.5 cu yd for the 20 × 32 ft building", () => {
    const { takeOff } = onGround(
      [
        [0, 0],
        [32 * foot, 0],
        [32 * foot, -20 * foot],
        [0, -20 * foot],
      ],
      plane(0),
      {
        floor: 0,
        foundation: {
          wallThickness: 8 * inch,
          wallHeight: 2 * foot,
          footingWidth: 2 * foot,
          footingThickness: 1 * foot,
          slabThickness: 4 * inch,
          concreteWaste: 0.1,
        },
      },
    );
    expect(Math.abs(takeOff.total / foot ** 3 - 527.4)).toBeLessThan(1.5);
    expect(Math.abs(takeOff.withWaste / foot ** 3 / 27 - 21.5)).toBeLessThan(0.05);
  });
});

describe("steps outside a door, IRC R311.7.5 (2012, from memory: risers to 7 3/4 in, treads from 10 in)", () => {
  it.each([
    [7.75, null],
    [8, 2],
    [15.5, 2],
    [24, 4],
  ] as const)("%s in down takes %s risers", (drop, risers) => {
    expect(stepsFor(drop * inch)?.risers ?? null).toBe(risers);
  });
});
