/** Grading things from document to results: figures, cautions in words, mends by one click, and nonsense. */
import { describe, expect, it } from "vitest";
import { applyFix, gradingEdits } from "../../src/document";
import type { Project } from "../../src/document/schema";
import { resultsToJson } from "../../src/solve/json";
import { createSolver } from "../../src/solve/pipeline";
import type { Problem } from "../../src/solve/results";
import { sectionAlong } from "../../src/solve/section-along";
import { plane, shed, site } from "./sites";

const solved = (project: Project) => createSolver().solve(project);
const codes = (problems: readonly Problem[]) => problems.map(({ code }) => code);
const door = { id: "d1", name: "door", wall: 0, offset: 4, width: 3, sillBelowFloor: 0 };
const withDoor = { ...shed, doors: [door] };
const drive = (more: Record<string, unknown> = {}) => ({
  id: "v1",
  name: "drive",
  door: "d1",
  line: [
    [5.5, -30],
    [5.5, 0],
  ],
  landing: { length: 4, fall: 0 },
  ...more,
});

describe("a drive's profile", () => {
  const project = site({
    building: { ...withDoor, floor: 103 },
    rest: { grading: { drives: [drive({ breaks: [{ at: 13, height: 101.5, curve: 6 }] })] } },
  });
  const [result] = solved(project).drives;

  it("goes through the typed break: 1.5 m on 13, then 1.5 m on 13", () => {
    expect(result?.pieces.map(({ grade }) => grade)).toEqual([
      expect.closeTo(1.5 / 13, 9),
      expect.closeTo(1.5 / 13, 9),
      expect.closeTo(0, 9),
    ]);
    expect(result?.nodes.map(({ kind }) => kind)).toEqual(["road", "break", "landing", "door"]);
  });

  it("says which piece is too steep, and no longer once its break is moved", () => {
    const steep = gradingEdits.changeGradeBreak.run(project, {
      id: "v1",
      index: 0,
      patch: { height: 102.4 },
    });
    if (!steep.ok) throw new Error(steep.why);
    const before = solved(steep.project);
    expect(before.drives[0]?.pieces.map(({ over }) => over)).toEqual([true, false, false]);
    const caution = before.problems.find(({ code }) => code === "drive-piece-steep");
    expect(caution?.what).toContain("climbs at 18.5 %");
    const back = gradingEdits.changeGradeBreak.run(steep.project, {
      id: "v1",
      index: 0,
      patch: { height: 101.5 },
    });
    if (!back.ok) throw new Error(back.why);
    expect(codes(solved(back.project).problems)).not.toContain("drive-piece-steep");
  });

  it("follows the ground at a break without a height", () => {
    const follows = site({
      surface: plane(100, 0, 0.02),
      building: withDoor,
      rest: { grading: { drives: [drive({ breaks: [{ at: 10, height: null }] })] } },
    });
    expect(solved(follows).drives[0]?.nodes[1]).toMatchObject({
      follows: true,
      height: expect.closeTo(99.6, 6),
    });
  });

  it("passes over a break on the landing, with the place, and goes on", () => {
    const bad = site({
      building: withDoor,
      rest: { grading: { drives: [drive({ breaks: [{ at: 28, height: 101 }] })] } },
    });
    const results = solved(bad);
    expect(results.problems.find(({ code }) => code === "grade-break-without-place")?.at).toEqual([5.5, -2]);
    expect(results.drives).toHaveLength(1);
  });

  it("is held against a vehicle's underside", () => {
    const sharp = site({
      building: { ...withDoor, floor: 102 },
      rest: {
        grading: { drives: [drive({ breaks: [{ at: 16, height: 98 }], landing: { length: 4, fall: 0 } })] },
      },
    });
    const results = solved(sharp);
    expect(results.drives[0]?.underside?.passes).toBe(false);
    expect(results.problems.find(({ code }) => code === "drive-underside")?.what).toMatch(/touches with its/);
  });
});

describe("pads, berms, walls and points", () => {
  const grading = {
    pads: [
      {
        id: "q1",
        name: "parking",
        outline: [
          [20, -10],
          [30, -10],
          [30, 0],
          [20, 0],
        ],
        level: { kind: "height", height: 100.5 },
        fall: 0.02,
        towards: 0,
        gravel: 0.2,
      },
    ],
    berms: [
      {
        id: "e1",
        name: "berm",
        line: [
          [-10, 20],
          [20, 20],
        ],
      },
    ],
    points: [{ id: "z1", name: "grade point", at: [-20, 0], height: 100.3 }],
  };
  const results = solved(site({ rest: { grading } }));

  it("stand in the order that is shown", () => {
    expect(results.grading?.order.map(({ id }) => id)).toEqual(["apron", "q1", "e1", "z1"]);
    const turned = solved(site({ rest: { grading: { ...grading, order: ["z1", "apron"] } } }));
    expect(turned.grading?.order.map(({ id }) => id)).toEqual(["z1", "apron", "q1", "e1"]);
  });

  it("tell the pad's heights: middle as typed, 0.1 m lower and higher at its sides", () => {
    expect(results.grading?.pads[0]).toMatchObject({
      area: 100,
      height: expect.closeTo(100.5, 9),
      lowest: expect.closeTo(100.4, 9),
      highest: expect.closeTo(100.6, 9),
    });
  });

  it("are earth: 0.5 m on 100 m² with its slopes, and the rest", () => {
    const without = solved(site());
    const more = (results.earthwork?.outside.fill ?? 0) - (without.earthwork?.outside.fill ?? 0);
    // Pad 50 + slopes about 40 · 0.5² · 3 / 2 = 15 and corners; berm 30 · (0.6096 · 0.4572 + 3 · 0.4572²) = 27.
    expect(more).toBeGreaterThan(90);
    expect(more).toBeLessThan(98);
  });

  it("leave out what makes no sense, with a message, and go on", () => {
    const nonsense = solved(
      site({
        rest: {
          grading: {
            pads: [
              {
                id: "q1",
                name: "bow tie",
                outline: [
                  [20, 0],
                  [30, 10],
                  [30, 0],
                  [20, 10],
                ],
              },
            ],
            berms: [
              {
                id: "e1",
                name: "dot",
                line: [
                  [1, 20],
                  [1, 20],
                ],
              },
            ],
            order: ["nobody"],
          },
        },
      }),
    );
    expect(codes(nonsense.problems)).toEqual(
      expect.arrayContaining(["pad-outline", "line-without-length", "grading-order-unknown"]),
    );
    expect(nonsense.problems.find(({ code }) => code === "pad-outline")?.at).toEqual([25, 5]);
    expect(nonsense.earthwork).not.toBeNull();
  });

  it("a pad under the building, and lines that cross themselves or turn back, say so with the place", () => {
    const { problems } = solved(
      site({
        building: withDoor,
        rest: {
          grading: {
            pads: [
              {
                id: "q1",
                name: "inside",
                outline: [
                  [2, 2],
                  [6, 2],
                  [6, 6],
                ],
              },
            ],
            swales: [
              {
                id: "w1",
                name: "loop",
                line: [
                  [20, 0],
                  [30, 0],
                  [30, 10],
                  [25, -10],
                ],
              },
            ],
            drives: [
              drive({
                line: [
                  [0, -30],
                  [0, -10],
                  [1, -30],
                  [5.5, 0],
                ],
              }),
            ],
          },
        },
      }),
    );
    const place = (code: string) => problems.find((problem) => problem.code === code)?.at;
    expect(place("pad-under-building")).toEqual([2, 2]);
    expect(place("line-crosses-itself")).toEqual([27.5, 0]);
    expect(place("line-turns-back")).toEqual([0, -10]);
  });

  it("a swale whose typed bed rises says where", () => {
    const swale = {
      id: "w1",
      name: "swale",
      line: [
        [-10, 20],
        [30, 20],
      ],
      beds: [{ at: 20, height: 101 }],
    };
    const uphill = solved(site({ rest: { grading: { swales: [swale] } } }));
    expect(uphill.problems.find(({ code }) => code === "swale-bed-rises")?.where).toContain(
      "0.000 m to 20.000 m",
    );
  });
});

describe("slopes and walls", () => {
  const lot = {
    outline: [
      [-30, -6],
      [40, -6],
      [40, 40],
      [-30, 40],
    ],
  };
  const high = { ...shed, floor: 102, topOfWallAboveFloor: 0 };
  const project = site({ building: high, rest: { lot } });

  it("that pass the lot line say what would stop there, and one click does it", () => {
    const past = solved(project).problems.find(({ code }) => code === "grading-past-lot");
    expect(past?.how).toMatch(/stops there at \d\.\d : 1, or with a retaining wall/);
    const slope = past?.fixes?.find(({ words }) => words.startsWith("Take fill slopes"));
    const edit = slope && applyFix(project, slope);
    if (!edit?.ok) throw new Error("no mend");
    expect(codes(solved(edit.project).problems)).not.toContain("grading-past-lot");
  });

  it("and where a side has a slope of its own it is that side's which one click changes", () => {
    const { apron, slopes } = project.grading;
    const own = (fill: number, usual: number): Project => ({
      ...project,
      grading: {
        ...project.grading,
        slopes: { ...slopes, corners: "mitred", fill: usual },
        apron: {
          ...apron,
          sides: [{ wall: 0, showing: null, fall: null, width: null, fill, cut: null }],
        },
      },
    });
    const steep = own(8, 1.5);
    const fixOf = (of: Project) =>
      solved(of)
        .problems.find(({ code }) => code === "grading-past-lot")
        ?.fixes?.find(({ words }) => words.startsWith("Take"));
    const fix = fixOf(steep);
    expect(fix?.words).toMatch(/^Take \d\.\d : 1 for the fill slope before A-B$/);
    const edit = fix && applyFix(steep, fix);
    if (!edit?.ok) throw new Error("no mend");
    expect(edit.project.grading.slopes.fill).toBe(1.5);
    expect(codes(solved(edit.project).problems)).not.toContain("grading-past-lot");
  });

  it("or put a wall there, which is then judged", () => {
    const past = solved(project).problems.find(({ code }) => code === "grading-past-lot");
    const wall = past?.fixes?.find(({ words }) => words.startsWith("Put a retaining wall"));
    const edit = wall && applyFix(project, wall);
    if (!edit?.ok) throw new Error("no mend");
    const results = solved(edit.project);
    expect(codes(results.problems)).not.toContain("grading-past-lot");
    expect(codes(results.problems)).toContain("retaining-wall-loaded");
    const [held] = results.grading?.walls ?? [];
    expect(held?.exposed).toBeGreaterThan(0.5);
  });

  it("the wall that is offered is as high as the one that is built, whichever way the lot's corners go round", () => {
    for (const outline of [lot.outline, [...lot.outline].reverse()]) {
      const plan = site({ building: high, rest: { lot: { outline } } });
      const before = solved(plan);
      const past = before.problems.find(({ code }) => code === "grading-past-lot");
      const put = past?.fixes?.find(({ words }) => words.startsWith("Put a retaining wall"));
      const edit = put && applyFix(plan, put);
      if (!edit?.ok) throw new Error("no mend");
      const [held] = solved(edit.project).grading?.walls ?? [];
      // 2 m of floor − 0.1524 shown − 5 % of 3.048 m, then 3 : 1 for 5.7 − 3.048 m: 0.3 m inside the line at 6 m.
      const stands = 102 - 0.1524 - 0.05 * 3.048 - (5.7 - 3.048) / 3 - 100;
      expect(held?.exposed).toBeCloseTo(stands, 6);
      expect(before.grading?.fits[0]?.wallHeight).toBeCloseTo(held?.exposed ?? 0, 6);
      expect(past?.how).toContain(`a retaining wall ${stands.toFixed(3)} m high, 0.300 m inside the line`);
    }
  });

  it("and where a wall stands along the line nothing is offered for it any more", () => {
    const past = solved(project).problems.find(({ code }) => code === "grading-past-lot");
    const put = past?.fixes?.find(({ words }) => words.startsWith("Put a retaining wall"));
    const edit = put && applyFix(project, put);
    if (!edit?.ok) throw new Error("no mend");
    expect(solved(project).grading?.fits).toHaveLength(1);
    expect(solved(edit.project).grading?.fits).toEqual([]);
  });

  it("or a wall with a height of its own is built into the ground, its earth and its section", () => {
    const terrace = (more: Record<string, unknown>) =>
      solvedWith({
        walls: [
          {
            id: "r1",
            name: "garden wall",
            line: [
              [20, -20],
              [40, -20],
            ],
            lowSide: "right",
            exposed: 0.9,
            level: 2,
            ...more,
          },
        ],
      });
    const solvedWith = (grading: Record<string, unknown>) => {
      const plan = site({ surface: plane(100), rest: { grading } });
      return { plan, results: solved(plan) };
    };
    const { plan, results } = terrace({});
    const none = solvedWith({}).results;
    const more = (results.earthwork?.total.fill ?? 0) - (none.earthwork?.total.fill ?? 0);
    // 20 m × (0.9 × 2 + 3 × 0.9² ∕ 2), and what runs round its ends.
    expect(more).toBeGreaterThan(20 * (1.8 + 1.215) - 0.5);
    expect(more).toBeLessThan(20 * (1.8 + 1.215) + 14);
    const across = sectionAlong(
      [
        [30, -25],
        [30, -10],
      ],
      plan,
      results,
      100.5,
    );
    const heightAt = (d: number) => across?.finished[2 * Math.round((d / 15) * 239) + 1];
    expect(heightAt(3)).toBeCloseTo(100, 6);
    expect(heightAt(6)).toBeCloseTo(100.9, 6);
    expect(heightAt(8.5)).toBeCloseTo(100.9 - 1.5 / 3, 1);
    expect(codes(results.problems)).not.toContain("retaining-wall-high");
    expect(codes(terrace({ exposed: 1.2 }).results.problems)).toContain("retaining-wall-high");
  });

  it("whose earth runs round its ends says at which end, how far, and how long it would be to keep it back", () => {
    const garden = {
      id: "r1",
      name: "garden wall",
      line: [
        [20, -20],
        [40, -20],
      ],
      exposed: 0.9,
    };
    const along = (grading: object) =>
      solved(site({ surface: plane(100), rest: { grading } })).problems.find(
        ({ code }) => code === "retaining-wall-ends",
      );
    // 3 : 1 from 0.9 m.
    const said = along({ walls: [garden] });
    expect(said?.what).toBe(
      "Fill runs round both its ends on to the ground in front: 2.700 m past its west end and 2.700 m past its east end.",
    );
    expect(said?.how).toMatch(/^To keep it back the wall would be 25\.400 m long in all: draw a wall/);
    const on = (id: string, from: number, to: number) => ({
      id,
      name: id,
      line: [
        [from, -20],
        [to, -20],
      ],
    });
    const one = along({ walls: [garden, on("r2", 40, 42.7)] });
    expect(one?.what).toBe("Fill runs round its end on to the ground in front: 2.700 m past its west end.");
    expect(along({ walls: [garden, on("r2", 40, 42.7), on("r3", 17.3, 20)] })).toBeUndefined();
    expect(along({ walls: [{ ...garden, holds: "cut" }] })?.what).toMatch(
      /^The cut runs round both its ends into the ground behind: 1\.800 m/,
    );
  });

  it("but lower than what comes to it says by how much", () => {
    const past = solved(project).problems.find(({ code }) => code === "grading-past-lot");
    const wall = past?.fixes?.find(({ words }) => words.startsWith("Put a retaining wall"));
    const put = wall && applyFix(project, wall);
    if (!put?.ok) throw new Error("no mend");
    const id = put.project.grading.walls[0]?.id ?? "";
    const low = gradingEdits.changeRetainingWall.run(put.project, { id, patch: { exposed: 0.3 } });
    if (!low.ok) throw new Error(low.why);
    const results = solved(low.project);
    const [held] = results.grading?.walls ?? [];
    expect(held?.exposed).toBeCloseTo(0.3, 1);
    expect(held?.short).toBeCloseTo((held?.holds ?? 0) - 0.3, 6);
    expect(results.problems.find(({ code }) => code === "retaining-wall-short")?.what).toMatch(
      /^As typed it is [\d.]+ m too low for what it holds/,
    );
  });

  it("that never meet the ground say so, with the wall that ends them", () => {
    const steep = solved(site({ surface: plane(100, 0, 0.36), reach: 300, spacing: 60, building: high }));
    expect(steep.problems.find(({ code }) => code === "slope-never-meets")?.how).toMatch(
      /wall [\d.]+ m high/,
    );
  });

  it("into a setback say by how much", () => {
    const setback = { id: "k1", line: 0, distance: { text: "5", m: 5 } };
    const into = solved(
      site({
        building: high,
        rest: {
          lot: { ...lot, outline: lot.outline.map(([x, y]) => [x, y === -6 ? -9 : y]), setbacks: [setback] },
        },
      }),
    );
    expect(codes(into.problems)).toContain("grading-past-setback");
  });

  it("a swale across a parking pad is a conflict, told by how much, and turned by the order", () => {
    const grading = {
      pads: [
        {
          id: "q1",
          name: "parking",
          outline: [
            [20, -5],
            [30, -5],
            [30, 5],
            [20, 5],
          ],
          level: { kind: "height", height: 100.5 },
          fall: 0,
        },
      ],
      swales: [
        {
          id: "w1",
          name: "swale",
          line: [
            [18, 0],
            [40, 0],
          ],
          depth: 0.2,
          fall: 0.005,
        },
      ],
    };
    const said = (order: string[]) =>
      solved(site({ rest: { grading: { ...grading, order } } })).problems.find(
        ({ code }) => code === "grading-conflict",
      )?.what;
    expect(said([])).toMatch(/^Swale cuts parking by up to 0\.7/);
    expect(said(["apron", "w1", "q1"])).toMatch(/^Parking raises swale by up to 0\.7/);
  });
});

describe("what happens to a drive's surface", () => {
  const across = (y: number) => [
    [-20, y],
    [30, y],
  ];
  const said = (grading: object, drainage: object = {}) => {
    const results = solved(
      site({
        surface: plane(100, 0, 0.01),
        building: withDoor,
        rest: { grading: { drives: [drive()], ...grading }, drainage },
      }),
    );
    return results.problems
      .filter(({ code }) => code === "grading-conflict" || code === "swale-crosses-drive")
      .map(({ severity, what }) => `${severity}: ${what}`);
  };
  const ditch = { swales: [{ id: "w1", name: "ditch", line: across(-15), depth: 0.3, fall: 0.001 }] };
  const dip = { pipe: { crossing: "dip" } };

  it("a berm over it is a caution, with the height it is raised by", () => {
    expect(said({ berms: [{ id: "b1", name: "bank", line: across(-15), height: 0.6 }] })).toEqual([
      expect.stringMatching(/^caution: Bank raises drive by up to 0\.\d{3} m over/),
    ]);
  });

  it("a swale along it is a caution, with the depth it is cut by", () => {
    const along = {
      swales: [
        {
          id: "w1",
          name: "ditch",
          line: [
            [5.5, -4],
            [5.5, -28],
          ],
          depth: 1.2,
        },
      ],
    };
    expect(said(along)).toEqual([
      expect.stringMatching(/^caution: Ditch cuts drive by up to 1\.\d{3} m over/),
    ]);
  });

  it("a swale that a pipe takes under it is no conflict in either order, for nothing is lost; in a dip it is one", () => {
    const pairs = (grading: object, drainage: object = {}) =>
      solved(
        site({
          surface: plane(100, 0, 0.01),
          building: withDoor,
          rest: { grading: { drives: [drive()], ...grading }, drainage },
        }),
      )
        .grading?.conflicts.map(({ first, second }) => [first, second])
        .filter((pair) => pair.includes("w1") && pair.includes("v1"));
    expect(pairs(ditch)).toEqual([]);
    expect(pairs({ ...ditch, order: ["w1", "v1"] })).toEqual([]);
    expect(pairs(ditch, dip)).toEqual([["v1", "w1"]]);
  });

  it("a swale across it is told once, as it is in either order: a pipe, a dip, or closed", () => {
    const turned = { ...ditch, order: ["w1", "v1"] };
    expect(said(ditch)).toEqual([expect.stringMatching(/^note: It runs under drive in a pipe/)]);
    expect(said(turned)).toEqual([expect.stringMatching(/^note: It runs under drive in a pipe/)]);
    expect(said(ditch, dip)).toEqual([
      expect.stringMatching(/^caution: Drive dips down to its bed there between banks of 3 : 1/),
    ]);
    expect(said(turned, dip)).toEqual([
      expect.stringMatching(/^caution: Drive comes later in the order and closes it/),
    ]);
  });
});

describe("as JSON", () => {
  it("tells order, sides, conflicts, walls, pads and fits by names that scripts rely on", () => {
    const project = site({ rest: { grading: { points: [{ id: "z1", at: [30, 0], height: 100.2 }] } } });
    const json = resultsToJson(solved(project), project);
    expect(json.grading).toMatchObject({
      order: [
        { id: "apron", kind: "apron" },
        { id: "z1", kind: "point" },
      ],
      sides: expect.arrayContaining([expect.objectContaining({ name: "A-B", graded: true, meets: true })]),
      conflicts: [],
      walls: [],
      pads: [],
      fits: [],
    });
  });
});

describe("sides that show different heights of wall", () => {
  const stepsOf = (apron: object) =>
    solved(site({ rest: { grading: { apron, slopes: { corners: "mitred" } } } })).problems.filter(
      ({ code }) => code === "grading-corner-step",
    );

  it("make a step at each corner where they meet, told with its height", () => {
    const told = stepsOf({ showing: 0.2, sides: [{ wall: 1, showing: 0.8 }] });
    expect(told.map(({ where, at, severity }) => [where, at, severity])).toEqual([
      ["corner B", [12, 0], "caution"],
      ["corner C", [12, 8], "caution"],
    ]);
    expect(told[0]?.what).toContain("wall A-B stands 0.600 m higher than that of wall B-C");
    expect(told[1]?.what).toContain("wall C-D stands 0.600 m higher than that of wall B-C");
  });

  it("make none where they show nearly the same, or one is left as it is", () => {
    expect(stepsOf({ showing: 0.2, sides: [{ wall: 1, showing: 0.25 }] })).toEqual([]);
    expect(stepsOf({ showing: 0.2, leave: [1], sides: [{ wall: 1, showing: 0.8 }] })).toEqual([]);
  });
});
