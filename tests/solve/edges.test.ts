/** Drives, pads and retaining walls anywhere in the grid, against closed forms and the error told beside them. */
import { describe, expect, it } from "vitest";
import { driveSchema, groundPadSchema, retainingWallSchema } from "../../src/document/schema";
import type { Point } from "../../src/geometry";
import {
  finish,
  type GradingPlan,
  gradingReach,
  layDrive,
  layOut,
  layPad,
  layWall,
  type OutsideVolumes,
} from "../../src/grading";
import { refinedOutside } from "../../src/solve/refined-outside";
import { planeGround, planFor, rectangle } from "../grading/plans";

const ground = planeGround(100);
const unstripped = { stripDepth: 0, respread: 0 };
const square = { x: 0, y: 0, turn: 0 };

/** What a plan takes, with the floor's building far away and left alone, and the error told. */
function taken(rest: Partial<GradingPlan>): { outside: OutsideVolumes; error: number } {
  const plan = planFor(rectangle(6, 6, 0, 45.31, 31.17), { leave: new Uint8Array(4).fill(1) }, rest);
  const range = { low: 100, high: 101 };
  const { bounds } = gradingReach(plan, ground, range);
  const layout = layOut(plan, ground, { bounds, range });
  const coarse = layOut(plan, ground, { bounds, range, mostCells: 20_000 });
  const { finished, error } = refinedOutside(
    finish(layout, 100, unstripped),
    layout,
    coarse,
    ground,
    unstripped,
  );
  return { outside: finished.outside, error };
}

const near = (got: number, want: number, error: number) => {
  expect(Math.abs(got - want)).toBeLessThanOrEqual(error + 1e-6);
  expect(Math.abs(got - want)).toBeLessThan(Math.max(0.1, 0.001 * want));
};

interface Lie {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

const laid = (points: readonly Point[], { x, y, turn }: Lie): Point[] =>
  points.map(([px, py]) => [
    x + px * Math.cos(turn) - py * Math.sin(turn),
    y + px * Math.sin(turn) + py * Math.cos(turn),
  ]);

const lies: readonly (readonly [string, Lie])[] = [
  ["with the axes", square],
  ["with the axes, moved by 0.03 and 0.07", { ...square, x: 0.03, y: 0.07 }],
  ["with the axes, upwards", { ...square, turn: Math.PI / 2, x: 0.041 }],
  ["turned 33°", { ...square, turn: 0.576 }],
];

describe.each(lies)("a stoned drive %s", (_how, lie) => {
  // 30 m long, from 1 m up at the road to the ground: its body holds 15 w, each side 3/2 ∫h² = 15, the road's end 3/2 w and half a
  // cone. Under stone of g the earth is h − g.
  it.each([
    [4, 0.2],
    [4, 0.6],
    [3.66, 0.2],
  ])("%d m wide with %d m of stone", (width, gravel) => {
    const drive = driveSchema.parse({
      id: "v1",
      line: laid(
        [
          [0, 0],
          [30, 0],
        ],
        lie,
      ),
      width,
      door: null,
      landing: { length: 0, fall: 0, curve: 0 },
      across: { kind: "level", fall: 0 },
      shoulder: { width: 0, fall: 0 },
      sideSlope: 3,
      cutSlope: null,
      gravel,
    });
    const line = layDrive(drive, { roadHeight: 101, endHeight: 100, sillBelowFloor: null });
    const { outside, error } = taken({ drives: [line] });
    const slopes = 30 + 1.5 * width + 1.5 * Math.PI;
    near(outside.fill, 15 * width + slopes, error);
    near(outside.strippedFill, (30 * width * (1 - gravel) ** 2) / 2 + slopes, error);
    near(outside.strippedCut, (30 * width * gravel ** 2) / 2, error);
    // Seeded are the slopes, 3 h wide: 90 m2 beside it, 3 w and half a disc at the end.
    const seeded = 90 + 3 * width + 4.5 * Math.PI;
    expect(Math.abs(outside.soilArea - seeded) / seeded).toBeLessThan(0.005);
    expect(outside.area - outside.soilArea).toBeCloseTo(30 * width, 6);
  });
});

describe.each(lies)("a parking pad with stone %s", (_how, lie) => {
  it.each([20, 20.07])("%d m long, 1 m up", (length) => {
    const pad = groundPadSchema.parse({
      id: "q1",
      outline: laid(rectangle(length, 10), lie),
      level: { kind: "height", height: 101 },
      fall: 0,
      fillSlope: 3,
      gravel: 0.3,
    });
    const { outside, error } = taken({ pads: [layPad(pad, () => 100)] });
    near(outside.strippedFill, 7 * length + 1.5 * (2 * length + 20) + 3 * Math.PI, error);
  });
});

describe("a retaining wall through the slope of a pad", () => {
  /** A quarter cone, 1 high on 3, as far as `to` along its one side. */
  const cornerUpTo = (to: number) => {
    const steps = 4000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const x = ((i + 0.5) * to) / steps;
      const y = Math.sqrt(9 - x * x);
      // ∫ (1 − √(x² + y²) / 3) dy
      sum += ((y - (3 * y + x * x * Math.asinh(y / x)) / 6) * to) / steps;
    }
    return sum;
  };
  const pad = (lie: Lie) =>
    layPad(
      groundPadSchema.parse({
        id: "q1",
        outline: laid(rectangle(20, 10), lie),
        level: { kind: "height", height: 101 },
        fall: 0,
        fillSlope: 3,
      }),
      () => 100,
    );

  it.each([0.5, 1, 1.07, 1.5, 2, 2.21].flatMap((off) => lies.map(([how, lie]) => [off, how, lie] as const)))(
    "%d m off it, %s",
    (off, _how, lie) => {
      const wall = retainingWallSchema.parse({
        id: "r1",
        line: laid(
          [
            [10 + off, -15],
            [10 + off, 15],
          ],
          lie,
        ),
        holds: "fill",
        lowSide: "right",
      });
      const { outside, error } = taken({
        pads: [pad(lie)],
        walls: [layWall(wall, () => 100, { fill: 3, cut: 2 })],
      });
      const want = 200 + 15 + 60 + 1.5 * Math.PI + 10 * (off - (off * off) / 6) + 2 * cornerUpTo(off);
      near(outside.fill, want, error);
    },
  );
});
