/** Limits without a formula, on ground where they can be worked out by hand, and against what each floor really gives. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { keepsRule, outsideBand } from "../../src/advice";
import type { Project } from "../../src/document";
import { createSolver } from "../../src/solve/pipeline";
import type { BandRule, Results } from "../../src/solve/results";
import { toLookAt } from "../../src/solve/to-look-at";
import { wordsFor } from "../../src/solve/words";
import { demoProject } from "../support/demo";
import { plane, shed, site } from "./sites";

function rule(project: Project, id: string): BandRule {
  const found = createSolver()
    .solve(project)
    .band.rules.find((each) => each.id === id);
  if (!found) throw new Error(`no rule ${id}`);
  return found;
}

const apron = { showing: 0.2, fall: 0.05, width: 1, fillSlope: 3, cutSlope: 2 };
/** A square lot, so far from each wall of the shed. */
const lotAround = (gap: number) => ({
  outline: [
    [-gap, -gap],
    [12 + gap, -gap],
    [12 + gap, 8 + gap],
    [-gap, 8 + gap],
  ],
});
const grading = (patch: object = {}) => ({ apron: { ...apron, ...patch } });

describe("slopes that end on the lot", () => {
  it("fill: on level ground at 100, 4 m to the line, 1 m of apron and 3 : 1 beyond it", () => {
    const project = site({ rest: { grading: grading(), lot: lotAround(4) } });
    // Apron 0.2 below the top of wall (at the floor), 0.05 down to its edge, then (4 − 1) / 3 = 1 m; 1 cm is no work.
    const found = rule(project, "fillFits");
    expect(found.kind).toBe("notAbove");
    expect(found.height).toBeCloseTo(100 + 0.01 + 0.2 + 0.05 + 1, 5);
    expect(found.place).toContain("lot line");
  });

  it("cut: 2 : 1 up to the same line", () => {
    // On ground that rises beyond, so that the floors looked at reach far enough down.
    const surface = (_x: number, y: number) => 100 + (y > 8 ? Math.min(1, y - 8) * 2 : 0);
    const project = site({
      surface,
      spacing: 1,
      reach: 24,
      rest: { grading: grading(), lot: lotAround(4) },
    });
    const found = rule(project, "cutFits");
    expect(found.kind).toBe("notBelow");
    // Ground at the north line 102; apron's edge floor − 0.25, then 3 / 2 = 1.5 m up to the line.
    expect(found.height).toBeCloseTo(102 - 0.01 + 0.25 - 1.5, 5);
  });

  it("without a lot there is nothing to keep", () => {
    expect(rule(site(), "fillFits")).toMatchObject({
      height: null,
      place: "no lot that encloses ground is drawn",
    });
  });
});

describe("fall away from the walls", () => {
  it("a narrow apron on level ground: only the fill beyond it makes 6 in within 10 ft", () => {
    const project = site({ rest: { grading: grading() } });
    const found = rule(project, "fallAway");
    expect(found.kind).toBe("notBelow");
    // Ground at the wall (floor − 0.2) stands 5 % of 3.048 m over the ground at 100, less 3 mm that nobody grades.
    expect(found.height).toBeCloseTo(100 + 0.05 * 3.048 - 0.003 + 0.2, 4);
  });
});

describe("door sills", () => {
  it("a side door in a wall that leaves the ground as it is", () => {
    const doors = [
      { id: "d", name: "side door", kind: "walk", wall: 0, offset: 4, width: 1, sillBelowFloor: 0.03 },
    ];
    const project = site({
      building: { ...shed, doors },
      rest: { grading: grading({ leave: [0, 1, 2, 3] }), rules: { doorThreshold: 0.02 } },
    });
    const found = rule(project, "doorThreshold");
    expect(found).toMatchObject({ kind: "notBelow", place: "side door, wall A-B" });
    expect(found.height).toBeCloseTo(100 + 0.02 + 0.03, 6);
  });
});

describe("the wall itself", () => {
  it("its height is the same at any floor on a level footing: kept or not", () => {
    const wall = (greatestWall: number) => site({ rest: { rules: { greatestWall } } });
    const height = site().building?.foundation.wallHeight ?? 0;
    expect(rule(wall(height + 0.01), "greatestWall").atAnyFloor).toBe("kept");
    expect(rule(wall(height - 0.01), "greatestWall").atAnyFloor).toBe("broken");
  });

  it("steps make it higher, the higher the floor stands over falling ground", () => {
    const building = { ...shed, foundation: { kind: "crawl-space", steps: { on: true } } };
    const project = site({ surface: plane(100, 0, 0.1), building });
    const { wallHeight } = (project.building as NonNullable<Project["building"]>).foundation;
    const limited = { ...project, rules: { ...project.rules, greatestWall: wallHeight + 0.7 } };
    const found = rule(limited, "greatestWall");
    expect(found.kind).toBe("notAbove");
    const highest = (floor: number) =>
      Math.max(
        ...(createSolver()
          .solve(limited, { floor })
          .foundation?.walls.flatMap(({ pieces }) => pieces.map(({ wallHeight: high }) => high)) ?? []),
      );
    expect(highest(found.height as number)).toBeLessThanOrEqual(wallHeight + 0.7 + 1e-9);
    expect(highest((found.height as number) + 1e-3)).toBeGreaterThan(wallHeight + 0.7);
  });

  it("a typed limit for fill on one side takes the tables' place", () => {
    // Where the ground stays as it is, the floor decides how much fill the low wall holds.
    const project = site({
      surface: plane(100, 0, 0.02),
      rest: { grading: grading({ leave: [0, 1, 2, 3] }) },
    });
    const typed = { ...project, rules: { ...project.rules, mostUnbalanced: 0.4 } };
    const found = rule(typed, "unbalancedFill");
    expect(found.value).toBe(0.4);
    const ends = [found.height, ...(found.heights ?? []).flat()].filter((end) => end != null);
    expect(ends.length).toBeGreaterThan(0);
    const worst = (floor: number) =>
      Math.max(...(createSolver().solve(typed, { floor }).foundation?.unbalanced ?? []).map((w) => w.worst));
    for (const end of ends) expect(worst(end)).toBeCloseTo(0.4, 5);
  });
});

describe("cost", () => {
  const priced = (costLimit: number | null) =>
    site({
      surface: plane(100, 0, 0.05),
      rest: {
        rules: { costLimit },
        prices: { "fill-loose": 30, "cut-loose": 12, slab: 200 },
        lot: lotAround(20),
      },
    });

  it("the cheapest floor: none of a close sweep of full bills is cheaper by more than the coarse grid's error", () => {
    const project = priced(null);
    const solver = createSolver();
    const { costs } = solver.solve(project);
    const least = costs?.least.total ?? 0;
    const full = (floor: number) => solver.solve(project, { floor }).cost.total;
    expect(full(costs?.least.floor ?? 0)).toBeCloseTo(least, -2);
    for (let floor = 99.5; floor < 101.5; floor += 0.1) expect(full(floor)).toBeGreaterThan(least * 0.995);
  });

  it("a limit is kept within the heights told, and broken just beyond them", () => {
    const least = createSolver().solve(priced(null)).costs?.least.total ?? 0;
    const project = priced(least * 1.2);
    const found = rule(project, "costLimit");
    expect(found.kind).toBe("within");
    const [low, high] = found.heights?.[0] ?? [null, null];
    const full = (floor: number) => createSolver().solve(project, { floor }).cost.total;
    expect(full(low as number)).toBeLessThanOrEqual(least * 1.2 + 1e-6);
    expect(full(high as number)).toBeLessThanOrEqual(least * 1.2 + 1e-6);
    expect(full((low as number) - 0.001)).toBeGreaterThan(least * 1.2);
    expect(full((high as number) + 0.001)).toBeGreaterThan(least * 1.2);
  });

  it("stacks to the total at every floor", () => {
    for (const { total, parts } of createSolver().solve(priced(null)).costs?.points ?? [])
      expect(Object.values(parts).reduce((a, b) => a + b, 0)).toBeCloseTo(total, 6);
  });

  it("has no curve and no bearing while nothing is priced", () => {
    const { costs, band } = createSolver().solve(site({ rest: { rules: { costLimit: 1000 } } }));
    expect(costs).toBeNull();
    expect(band.rules.find(({ id }) => id === "costLimit")).toMatchObject({ height: null });
  });
});

describe("walls out of the finished ground", () => {
  const leave = [0, 1, 2, 3];
  const door = {
    id: "d",
    name: "big door",
    kind: "overhead",
    wall: 0,
    offset: 3,
    width: 3,
    sillBelowFloor: 0,
  };

  it("where the ground stays as it is, its highest place along the walls decides, less the siding's lap", () => {
    const rules = { leastShowing: 0.15, sidingClearance: 0.2, sidingLap: 0.03 };
    const project = site({
      surface: plane(100, 0, 0.05),
      building: { ...shed, topOfWallAboveFloor: -0.1 },
      rest: { grading: grading({ leave }), rules },
    });
    // The north wall lies 8 m up a slope of 5 %.
    expect(rule(project, "leastShowing")).toMatchObject({ kind: "notBelow" });
    expect(rule(project, "leastShowing").height).toBeCloseTo(100.4 + 0.15 + 0.1, 5);
    expect(rule(project, "sidingClearance").height).toBeCloseTo(100.4 + 0.2 + 0.03 + 0.1, 5);
  });

  it("an apron leaves its own showing: enough at any floor, or too little at every one", () => {
    const showing = (least: number) =>
      rule(site({ rest: { grading: grading(), rules: { leastShowing: least } } }), "leastShowing");
    expect(showing(0.2).atAnyFloor).toBe("kept");
    expect(showing(0.3).atAnyFloor).toBe("broken");
    expect(showing(0.3).place).toContain("not the floor");
  });

  it("a pad laid against a wall counts, though there is an apron all round", () => {
    const pad = {
      id: "p",
      name: "yard",
      outline: [
        [-3, 2],
        [0.05, 2],
        [0.05, 6],
        [-3, 6],
      ],
      level: { kind: "height", height: 100.6 },
      fall: 0,
    };
    const project = site({ rest: { grading: { ...grading(), pads: [pad] } } });
    const found = rule(project, "leastShowing");
    const shown = (floor: number) =>
      Math.min(
        ...(createSolver()
          .solve(project, { floor })
          .foundation?.walls.map(({ leastShowing }) => leastShowing) ?? []),
      );
    expect(found.kind).toBe("notBelow");
    expect(shown(found.height as number)).toBeCloseTo(0.1524, 4);
    expect(shown((found.height as number) - 0.01)).toBeLessThan(0.1524);
  });

  it("a drive to a door may come up to the top of wall beside it, and not over it", () => {
    const drive = {
      id: "v",
      name: "drive",
      width: 5,
      door: "d",
      line: [
        [4.5, -30],
        [4.5, 0],
      ],
    };
    const withTop = (topOfWallAboveFloor: number) =>
      site({
        building: { ...shed, topOfWallAboveFloor, doors: [door] },
        rest: { grading: { ...grading(), drives: [drive] } },
      });
    expect(rule(withTop(0), "besideDrive").atAnyFloor).toBe("kept");
    const buried = rule(withTop(-0.25), "besideDrive");
    expect(buried.atAnyFloor).toBe("broken");
    expect(buried.place).toContain("0.25");
    const results = createSolver().solve(withTop(-0.25));
    const told = toLookAt(
      withTop(-0.25),
      results.problems,
      results,
      results.floor,
      wordsFor(withTop(-0.25).display),
    );
    expect(told.find(({ code }) => code === "floor-besideDrive")?.what).toContain("0.25");
    // The drive's own earth isn't held against the wall as if it were the apron.
    expect(rule(withTop(0), "leastShowing").atAnyFloor).toBe("kept");
    expect(rule(site(), "besideDrive")).toMatchObject({ height: null, place: "no drive comes to a door" });
  });
});

/** Every searched rule said again as what the results show at one floor. */
function keptByResults(results: Results, project: Project): Record<string, boolean> {
  const { foundation, water } = results;
  const near = 1e-6;
  const everyWall = water.walls.every(({ fallsEnough }) => fallsEnough);
  return {
    fallAway: everyWall,
    leastShowing:
      foundation?.walls.every(({ leastShowing }) => leastShowing >= project.rules.leastShowing - near) ??
      true,
    sidingClearance:
      foundation?.walls.every(
        ({ sidingClearance }) => sidingClearance >= project.rules.sidingClearance - near,
      ) ?? true,
    unbalancedFill: foundation?.unbalanced.every(({ passes }) => passes) ?? true,
    doorThreshold:
      foundation?.doors.every(
        ({ drive, drop }) => drive !== null || drop >= project.rules.doorThreshold - near,
      ) ?? true,
  };
}

describe("the band against floors tried one by one", () => {
  const someSite = fc.record({
    east: fc.integer({ min: -12, max: 12 }).map((n) => n / 100),
    north: fc.integer({ min: -12, max: 12 }).map((n) => n / 100),
    width: fc.integer({ min: 5, max: 35 }).map((n) => n / 10),
    showing: fc.integer({ min: 16, max: 40 }).map((n) => n / 100),
    leave: fc.subarray([0, 1, 2, 3]),
  });

  it("keeps a rule exactly where the results of that floor do", { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(someSite, ({ east, north, width, showing, leave }) => {
        const doors = [
          { id: "d", name: "side door", kind: "walk", wall: 1, offset: 2, width: 1, sillBelowFloor: 0 },
        ];
        const project = site({
          surface: plane(100, east, north),
          spacing: 20,
          reach: 40,
          building: { ...shed, doors },
          rest: { grading: grading({ width, showing, leave }), lot: lotAround(6) },
        });
        const solver = createSolver();
        const { band, curve } = solver.solve(project);
        const spans = band.rules;
        // The curve covers the floors that are looked at.
        const [from, to] = [curve[0]?.floor ?? 0, curve.at(-1)?.floor ?? 0];
        for (let floor = from + 1e-3; floor < to; floor += 0.173) {
          const results = solver.solve(project, { floor, detail: "drag" });
          const kept = keptByResults(results, project);
          for (const id of ["leastShowing", "sidingClearance", "unbalancedFill", "doorThreshold"]) {
            const one = spans.find((each) => each.id === id) as BandRule;
            if (one.atAnyFloor === "broken") continue;
            expect(keepsRule(one, floor), `${id} at ${floor}`).toBe(kept[id]);
          }
          const falls = spans.find((each) => each.id === "fallAway") as BandRule;
          // Walls that no floor mends are named, and left out of the limit.
          if (!falls.place.includes("no floor does it") && falls.atAnyFloor !== "broken")
            expect(keepsRule(falls, floor), `fallAway at ${floor}`).toBe(kept.fallAway);
          const inside = !band.empty && outsideBand(band, floor) === null;
          expect(inside).toBe(band.rules.every((each) => keepsRule(each, floor)));
        }
      }),
      { numRuns: 12 },
    );
  });
});

describe("raising the floor", () => {
  it("by h lifts the wall above the ground as it is by h at every corner", () => {
    fc.assert(
      fc.property(fc.integer({ min: -300, max: 900 }), (mm) => {
        const project = site({ surface: plane(100, 0.03, -0.05), spacing: 20, reach: 40 });
        const solver = createSolver();
        const low = solver.solve(project, { detail: "drag" });
        const high = solver.solve(project, { floor: (low.floor ?? 0) + mm / 1000, detail: "drag" });
        high.corners.forEach(({ wallAboveGround }, i) => {
          expect(wallAboveGround - (low.corners[i]?.wallAboveGround ?? 0)).toBeCloseTo(mm / 1000, 9);
        });
      }),
      { numRuns: 25 },
    );
  });
});

it("the band is asked for by itself: with all limits, also those that are found by trying floors", () => {
  const project = demoProject("pottery-studio");
  const [quick, asked, whole] = (["drag", "band", "full"] as const).map((detail) =>
    createSolver()
      .solve(project, { detail })
      .band.rules.map(({ name }) => name),
  );
  expect(asked).toEqual(whole);
  expect(quick?.length).toBeLessThan(whole?.length ?? 0);
});
