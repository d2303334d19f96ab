import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drive, driveSchema } from "../../src/document/schema";
import { driveProfile, driveResult, floorForGrade, layDrive, mainGrade, stations } from "../../src/grading";

const drive: Drive = driveSchema.parse({
  id: "d",
  name: "drive",
  line: [
    [0, 0],
    [20, 0],
    [20, 10],
  ],
  door: "door",
  landing: { length: 4, fall: 0.02 },
});
const toDoor = { roadHeight: 100, endHeight: 0, sillBelowFloor: 0.05 };

describe("the long section of a drive", () => {
  const line = layDrive(drive, toDoor);
  const at = (floor: number) =>
    driveResult(
      driveProfile(line, () => 99),
      floor,
    );

  it("joins road and landing by one grade: (103 − 0.05 − 0.08 − 100) / 26 = 11.04 %", () => {
    expect(mainGrade(line, 103)).toBeCloseTo(2.87 / 26, 12);
    const result = at(103);
    expect(result.length).toBe(30);
    expect(result.steepest).toBeCloseTo(2.87 / 26, 9);
    expect(result.climbs).toBe(true);
    expect(result.stations[0]).toMatchObject({ distance: 0, finished: 100, existing: 99 });
    expect(result.stations.at(-1)).toMatchObject({ distance: 30, at: [20, 10], grade: null });
    expect(result.stations.at(-1)?.finished).toBeCloseTo(102.95, 9);
  });

  it("is told by one figure: the steepest of its pieces, curves or none, where that is reached", () => {
    const curved = layDrive(
      { ...drive, breaks: [{ at: 13, height: 102, curve: 26 }], landing: { ...drive.landing, curve: 6 } },
      toDoor,
    );
    const result = driveResult(
      driveProfile(curved, () => 99),
      103,
    );
    const grades = result.pieces.map(({ grade }) => Math.abs(grade));
    expect(result.steepest).toBe(Math.max(...grades));
    expect(result.steepest).toBeCloseTo(2 / 13, 9);
  });

  it("has a station at its bend and at the landing's edge", () => {
    const distances = at(103).stations.map(({ distance }) => distance);
    expect(distances).toContain(20);
    expect(distances).toContain(26);
  });

  it("is as steep as its landing where that is steeper", () => {
    expect(at(100.05 + 0.08).steepest).toBeCloseTo(0.02, 9);
  });

  it("falls to the door where the floor is low", () => {
    const result = at(98);
    expect(result.climbs).toBe(false);
    expect(result.stations[0]?.grade).toBeCloseTo((97.87 - 100) / 26, 9);
  });

  it("without a door runs evenly to the ground at its end, whatever the floor", () => {
    const open = layDrive(
      { ...drive, door: null },
      { roadHeight: 100, endHeight: 103, sillBelowFloor: null },
    );
    expect(mainGrade(open, 50)).toBeCloseTo(0.1, 12);
    expect(floorForGrade(open, 0.1)).toBeNull();
  });

  it("shorter than its landing has no landing and one grade", () => {
    const short = layDrive(
      {
        ...drive,
        line: [
          [0, 0],
          [3, 0],
        ],
      },
      toDoor,
    );
    expect(short.landing).toBe(0);
    expect(mainGrade(short, 100.35)).toBeCloseTo(0.1, 12);
  });

  it("finds the floor for a grade: the inverse of the grade for a floor", () =>
    fc.assert(
      fc.property(fc.integer({ min: -200, max: 200 }), (permille) => {
        const floor = floorForGrade(line, permille / 1000);
        expect(mainGrade(line, floor ?? 0)).toBeCloseTo(permille / 1000, 10);
      }),
    ));
});

describe("stations", () => {
  it("are even, with the breaks among them and no slivers", () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 80_000 }),
        fc.array(fc.integer({ min: 0, max: 80_000 }), { maxLength: 6 }),
        (length, breaks) => {
          const metres = breaks.map((mm) => mm / 1000);
          const list = stations(length / 1000, [0, length / 1000, ...metres]);
          expect(list[0]).toBe(0);
          expect(list.at(-1)).toBeGreaterThan(length / 1000 - 0.011);
          for (let i = 1; i < list.length; i++) {
            const step = (list[i] ?? 0) - (list[i - 1] ?? 0);
            expect(step).toBeGreaterThan(0.01);
            expect(step).toBeLessThan(2.7);
          }
        },
      ),
    ));
});
