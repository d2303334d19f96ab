import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Bounds } from "../../src/geometry";
import {
  finish,
  type GradingPlan,
  gradingReach,
  type LayoutUnderHand,
  layOut,
  layOutUnderHand,
} from "../../src/grading";
import type { Ground } from "../../src/terrain";
import { planeGround, planFor, rectangle } from "./plans";

const range = { low: 99, high: 102 };
const slope = planeGround(100, 0.08, -0.05);

const barnAt = (x: number, y: number, turn = 0) => planFor(rectangle(12, 8, turn, x, y), { fillSlope: 3 });

const areaOf = ({ minX, minY, maxX, maxY }: Bounds) => (maxX - minX) * (maxY - minY);

/** Fill and cut outside the walls at a floor, from the small grid and from a fine one. */
function volumes(made: LayoutUnderHand, plan: GradingPlan, ground: Ground, floor: number) {
  const fine = layOut(plan, ground, { bounds: gradingReach(plan, ground, range).bounds, range });
  const outside = (layout: typeof fine) => {
    const { fill, cut } = finish(layout, floor, { stripDepth: 0, respread: 0 }).outside;
    return fill + cut;
  };
  return { small: outside(made.layout), fine: outside(fine) };
}

describe("a building under the hand", () => {
  it("has in every frame all of its fill and cut, wherever it is dragged and turned", () => {
    const ways = fc.array(fc.tuple(fc.double({ min: -6, max: 6 }), fc.double({ min: -6, max: 6 })), {
      minLength: 1,
      maxLength: 4,
    });
    const sane = fc.double({ min: 99, max: 102, noNaN: true });
    fc.assert(
      fc.property(ways, sane, (steps, floor) => {
        let before: LayoutUnderHand | null = null;
        let [x, y] = [0, 0];
        let plan = barnAt(x, y);
        for (const [dx, dy] of [[0, 0], ...steps] as const) {
          [x, y] = [x + (dx || 0), y + (dy || 0)];
          plan = barnAt(x, y, x / 20);
          before = layOutUnderHand(plan, slope, range, before);
        }
        if (!before) throw new Error("there was a frame");
        const { small, fine } = volumes(before, plan, slope, floor);
        // A cell of the small grid is some 0.5 m wide.
        expect(Math.abs(small - fine)).toBeLessThan(0.015 * fine + 0.2);
      }),
      { numRuns: 12 },
    );
  });

  it("keeps its small grid as narrow after a hundred frames as after the first", () => {
    const first = layOutUnderHand(barnAt(0, 0), slope, range, null);
    let before = first;
    for (let frame = 1; frame <= 100; frame++)
      before = layOutUnderHand(barnAt(3 * Math.sin(frame), 2 * Math.sin(frame / 2)), slope, range, before);
    const last = layOutUnderHand(barnAt(0, 0), slope, range, before);
    expect(areaOf(last.reach.bounds)).toBeLessThan(1.5 * areaOf(first.reach.bounds));
    expect(last.layout.grid.cell).toBeLessThan(1.25 * first.layout.grid.cell);
  });

  it("is looked for anew where the slopes reach farther than in the frame before", () => {
    const flat = layOutUnderHand(planFor(rectangle(12, 8), { fillSlope: 2 }), slope, range, null);
    const plan = planFor(rectangle(12, 8), { fillSlope: 6 });
    const { reach, layout } = layOutUnderHand(plan, slope, range, flat);
    expect(areaOf(reach.bounds)).toBeGreaterThan(1.5 * areaOf(flat.reach.bounds));
    const { small, fine } = volumes({ reach, layout }, plan, slope, 102);
    expect(Math.abs(small - fine)).toBeLessThan(0.02 * fine);
  });

  it("says where the slopes never meet the ground, in the next frame too", () => {
    const steep = planeGround(100, 0.4);
    const first = layOutUnderHand(barnAt(0, 0), steep, range, null);
    expect(first.reach.meets).toBe(false);
    expect(layOutUnderHand(barnAt(0.2, 0), steep, range, first).reach.meets).toBe(false);
  });
});
