/** How far slopes run, what fights, what walls hold and what would fit: hand-worked. */
import { describe, expect, it } from "vitest";
import { driveSchema, groundPadSchema, retainingWallSchema, swaleSchema } from "../../src/document/schema";
import type { Point } from "../../src/geometry";
import {
  daylightLines,
  fitToLine,
  gradingConflicts,
  gradingReach,
  layDrive,
  layOut,
  layPad,
  laySwale,
  layWall,
  retainingResults,
  sideReaches,
} from "../../src/grading";
import { planeGround, planFor, rectangle } from "./plans";

const box = rectangle(10, 6);
const rule = { edgeAboveFloor: 0, fall: 0.05, width: 2, fillSlope: 3, cutSlope: 2 };
const plane =
  (z: number, gx = 0, gy = 0) =>
  ([x, y]: Point) =>
    z + gx * x + gy * y;

const slopes = { fill: 3, cut: 2 };

describe("how far a side's slope runs", () => {
  it("on level ground: apron, then depth times the slope", () => {
    const [south] = sideReaches(planFor(box, rule), plane(100), 102);
    // 1.9 m at the apron's edge, 3 : 1 → 5.7 m beyond its 2 m.
    expect(south?.fill?.distance).toBeCloseTo(7.7, 5);
    expect(south?.cut).toBeNull();
    expect(south?.meets).toBe(true);
  });

  it("in cut: 1.1 m under the ground at the apron's edge, 2 : 1", () => {
    expect(sideReaches(planFor(box, rule), plane(100), 99)[0]?.cut?.distance).toBeCloseTo(2 + 2.2, 5);
  });

  it("on ground that falls away: depth over the difference of the slopes", () => {
    // To the south it falls by 0.2: at the apron's edge (y = −5) the ground is 99, the apron 101.9.
    const [south] = sideReaches(planFor(box, rule), plane(100, 0, 0.2), 102);
    expect(south?.fill?.distance).toBeCloseTo(2 + 2.9 / (1 / 3 - 0.2), 4);
  });

  it("never meets ground that falls as steeply, and a wall at the apron's edge would end it", () => {
    const [south] = sideReaches(planFor(box, rule), plane(100, 0, 0.34), 102);
    expect(south?.meets).toBe(false);
    // The ground there: 100 − 0.34 × 5 = 98.3; the apron's edge: 101.9.
    expect(south?.endWall?.height).toBeCloseTo(3.6, 9);
    expect(south?.endWall?.at[1]).toBeCloseTo(-5, 9);
    expect(south?.farther).toBeNull();
  });

  it("farther than is looked isn't never: a floor 100 m up on ground that falls by 0.05", () => {
    const [south] = sideReaches(planFor(box, rule), plane(100, 0, 0.05), 200);
    expect(south?.meets).toBe(false);
    expect(south?.fill).toBeNull();
    // The apron's edge stands at 199.9 over ground at 99.75.
    expect(south?.endWall?.height).toBeCloseTo(100.15, 9);
    expect(south?.farther).toBeCloseTo(2 + 100.15 / (1 / 3 - 0.05), 6);
  });

  it("ends at a retaining wall", () => {
    const wall = layWall(
      retainingWallSchema.parse({
        id: "r",
        line: [
          [-20, -8],
          [20, -8],
        ],
        lowSide: "right",
      }),
      plane(100),
      slopes,
    );
    const [south] = sideReaches(planFor(box, rule, { walls: [wall] }), plane(100, 0, 0.34), 102);
    expect(south?.meets).toBe(true);
    expect(south?.fill?.distance).toBeCloseTo(5, 0);
  });
});

describe("what would stop a slope at a line", () => {
  const line = {
    name: "line",
    points: [
      [-3, -8],
      [3, -8],
    ] as Point[],
  };

  it("is run over height: 3 m beyond the apron, 1.9 m up", () => {
    const [fill] = fitToLine(planFor(box, rule), plane(100), 102, line);
    expect(fill).toMatchObject({ line: "line", what: "fill" });
    expect(fill?.slope).toBeCloseTo(3 / 1.9, 9);
    // As it is, 3 : 1 stands 1.9 − 1 over the ground there.
    expect(fill?.wallHeight).toBeCloseTo(0.9, 9);
  });

  it("makes the slope end there when it is taken", () => {
    const [fill] = fitToLine(planFor(box, rule), plane(100), 102, line);
    const steeper = planFor(box, { ...rule, fillSlope: fill?.slope as number });
    expect(fitToLine(steeper, plane(100), 102, line)).toEqual([]);
    expect(sideReaches(steeper, plane(100), 102)[0]?.fill?.distance).toBeCloseTo(5, 5);
  });

  it("is counted to the edge of what stays clear: round a tree, and on this side of a buried line", () => {
    // The tree stands 7 m from the wall and 3 m stay clear: 4 m are left, 2 of them beyond the apron.
    const tree = { name: "oak", points: [[0, -10]] as Point[], clear: 3 };
    const pipe = { name: "gas", points: line.points.map(([x]): Point => [x, -9]), clear: 2 };
    for (const kept of [tree, pipe]) {
      const [fill] = fitToLine(planFor(box, rule), plane(100), 102, kept);
      expect(fill?.clear).toBe(kept.clear);
      expect(fill?.at[1]).toBeCloseTo(-7, 6);
      expect(fill?.slope).toBeCloseTo(2 / 1.9, 6);
      expect(fill?.wallHeight).toBeCloseTo(1.9 - 2 / 3, 6);
    }
  });

  it("is only a wall where the line runs through the apron", () => {
    const near = { name: "near", points: line.points.map(([x]): Point => [x, -4]) };
    expect(fitToLine(planFor(box, rule), plane(100), 102, near)[0]?.slope).toBeNull();
  });

  it("is nothing where the slope ends before the line, and something in cut too", () => {
    const far = { name: "far", points: line.points.map(([x]): Point => [x, -12]) };
    expect(fitToLine(planFor(box, rule), plane(100), 102, far)).toEqual([]);
    expect(fitToLine(planFor(box, rule), plane(105), 102, line)[0]).toMatchObject({
      what: "cut",
      slope: expect.closeTo(3 / 3.1, 9),
    });
  });
});

describe("what a retaining wall holds", () => {
  const wall = (more: Record<string, unknown> = {}) =>
    layWall(
      retainingWallSchema.parse({
        id: "r",
        line: [
          [-15, -7],
          [15, -7],
        ],
        lowSide: "right",
        buried: 0.4,
        ...more,
      }),
      plane(100),
      slopes,
    );
  const held = (more: Record<string, unknown> = {}, rest = {}) =>
    retainingResults(planFor(box, rule, { walls: [wall(more)], ...rest }), plane(100), 102)[0];

  it("is the slope's height over the ground at its line: 1.9 − 2 / 3, and its footing below", () => {
    expect(held()?.exposed).toBeCloseTo(1.9 - 2 / 3, 1);
    expect(held()?.fromFooting).toBeCloseTo(1.9 - 2 / 3 + 0.4, 1);
    expect(held()?.short).toBe(0);
  });

  it("is too low as typed by what the ground behind stands higher", () => {
    expect(held({ exposed: 1 })?.short).toBeCloseTo(0.9 - 2 / 3, 1);
  });

  it("carries the slope that climbs behind it; a drive or parking on it counts first", () => {
    expect(held()?.loadedBy).toBe("ground that rises behind it");
    const drive = layDrive(
      driveSchema.parse({
        id: "v",
        line: [
          [-30, -6],
          [30, -6],
        ],
        width: 1.5,
      }),
      { roadHeight: 101, endHeight: 101, sillBelowFloor: null },
    );
    expect(held({}, { drives: [drive] })?.loadedBy).toBe("wheels on a drive");
  });

  it("is nothing where no fill comes", () => {
    const far = wall({
      line: [
        [-15, -40],
        [15, -40],
      ],
    });
    const [result] = retainingResults(planFor(box, rule, { walls: [far] }), plane(100), 102);
    expect(result).toMatchObject({ exposed: 0, loadedBy: null });
  });
});

describe("acts that fight", () => {
  const ground = planeGround(100);
  const range = { low: 100, high: 100 };
  const pad = layPad(
    groundPadSchema.parse({
      id: "q",
      outline: [
        [20, -5],
        [30, -5],
        [30, 5],
        [20, 5],
      ],
      level: { kind: "height", height: 100.5 },
      fall: 0,
    }),
    () => 100,
  );
  const swale = laySwale(
    swaleSchema.parse({
      id: "w",
      line: [
        [10, 0],
        [40, 0],
      ],
      depth: 0.2,
      bottomWidth: 1,
      fall: 0,
      sideSlope: 2,
    }),
    { startGround: 100, outletGround: 100 },
  );
  const still = { leave: new Uint8Array(4).fill(1) };
  const conflicts = (order: string[]) => {
    const plan = planFor(box, still, { pads: [pad], swales: [swale], order });
    const { bounds } = gradingReach(plan, ground, range);
    return gradingConflicts(layOut(plan, ground, { bounds, range }), 100, (id) => id.toUpperCase());
  };

  it("a swale through a pad: it cuts 0.7 m into it, 3.8 m wide and 10 m long", () => {
    const [one, ...more] = conflicts([]);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ first: "q", second: "w", firstName: "Q", by: expect.closeTo(-0.7, 6) });
    expect(one?.area).toBeCloseTo(38, 0);
  });

  it("the other way round the pad fills the swale", () => {
    const [one] = conflicts(["apron", "w", "q"]);
    expect(one).toMatchObject({ first: "w", second: "q", by: expect.closeTo(0.7, 6) });
  });
});

describe("daylight lines", () => {
  it("lie where the slope meets the ground, on straight sides and round corners, to a millimetre", () => {
    const ground = planeGround(100, 0.04, 0.03);
    const plan = planFor(box, rule);
    const range = { low: 101.5, high: 102.5 };
    const { bounds } = gradingReach(plan, ground, range);
    const lines = daylightLines(layOut(plan, ground, { bounds, range }), 102, ground);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) {
      for (let i = 0; i < line.length; i += 2) {
        const [x, y] = [line[i] as number, line[i + 1] as number];
        const out = Math.hypot(Math.max(0, Math.abs(x) - 5), Math.max(0, Math.abs(y) - 3));
        const slope = 101.9 - (out - 2) / 3;
        expect(Math.abs(slope - (100 + 0.04 * x + 0.03 * y))).toBeLessThan(0.001);
      }
    }
  });
});
