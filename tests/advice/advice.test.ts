import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type AdviceFacts,
  floorBand,
  floorRules,
  keepsRule,
  nearestWithin,
  outsideBand,
  switched,
} from "../../src/advice";
import { apronSchema, foundationSchema, rulesSchema } from "../../src/document/schema";

const spot = (height: number) => ({ height, place: "corner A", at: [0, 0] as const });

const facts: AdviceFacts = {
  topOfWallAboveFloor: 0.1,
  foundation: foundationSchema.parse({
    wallHeight: 1.2,
    footingThickness: 0.2,
    slabThickness: 0.1,
    baseThickness: 0.1,
  }),
  apron: apronSchema.parse({ showing: 0.15 }),
  rules: rulesSchema.parse({}),
  stripDepth: 0.15,
  uphill: spot(101),
  lowestAtWalls: spot(99.5),
  highestAtWalls: spot(100.8),
  lowestInside: spot(99.6),
  drives: [],
  swaleNear: null,
  pondNear: null,
  length: (m) => `${m} m`,
};

const height = (id: string, part: Partial<AdviceFacts> = {}) =>
  floorRules({ ...facts, ...part }).find((rule) => rule.id === id)?.height;

describe("the floor's rules, worked by hand", () => {
  it.each<[string, string, Partial<AdviceFacts>, number | null]>([
    ["top of wall 0.1524 over 101: floor 0.1 lower", "aboveUphillGround", {}, 101.0524],
    ["no drive", "steepestDrive", {}, null],
    ["footing 12 in under a strip at 99.5", "intoUndisturbed", {}, 99.5 - 0.15 - 0.3048 + 0.2 + 1.2 - 0.1],
    ["no frost depth typed", "frostCover", {}, null],
    ["24 in of fill from a strip at 99.6 to the base", "fillUnderSlab", {}, 99.6 - 0.15 + 0.6096 + 0.2],
    ["no limit typed", "mostShowing", {}, null],
    [
      "bed at 100.2, 6 in under the ground at the wall",
      "swaleBelowWall",
      { swaleNear: spot(100.2) },
      100.2 + 0.1524 + 0.15 - 0.1,
    ],
    ["no level of the road typed", "aboveRoad", {}, null],
    ["gutter at 100.2, 12 in", "aboveRoad", { rules: rulesSchema.parse({ roadLevel: 100.2 }) }, 100.4048],
    [
      "flood at 100.5, 0.2 typed",
      "aboveFlood",
      { rules: rulesSchema.parse({ floodLevel: 100.5, aboveFlood: 0.2 }) },
      100.7,
    ],
    [
      "high corner a foot out of the ground at 100.8",
      "leastOut",
      { rules: rulesSchema.parse({ leastOut: 0.3048 }) },
      100.8 + 0.3048 - 0.1,
    ],
    [
      "a freeboard of one's own",
      "pondFreeboard",
      { pondNear: spot(100.4), rules: rulesSchema.parse({ aboveWater: 0.5 }) },
      100.9,
    ],
    ["water at 100.4", "pondFreeboard", { pondNear: spot(100.4) }, 100.5524],
  ])("%s: %s", (_why, id, part, want) => {
    const got = height(id, part);
    if (want === null) expect(got).toBeNull();
    else expect(got).toBeCloseTo(want, 9);
  });

  it("measures frost from the ground as it is and tells the cover below the apron too", () => {
    const foundation = { ...facts.foundation, frostDepth: 0.8 };
    const rule = floorRules({ ...facts, foundation }).find(({ id }) => id === "frostCover");
    expect(rule?.height).toBeCloseTo(99.5 - 0.8 + 1.4 - 0.1, 9);
    expect(rule?.place).toContain("0.8 m");
    expect(rule?.place).toContain("1.25 m");
  });

  it("counts frost from finished ground where the user says so: the apron's cover doesn't hang on the floor", () => {
    const foundation = { ...facts.foundation, frostDepth: 0.8, frostFrom: "finished" as const };
    const rule = (part: Partial<AdviceFacts>) =>
      floorRules({ ...facts, foundation, ...part }).find(({ id }) => id === "frostCover");
    expect(rule({})).toMatchObject({
      height: null,
      place: "the footing lies 1.25 m below the apron at any floor height",
    });
    expect(rule({ lowestLeft: spot(99.7) })?.height).toBeCloseTo(99.7 - 0.8 + 1.4 - 0.1, 9);
    const deep = { ...foundation, frostDepth: 1.5 };
    expect(rule({ foundation: deep })?.place).toContain("taller wall");
  });

  it("a footing that goes down with the ground doesn't limit the floor", () => {
    const steps = { ...facts.foundation.steps, on: true };
    for (const part of [{ steps }, { kind: "posts" as const }]) {
      const foundation = { ...facts.foundation, frostDepth: 0.8, ...part };
      expect(height("frostCover", { foundation })).toBeNull();
      expect(height("intoUndisturbed", { foundation })).toBeNull();
    }
  });

  it("fill of earth may be 8 in, a crawl space has none, a thickened edge is as deep as it is typed", () => {
    const earth = { ...facts.foundation, slabFill: { ...facts.foundation.slabFill, kind: "earth" as const } };
    expect(height("fillUnderSlab", { foundation: earth })).toBeCloseTo(99.6 - 0.15 + 0.2032 + 0.2, 9);
    const crawl = { ...facts.foundation, kind: "crawl-space" as const };
    expect(height("fillUnderSlab", { foundation: crawl })).toBeNull();
    const edge = { ...facts.foundation, kind: "thickened-edge" as const, edge: { depth: 0.5, width: 0.3 } };
    expect(height("intoUndisturbed", { foundation: edge })).toBeCloseTo(99.5 - 0.15 - 0.3048 + 0.5 - 0.1, 9);
  });

  it("takes the drive that limits most, each way", () => {
    const drives = [
      {
        name: "front",
        climbing: 101,
        falling: 99,
        breaks: { where: "landing" as const, up: 102, down: 98 },
        at: [0, 0] as const,
      },
      { name: "back", climbing: 102, falling: 100, breaks: null, at: [0, 0] as const },
    ];
    expect(height("steepestDrive", { drives })).toBe(101);
    expect(height("driveDown", { drives })).toBe(100);
    expect(height("landing", { drives })).toBe(102);
    expect(height("landingDown", { drives })).toBe(98);
  });

  it("names a source and a place for every rule", () => {
    for (const rule of floorRules(facts)) {
      expect(rule.source.length).toBeGreaterThan(5);
      expect(rule.place.length).toBeGreaterThan(3);
    }
  });
});

describe("the band", () => {
  const mm = (min: number, max: number) => fc.integer({ min, max }).map((value) => value / 1000);
  const someFacts = fc.record({
    uphill: mm(98_000, 102_000),
    lowest: mm(97_000, 101_000),
    swale: fc.option(mm(98_000, 101_000)),
    pond: fc.option(mm(98_000, 101_000)),
    frost: fc.option(mm(0, 1500)),
    most: fc.option(mm(200, 2000)),
    road: fc.option(mm(96_000, 103_000)),
    gutter: fc.option(mm(97_000, 101_000)),
    flood: fc.option(mm(97_000, 101_000)),
    out: fc.option(mm(0, 600)),
    off: fc.subarray([
      "aboveUphillGround",
      "intoUndisturbed",
      "fillUnderSlab",
      "frostCover",
      "steepestDrive",
      "aboveRoad",
      "aboveFlood",
    ]),
  });

  /** Every rule said again as what is measured at one floor height. */
  function kept(drawn: ReturnType<typeof read>, floor: number): boolean {
    const { all, road } = drawn;
    const { foundation, rules, apron } = all;
    const top = floor + all.topOfWallAboveFloor;
    const bottom = top - foundation.wallHeight - foundation.footingThickness;
    const grade = road === null ? 0 : (floor - road) / 25;
    const near = 1e-6;
    const measured: Record<string, boolean> = {
      aboveUphillGround: top - all.uphill.height >= rules.aboveUphillGround - near,
      driveDown: grade >= -rules.steepestDrive - near / 25,
      landing: road === null || grade - 0.02 <= rules.breakAtDoor + near / 25,
      landingDown: road === null || 0.02 - grade <= rules.breakAtDoor + near / 25,
      steepestDrive: grade <= rules.steepestDrive + near / 25,
      aboveRoad: rules.roadLevel === null || top - rules.roadLevel >= rules.aboveRoad - near,
      aboveFlood: rules.floodLevel === null || floor - rules.floodLevel >= rules.aboveFlood - near,
      leastOut: rules.leastOut === null || top - all.highestAtWalls.height >= rules.leastOut - near,
      swaleBelowWall: !all.swaleNear || top - apron.showing - all.swaleNear.height >= 0.1524 - near,
      pondFreeboard: !all.pondNear || floor - all.pondNear.height >= 0.1524 - near,
      intoUndisturbed: all.lowestAtWalls.height - all.stripDepth - bottom >= rules.intoUndisturbed - near,
      frostCover:
        foundation.frostDepth === null || all.lowestAtWalls.height - bottom >= foundation.frostDepth - near,
      fillUnderSlab: floor - 0.2 - (all.lowestInside.height - all.stripDepth) <= 0.6096 + near,
      mostShowing: rules.mostShowing === null || top - all.lowestAtWalls.height <= rules.mostShowing + near,
    };
    return Object.entries(measured).every(([id, ok]) => ok || rules.off.includes(id));
  }

  function read(drawn: typeof someFacts extends fc.Arbitrary<infer T> ? T : never) {
    const spotOr = (value: number | null) => (value === null ? null : spot(value));
    const road = drawn.road;
    const all: AdviceFacts = {
      ...facts,
      uphill: spot(drawn.uphill),
      lowestAtWalls: spot(drawn.lowest),
      lowestInside: spot(drawn.lowest + 0.1),
      swaleNear: spotOr(drawn.swale),
      pondNear: spotOr(drawn.pond),
      foundation: { ...facts.foundation, frostDepth: drawn.frost },
      rules: rulesSchema.parse({
        mostShowing: drawn.most || null,
        off: drawn.off,
        roadLevel: drawn.gutter,
        floodLevel: drawn.flood,
        leastOut: drawn.out,
      }),
      drives:
        road === null
          ? []
          : [
              {
                name: "drive",
                at: [0, 0],
                climbing: road + 3,
                falling: road - 3,
                breaks: { where: "landing", up: road + 25 * 0.12, down: road - 25 * 0.08 },
              },
            ],
    };
    return { all, road };
  }

  it("is exactly the set of floors at which every rule that is on is kept", () =>
    fc.assert(
      fc.property(someFacts, (drawn) => {
        const facts = read(drawn);
        const band = floorBand(switched(floorRules(facts.all), facts.all.rules));
        for (let floor = 94; floor <= 106; floor += 0.0503) {
          const within =
            (band.low === null || floor >= band.low - 1e-6) &&
            (band.high === null || floor <= band.high + 1e-6);
          expect(within && !band.empty, `floor ${floor}`).toBe(kept(facts, floor));
          expect(band.rules.every((rule) => keepsRule(rule, floor))).toBe(kept(facts, floor));
        }
      }),
      { numRuns: 100 },
    ));

  it("is never narrowed by switching a rule off", () =>
    fc.assert(
      fc.property(someFacts, fc.nat(), (drawn, n) => {
        const { all } = read(drawn);
        const rules = floorRules(all);
        const off = rules[n % rules.length]?.id ?? "";
        const before = floorBand(switched(rules, all.rules));
        const after = floorBand(switched(rules, { off: [...all.rules.off, off] }));
        for (let floor = 94; floor <= 106; floor += 0.0503) {
          const inside = (band: typeof before) => !band.empty && outsideBand(band, floor) === null;
          if (inside(before)) expect(inside(after), `${off} at ${floor}`).toBe(true);
        }
      }),
    ));

  it("takes any floor in at its nearest end: on whole steps where they fit, and always inside", () =>
    fc.assert(
      fc.property(
        someFacts,
        mm(94_000, 106_000),
        fc.constantFrom(0.01, 0.0254, 0.5),
        (drawn, floor, step) => {
          const { all } = read(drawn);
          const band = floorBand(switched(floorRules(all), all.rules));
          const taken = nearestWithin(band, floor, step);
          expect(outsideBand(band, taken)).toBeNull();
          const outside = outsideBand(band, floor);
          if (outside === null) expect(taken).toBe(floor);
          else expect(Math.abs(taken - floor)).toBeLessThanOrEqual(outside.by + step + 1e-6);
        },
      ),
    ));

  it("is open where no rule bears, and empty where two conflict", () => {
    const off = floorRules(facts).map(({ id }) => id);
    expect(floorBand(switched(floorRules(facts), { off }))).toMatchObject({
      low: null,
      high: null,
      empty: false,
    });
    expect(floorBand(switched(floorRules(facts), facts.rules)).empty).toBe(true);
  });
});
