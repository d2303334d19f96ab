/**
 * Vertical curves against figures worked from memory of the usual handbook examples.
 *
 * Source  The equal-tangent parabola as route-surveying handbooks give it, y = y₀ + g₁ x + (g₂ − g₁) x² / (2 L). The
 *         worked example (+ 3 % to − 2.4 %, 800 ft, break at 670.50 ft) is the form such handbooks print; its figures
 *         are recomputed here by hand, not copied from a page.
 */
import { describe, expect, it } from "vitest";
import { driveSchema, vehicleSchema } from "../../src/document/schema";
import { driveHeight, driveProfile, driveResult, layDrive, tightestPlaces } from "../../src/grading";

const foot = 0.3048;

/** A line of 2000 ft with one break in its middle. */
function drive(gradeIn: number, gradeOut: number, breakHeight: number, curve: number, half = 1000) {
  const made = driveSchema.parse({
    id: "v",
    line: [
      [0, 0],
      [2 * half * foot, 0],
    ],
    breaks: [{ at: half * foot, height: breakHeight * foot, curve: curve * foot }],
  });
  return layDrive(made, {
    roadHeight: (breakHeight - gradeIn * half) * foot,
    endHeight: (breakHeight + gradeOut * half) * foot,
    sillBelowFloor: null,
  });
}

describe("crest of + 3 % to − 2.4 %, 800 ft long, break at 670.50 ft", () => {
  const line = drive(0.03, -0.024, 670.5, 800);
  const [curve] = driveResult(
    driveProfile(line, () => 0),
    0,
  ).curves;

  it.each([
    ["start of the curve: 670.50 − 0.03 × 400", 600, 658.5],
    ["100 ft on: + 3.00 − 0.054 · 100² / 1600", 700, 661.1625],
    ["200 ft on", 800, 663.15],
    ["at the break: 5.40 ft under it, 0.054 × 800 / 8", 1000, 665.1],
    ["600 ft on", 1200, 664.35],
    ["end of the curve: 670.50 − 0.024 × 400", 1400, 660.9],
  ])("%s", (_why, at, height) => {
    expect(driveHeight(line, at * foot).base / foot).toBeCloseTo(height, 6);
  });

  it("is highest 0.03 × 800 / 0.054 = 444.44 ft from its start, at 665.1667 ft", () => {
    expect(curve?.kind).toBe("crest");
    expect(((curve?.turning?.distance ?? 0) - (curve?.from ?? 0)) / foot).toBeCloseTo(444.4444, 3);
    expect((curve?.turning?.height ?? 0) / foot).toBeCloseTo(658.5 + (0.03 * 444.4444) / 2, 3);
  });

  it("takes 800 / 5.4 = 148 ft for each per cent", () => {
    expect((curve?.lengthPerPercent ?? 0) / foot).toBeCloseTo(148.148, 2);
  });
});

describe("curves without room", () => {
  it("share what lies between their breaks, and say so", () => {
    const made = driveSchema.parse({
      id: "v",
      line: [
        [0, 0],
        [40, 0],
      ],
      breaks: [
        { at: 15, height: 101, curve: 20 },
        { at: 25, height: 101.5, curve: 10 },
      ],
    });
    const line = layDrive(made, { roadHeight: 100, endHeight: 101, sillBelowFloor: null });
    expect(line.nodes.map(({ half }) => half)).toEqual([
      0,
      expect.closeTo(20 / 3, 9),
      expect.closeTo(10 / 3, 9),
      0,
    ]);
    expect(line.shortened).toHaveLength(2);
  });
});

describe("a vehicle's underside", () => {
  const vehicle = vehicleSchema.parse({ wheelbase: 4, clearance: 0.2, frontOverhang: 0, rearOverhang: 0 });
  const room = (heightAt: (t: number) => number) =>
    tightestPlaces(heightAt, 40, vehicle).find(({ part }) => part === "underside")?.room ?? 0;

  it("comes within A · wheelbase / 4 at a sharp crest", () => {
    expect(room((t) => -0.1 * Math.abs(t - 20))).toBeCloseTo(0.2 - (0.2 * 4) / 4, 6);
  });

  it("comes within A · wheelbase² / (8 L) on a curve longer than it is", () => {
    const [change, length] = [0.2, 10];
    expect(room((t) => (-change * (t - 20) ** 2) / (2 * length))).toBeCloseTo(
      0.2 - (change * 16) / (8 * length),
      6,
    );
  });

  it("loses nothing between its axles in a sag, but its ends touch", () => {
    const long = vehicleSchema.parse({
      wheelbase: 3,
      clearance: 0.2,
      frontOverhang: 1,
      rearOverhang: 2,
      endClearance: 0.2,
    });
    const parts = tightestPlaces((t) => (t < 20 ? 0 : 0.25 * (t - 20)), 40, long);
    expect(parts.find(({ part }) => part === "underside")?.room).toBeGreaterThan(0.19);
    // Front axle at the foot of the ramp: 0.25 × 1 over a clearance of 0.2.
    expect(parts.find(({ part }) => part === "front")?.room).toBeCloseTo(-0.05, 2);
    // Front axle 3 m up the ramp, rear axle at its foot: 2 m behind it the section lies 0.25 × 2 over the wheels' line.
    expect(parts.find(({ part }) => part === "rear")?.room).toBeCloseTo(0.2 - 0.5, 2);
  });
});
