import { describe, expect, it } from "vitest";
import { footprint } from "../../src/grading";
import { outlineProblem } from "../../src/solve/outline-problem";
import { createSolver } from "../../src/solve/pipeline";
import type { Results } from "../../src/solve/results";
import { reading, shed, site } from "./sites";

type Part = Record<string, unknown>;

const withBuilding = (part: Part) => site({ building: { ...shed, ...part } });
const withDrive = (part: Part, building: Part = {}) =>
  site({
    building: { ...shed, doors: [{ id: "door", wall: 0, offset: 4.5, width: 3 }], ...building },
    rest: {
      grading: {
        drives: [
          {
            id: "d",
            name: "lane",
            line: [
              [6, -30],
              [6, 0],
            ],
            door: "door",
            ...part,
          },
        ],
      },
    },
  });
const withSwale = (part: Part) =>
  site({
    rest: {
      grading: {
        swales: [
          {
            id: "s",
            name: "ditch",
            line: [
              [-10, 14],
              [30, 14],
            ],
            ...part,
          },
        ],
      },
    },
  });
const shots = (places: readonly (readonly [number, number, number])[]) => ({
  survey: {
    marks: [{ id: "m", name: "bolt", height: { text: "100", m: 100 } }],
    setups: [{ id: "u", name: "first" }],
    shots: [
      { id: "bm", setup: "u", kind: "mark", of: "m", reading: reading(100) },
      ...places.map(([x, y, z], i) => ({
        id: `s${i}`,
        name: `spot ${i}`,
        setup: "u",
        reading: reading(z),
        place: { kind: "at", x, y },
      })),
    ],
  },
});

const goesOn = (results: Results) => results.corners.length > 0 && results.earthwork !== null;

describe("a building that can't be built on", () => {
  it("says which of its walls cross, and where", () => {
    const outline: [number, number][] = [
      [0, 0],
      [10, 8],
      [10, 0],
      [0, 8],
    ];
    expect(footprint(outline)).toMatchObject({ ok: false, fault: { why: "crosses", corners: [0, 1, 2, 3] } });
    const problem = outlineProblem({ why: "crosses", corners: [0, 1, 2, 3] }, outline);
    expect(problem.what).toMatch(/^Walls A-B and C-D cross or touch each other/);
    expect(problem.at).toEqual([expect.closeTo(5, 9), expect.closeTo(4, 9)]);
  });

  it.each([
    [
      "walls that cross",
      [
        [0, 0],
        [10, 8],
        [10, 0],
        [0, 8],
      ],
      "outline-crosses",
      /cross or touch/,
    ],
    [
      "two corners at one place",
      [
        [0, 0],
        [10, 0],
        [10, 0],
        [0, 8],
      ],
      "outline-repeated",
      /Corners B and C/,
    ],
    [
      "all corners in a line",
      [
        [0, 0],
        [10, 0],
        [20, 0],
      ],
      "outline-crosses",
      /cross or touch/,
    ],
    [
      "no area to speak of",
      [
        [0, 0],
        [4, 0],
        [4, 0.004],
      ],
      "outline-flat",
      /encloses no ground/,
    ],
  ])("says so, and the ground is still there: %s", (_why, outline, code, what) => {
    const results = createSolver().solve(withBuilding({ outline }));
    expect(results.problems.find((problem) => problem.code === code)?.what).toMatch(what);
    expect(goesOn(results)).toBe(false);
    expect(results.ground).not.toBeNull();
    expect(results.existingContours).toBeDefined();
  });
});

describe("parts that don't fit, with the rest going on", () => {
  it.each([
    [
      "a drive of one place",
      withDrive({
        line: [
          [6, -30],
          [6, -30],
        ],
      }),
      "line-without-length",
      "lane",
    ],
    ["a drive to a door that isn't there", withDrive({ door: "gone" }), "drive-without-door", "lane"],
    [
      "a drive that ends beside its door",
      withDrive({
        line: [
          [6, -30],
          [0, -4],
        ],
      }),
      "drive-off-door",
      "lane",
    ],
    [
      "a drive shorter than its landing",
      withDrive({
        line: [
          [6, -2],
          [6, 0],
        ],
      }),
      "drive-shorter-than-landing",
      "lane",
    ],
    [
      "a door on a wall that isn't there",
      withDrive({}, { doors: [{ id: "door", wall: 9, offset: 0, width: 3 }] }),
      "door-without-wall",
      "door",
    ],
    [
      "a door past the end of its wall",
      withDrive({}, { doors: [{ id: "door", wall: 0, offset: 10, width: 3 }] }),
      "door-past-wall",
      "door, wall A-B",
    ],
    [
      "a swale of one place",
      withSwale({
        line: [
          [0, 14],
          [0, 14],
        ],
      }),
      "line-without-length",
      "ditch",
    ],
    ["a swale that runs backwards", withSwale({ depth: 0 }), "swale-does-not-drain", "ditch"],
    [
      "a side to leave that isn't there",
      site({ rest: { grading: { apron: { leave: [7] } } } }),
      "apron-side-missing",
      "the apron",
    ],
  ])("%s", (_why, project, code, where) => {
    const results = createSolver().solve(project);
    expect(results.problems.find((problem) => problem.code === code)?.where).toBe(where);
    expect(goesOn(results)).toBe(true);
  });

  it("a drive and a swale that cross themselves, or run through the building", () => {
    const line = [
      [-10, 4],
      [20, 4],
      [20, -10],
      [6, 20],
    ];
    for (const project of [withDrive({ line, door: null }), withSwale({ line })])
      expect(goesOn(createSolver().solve(project))).toBe(true);
  });

  it("a drive as wide as the lot, slopes as flat as a table, a wall taller than a tower", () => {
    expect(goesOn(createSolver().solve(withDrive({ width: 80 })))).toBe(true);
    const flat = site({ rest: { grading: { slopes: { fill: 5000, cut: 5000 } } } });
    const results = createSolver().solve(flat);
    expect(goesOn(results)).toBe(true);
    expect(results.problems.some(({ code }) => code === "slopes-run-on")).toBe(true);
    expect(goesOn(createSolver().solve(withBuilding({ foundation: { wallHeight: 500 } })))).toBe(true);
  });
});

describe("shots that don't make a surface", () => {
  it.each([
    [
      "only two",
      [
        [0, 0, 100],
        [5, 5, 100],
      ] as const,
      "ground-too-few",
    ],
    [
      "four in a line",
      [
        [0, 0, 100],
        [5, 5, 100],
        [10, 10, 101],
        [20, 20, 99],
      ] as const,
      "ground-in-line",
    ],
  ])("%s", (_why, places, code) => {
    const results = createSolver().solve(site({ rest: shots(places) }));
    expect(results.problems.some((problem) => problem.code === code)).toBe(true);
    expect(results).toMatchObject({ ground: null, surface: null, corners: [] });
  });

  it("two at one place: one is used, and both are named", () => {
    const results = createSolver().solve(
      site({
        rest: shots([
          [0, 0, 100],
          [40, 0, 100],
          [0, 40, 100],
          [40, 0, 100.3],
        ]),
      }),
    );
    const problem = results.problems.find(({ code }) => code === "shots-at-one-place");
    expect(problem?.where).toContain("spot 1");
    expect(problem?.what).toContain("0.300 m apart");
    expect(problem?.ids).toEqual(["s1", "s3"]);
    expect(goesOn(results)).toBe(true);
  });

  it("a mark known only by its own place is no ground: it may be a nail in a tree", () => {
    const project = site({ spacing: 20 });
    expect(createSolver().solve(project).ground?.measuredPoints).toBe(49);
  });
});

describe("a building far from the shots", () => {
  it("stands on guessed ground and says how much of the earth does", () => {
    const outline = [
      [300, 300],
      [312, 300],
      [312, 308],
      [300, 308],
    ];
    const results = createSolver().solve(withBuilding({ outline }));
    expect(results.corners.every(({ guessed }) => guessed)).toBe(true);
    expect(results.earthwork?.guessedShare).toBeCloseTo(1, 9);
    expect(results.problems.some(({ code }) => code === "earth-on-guess")).toBe(true);
  });
});

describe("extreme but allowed figures", () => {
  it.each([1e6, -1e6])("a floor at %d m", (floor) => {
    const results = createSolver().solve(withBuilding({ floor }));
    expect(results.floor).toBe(floor);
    expect(goesOn(results)).toBe(true);
    expect(Number.isFinite(results.earthwork?.total.cut)).toBe(true);
  });

  it("coordinates of a map grid give the same figures as local ones", () => {
    const far = (points: readonly (readonly number[])[]) =>
      points.map(([x = 0, y = 0]) => [x + 512_000, y + 4_600_000]);
    const places: [number, number, number][] = [
      [-30, -30, 99],
      [40, -30, 100.5],
      [40, 40, 103],
      [-30, 40, 101],
      [5, 5, 100.4],
    ];
    const local = createSolver().solve(site({ rest: shots(places) }));
    const moved = places.map(([x, y, z]) => [x + 512_000, y + 4_600_000, z] as const);
    const map = createSolver().solve(
      site({ building: { ...shed, outline: far(shed.outline) }, rest: shots(moved) }),
    );
    for (const part of ["cut", "fill"] as const) {
      expect(map.earthwork?.inside[part]).toBeCloseTo(local.earthwork?.inside[part] ?? Number.NaN, 5);
      expect(map.earthwork?.outside[part]).toBeCloseTo(local.earthwork?.outside[part] ?? Number.NaN, 1);
    }
    expect(map.band.low).toBeCloseTo(local.band.low ?? Number.NaN, 6);
  });
});
