/** Foundations, set-out readings, fill and loads against published figures. */
import { describe, expect, it } from "vitest";
import { type AdviceFacts, floorRules } from "../../src/advice";
import { apronSchema, foundationSchema, materialsSchema, rulesSchema } from "../../src/document/schema";
import { concrete } from "../../src/foundation";
import type { Point } from "../../src/geometry";
import { bill } from "../../src/quantities";
import { setout } from "../../src/setout";
import { createSolver } from "../../src/solve/pipeline";
import { site } from "../solve/sites";

const inch = 0.0254;
const foot = 0.3048;

describe("concrete of a 20 × 32 ft building", () => {
  // NAVEDTRA 14070, Engineering Aid Advanced (US Navy), chapter 5, worked example: wall 0.67 ft thick and 2 ft
  // high, footing 2 × 1 ft, slab 0.33 ft; in cubic feet.
  it("is 135.8 in the wall, 202.64 in the footing, 188.96 in the slab", () => {
    const outline: Point[] = [
      [0, 0],
      [32 * foot, 0],
      [32 * foot, 20 * foot],
      [0, 20 * foot],
    ];
    const part = {
      wallHeight: 2 * foot,
      footingWidth: 2 * foot,
      footingThickness: 1 * foot,
      slabThickness: 0.33 * foot,
    };
    const cast = concrete(outline, foundationSchema.parse({ ...part, wallThickness: 0.67 * foot }));
    // The page rounds the room inside to 18.67 × 30.67 ft, as with walls of 0.665 ft.
    const { slab } = concrete(outline, foundationSchema.parse({ ...part, wallThickness: 0.665 * foot }));
    const cubicFeet = (m3: number) => m3 / foot ** 3;
    expect(Math.abs(cubicFeet(cast.wall) - 135.8)).toBeLessThan(0.05);
    expect(Math.abs(cubicFeet(cast.footing) - 202.64)).toBeLessThan(0.05);
    expect(Math.abs(cubicFeet(slab) - 188.96)).toBeLessThan(0.05);
  });
});

describe("readings to look for", () => {
  // NAVEDTRA 14081, Equipment Operator (US Navy), p. 15-30: from the reading on a hub and what its stake says.
  it.each([
    ["C 7.5 with 5.0 on the hub", 5, -7.5, 12.5],
    ["F 7.0 with 12.0 on the hub", 12, 7, 5],
  ])("%s", (_why, onHub, rise, reading) => {
    const hub = { name: "hub", height: 100 };
    const [row] = setout({ mark: hub, beam: hub.height + onHub }, [
      { what: "grade", where: "stake", height: 100 + rise },
    ]).rows;
    expect(row?.reading).toBeCloseTo(reading, 9);
    expect(row?.fromMark).toBeCloseTo(rise, 9);
  });
});

describe("limits on the floor from the International Residential Code (2012)", () => {
  const spot = (height: number) => ({ height, place: "corner A", at: [0, 0] as const });
  const facts: AdviceFacts = {
    topOfWallAboveFloor: 0,
    foundation: foundationSchema.parse({
      wallHeight: 48 * inch,
      footingThickness: 8 * inch,
      slabThickness: 4 * inch,
      baseThickness: 4 * inch,
    }),
    apron: apronSchema.parse({}),
    rules: rulesSchema.parse({}),
    stripDepth: 0,
    uphill: spot(0),
    lowestAtWalls: spot(0),
    highestAtWalls: spot(0),
    lowestInside: spot(0),
    drives: [],
    swaleNear: null,
    pondNear: null,
    length: String,
  };
  const floorInInches = (id: string) =>
    (floorRules(facts).find((rule) => rule.id === id)?.height ?? Number.NaN) / inch;

  it.each([
    ["R403.1.4: footing 12 in into undisturbed ground, 48 + 8 − 12", "intoUndisturbed", 44],
    ["R506.2.1: 24 in of sand or gravel under base and slab of 4 in each", "fillUnderSlab", 32],
  ])("%s", (_why, id, inches) => {
    expect(floorInInches(id)).toBeCloseTo(inches, 9);
  });

  it.each([
    ["R404.1.6: 6 in of wall above finished ground", "leastShowing"],
    ["R317.1: 6 in from ground to siding", "sidingClearance"],
  ])("%s, where level ground stays as it is", (_why, id) => {
    const { band } = createSolver().solve(site({ rest: { grading: { apron: { leave: [0, 1, 2, 3] } } } }));
    const floor = band.rules.find((rule) => rule.id === id)?.height ?? Number.NaN;
    expect((floor - 100) / inch).toBeCloseTo(6, 4);
  });
});

describe("the top of a foundation over a street's gutter", () => {
  // IRC R403.1.7.3 (2012), as in the 2013 California Residential Code: 12 in plus 2 % of the distance. The rule is
  // the code's, the place worked by hand: gutter 100 ft, 60 ft away.
  it("is at least 102.2 ft", () => {
    const spot = { height: 90 * foot, place: "corner A", at: [0, 0] as const };
    const rules = floorRules({
      topOfWallAboveFloor: 0,
      foundation: foundationSchema.parse({}),
      apron: apronSchema.parse({}),
      rules: rulesSchema.parse({ roadLevel: 100 * foot, toRoad: 60 * foot }),
      stripDepth: 0,
      uphill: spot,
      lowestAtWalls: spot,
      highestAtWalls: spot,
      lowestInside: spot,
      drives: [],
      swaleNear: null,
      pondNear: null,
      length: String,
    });
    expect((rules.find(({ id }) => id === "aboveRoad")?.height ?? Number.NaN) / foot).toBeCloseTo(102.2, 9);
  });
});

describe("fill in its three states", () => {
  const items = (
    fill: number,
    materials: Record<string, number>,
    truckVolume: number,
    payload: number | null = null,
  ) => {
    const list = bill({
      cut: 0,
      fill,
      disturbedArea: 0,
      concrete: { wall: 0, footing: 0, slab: 0, base: 0 },
      drives: [],
      materials: materialsSchema.parse(materials),
      truck: { volume: truckVolume, payload },
    });
    return (id: string) => list.find((item) => item.id === id)?.quantity ?? Number.NaN;
  };

  // Solved problem of a construction engineering course: 3500 lb/yd3 compacted, 2750 in the bank, 2200 loose;
  // 30 000 yd3 of fill.
  it("takes 38 181.8 yd3 from the bank and 47 727.3 on trucks", () => {
    const of = items(30_000, { shrink: 2750 / 3500, swell: 2750 / 2200 }, 1e9);
    expect(Math.abs(of("short") - 38_181.8)).toBeLessThan(0.1);
    expect(Math.abs(of("fill-loose") - 47_727.3)).toBeLessThan(0.1);
  });

  // Rule of a gravel supplier (compaction 1.25) worked for a drive 150 × 12 ft × 6 in and trucks of 10 yd3.
  it("of a drive is 33.33 yd3 in place, 41.67 loose, 5 loads", () => {
    const of = items((150 * 12 * 0.5) / 27, { shrink: 1, swell: 1.25 }, 10);
    expect(of("fill")).toBeCloseTo(33.33, 2);
    expect(of("fill-loose")).toBeCloseTo(41.67, 2);
    expect(of("fill-loads")).toBe(5);
  });

  // The same drive by weight: 1.5 tons for a loose cubic yard, trucks that carry 15 tons.
  it("of a drive weighs 62.5 tons and comes in 5 loads of 15", () => {
    const ton = 907.18474;
    const of = stoneOf({ compactedYards: 33.3333333333, tonsPerYard: 1.5, payloadTons: 15 });
    expect(of.mass / ton).toBeCloseTo(62.5, 6);
    expect(of.loads).toBe(5);

    function stoneOf(given: { compactedYards: number; tonsPerYard: number; payloadTons: number }) {
      const yard = 0.764554857984;
      const list = bill({
        cut: 0,
        fill: 0,
        disturbedArea: 0,
        concrete: { wall: 0, footing: 0, slab: 0, base: 0 },
        drives: [{ id: "d", name: "drive", area: (given.compactedYards * yard) / 0.1524, thickness: 0.1524 }],
        materials: materialsSchema.parse({
          stoneLoose: 1.25,
          weights: { stone: (given.tonsPerYard * ton) / yard },
        }),
        truck: { volume: 1000, payload: given.payloadTons * ton },
      });
      const trucked = list.find(({ id }) => id === "gravel-d")?.trucked;
      if (!trucked) throw new Error("the drive's stone comes by truck");
      return trucked;
    }
  });
});
