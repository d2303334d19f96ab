import { describe, expect, it } from "vitest";

import { type Project, siteEdits } from "../../src/document";
import { normalDepth, rationalPeak } from "../../src/drainage";
import { createSolver } from "../../src/solve";
import { plane, shed, site } from "./sites";

const inchAnHour = 0.0254 / 3600;

/** Ground that falls 4 % south; a swale 30 m long lies across it, uphill of the shed, falling east. */
function withSwale(storm: Record<string, number> = {}, swale: Record<string, unknown> = {}): Project {
  return site({
    surface: plane(100, 0, 0.04),
    building: {
      ...shed,
      outline: [
        [0, 0],
        [12, 0],
        [12, 8],
        [0, 8],
      ],
    },
    rest: {
      storm,
      grading: {
        swales: [
          {
            id: "w1",
            name: "swale",
            line: [
              [-10, 14],
              [20, 13],
            ],
            depth: 0.4,
            fall: 0.01,
            bottomWidth: 0.6,
            sideSlope: 3,
            ...swale,
          },
        ],
      },
    },
  });
}

const flowOf = (project: Project) => createSolver().solve(project).water.flows[0];

describe("water that comes to a swale", () => {
  it("is what falls on the strip above it, to the edge of the shots: about 30 m by 47 m of an even slope", () => {
    const flow = flowOf(withSwale());
    expect(flow?.catchment).toBeGreaterThan(0.9 * 30 * 46);
    expect(flow?.catchment).toBeLessThan(1.15 * 30 * 47);
    expect(flow?.longest).toBeGreaterThan(40);
    expect((flow?.fall ?? 0) / (flow?.longest ?? 1)).toBeGreaterThan(0.03);
    // The slope runs on beyond the last shots: more may come from there.
    expect(flow?.touchesEdge).toBe(true);
  });

  it("isn't asked for its peak before the rain is typed", () => {
    expect(flowOf(withSwale())).toMatchObject({ peak: null, depth: null, speed: null, verdict: null });
  });

  it("has the peak of the rational formula and the depth of Manning's at the bed's least fall", () => {
    const project = withSwale({ intensity: 3 * inchAnHour, runoff: 0.35, roughness: 0.05 });
    const flow = flowOf(project);
    const peak = rationalPeak(0.35, 3 * inchAnHour, flow?.catchment ?? 0);
    expect(flow?.peak).toBeCloseTo(peak, 12);
    const shape = { kind: "trapezoid", bottom: 0.6, sideSlope: 3 } as const;
    expect(flow?.depth).toBeCloseTo(normalDepth(shape, peak, 0.01, 0.05) ?? 0, 9);
    expect(flow?.verdict).toBe("carries it");
  });

  it("grows by what was typed for the ground beyond", () => {
    const [alone, more] = [{ uphill: 0 }, { uphill: 5000 }].map(
      (storm) => flowOf(withSwale(storm))?.catchment ?? 0,
    );
    expect((more ?? 0) - (alone ?? 0)).toBeCloseTo(5000, 6);
  });

  it("overflows where it is too shallow, and is scoured where it runs too fast", () => {
    const wild = { intensity: 6 * inchAnHour, uphill: 40_000, runoff: 0.6 };
    expect(flowOf(withSwale(wild, { depth: 0.15 }))?.verdict).toBe("overflows");
    expect(flowOf(withSwale({ ...wild, mostSpeed: 0.3 }, { depth: 1.2, fall: 0.03 }))?.verdict).toBe(
      "is scoured",
    );
  });

  it("runs fastest where its bed is steepest, and is judged there", () => {
    const beds = [
      { at: 0, height: 100.1 },
      { at: 15, height: 99.95 },
      { at: 30, height: 99.05 },
    ];
    const project = withSwale(
      { intensity: 3 * inchAnHour, runoff: 0.35, roughness: 0.05 },
      { fall: null, beds },
    );
    const flow = flowOf(project);
    expect(flow?.steepest).toBeGreaterThan(0.055);
    const shape = { kind: "trapezoid", bottom: 0.6, sideSlope: 3 } as const;
    const depth = normalDepth(shape, flow?.peak ?? 0, flow?.steepest ?? 0, 0.05) ?? 0;
    expect(flow?.speed).toBeCloseTo((flow?.peak ?? 0) / ((0.6 + 3 * depth) * depth), 9);
  });

  it("bears what its lining is published to bear at its fall: a grass mixture on firm soil 5 ft/s to 5 %, 4 ft/s beyond, none over 10 %", () => {
    // SCS-TP-61, grass mixtures, firm soil, as in Winchester's table 7.
    const bears = (fall: number) =>
      flowOf(withSwale({ intensity: 3 * inchAnHour, lining: "mixture-firm" as never }, { fall, depth: 1 }));
    expect(bears(0.03)?.bears).toBeCloseTo(5 * 0.3048, 9);
    expect(bears(0.07)?.bears).toBeCloseTo(4 * 0.3048, 9);
    expect(bears(0.12)).toMatchObject({ bears: null, verdict: "is scoured" });
  });

  it("takes C from covers weighted by their parts; a figure that is typed stands instead", () => {
    const covers = [
      { cover: "lawn-heavy" as const, part: 0.75 },
      { cover: "drives" as const, part: 0.25 },
    ];
    const edit = siteEdits.changeStorm.run(withSwale(), { patch: { covers } });
    if (!edit.ok) throw new Error(edit.why);
    // 0.75 × 0.22 + 0.25 × 0.85, ASCE's upper ends.
    expect(edit.project.storm.runoff).toBeCloseTo(0.3775, 12);
    const typed = siteEdits.changeStorm.run(edit.project, { patch: { runoff: 0.4 } });
    expect(typed.ok && typed.project.storm).toMatchObject({ runoff: 0.4, covers: [] });
  });

  it("follows an edit of the storm alone", () => {
    const solver = createSolver();
    const dry = withSwale();
    solver.solve(dry);
    const edit = siteEdits.changeStorm.run(dry, { patch: { intensity: 2 * inchAnHour } });
    if (!edit.ok) throw new Error(edit.why);
    expect(solver.solve(edit.project).water.flows[0]?.peak).toBeGreaterThan(0);
    expect(siteEdits.changeStorm.run(dry, { patch: { runoff: 1.2 } }).ok).toBe(false);
  });
});

describe("ways along which water gathers", () => {
  it("run downhill, and more ground drains to a lower one that others join", () => {
    const valley = (x: number, y: number) => 100 + 0.03 * Math.abs(x - 30) + 0.02 * y;
    const { gathered } = createSolver().solve(site({ surface: valley, building: null })).water;
    const [main] = gathered;
    const { line = new Float64Array() } = main ?? {};
    const height = (k: number) => valley(line[2 * k] ?? 0, line[2 * k + 1] ?? 0);
    expect(line.length).toBeGreaterThan(20);
    expect(height(0)).toBeGreaterThan(height(line.length / 2 - 1));
    expect(gathered.map(({ area }) => area)).toEqual(
      [...gathered].map(({ area }) => area).sort((a, b) => b - a),
    );
  });
});
