import { describe, expect, it } from "vitest";

import { type Project, pitEdits, siteEdits } from "../../src/document";
import { rationalPeak } from "../../src/drainage";
import { createDrawContext, drawSwales } from "../../src/drawing";
import { containsPoint } from "../../src/geometry";
import { createSolver } from "../../src/solve";
import { checkEdit } from "../support/checkEdit";
import { demoProject } from "../support/demo";
import { plane, shed, site } from "./sites";

const inchAnHour = 0.0254 / 3600;
const solve = (project: Project) => createSolver().solve(project).water;

/** Falls 4 % south; a swale across it uphill of the shed, its outlet south-east. */
const swale = {
  id: "w1",
  name: "swale",
  line: [
    [-10, 14],
    [20, 13],
    [28, -10],
  ],
  depth: 0.3,
  leastFall: 0.01,
};
const slope = (rest: Record<string, unknown> = {}) =>
  site({ surface: plane(100, 0, 0.04), reach: 40, spacing: 20, building: shed, rest });

describe("the roof's water", () => {
  const drainage = { roof: { shape: "gable", overhang: 0.5, outlets: [{ wall: 2, at: [10, 13.6] }] } };
  const water = solve(
    slope({ drainage, storm: { intensity: 2 * inchAnHour, depth: 0.1 }, grading: { swales: [swale] } }),
  );
  const [south, north] = water.roof ?? [];

  it("is told by slope side: half of 13 × 9 m each, peak C i A and volume C d A", () => {
    expect(south?.area).toBeCloseTo((13 * 9) / 2, 9);
    expect(south?.peak).toBeCloseTo(rationalPeak(0.95, 2 * inchAnHour, 58.5), 12);
    expect(south?.volume).toBeCloseTo(0.95 * 0.1 * 58.5, 9);
  });

  it("joins the swale that its downspouts lead to, with the roof's C; what drips below it doesn't", () => {
    expect(north).toMatchObject({ wall: 2, joins: "swale" });
    expect(north?.joining).toBeGreaterThan(0.9);
    expect(south?.joins).toBeNull();
    const [flow] = water.flows;
    expect(flow?.roof).toBeGreaterThan(0.9 * 58.5);
    expect(flow?.peak).toBeCloseTo((flow?.runoff ?? 0) * 2 * inchAnHour * (flow?.catchment ?? 0), 12);
    expect(flow?.runoff).toBeGreaterThan(0.3);
  });
});

describe("rain from a table", () => {
  it("is that of the time in which the swale's water gathers, between the rows on logarithms", () => {
    const table = [
      { duration: 300, intensity: 4e-5 },
      { duration: 1200, intensity: 1e-5 },
    ];
    const storm = { table, uphill: 20_000, uphillLength: 300, uphillFall: 0.02 };
    const [flow] = solve(slope({ storm, grading: { swales: [swale] } })).flows;
    // Kirpich over 300 m at 2 %: 0.0195 · 300^0.77 · 0.02^-0.385 = 7.1 min, and the way on the plan.
    expect(flow?.time).toBeGreaterThan(7.1 * 60);
    const want = 4e-5 * 0.25 ** (Math.log((flow?.time ?? 0) / 300) / Math.log(4));
    expect(flow?.intensity).toBeCloseTo(want, 9);
  });

  it("takes the one figure where there is no table", () => {
    const [flow] = solve(slope({ storm: { intensity: 3e-5 }, grading: { swales: [swale] } })).flows;
    expect(flow?.intensity).toBe(3e-5);
  });

  it("weighs the ground beyond with its own C", () => {
    const storm = { intensity: 1e-5, runoff: 0.2, uphill: 5000, uphillRunoff: 0.6 };
    const [flow] = solve(slope({ storm, grading: { swales: [swale] } })).flows;
    const own = (flow?.catchment ?? 0) - 5000;
    expect(flow?.runoff).toBeCloseTo((0.2 * own + 0.6 * 5000) / (own + 5000), 9);
  });
});

describe("a pipe under a drive", () => {
  const drive = {
    id: "v1",
    name: "drive",
    line: [
      [24, -38],
      [24, 12],
      [12.5, 12],
    ],
    width: 4,
    sideSlope: 3,
  };
  const grading = {
    swales: [
      {
        ...swale,
        line: [
          [-10, 16],
          [38, 6],
        ],
        depth: 0.9,
        leastFall: 0.01,
      },
    ],
    drives: [
      {
        ...drive,
        line: [
          [24, -38],
          [24, 30],
        ],
      },
    ],
  };
  const piped = (change: object = {}, uphill = 0) =>
    solve(slope({ storm: { intensity: inchAnHour, uphill }, grading, drainage: { pipe: change } })).pipes[0];

  it("lies on the swale's bed from toe to toe, with inverts that fall as the bed does", () => {
    const pipe = piped();
    expect(pipe?.at[0]).toBeCloseTo(24, 9);
    const [up, down] = pipe?.inverts ?? [0, 0];
    expect(up).toBeGreaterThan(down);
    expect((up - down) / (pipe?.length ?? 1)).toBeCloseTo(pipe?.fall ?? 0, 9);
    expect(pipe?.length).toBeGreaterThan(4);
  });

  it("is the least standard bore, more for more ground, and is told in the set-out", () => {
    const small = piped();
    const large = piped({}, 100_000);
    expect(small?.bore).toBeGreaterThanOrEqual(0.3048 - 1e-9);
    expect(large?.bore ?? Infinity).toBeGreaterThan(small?.bore ?? 0);
    const project = slope({ storm: { intensity: inchAnHour }, grading });
    const rows = createSolver()
      .solve(project)
      .setout.rows.filter(({ what }) => what === "invert of pipe");
    expect(rows.map(({ where }) => where)).toEqual(["swale under drive, inlet", "swale under drive, outlet"]);
    expect(rows[0]?.height).toBeCloseTo(small?.inverts[0] ?? 0, 9);
  });

  it("says where a typed bore overtops or lies too shallow", () => {
    expect(piped({ bore: 0.3048 }, 100_000)?.verdict).toBe("overtops");
    expect(piped({ bore: 0.3048, cover: 2 })?.verdict).toBe("too little cover");
    expect(piped({ bore: 0.3048, cover: 0.1 })?.verdict).toBe("carries it");
  });

  it("has its cover where the drive lies lowest over it: at the edge to which the drive falls", () => {
    const across = (kind: "level" | "left" | "right", fall = 0.04) => ({
      ...grading,
      drives: grading.drives.map((one) => ({
        ...one,
        across: { kind, fall },
        shoulder: { width: 0, fall: 0 },
      })),
    });
    const cover = (kind: "level" | "left" | "right") =>
      solve(
        slope({
          storm: { intensity: inchAnHour },
          grading: across(kind),
          drainage: { pipe: { bore: 0.3048 } },
        }),
      ).pipes[0]?.cover ?? Number.NaN;
    // 4 m wide at 4 %: its low edge lies 0.08 m under its middle, and the pipe falls on towards the swale's outlet besides.
    const level = cover("level");
    const [left, right] = [cover("left"), cover("right")];
    const least = Math.min(left, right);
    expect(level - least).toBeGreaterThan(0.03);
    expect(level - least).toBeLessThan(0.08 + 1e-6);
    expect(Math.max(left, right)).not.toBeCloseTo(least, 2);
  });

  it("that doesn't do is among the things to look at, in the words of its card", () => {
    const project = slope({
      storm: { intensity: inchAnHour },
      grading,
      drainage: { pipe: { bore: 0.3048, cover: 2 } },
    });
    const { problems } = createSolver().solve(project);
    expect(problems.find(({ code }) => code === "pipe-does-not-do")?.what).toContain(
      "of cover is left over it",
    );
    const fine = slope({ storm: { intensity: inchAnHour }, grading, drainage: { pipe: { cover: 0.1 } } });
    expect(
      createSolver()
        .solve(fine)
        .problems.some(({ code }) => code === "pipe-does-not-do"),
    ).toBe(false);
  });

  it("has no size before the rain is typed", () => {
    const [pipe] = solve(slope({ grading })).pipes;
    expect(pipe).toMatchObject({ bore: null, verdict: null, headwater: null });
  });
});

describe("the drain round the footing, drawn and set out", () => {
  const project = site({
    surface: plane(100, 0, 0.08),
    reach: 60,
    spacing: 20,
    rest: { drainage: { footingDrain: { on: true, fall: 0.01 } } },
  });
  const results = createSolver().solve(project);
  const drain = results.water.footingDrain;

  it("has its inverts among the heights to set out", () => {
    const rows = results.setout.rows.filter(({ what }) => what === "invert of footing drain");
    expect(rows.map(({ height }) => height)).toEqual([drain?.high, drain?.low, drain?.outlet?.invert]);
    const off = createSolver().solve({
      ...project,
      drainage: { ...project.drainage, footingDrain: { on: false, fall: 0.01 } },
    });
    expect(off.setout.rows.some(({ what }) => what === "invert of footing drain")).toBe(false);
  });

  it("lies round the walls on the plan, and goes to where it comes out", () => {
    const { marks } = drawSwales(project, results, createDrawContext({ metresPerMm: 0.1 }));
    const lines = marks.filter((mark) => mark.style === "footing-drain");
    expect(lines).toHaveLength(2);
    const [round, way] = lines;
    if (round?.kind !== "line" || way?.kind !== "line") throw new Error("they are lines");
    const outline = project.building?.outline ?? [];
    for (let i = 0; i < round.points.length; i += 2)
      expect(containsPoint(outline, round.points[i] as number, round.points[i + 1] as number)).toBe(false);
    expect(Array.from(way.points).slice(-2)).toEqual([...(drain?.outlet?.at ?? [])]);
  });
});

describe("the drain round the footing", () => {
  const drain = (surface: ReturnType<typeof plane>, fall = 0.01) =>
    solve(site({ surface, reach: 60, spacing: 20, rest: { drainage: { footingDrain: { on: true, fall } } } }))
      .footingDrain;

  it("rises both ways to the corner farthest off, and comes out where an even slope has fallen to it (closed form)", () => {
    const found = drain(plane(100, 0, 0.08));
    expect(found?.length).toBe(40);
    expect((found?.high ?? 0) - (found?.low ?? 0)).toBeCloseTo(0.01 * 20, 9);
    // 0.2 m up from the bottom of a footing 8 in thick: 3 mm under its top; at 2 % it lies over it.
    expect(found?.overFooting).toBe(0);
    expect(drain(plane(100, 0, 0.08), 0.02)?.overFooting).toBeCloseTo(0.02 * 20 - 0.2032, 9);
    const outlet = found?.outlet;
    // From a south corner at y = 0: the ground, 8 % down, meets a drain that falls 1 % from its invert.
    const want = (100 - (found?.low ?? 0)) / (0.08 - 0.01);
    expect(outlet?.from[1]).toBe(0);
    expect(outlet?.distance).toBeGreaterThan(want - 0.5);
    expect(outlet?.distance).toBeLessThan(want + 1.5);
  });

  it("is held against the water in the test pits, at its corners and at its outlet", () => {
    const with1 = (water: string) => {
      const drained = { drainage: { footingDrain: { on: true, fall: 0.01 } } };
      const dug = site({ surface: plane(100, 0, 0.08), reach: 60, spacing: 20, rest: drained });
      const placed = checkEdit(dug, pitEdits.addPit, { place: { kind: "at", x: -8, y: 5 } });
      return createSolver().solve(
        checkEdit(placed, pitEdits.setPitDepth, {
          id: placed.survey.pits[0]?.id ?? "",
          which: "water",
          text: water,
        }),
      );
    };
    const wet = with1("0.1 m");
    const found = wet.water.footingDrain?.pits;
    // One pit: water 0.1 m under the ground everywhere, so above the footing's bottom as far as the ground is, less 0.1 m.
    const highest = Math.max(...wet.trench.map(({ belowGround }) => belowGround));
    expect(found?.above).toBeGreaterThan(highest - 0.1 - 0.01 * 20 - 1e-9);
    expect(found?.above).toBeLessThan(highest - 0.1 + 1e-9);
    expect(wet.problems.map(({ code }) => code)).toContain("water-over-drain");
    const dry = with1("9 m");
    expect(dry.water.footingDrain?.pits?.above).toBeLessThan(0);
    expect(dry.problems.map(({ code }) => code)).not.toContain("water-over-drain");
    expect(dry.problems.map(({ code }) => code)).not.toContain("water-over-outlet");
    expect(drain(plane(100, 0, 0.08))?.pits).toBeNull();
  });

  it("comes out nowhere on level ground, and isn't told unless asked for", () => {
    expect(drain(plane(100))?.outlet).toBeNull();
    expect(solve(site({ reach: 40, spacing: 20 })).footingDrain).toBeNull();
  });
});

describe("water that leaves the lot", () => {
  const outline = [
    [-30, -30],
    [30, -30],
    [30, 30],
    [-30, 30],
  ];
  const water = (rest: object) =>
    solve(slope({ lot: { outline }, storm: { intensity: inchAnHour }, ...rest })).leaving;

  it("is as much before as after, in all, where only a house came: its roof's water runs off too", () => {
    const lines = water({});
    const [before, after] = [
      lines.reduce((sum, line) => sum + line.before, 0),
      lines.reduce((sum, line) => sum + line.after, 0),
    ];
    expect(after / before).toBeGreaterThan(0.97);
    expect(after / before).toBeLessThan(1.03);
    // All of it over the line downhill, the first.
    expect((lines[0]?.before ?? 0) / before).toBeGreaterThan(0.95);
  });

  it("rises where a swale sends it over another line", () => {
    const aside = {
      ...swale,
      line: [
        [-12, 14],
        [20, 13],
        [32, 8],
      ],
      leastFall: 0.01,
    };
    const [before, after] = [water({}), water({ grading: { swales: [aside] } })];
    expect(after[1]?.after ?? 0).toBeGreaterThan((before[1]?.after ?? 0) + 100);
    expect(after[1]?.rises).toBe(true);
    expect(after[1]?.peakAfter ?? 0).toBeGreaterThan(after[1]?.peakBefore ?? 0);
  });

  it("is a caution at the line where it rises, in the plan's own unit", () => {
    const demo = demoProject("pottery-studio");
    const { water, problems } = createSolver().solve(demo);
    const rising = water.leaving.filter(({ rises }) => rises);
    expect(rising.length).toBeGreaterThan(0);
    const told = problems.filter(({ code }) => code === "water-to-neighbour");
    expect(told.map(({ where }) => where)).toEqual(rising.map(({ line }) => `lot line ${line + 1}`));
    expect(told[0]).toMatchObject({ severity: "caution", at: rising[0]?.middle });
    expect(told[0]?.what).toContain("ft²");
  });

  it("isn't told without a lot", () => expect(solve(slope()).leaving).toEqual([]));
});

describe("earth that lies bare", () => {
  it("is marked where it is steep and long; a barrier runs along its low side", () => {
    const high = { ...shed, floor: 103.5 };
    const rest = { grading: { slopes: { fill: 2 } }, drainage: { bareEarth: { steepness: 0.4, length: 3 } } };
    const { bareEarth } = solve(
      site({ surface: plane(100, 0, 0.04), reach: 60, spacing: 20, building: high, rest }),
    );
    expect(bareEarth?.slopes.length).toBeGreaterThan(0);
    // 2 : 1 is 50 %; at the fold to the apron less.
    expect(bareEarth?.slopes[0]?.steepness).toBeGreaterThan(0.45);
    expect(bareEarth?.slopes[0]?.steepness).toBeLessThan(0.56);
    expect(bareEarth?.barrierLength).toBeGreaterThan(25);
    // All of it lies on the low half of the changed ground.
    const ys = bareEarth?.barrier.flatMap((line) => [...line].filter((_, k) => k % 2 === 1)) ?? [];
    expect(Math.max(...ys)).toBeLessThan(12);
    expect(Math.min(...ys)).toBeLessThan(-8);
  });

  it("says how much of the barrier would lie over the lot's line", () => {
    const rest = (south: number) => ({
      grading: { slopes: { fill: 2 } },
      lot: {
        outline: [
          [-40, south],
          [50, south],
          [50, 50],
          [-40, 50],
        ],
      },
    });
    const beyond = (south: number) =>
      solve(
        site({
          surface: plane(100, 0, 0.04),
          reach: 60,
          spacing: 20,
          building: { ...shed, floor: 103.5 },
          rest: rest(south),
        }),
      ).bareEarth;
    expect(beyond(-40)?.barrierBeyond).toBe(0);
    const near = beyond(-4);
    expect(near?.barrierBeyond).toBeGreaterThan(5);
    expect(near?.barrierBeyond).toBeLessThanOrEqual(near?.barrierLength ?? 0);
  });

  it("isn't where the slopes are gentler than asked", () => {
    const project = checkEdit(slope(), siteEdits.changeDrainage, {
      part: "bareEarth",
      patch: { steepness: 0.9 },
    });
    expect(solve(project).bareEarth?.slopes).toEqual([]);
  });
});
