import { describe, expect, it } from "vitest";
import type { Project } from "../../src/document/schema";
import { createSolver } from "../../src/solve/pipeline";
import type { Problem } from "../../src/solve/results";
import { demoProject } from "../support/demo";
import { plane, shed, site } from "./sites";

type Part = Record<string, unknown>;
const problem = (project: Project, code: string, floor?: number): Problem | undefined =>
  createSolver()
    .solve(project, floor === undefined ? {} : { floor })
    .problems.find((found) => found.code === code);

const built = (part: Part, rest: Part = {}, surface = plane(100)) =>
  site({ surface, building: { ...shed, ...part }, rest });

describe("cautions", () => {
  it.each([
    ["from 4 ft a ladder", 100.15, "trench-ladder", "trench-deep"],
    ["from 5 ft protected sides", 99.8, "trench-deep", "trench-ladder"],
  ])("trench: %s", (_why, floor, wanted, other) => {
    const project = built({});
    expect(problem(project, wanted, floor)?.where).toMatch(/^trench at corner [A-D]$/);
    expect(problem(project, other, floor)).toBeUndefined();
  });

  it("none for a trench of three and a half feet", () => {
    const project = built({});
    expect(problem(project, "trench-ladder", 100.5)).toBeUndefined();
  });

  it("a wall free at its top that holds more than 48 in", () => {
    const rest = { grading: { apron: { leave: [0, 1, 2, 3] } } };
    expect(problem(built({ floor: 101.3 }, rest), "wall-holds-fill")?.what).toContain("1.300 m");
    expect(problem(built({ floor: 101.2 }, rest), "wall-holds-fill")).toBeUndefined();
  });

  it("slopes as steep as a wall, for one side too", () => {
    const rest = { grading: { apron: { sides: [{ wall: 1, fill: 0.01 }] } } };
    expect(problem(built({}, rest), "slopes-steep")).toMatchObject({
      where: "the side slopes of wall B-C",
      what: "At 0.01 : 1 they stand all but upright, as no earth does.",
    });
  });

  it("a wall from which the ground doesn't fall away", () => {
    const rest = { grading: { apron: { fall: 0.02 } } };
    expect(problem(built({}, rest), "wall-fall-away")?.what).toContain("0.061 m");
    expect(problem(built({}), "wall-fall-away")).toBeUndefined();
  });

  it("a level apron is built as it is typed, and told: water stands on it", () => {
    const project = built({}, { grading: { apron: { fall: 0, sides: [{ wall: 2, fall: 0.06 }] } } });
    const { problems, earthwork } = createSolver().solve(project);
    const told = problems.filter(({ code }) => code === "wall-fall-away");
    expect(told.map(({ where }) => where)).toEqual(["wall A-B", "wall B-C", "wall D-A"]);
    expect(told[0]?.what).toBe(
      "The finished ground lies level beside it where 0.152 m of fall is wanted: water stands there.",
    );
    expect(problems.some(({ code }) => code === "apron-without-sense")).toBe(false);
    expect(earthwork?.outside.fill).toBeGreaterThan(0);
  });

  it("water that stands beside the building", () => {
    const rest = { grading: { apron: { leave: [0, 1, 2, 3] } } };
    const hollow = (x: number, y: number) => 100 + Math.min(0.3, 0.003 * ((x - 10) ** 2 + (y - 20) ** 2));
    const found = problem(built({}, rest, hollow), "pond-at-wall");
    expect(found?.what).toMatch(/0\.29\d m deep/);
    expect(problem(built({}, rest, plane(100, 0.03, 0.01)), "pond-at-wall")).toBeUndefined();
  });

  it("a drive that falls to the door", () => {
    const doors = [{ id: "door", wall: 2, offset: 4.5, width: 3 }];
    const drives = [
      {
        id: "d",
        name: "lane",
        line: [
          [6, 40],
          [6, 8],
        ],
        door: "door",
      },
    ];
    const project = built({ doors }, { grading: { drives } }, plane(100, 0, 0.05));
    expect(problem(project, "drive-falls-to-door")?.where).toBe("lane");
    const toNoDoor = drives.map((drive) => ({ ...drive, door: null }));
    const ends = built({ doors }, { grading: { drives: toNoDoor } }, plane(100, 0, 0.05));
    expect(problem(ends, "drive-falls-to-door")).toBeUndefined();
  });

  it("a swale that takes the apron away, not one at its foot", () => {
    const swale = (y: number) => ({
      swales: [
        {
          id: "w",
          name: "ditch",
          line: [
            [-10, y],
            [22, y],
          ],
          depth: 0.8,
        },
      ],
    });
    const level = plane(100, 0, 0);
    const close = problem(built({}, { grading: swale(9) }, level), "swale-takes-apron");
    expect(close).toMatchObject({ severity: "caution", ids: ["apron", "w"] });
    expect(close?.what).toMatch(/^Ditch cuts up to .* off pad and apron over/);
    expect(problem(built({}, { grading: swale(16) }, level), "swale-takes-apron")).toBeUndefined();
  });

  it("a drive that stops short of the building and serves no door", () => {
    const drives = [
      {
        id: "d",
        name: "lane",
        line: [
          [6, -30],
          [6, -3],
        ],
      },
    ];
    const found = problem(built({}, { grading: { drives } }), "drive-serves-no-door");
    expect(found).toMatchObject({ severity: "caution", where: "lane", at: [6, -3], ids: ["d"] });
    expect(found?.what).toContain("3.000 m from wall A-B");
    expect(found?.what).toContain("0.500 m below the floor");
  });

  it("a floor far from all the ground, as a slip of unit or datum makes it", () => {
    expect(problem(built({}), "floor-far-from-ground", 103.1)?.what).toContain("3.100 m above");
    expect(problem(built({}), "floor-far-from-ground", 96.9)?.what).toContain("3.100 m below");
    expect(problem(built({}), "floor-far-from-ground", 102.9)).toBeUndefined();
  });

  it("tells a floor far from the ground before all that follows from it", () => {
    const project = built({});
    if (!project.building) throw new Error("no building");
    const high = { ...project, building: { ...project.building, floor: 200 } };
    const { problems } = createSolver().solve(high);
    const cautions = problems.filter(({ severity }) => severity === "caution");
    expect(cautions.length).toBeGreaterThan(1);
    expect(cautions[0]?.code).toBe("floor-far-from-ground");
  });

  it.each([
    ["a wall 30 m thick", { foundation: { wallThickness: 30 } }, {}, "wall thickness"],
    ["a wall 12 m high", { foundation: { wallHeight: 12 } }, {}, "wall height"],
    ["a footing 20 m wide", { foundation: { footingWidth: 20 } }, {}, "footing width"],
    ["a footing 8 m thick", { foundation: { footingThickness: 8 } }, {}, "footing thickness"],
    ["a slab 4 m thick", { foundation: { slabThickness: 4 } }, {}, "slab thickness"],
    ["frost to 30 m", { foundation: { frostDepth: 30 } }, {}, "frost depth"],
    ["a drive that may climb 900 %", {}, { rules: { steepestDrive: 9 } }, "steepest drive"],
    [
      "a reading above the beam",
      {},
      { worksheet: { markReading: { text: "-4", m: -4 } } },
      "today's reading on the mark",
    ],
  ])("asks about a figure that no such job has: %s", (_what, part, rest, where) => {
    const found = createSolver()
      .solve(built(part, rest))
      .problems.filter(({ code }) => /-figure$/.test(code));
    expect(found.map((each) => each.where)).toEqual([where]);
  });

  it("asks about nothing on the usual job", () => {
    const { problems } = createSolver().solve(built({}));
    expect(problems.filter(({ code }) => /-figure$/.test(code))).toEqual([]);
  });

  it("a swale through a drive", () => {
    const drives = [
      {
        id: "d",
        name: "lane",
        line: [
          [6, -30],
          [6, -12],
        ],
      },
    ];
    const swales = (y: number) => [
      {
        id: "s",
        name: "ditch",
        line: [
          [-10, y],
          [30, y - 2],
        ],
      },
    ];
    const project = (y: number) => built({}, { grading: { drives, swales: swales(y) } }, plane(100, -0.02));
    expect(problem(project(-20), "swale-crosses-drive")?.at?.[0]).toBeCloseTo(6, 9);
    expect(problem(project(20), "swale-crosses-drive")).toBeUndefined();
  });

  it("a swale under a drive: in a pipe, or by a dip where that is chosen", () => {
    const grading = {
      drives: [
        {
          id: "d",
          name: "lane",
          line: [
            [6, -30],
            [6, -12],
          ],
        },
      ],
      swales: [
        {
          id: "s",
          name: "ditch",
          line: [
            [-10, -20],
            [30, -22],
          ],
          depth: 0.6,
        },
      ],
    };
    const slope = plane(100, -0.02);
    expect(problem(built({}, { grading }, slope), "swale-crosses-drive")?.what).toContain("in a pipe");
    const dip = built({}, { grading, drainage: { pipe: { crossing: "dip" } } }, slope);
    // Banks of 3 : 1 stop anything on wheels; flat ones don't.
    expect(problem(dip, "swale-crosses-drive")).toMatchObject({ severity: "caution" });
    const [ditch] = grading.swales;
    const flat = { ...grading, swales: [{ ...ditch, sideSlope: 10 }] };
    const drivable = built({}, { grading: flat, drainage: { pipe: { crossing: "dip" } } }, slope);
    expect(problem(drivable, "swale-crosses-drive")).toMatchObject({ severity: "note" });
    expect(problem(drivable, "swale-crosses-drive")?.what).toContain("dips down");
    const solved = createSolver().solve(dip);
    expect(solved.water.pipes).toEqual([]);
    // Neither way is one act told to spoil the other.
    for (const project of [dip, built({}, { grading }, slope)])
      expect(problem(project, "grading-conflict")).toBeUndefined();
  });

  it("a swale that comes out at the lot line, or beyond it", () => {
    const outline = [
      [-12, -30],
      [40, -30],
      [40, 40],
      [-12, 40],
    ];
    const swale = (x: number) => ({
      lot: { outline },
      grading: {
        swales: [
          {
            id: "s",
            name: "ditch",
            line: [
              [-8, 20],
              [x, 20],
            ],
          },
        ],
      },
    });
    const slope = plane(100, -0.02);
    expect(problem(built({}, swale(38), slope), "swale-outlet-at-line")?.what).toContain(
      "2.000 m from the lot line",
    );
    expect(problem(built({}, swale(42), slope), "swale-outlet-at-line")?.what).toContain("2.000 m beyond");
    expect(problem(built({}, swale(30), slope), "swale-outlet-at-line")).toBeUndefined();
  });

  it("side slopes steeper than 2 : 1", () => {
    expect(problem(built({}, { grading: { slopes: { fill: 1.5, cut: 2 } } }), "slopes-steep")).toBeDefined();
    expect(problem(built({}), "slopes-steep")).toBeUndefined();
  });

  it("rules that leave no floor, by name", () => {
    const project = built({}, { rules: { mostShowing: 0.1 } });
    expect(problem(project, "band-empty")?.what).toMatch(
      /top of wall above the high ground.*wall out of the ground as it is/,
    );
  });

  it("a height above the beam", () => {
    const project = built({}, { worksheet: { markReading: { text: "0.2", m: 0.2 } } });
    expect(problem(project, "reading-above-beam")?.what).toContain("0.300 m");
  });
});

describe("clearances", () => {
  const lot = (outline: number[][], features: Part[] = []) => built({}, { lot: { outline, features } });
  const wide = [
    [-30, -30],
    [40, -30],
    [40, 40],
    [-30, 40],
  ];

  it("grading past the lot line", () => {
    const narrow = [
      [-30, -3],
      [40, -3],
      [40, 40],
      [-30, 40],
    ];
    // 0.3476 m of fill at the wall: 3.048 m of apron, then 0.1952 × 3 = 0.586 m of slope: 3.634 m, 3 m of it on the lot.
    const found = problem(lot(narrow), "grading-past-lot");
    expect(found?.what).toMatch(/0\.63[34] m past it/);
    expect(problem(lot(wide), "grading-past-lot")).toBeUndefined();
  });

  it.each([
    ["a well too near", "well", [[6, -6]], 3, true],
    ["a well far enough", "well", [[6, -9]], 3, false],
    [
      "a buried line under the fill",
      "buried-line",
      [
        [-20, -2],
        [40, -2],
      ],
      0,
      true,
    ],
    [
      "a buried line under the floor",
      "buried-line",
      [
        [4, 4],
        [8, 4],
      ],
      0,
      true,
    ],
    ["a tree by the corner", "tree", [[-5, -5]], 4, true],
    [
      "a septic field that the work lies in",
      "septic",
      [
        [-25, -25],
        [35, -25],
        [35, 35],
        [-25, 35],
      ],
      0,
      true,
    ],
    [
      "a septic field whose last side runs back under the fill",
      "septic",
      [
        [-20, -2],
        [-20, -25],
        [40, -25],
        [40, -2],
      ],
      0,
      true,
    ],
    [
      "a fence of the same places, which has no such side",
      "fence",
      [
        [-20, -2],
        [-20, -25],
        [40, -25],
        [40, -2],
      ],
      0,
      false,
    ],
  ])("%s", (_why, kind, points, keepClear, found) => {
    const project = lot(wide, [{ id: "f", kind, name: "it", points, keepClear }]);
    expect(problem(project, "grading-near-feature") !== undefined).toBe(found);
  });
});

describe("work past a straight line on level ground", () => {
  // 1.85 m of fill at the wall's foot, 5 % over 3 m leave 1.70 m, which 4 : 1 takes 6.80 m: it ends 9.80 m from the wall.
  const past = (westLine: number, setback = 0) =>
    built(
      {
        outline: [
          [21, 24],
          [33, 24],
          [33, 33],
          [21, 33],
        ],
        floor: 102,
        topOfWallAboveFloor: 0,
      },
      {
        grading: { apron: { showing: 0.15, fall: 0.05, width: 3 }, slopes: { fill: 4, cut: 4 } },
        lot: {
          outline: [
            [westLine, 0],
            [55, 0],
            [55, 58],
            [westLine, 58],
          ],
          setbacks: setback ? [{ line: 3, distance: { text: `${setback} m`, m: setback } }] : [],
        },
      },
    );

  it.each([
    [12, "0.800 m"],
    [11.83, "0.630 m"],
    [11.235, "0.035 m"],
  ])("is told to the millimetre, small reaches too: lot line at %s", (line, told) => {
    const found = problem(past(line), "grading-past-lot");
    expect(found?.what).toBe(`Cut or fill reaches ${told} past it.`);
    // Along the straight part, not at a rounded corner of the slope.
    expect(found?.at?.[0]).toBeCloseTo(11.2, 3);
    expect(found?.at?.[1]).toBeCloseTo(28.5, 0);
  });

  it("is nothing where it ends before the line", () => {
    expect(problem(past(11.1), "grading-past-lot")).toBeUndefined();
  });

  it("into a setback, and over all of it where it goes on past the line", () => {
    expect(problem(past(10, 2.6), "grading-past-setback")?.what).toBe("Cut or fill reaches 1.400 m into it.");
    expect(problem(past(12, 2.6), "grading-past-setback")?.what).toBe("Cut or fill reaches 2.600 m into it.");
  });
});

describe("work at what stands on the lot", () => {
  // 2 m of fill at the wall's foot on level ground: a 2 m level apron, then 3 : 1, so it ends 8 m from the wall.
  const grading = { apron: { showing: 0, fall: 1e-9, width: 2 }, slopes: { fill: 3, cut: 3 } };
  const told = (feature: Part) => {
    const features = [{ id: "f", name: "it", ...feature }];
    return problem(
      built({ floor: 102, topOfWallAboveFloor: 0 }, { grading, lot: { features } }),
      "grading-near-feature",
    );
  };

  it("that covers all of a buried line is as long as the line", () => {
    const points = [
      [0.5, -1],
      [11.5, -1],
    ];
    expect(told({ kind: "buried-line", points })?.what).toMatch(/^Work runs over 11\.000 m of it:/);
  });

  it("that covers a part of a line is told to where it ends", () => {
    const points = [
      [6, -1],
      [6, -20],
    ];
    // From 1 m to 8 m from the wall.
    expect(told({ kind: "buried-line", points })?.what).toMatch(/^Work runs over 7\.000 m of it:/);
  });

  it("that runs over a tree says how deep and how far past it, and a slope that ends at its circle", () => {
    const tree = told({ kind: "tree", points: [[6, -4]], keepClear: 3 });
    // 2 m beyond the apron's edge the slope stands 2 − 2 / 3 high, and has 4 m to go.
    expect(tree?.what).toBe(
      "Work runs over it, 1.333 m of fill there, and 4.000 m on past it, where 3.000 m is to stay clear.",
    );
    expect(tree?.how).toMatch(
      /^Only a retaining wall 2.000 m high, 3.000 m from it, would stop the fill slope before what stays clear\./,
    );
  });

  it("that runs over a part of a buried line says how much, at the deepest place", () => {
    const pipe = told({
      kind: "buried-line",
      points: [
        [6, -40],
        [6, -4],
      ],
    });
    expect(pipe?.what).toBe("Work runs over 4.000 m of it: up to 1.333 m of fill.");
    expect(pipe?.at).toEqual([6, -4]);
    // No slope is fitted to end just on it: how far to stay off must be typed first.
    expect(pipe?.fixes ?? []).toEqual([]);
    expect(pipe?.how).toMatch(/^Have it located .* Type how far work is to stay clear of it/);
    expect(pipe?.how).not.toMatch(/slope stops|retaining wall/);
  });

  it("that only comes near is measured to where the slope ends, not to the grid", () => {
    const pipe = told({
      kind: "buried-line",
      points: [
        [-40, -8.4],
        [60, -8.4],
      ],
      keepClear: 1,
    });
    expect(pipe?.what).toBe("Work comes within 0.400 m of it, where 1.000 m is to stay clear.");
    expect(pipe?.at?.[1]).toBeCloseTo(-8, 3);
    expect(told({ kind: "tree", points: [[6, -11.001]], keepClear: 3 })).toBeUndefined();
  });

  it("that stands far off the lot is passed over", () => {
    expect(told({ kind: "tree", points: [[5000, 5000]], keepClear: 3 })).toBeUndefined();
  });
});

describe("the mark that the sheets are told from", () => {
  const codes = (project: Project) =>
    createSolver()
      .solve(project)
      .problems.map(({ code }) => code);
  const studio = demoProject("pottery-studio");

  it("is asked for when there is none, or when it has no place", () => {
    expect(codes(studio)).not.toContain("mark-unplaced");
    const marks = studio.survey.marks.map((mark) => ({ ...mark, at: null }));
    expect(codes({ ...studio, survey: { ...studio.survey, marks } })).toContain("mark-unplaced");
    const { survey, ...rest } = demoProject("open-hillside");
    const setups = survey.setups.map((setup) => ({ ...setup, assumedBeam: { text: "111.5", m: 111.5 } }));
    const shots = survey.shots.filter(({ kind }) => kind !== "mark");
    const markless = { ...rest, survey: { ...survey, marks: [], setups, shots } };
    expect(codes(markless)).toContain("mark-missing");
    expect(codes({ ...rest, survey })).not.toContain("mark-missing");
  });
});
