/** Pads, side slopes and catch points against published figures. */
import { describe, expect, it } from "vitest";
import { volumeCurve } from "../../src/earthwork";
import type { Point } from "../../src/geometry";
import {
  finish,
  finishHeights,
  type GradingPlan,
  gradingReach,
  layOut,
  placesAt,
  prepare,
} from "../../src/grading";
import { planeGround, planFor, rectangle } from "../grading/plans";

/** A pad whose slopes start at its edge. */
function bare(ring: readonly Point[], fillSlope: number, cutSlope: number): GradingPlan {
  return planFor(ring, { width: 1e-9, fillSlope, cutSlope });
}

describe("frustum of a square pyramid", () => {
  // Moscow Mathematical Papyrus, problem 14 (about 1850 BC): base 4, top 2, height 6, volume 56. As a pad 2 × 2
  // on 6 of fill its slopes run 1/6 for one. Its corners are mitred; ours are round, which takes
  // (4 − π) / 3 · s² h³ off the four corners.
  it("holds 56", () => {
    const [top, height, slope] = [2, 6, 1 / 6];
    const plan = bare(rectangle(top, top), slope, slope);
    const ground = planeGround(0);
    const range = { low: 5, high: 7 };
    const { bounds } = gradingReach(plan, ground, range);
    const layout = layOut(plan, ground, { bounds, range, leastCell: 0.01 });
    const outside = finish(layout, height, 0).outside.fill;
    const inside = volumeCurve(ground, plan.footprint.ring).at(height).fill;
    const mitres = ((4 - Math.PI) / 3) * slope ** 2 * height ** 3;
    expect(Math.abs(inside + outside + mitres - 56) / 56).toBeLessThan(0.001);
  });
});

/** Cross-section of a formation `width` wide at height 0; the ground rises 1 in n to the right from −cut at its middle. */
function crossSection(width: number, cut: number, n: number, cutSlope: number, fillSlope: number) {
  const plan = bare(rectangle(width, 400), fillSlope, cutSlope);
  const step = 0.001;
  const count = 60_000;
  const x = (i: number) => (i + 0.5) * step - (count * step) / 2;
  const points = Array.from({ length: count }, (_, i): Point => [x(i), 0]);
  const covered = Uint8Array.from(points, ([east]) => (Math.abs(east) < width / 2 ? 1 : 0));
  const ground = ([east]: Point) => cut + east / n;
  const prepared = prepare(placesAt(points, ground, covered), plan, { low: -1, high: 1 });
  const finished = finishHeights(prepared, 0, new Float64Array(count));
  const section = { cut: 0, fill: 0, left: 0, right: 0 };
  points.forEach((point, i) => {
    const depth = (covered[i] ? 0 : (finished[i] ?? 0)) - ground(point);
    if (Math.abs(depth) < 1e-9) return;
    section[depth > 0 ? "fill" : "cut"] += Math.abs(depth) * step;
    section.left = Math.max(section.left, -point[0] + step / 2);
    section.right = Math.max(section.right, point[0] + step / 2);
  });
  return section;
}

describe("catch points on a cross slope", () => {
  // Solved example 8.6 of a surveying textbook, through its published companion code (FOSSEE Scilab Textbook
  // Companion 3782): formation 8 m wide in cut, ground 1 in 10, side slopes 1 : 1.
  it.each([
    [2, 6.667, 5.455, 20.364],
    [3, 7.778, 6.364, 33.495],
    [4, 8.889, 7.273, 48.646],
  ])("cut of %d m", (cut, up, down, area) => {
    const section = crossSection(8, cut, 10, 1, 1);
    expect(Math.abs(section.right - up)).toBeLessThan(0.002);
    expect(Math.abs(section.left - down)).toBeLessThan(0.002);
    expect(Math.abs(section.cut - area)).toBeLessThan(0.005);
    expect(section.fill).toBe(0);
  });
});

describe("part in cut, part in fill", () => {
  // Example 8.9 of the same companion: formation 10 m wide on 1 in 5, cut slopes 1 : 1, fill slopes 2 : 1.
  it.each([
    [0.5, 7.031, 1.042],
    [0.7, 9.031, 0.375],
  ])("cut of %d m at the middle", (cut, cutArea, fillArea) => {
    const section = crossSection(10, cut, 5, 1, 2);
    expect(Math.abs(section.cut - cutArea)).toBeLessThan(0.02);
    expect(Math.abs(section.fill - fillArea)).toBeLessThan(0.02);
  });
});

describe("distance from the shoulder to the slope stake", () => {
  // Table for side slopes of 1½ to 1 printed in a surveyor's field book (Dane County, Wisconsin, planning
  // records), level ground: rounded to a tenth.
  it.each([
    [7.3, 11.0],
    [11.1, 16.7],
    [0.1, 0.2],
    [2.9, 4.4],
    [9.9, 14.9],
    [12.0, 18.0],
  ])("cut of %d ft", (cut, distance) => {
    const half = 10;
    const section = crossSection(2 * half, cut, Infinity, 1.5, 1.5);
    expect(Math.abs(section.right - half - distance)).toBeLessThan(0.052);
  });
});
