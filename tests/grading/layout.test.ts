import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry";
import { finish, type GradingPlan, gradingReach, type Layout, layOut, newBuffers } from "../../src/grading";
import { outsideError } from "../../src/solve/earthwork";
import type { Ground } from "../../src/terrain";
import { planeGround, planFor, rectangle } from "./plans";

const floors = { low: 98, high: 103 };

function lay(plan: GradingPlan, ground: Ground, mostCells?: number): Layout {
  const { bounds } = gradingReach(plan, ground, floors);
  return layOut(plan, ground, { bounds, range: floors, ...(mostCells ? { mostCells } : {}) });
}

const unstripped = { stripDepth: 0, respread: 0 };
const outside = (layout: Layout, floor: number) => finish(layout, floor, unstripped).outside;

describe("fill round a pad on level ground", () => {
  // With apron w at fall s and slopes of m for one: over a distance d the depth is f(d), and the ring at d is
  // P + 2πd long, so V = P ∫f + 2π ∫f·d, all of it in closed form.
  const closedForm = (perimeter: number, h: number, w: number, s: number, m: number) => {
    const rest = h - s * w;
    const along = h * w - (s * w * w) / 2 + (m * rest * rest) / 2;
    const round = (h * w * w) / 2 - (s * w ** 3) / 3 + (w * m * rest * rest) / 2 + (m * m * rest ** 3) / 6;
    return perimeter * along + 2 * Math.PI * round;
  };

  it.each([
    ["standing square to the grid", 0],
    ["turned 17° to it", 0.3],
  ])("is within 0.1 %% of the closed form, %s", (_way, turn) => {
    const plan = planFor(rectangle(12, 8, turn), { fall: 0.05, width: 3, fillSlope: 3 });
    const layout = lay(plan, planeGround(100));
    expect(layout.grid.cell).toBeLessThanOrEqual(0.11);
    const { fill, cut } = outside(layout, 101.2);
    const want = closedForm(40, 1.2, 3, 0.05, 3);
    expect(Math.abs(fill - want) / want).toBeLessThan(0.001);
    expect(cut).toBe(0);
  });
});

describe("a pad without an apron on tilted ground", () => {
  // Square to a wall, and along every ray from a corner, the depth changes evenly from D at the pad's edge to
  // nothing at the daylight line: D²/2k along walls and D³/6k² for one radian of corner, k the closing rate.
  function byRays(
    ring: readonly Point[],
    z: number,
    gx: number,
    gy: number,
    fillSlope: number,
    cutSlope: number,
  ) {
    const sum = { cut: 0, fill: 0 };
    const depth = ([x, y]: Point) => z - 100 - gx * x - gy * y;
    const add = (d: number, ux: number, uy: number, power: 2 | 3, share: number) => {
      const rise = gx * ux + gy * uy;
      const rate = d > 0 ? 1 / fillSlope + rise : 1 / cutSlope - rise;
      const volume = power === 2 ? d ** 2 / (2 * rate) : Math.abs(d) ** 3 / (6 * rate * rate);
      sum[d > 0 ? "fill" : "cut"] += volume * share;
    };
    const steps = 4000;
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length] as Point;
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [nx, ny] = [(b[1] - a[1]) / length, -(b[0] - a[0]) / length];
      const first = Math.atan2(ny, nx);
      for (let k = 0; k < steps; k++) {
        const t = (k + 0.5) / steps;
        add(depth([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]), nx, ny, 2, length / steps);
        // The corner at b, from this wall's normal a quarter turn on to the next one's.
        const angle = first + (t * Math.PI) / 2;
        add(depth(b), Math.cos(angle), Math.sin(angle), 3, Math.PI / 2 / steps);
      }
    });
    return sum;
  }

  it.each([
    ["6 % to the east", 0.06, 0, 0],
    ["8 % askew", 0.05, -0.06, 0],
    ["10 % under a turned pad", 0.1, 0.02, 0.5],
  ])("moves the volumes of the closed form within 0.1 %%: %s", (_why, gx, gy, turn) => {
    const ring = rectangle(12, 8, turn);
    const plan = planFor(ring, { width: 1e-6, fillSlope: 3, cutSlope: 2 });
    const layout = lay(plan, planeGround(100, gx, gy));
    const got = outside(layout, 100.1);
    const want = byRays(ring, 100.1, gx, gy, 3, 2);
    const moved = want.cut + want.fill;
    expect(moved).toBeGreaterThan(2);
    expect(Math.abs(got.cut - want.cut) / moved).toBeLessThan(0.001);
    expect(Math.abs(got.fill - want.fill) / moved).toBeLessThan(0.001);
  });

  it.each([
    [0.06, 0, 0],
    [0.05, -0.06, 0.3],
    [0.1, 0.02, 0.5],
  ])(
    "has an error, told by the difference to a coarse grid, that covers the true one: %d, %d, turned %d",
    (gx, gy, turn) => {
      const ring = rectangle(12, 8, turn);
      const plan = planFor(ring, { width: 1e-6, fillSlope: 3, cutSlope: 2 });
      const ground = planeGround(100, gx, gy);
      const fine = finish(lay(plan, ground), 100.1, unstripped);
      const told = outsideError(fine, lay(plan, ground, 20_000));
      const want = byRays(ring, 100.1, gx, gy, 3, 2);
      const wrong = Math.abs(fine.outside.cut - want.cut) + Math.abs(fine.outside.fill - want.fill);
      expect(told).toBeGreaterThan(0);
      expect(wrong).toBeLessThan(told);
    },
  );

  it("moves by less than 0.2 % when the cells are halved in number", () => {
    const plan = planFor(rectangle(12, 8, 0.2));
    const ground = planeGround(100, 0.08, 0.03);
    const coarse = outside(lay(plan, ground, 30_000), 100.8);
    const fine = outside(lay(plan, ground, 120_000), 100.8);
    expect(Math.abs(coarse.fill - fine.fill) / fine.fill).toBeLessThan(0.002);
    expect(Math.abs(coarse.cut - fine.cut) / (fine.cut + fine.fill)).toBeLessThan(0.002);
  });
});

describe("the reach of grading", () => {
  const plan = planFor(rectangle(12, 8));

  it("holds all changed ground at both ends of the floor range, on 20 % ground too", () => {
    const ground = planeGround(100, 0.2, 0);
    const layout = lay(plan, ground);
    for (const floor of [floors.low, floors.high]) {
      const { depth } = finish(layout, floor, unstripped);
      const { columns, rows } = layout.grid;
      for (let i = 0; i < columns; i++) {
        expect(Math.abs(depth[i] ?? 1)).toBeLessThan(1e-3);
        expect(Math.abs(depth[(rows - 1) * columns + i] ?? 1)).toBeLessThan(1e-3);
      }
    }
  });

  it("says when slopes never meet the ground", () => {
    expect(gradingReach(plan, planeGround(100, 0.2), floors).meets).toBe(true);
    expect(gradingReach(plan, planeGround(100, 0.4), floors).meets).toBe(false);
  });

  it("keeps the grid under its cap", () => {
    const { grid } = lay(plan, planeGround(100, 0.3));
    expect(grid.columns * grid.rows).toBeLessThanOrEqual(240_000);
  });
});

describe("finish", () => {
  const layout = lay(planFor(rectangle(12, 8)), planeGround(100, 0.07, 0.02), 5000);

  it("has no depth inside the walls and none beyond the daylight line", () => {
    const { depth } = finish(layout, 100.5, unstripped);
    layout.cells.inside.forEach((inside, i) => {
      expect(Number.isNaN(depth[i])).toBe(inside === 1);
    });
  });

  it("raises no ground lower when the floor is raised; fill grows and cut shrinks", () =>
    fc.assert(
      fc.property(fc.integer({ min: 98_000, max: 102_900 }), fc.integer({ min: 1, max: 100 }), (mm, up) => {
        const low = finish(layout, mm / 1000, unstripped);
        const high = finish(layout, (mm + up) / 1000, unstripped);
        expect(high.finished.every((z, i) => z >= (low.finished[i] ?? Infinity) - 1e-12)).toBe(true);
        expect(high.outside.fill).toBeGreaterThanOrEqual(low.outside.fill);
        expect(high.outside.cut).toBeLessThanOrEqual(low.outside.cut);
      }),
      { numRuns: 40 },
    ));

  it("writes into the buffers it is given and leaves others alone", () => {
    const [one, two] = [newBuffers(layout), newBuffers(layout)];
    const first = finish(layout, 100.2, unstripped, one);
    const kept = Float64Array.from(first.finished);
    finish(layout, 101.2, unstripped, two);
    expect(first.finished).toBe(one.finished);
    expect(first.finished).toEqual(kept);
  });

  it("counts the strip: all disturbed ground stripped by 0.15 m is earth to put back or not to dig", () => {
    const strip = 0.15;
    const { outside } = finish(layout, 100.5, { stripDepth: strip, respread: 0 });
    const net = outside.strippedFill - outside.strippedCut - (outside.fill - outside.cut);
    expect(net).toBeCloseTo(strip * outside.area, 1);
  });
});
