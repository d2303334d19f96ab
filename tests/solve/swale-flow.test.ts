import { describe, expect, it } from "vitest";

import { type Point, type Project, siteEdits } from "../../src/document";
import { normalDepth, rationalPeak } from "../../src/drainage";
import { createSolver } from "../../src/solve";
import { rainRises } from "../../src/solve/storm-rain";
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
    // Over the ground at 4 %, then down the bed at 1 %, which is part of the way.
    expect(flow?.longest).toBeGreaterThan((flow?.inBed ?? 0) + 40);
    expect(flow?.inBed).toBeGreaterThan(5);
    const onGround = (flow?.longest ?? 0) - (flow?.inBed ?? 0);
    expect(flow?.fall).toBeGreaterThan(0.04 * 0.7 * onGround);
    expect(flow?.fall).toBeLessThan(0.04 * onGround + 0.01 * (flow?.inBed ?? 0));
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

  it("gives the ground beyond to one swale: the one with the most ground at the edge, or the one that is named", () => {
    const one = withSwale({ uphill: 5000 });
    const [first] = one.grading.swales;
    if (!first) throw new Error("no swale");
    const second = { ...first, id: "w2", name: "swale 2", line: [[-5, -4] as Point, [17, -5] as Point] };
    const two = { ...one, grading: { ...one.grading, swales: [first, second] } };
    const { flows } = createSolver().solve(two).water;
    const own = flows.map(({ catchment, uphill }) => catchment - uphill);
    expect(flows.map(({ uphill }) => uphill)).toEqual(
      own.map((area) => (area === Math.max(...own) ? 5000 : 0)),
    );
    for (const uphillTo of ["w1", "w2"]) {
      const named = createSolver().solve({ ...two, storm: { ...two.storm, uphillTo } }).water.flows;
      expect(named.filter(({ uphill }) => uphill === 5000).map(({ id }) => id)).toEqual([uphillTo]);
    }
  });

  it("leads the water of the ground beyond over the lot's lines too, before and after alike", () => {
    const lot = {
      outline: [
        [-20, -20],
        [30, -20],
        [30, 30],
        [-20, 30],
      ] as Point[],
    };
    const leaves = (uphill: number) => {
      const project = withSwale({ uphill, intensity: 3 * inchAnHour });
      const { leaving } = createSolver().solve({ ...project, lot: { ...project.lot, ...lot } }).water;
      const sum = (pick: (one: (typeof leaving)[number]) => number | null) =>
        leaving.reduce((total, one) => total + (pick(one) ?? 0), 0);
      return { before: sum((one) => one.before), peak: sum((one) => one.peakAfter) };
    };
    const [without, withIt] = [leaves(0), leaves(5000)];
    expect(withIt.before - without.before).toBeCloseTo(5000, 0);
    expect(withIt.peak - without.peak).toBeCloseTo(rationalPeak(0.3, 3 * inchAnHour, 5000), 3);
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

  it("has too little room where less is left over the water than is asked for", () => {
    const storm = { intensity: 3 * inchAnHour, runoff: 0.35, roughness: 0.05 };
    const flow = flowOf(withSwale(storm));
    const left = (flow?.room ?? 0) - (flow?.depth ?? 0);
    expect(flow?.verdict).toBe("carries it");
    expect(flowOf(withSwale({ ...storm, freeboard: left + 0.01 }))?.verdict).toBe("has too little room");
    expect(flowOf(withSwale({ ...storm, freeboard: left - 0.01 }))?.verdict).toBe("carries it");
  });

  it("says where its water gathers sooner than the table's shortest storm", () => {
    const row = (minutes: number, inches: number) => ({
      duration: 60 * minutes,
      intensity: inches * inchAnHour,
    });
    const beyond = (...table: ReturnType<typeof row>[]) => flowOf(withSwale({ table } as never))?.beyondTable;
    expect(beyond(row(30, 2), row(60, 1))).toBe("shorter than its rows");
    expect(beyond(row(1, 6), row(120, 1))).toBeNull();
    expect(rainRises([row(30, 5), row(10, 3)])).toBe(true);
    expect(rainRises([row(30, 2), row(10, 3)])).toBe(false);
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

describe("a swale in the storm that is typed", () => {
  const told = (project: Project) =>
    createSolver()
      .solve(project)
      .problems.filter(({ code }) => code === "swale-in-storm");

  it("is among the things to look at while it doesn't bear the storm, and only if it drains", () => {
    const little = { intensity: inchAnHour, freeboard: 0 };
    const out: [number, number][] = [
      [-10, 14],
      [20, 12],
      [20, -20],
    ];
    expect(told(withSwale(little, { line: out, fall: null }))).toEqual([]);
    const [over] = told(withSwale({ ...little, uphill: 4_000_000 }, { line: out, fall: null }));
    expect(over).toMatchObject({ severity: "caution", where: "swale" });
    // The line across the slope can't come out: that is told, and not the storm.
    expect(told(withSwale({ ...little, uphill: 4_000_000 }))).toEqual([]);
  });

  it("wants one row of rain for each length of storm", () => {
    const row = (minutes: number) => ({ duration: 60 * minutes, intensity: inchAnHour });
    const change = (table: ReturnType<typeof row>[]) =>
      siteEdits.changeStorm.run(withSwale(), { patch: { table } });
    expect(change([row(5), row(10)])).toMatchObject({ ok: true });
    expect(change([row(5), row(5)])).toMatchObject({
      ok: false,
      why: expect.stringContaining("same length"),
    });
  });

  it("says how great a figure may be in words", () => {
    expect(siteEdits.changeStorm.run(withSwale(), { patch: { runoff: 3 } })).toMatchObject({
      ok: false,
      why: expect.stringMatching(/must be at most 1/),
    });
  });
});

describe("downspouts that are led within the walls", () => {
  it("drip along their eave, and it is told", () => {
    const roof = (at: Point | null): Project => {
      const project = withSwale({ intensity: inchAnHour });
      const outlets = at ? [{ wall: 0, at: [at[0], at[1]] as [number, number] }] : [];
      const drainage = {
        ...project.drainage,
        roof: { ...project.drainage.roof, shape: "gable" as const, outlets },
      };
      return { ...project, drainage };
    };
    const leaving = (at: Point | null) =>
      createSolver()
        .solve(roof(at))
        .water.leaving.map(({ after }) => after);
    expect(leaving([6, 4])).toEqual(leaving(null));
    const { problems } = createSolver().solve(roof([6, 4]));
    expect(problems.some(({ code }) => code === "roof-outlet-nowhere")).toBe(true);
    expect(
      createSolver()
        .solve(roof([6, -4]))
        .problems.some(({ code }) => code === "roof-outlet-nowhere"),
    ).toBe(false);
  });
});
