/** Pads, side slopes and catch points against published figures. */
import { describe, expect, it } from "vitest";
import { type GroundPad, groundPadSchema } from "../../src/document/schema";
import { volumeCurve } from "../../src/earthwork";
import type { Point } from "../../src/geometry";
import {
  finish,
  finishHeights,
  type GradingPlan,
  gradingReach,
  layOut,
  layPad,
  placesAt,
  prepare,
} from "../../src/grading";
import { planeGround, planFor, rectangle } from "../grading/plans";

/** A pad whose slopes start at its edge. */
function bare(ring: readonly Point[], fillSlope: number, cutSlope: number): GradingPlan {
  return planFor(ring, { width: 1e-9, fillSlope, cutSlope });
}

const unstripped = { stripDepth: 0, respread: 0 };

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
    const outside = finish(layout, height, unstripped).outside.fill;
    const inside = volumeCurve(ground, plan.footprint.ring).at(height).fill;
    const mitres = ((4 - Math.PI) / 3) * slope ** 2 * height ** 3;
    expect(Math.abs(inside + outside + mitres - 56) / 56).toBeLessThan(0.001);
  });
});

describe("a rectangular pad with side slopes against its closed form, within 0.1 %", () => {
  // On level ground with mitred corners the prismoidal formula gives L W h + s h² (L + W) + 4/3 s² h³ exactly; round
  // corners take (4 − π) / 3 · s² h³ off it. On a plane: a side holds L (D₁² + D₁ D₂ + D₂²) / (6 k), D its depths at
  // both ends and k = 1/s + the ground's rise outwards; a round corner ∫ D³ / (6 k²) dθ; a mitred one two tetrahedra.
  const [length, width] = [12, 8];
  const round = (gx: number, gy: number, height: number, s: number) => {
    const depth = (x: number, y: number) => height - gx * x - gy * y;
    const side = (x1: number, y1: number, x2: number, y2: number, rise: number) => {
      const [a, b] = [depth(x1, y1), depth(x2, y2)];
      return (Math.hypot(x2 - x1, y2 - y1) * (a * a + a * b + b * b)) / (6 * (1 / s + rise));
    };
    const [x, y] = [length / 2, width / 2];
    const sides =
      side(-x, -y, x, -y, -gy) + side(x, -y, x, y, gx) + side(x, y, -x, y, gy) + side(-x, y, -x, -y, -gx);
    const corner = (cx: number, cy: number, from: number) => {
      const steps = 2000;
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        const angle = from + ((i + 0.5) * Math.PI) / 2 / steps;
        const k = 1 / s + gx * Math.cos(angle) + gy * Math.sin(angle);
        sum += (depth(cx, cy) ** 3 / (6 * k * k)) * (Math.PI / 2 / steps);
      }
      return sum;
    };
    return (
      sides +
      corner(x, y, 0) +
      corner(-x, y, Math.PI / 2) +
      corner(-x, -y, Math.PI) +
      corner(x, -y, (3 * Math.PI) / 2)
    );
  };
  const mitred = (gx: number, gy: number, height: number, s: number) => {
    const depth = (x: number, y: number) => height - gx * x - gy * y;
    const [x, y] = [length / 2, width / 2];
    const ring: Point[] = [
      [-x, -y],
      [x, -y],
      [x, y],
      [-x, y],
    ];
    const outer = ring.map(([cx, cy]): Point => {
      const [sx, sy] = [Math.sign(cx), Math.sign(cy)];
      const t = depth(cx, cy) / (1 / s + gx * sx + gy * sy);
      return [cx + sx * t, cy + sy * t];
    });
    // Each face is flat and so is the ground: a triangle holds its area times the mean of its depths.
    const triangle = (a: Point, b: Point, c: Point, mean: number) =>
      (Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2) * mean;
    return ring.reduce((sum, a, i) => {
      const k = (i + 1) % 4;
      const [b, p, q] = [ring[k] as Point, outer[i] as Point, outer[k] as Point];
      return sum + triangle(a, b, q, (depth(...a) + depth(...b)) / 3) + triangle(a, q, p, depth(...a) / 3);
    }, 0);
  };

  const outside = (corners: "round" | "mitred", gx: number, gy: number, height: number, s: number) => {
    const plan = planFor(rectangle(length, width), { width: 1e-9, fillSlope: s, cutSlope: s, corners });
    const ground = planeGround(0, gx, gy);
    const range = { low: height, high: height };
    const { bounds } = gradingReach(plan, ground, range);
    return finish(layOut(plan, ground, { bounds, range }), height, unstripped).outside.fill;
  };

  it("the closed forms agree with the prismoidal formula on level ground", () => {
    const [h, s] = [1.5, 3];
    const whole = s * h * h * (length + width) + (4 / 3) * s * s * h ** 3;
    expect(mitred(0, 0, h, s)).toBeCloseTo(whole, 9);
    expect(round(0, 0, h, s)).toBeCloseTo(whole - ((4 - Math.PI) / 3) * s * s * h ** 3, 6);
  });

  it.each<["round" | "mitred", number, number, number, number]>([
    ["round", 0, 0, 1.5, 3],
    ["mitred", 0, 0, 1.5, 3],
    ["round", 0.06, 0.02, 1.5, 3],
    ["mitred", 0.06, 0.02, 1.5, 3],
    ["round", -0.1, 0.05, 2, 2],
    ["mitred", -0.1, 0.05, 2, 2],
  ])("%s corners, ground %d east and %d north, %d of fill at %d : 1", (corners, gx, gy, height, s) => {
    const exact = (corners === "round" ? round : mitred)(gx, gy, height, s);
    expect(Math.abs(outside(corners, gx, gy, height, s) - exact) / exact).toBeLessThan(0.001);
  });
});

describe("a parking pad 20 × 10, 2 m over level ground, slopes 3 : 1", () => {
  // L W h + s h² (L + W) = 760, and at the corners a cone of π s² h³ / 3 = 75.4 (round) or four pyramids of together
  // 4/3 s² h³ = 96 (mitred), as the prismoidal formula has it.
  const held = (corners: "round" | "mitred", more: Partial<GroundPad> = {}) => {
    const pad = groundPadSchema.parse({
      id: "q1",
      outline: rectangle(20, 10, 0.3, 30, 5),
      level: { kind: "height", height: 2 },
      fall: 0,
      ...more,
    });
    const rest = { pads: [layPad(pad, () => 0)] };
    const plan = planFor(rectangle(2, 2), { corners, leave: new Uint8Array(4).fill(1) }, rest);
    const ground = planeGround(0);
    const range = { low: 0, high: 0 };
    const { bounds } = gradingReach(plan, ground, range);
    return finish(layOut(plan, ground, { bounds, range }), 0, unstripped).outside;
  };

  it.each([
    ["round", 760 + (Math.PI * 9 * 8) / 3],
    ["mitred", 760 + (4 / 3) * 9 * 8],
  ] as const)("%s corners", (corners, exact) => {
    expect(Math.abs(held(corners).fill - exact) / exact).toBeLessThan(0.001);
  });

  it("mitred in cut too, with slopes of 2 : 1", () => {
    const exact = 20 * 10 * 2 + 2 * 4 * 30 + (4 / 3) * 4 * 8;
    const { cut } = held("mitred", { level: { kind: "height", height: -2 } });
    expect(Math.abs(cut - exact) / exact).toBeLessThan(0.001);
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
