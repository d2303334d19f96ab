/** A retaining wall with a typed height is built into the ground: closed forms and hand-worked heights. */
import { describe, expect, it } from "vitest";
import { retainingWallSchema } from "../../src/document/schema";
import type { Point } from "../../src/geometry";
import {
  finishHeights,
  type GradingPlan,
  layWall,
  placesAt,
  prepare,
  retainingResults,
} from "../../src/grading";
import { planFor, rectangle } from "./plans";

type Ground = (at: Point) => number;
const level: Ground = () => 100;
/** Along the wall it climbs 1 in 20; behind it 1 in 10. */
const tilted: Ground = ([x, y]) => 100 + 0.05 * x - 0.1 * (y - 7);
const far = rectangle(10, 6, 0, 200, 200);
const bare = { leave: new Uint8Array(4).fill(1) };
const slopes = { fill: 3, cut: 2 };

/** Ten metres long; its lower ground lies to the north (left of the line). */
const wall = (more: Record<string, unknown> = {}) =>
  retainingWallSchema.parse({
    id: "r1",
    line: [
      [-5, 7],
      [5, 7],
    ],
    lowSide: "left",
    exposed: 1,
    ...more,
  });

const planOf = (more: Record<string, unknown>, ground: Ground): GradingPlan =>
  planFor(far, bare, { walls: [layWall(wall(more), ground, slopes)] });

function heights(plan: GradingPlan, points: readonly Point[], ground: Ground, floor = 100) {
  const prepared = prepare(placesAt(points, ground), plan, { low: 90, high: 110 });
  return [...finishHeights(prepared, floor, new Float64Array(points.length))];
}

/** Finished − existing over a box, by the middle of small cells. */
function volume(plan: GradingPlan, ground: Ground, [x0, x1, y0, y1]: [number, number, number, number]) {
  const cell = 0.05;
  const points: Point[] = [];
  for (let x = x0 + cell / 2; x < x1; x += cell)
    for (let y = y0 + cell / 2; y < y1; y += cell) points.push([x, y]);
  const z = heights(plan, points, ground);
  return z.reduce((sum, height, i) => sum + (height - ground(points[i] as Point)), 0) * cell * cell;
}

describe("a wall with a typed height that holds fill", () => {
  it("on level ground holds a wedge, with a quarter of a cone at each end: L · s H² ∕ 2 + 2 · π s² H³ ∕ 12", () => {
    const behind = volume(planOf({}, level), level, [-9, 9, 3, 7]);
    expect(behind).toBeCloseTo(10 * 1.5 + (2 * Math.PI * 9) / 12, 1);
    expect(volume(planOf({}, level), level, [-5, 5, 7, 12])).toBe(0);
  });

  it("on tilted ground the wedge ends where its slope meets the climb: H² ∕ 2 (1 ∕ s + g) a metre", () => {
    const strip = volume(planOf({}, tilted), tilted, [-5, 5, 3, 7]);
    expect(strip).toBeCloseTo((10 * 1) / (2 * (1 / 3 + 0.1)), 1);
  });

  it("stands its height over the ground in front all along, however that runs", () => {
    const at: Point[] = [-4, 0, 4].map((x) => [x, 6.999]);
    const got = heights(planOf({}, tilted), at, tilted);
    expect(got.map((z, i) => z - tilted([(at[i] as Point)[0], 7]))).toEqual([
      expect.closeTo(1, 3),
      expect.closeTo(1, 3),
      expect.closeTo(1, 3),
    ]);
  });

  it("holds the ground level behind it as far as it is told, then the slope goes on from there", () => {
    const plan = planOf({ level: 2 }, level);
    expect(
      heights(
        plan,
        [
          [0, 6],
          [0, 5.01],
          [0, 3.5],
          [0, 1.9],
        ],
        level,
      ),
    ).toEqual([101, 101, expect.closeTo(101 - 1.5 / 3, 9), 100]);
    expect(volume(plan, level, [-5, 5, 0, 7])).toBeCloseTo(10 * (2 + 1.5), 1);
  });

  it("is no higher at its line than typed: what stood higher is cut back to its slope", () => {
    const bank: Ground = ([, y]) => (y < 7 ? 102 : 100);
    const got = heights(
      planOf({}, () => 100),
      [
        [0, 6.99],
        [0, 6],
      ],
      bank,
    );
    expect(got[0]).toBeCloseTo(101 + 0.01 / 2, 9);
    expect(got[1]).toBeCloseTo(101.5, 9);
  });

  it("follows the ground behind it where no height is typed, as before", () => {
    expect(heights(planOf({ exposed: null }, level), [[0, 6]], level)).toEqual([100]);
  });
});

describe("a wall with a typed height that holds a cut", () => {
  const cut = { holds: "cut" as const, lowSide: "right" as const };

  it("digs its height in front of it, keeps the ground behind, and slopes up from its foot", () => {
    const plan = planOf(cut, level);
    expect(
      heights(
        plan,
        [
          [0, 6.999],
          [0, 6],
          [0, 7.001],
        ],
        level,
      ),
    ).toEqual([expect.closeTo(99.0005, 9), expect.closeTo(99.5, 9), 100]);
    expect(volume(plan, level, [-5, 5, 3, 7])).toBeCloseTo(-10, 1);
  });
});

describe("a wall that is typed too low for what it holds", () => {
  const box = rectangle(10, 6);
  const apron = { width: 2, fall: 0.05, fillSlope: 10 };
  const plan = (exposed: number | null) =>
    planFor(box, apron, {
      walls: [
        layWall(
          wall({
            line: [
              [-15, 7],
              [15, 7],
            ],
            exposed,
          }),
          level,
          slopes,
        ),
      ],
    });

  it("says by how much, against what the slope behind it would come to", () => {
    // 2 − 0.05 × 2 at the apron's edge, 2 m down 10 : 1 to the wall: 1.7 m.
    const [open] = retainingResults(plan(null), level, 102);
    expect(open?.exposed).toBeCloseTo(1.7, 9);
    const [low] = retainingResults(plan(1), level, 102);
    expect(low?.short).toBeCloseTo((open?.exposed ?? 0) - 1, 9);
    expect(low?.exposed).toBeCloseTo(1, 9);
    expect(low?.holds).toBeCloseTo(open?.exposed ?? 0, 9);
    expect(retainingResults(plan(2), level, 102)[0]?.short).toBe(0);
  });
});

describe("how far the earth of a typed wall runs round its ends", () => {
  const of = (more: Record<string, unknown>, ground: Ground, beside: Record<string, unknown>[] = []) =>
    retainingResults(
      planFor(far, bare, {
        walls: [
          layWall(wall(more), ground, slopes),
          ...beside.map((one, i) =>
            layWall(wall({ id: `r${i + 2}`, exposed: null, ...one }), ground, slopes),
          ),
        ],
      }),
      ground,
      100,
    )[0];

  it("on level ground is height times slope past each end and in front, and the wall wants to be so much longer", () => {
    const held = of({}, level);
    expect(held?.ends).toEqual([
      expect.objectContaining({ end: "first", at: [-5, 7], towards: [-1, expect.closeTo(0)], meets: true }),
      expect.objectContaining({ end: "last", at: [5, 7], towards: [1, expect.closeTo(0)], meets: true }),
    ]);
    for (const { past, ahead } of held?.ends ?? []) {
      expect(past).toBeCloseTo(3, 3);
      expect(ahead).toBeCloseTo(3, 2);
    }
    expect(held?.wantedLength).toBeCloseTo(16, 3);
  });

  it("is longer down the hill and shorter up it: H ∕ (1 ∕ s ∓ g)", () => {
    const along: Ground = ([x]) => 100 + 0.05 * x;
    const held = of({}, along);
    expect(held?.ends[0]?.past).toBeCloseTo(1 / (1 / 3 - 0.05), 3);
    expect(held?.ends[1]?.past).toBeCloseTo(1 / (1 / 3 + 0.05), 3);
  });

  it("is nothing once a wall that follows the ground goes on from the end as far as it is told", () => {
    const on = {
      line: [
        [5, 7],
        [8, 7],
      ],
    };
    const held = of({}, level, [on]);
    expect(held?.ends.map(({ end }) => end)).toEqual(["first"]);
    expect(held?.wantedLength).toBeCloseTo(13, 3);
  });

  it("is dug as far round a wall that holds a cut, by the slope of cuts", () => {
    const held = of({ holds: "cut", lowSide: "right" }, level);
    expect(held?.ends.map(({ past }) => past)).toEqual([expect.closeTo(2, 3), expect.closeTo(2, 3)]);
  });

  it("is said to have no end where the ground falls as steeply as the slope", () => {
    const steep: Ground = ([x]) => 100 - 0.4 * x;
    const held = of({}, steep);
    expect(held?.ends[1]).toMatchObject({ end: "last", meets: false });
    expect(held?.wantedLength).toBeNull();
  });

  it("isn't told of a wall that follows the ground", () => {
    expect(of({ exposed: null }, level)).toMatchObject({ ends: [], wantedLength: 10 });
  });
});
