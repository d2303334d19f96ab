import { describe, expect, it } from "vitest";
import { newProject, type Project } from "../../src/document";
import { notationOf } from "../../src/panels/notation";
import { stepOfProblem } from "../../src/panels/stepOfProblem";
import { steps } from "../../src/panels/steps";
import { createSolver } from "../../src/solve/pipeline";
import { inOneList, lookedAt, lookWords } from "../../src/solve/to-look-at";
import { demoProject } from "../support/demo";

function looked(project: Project) {
  const results = createSolver().solve(project);
  const notation = notationOf(project.display);
  const look = lookedAt(project, results.problems, results, project.building?.floor ?? null, notation);
  return { problems: inOneList(look), steps: steps(project, results, notation, look) };
}

function states(project: Project) {
  return Object.fromEntries(looked(project).steps.map((step) => [step.name, step]));
}

describe("steps of an empty plan", () => {
  it("are all nothing yet", () => {
    expect(Object.values(states(newProject())).map(({ state }) => state)).toEqual(Array(10).fill("empty"));
  });
});

describe("steps of the studio", () => {
  const studio = demoProject("pottery-studio");

  it("carry short figures", () => {
    const { shots, building, floor, sheets } = states(studio);
    expect(shots?.figure).toBe(String(studio.survey.shots.filter(({ kind }) => kind !== "mark").length));
    expect(building?.figure).toBe("32×24");
    expect(floor?.figure).toBe(notationOf(studio.display).length(studio.building?.floor ?? 0));
    expect(sheets?.figure).toBe("Tabloid");
  });

  it("say when the drive is too steep", () => {
    expect(states(studio).drive?.state).toBe("complete");
    const strict = { ...studio, rules: { ...studio.rules, steepestDrive: 0.05 } };
    expect(states(strict).drive).toMatchObject({ state: "attention", words: "steeper than 5.0 %" });
  });

  it("say what is pressing instead of that all is well", () => {
    const drives = studio.grading.drives.map((drive) => ({ ...drive, door: null }));
    const loose = { ...studio, grading: { ...studio.grading, drives } };
    expect(states(loose).drive).toMatchObject({ state: "attention" });
    expect(states(loose).drive?.words).toMatch(/^drive: It ends on the ground as it is/);
    const [a, b, c, d] = studio.lot.outline as [
      [number, number],
      [number, number],
      [number, number],
      [number, number],
    ];
    const crossed = { ...studio, lot: { ...studio.lot, outline: [a, c, b, d] } };
    expect(states(crossed).lot?.words).toMatch(/^the lot: Its lines cross/);
  });

  it("say when the floor breaks a limit", () => {
    const building = studio.building;
    if (!building) throw new Error("the studio has no building");
    const sunk = { ...studio, building: { ...building, floor: building.floor - 1 } };
    expect(states(sunk).floor).toMatchObject({ state: "attention", words: "the floor breaks a limit" });
  });

  it("count the walls that water does not leave", () => {
    const { apron } = studio.grading;
    const flat = { ...studio, grading: { ...studio.grading, apron: { ...apron, fall: 0.03 } } };
    const wet = createSolver()
      .solve(flat)
      .water.walls.filter((wall) => !wall.passes).length;
    expect(wet).toBeGreaterThan(0);
    expect(states(flat).water?.words).toContain(`${wet} of 4 walls`);
  });

  it("ask for the frost depth until it is typed", () => {
    const { building } = studio;
    if (!building) throw new Error("the studio has no building");
    const unasked = {
      ...studio,
      building: { ...building, foundation: { ...building.foundation, frostDepth: null } },
    };
    expect(states(unasked).foundation?.state).toBe("work");
  });

  it("wait for a shot without a place", () => {
    const [, second] = studio.survey.shots;
    const shots = studio.survey.shots.map((shot) =>
      shot === second ? { ...shot, kind: "ground" as const, place: { kind: "none" as const } } : shot,
    );
    expect(states({ ...studio, survey: { ...studio.survey, shots } }).shots?.state).toBe("work");
  });
});

describe("set-out", () => {
  it("tells the survey's reading of the mark until today's is typed", () => {
    const studio = demoProject("pottery-studio");
    const asked = { ...studio, worksheet: { ...studio.worksheet, markReading: null } };
    const mark = studio.survey.shots.find(({ kind }) => kind === "mark")?.reading;
    const said = notationOf(studio.display).reading(mark?.m ?? Number.NaN);
    expect(states(asked).setout).toMatchObject({
      state: "work",
      words: `today's reading on the mark isn't typed yet; the survey's reading of it was ${said}`,
    });
    const typed = { ...asked, worksheet: { markReading: { m: 1.5, text: "1.5 m" } } };
    expect(states(typed).setout?.state).toBe("complete");
  });
});

describe("a swale", () => {
  const studio = demoProject("pottery-studio");
  const [swale] = studio.grading.swales;

  it("that falls less than the rule is told apart from one that doesn't drain", () => {
    if (!swale) throw new Error("the studio has no swale");
    const strict = { ...studio, rules: { ...studio.rules, leastSwaleFall: 0.5 } };
    expect(states(strict).water?.words).toContain("1 swale that falls too little");
    const backwards = { ...swale, line: [...swale.line].reverse() };
    const turned = { ...studio, grading: { ...studio.grading, swales: [{ ...backwards, fall: null }] } };
    expect(states(turned).water?.words).toContain("1 swale that doesn't drain");
  });
});

describe("what to look at", () => {
  const demos = ["pottery-studio", "joinery-shed", "potting-barn", "open-hillside"] as const;

  it.each(demos)("is shared out among the steps of %s without a rest", (name) => {
    const { problems, steps: list } = looked(demoProject(name));
    expect(list.reduce((sum, step) => sum + step.toLookAt, 0)).toBe(problems.length);
  });

  it.each(demos)("marks just the steps of %s that have something pressing", (name) => {
    const { problems, steps: list } = looked(demoProject(name));
    const pressing = problems.filter(({ severity }) => severity !== "note").map(stepOfProblem);
    const marked = list.filter(({ state }) => state === "attention").map((step) => step.name);
    expect(new Set(marked)).toEqual(new Set(pressing));
  });

  it("counts a low place away from the building once, as a note", () => {
    const { problems } = looked(demoProject("joinery-shed"));
    expect(problems.filter(({ code }) => code.startsWith("pond"))).toMatchObject([
      { code: "pond-away", severity: "note" },
    ]);
  });

  it("counts each limit that the floor breaks", () => {
    const studio = demoProject("pottery-studio");
    if (!studio.building) throw new Error("the studio has no building");
    const sunk = { ...studio, building: { ...studio.building, floor: studio.building.floor - 1 } };
    const floors = looked(sunk).problems.filter((problem) => stepOfProblem(problem) === "floor");
    expect(floors.length).toBeGreaterThan(0);
    expect(floors[0]?.what).toMatch(/too low for “/);
  });

  it("has one set of words", () => {
    expect([0, 1, 3].map(lookWords)).toEqual(["Nothing to look at", "1 to look at", "3 to look at"]);
  });
});

describe("a figure in metres", () => {
  it("has no unit and at most one decimal", () => {
    const shed = demoProject("joinery-shed");
    expect(states(shed).building?.figure).toBe("6 walls");
    const four = shed.building && {
      ...shed.building,
      outline: [
        [0, 7.2],
        [9.6, 7.2],
        [9.6, 0],
        [0, 0],
      ] as [number, number][],
      doors: [],
    };
    expect(states({ ...shed, building: four }).building?.figure).toBe("9.6×7.2");
  });
});

describe("where a problem is mended", () => {
  it.each([
    ["setup-not-tied", "shots"],
    ["reading-doubtful", "shots"],
    ["ground-in-line", "shots"],
    ["outline-crosses", "building"],
    ["door-past-wall", "building"],
    ["drive-off-door", "drive"],
    ["apron-side-missing", "water"],
    ["grading-near-feature", "lot"],
    ["grading-past-lot", "lot"],
  ] as const)("%s: %s", (code, step) => {
    expect(stepOfProblem({ code })).toBe(step);
  });

  it("knows every code that the engine can give", async () => {
    const sources = import.meta.glob<string>(
      "../../src/{survey,solve,drainage,grading,foundation,advice}/**/*.ts",
      { query: "?raw", import: "default", eager: true },
    );
    const codes = Object.values(sources).flatMap((source) =>
      [...source.matchAll(/\bcode: "([a-z-]+)"/g)].map(([, code = ""]) => code),
    );
    expect(codes.length).toBeGreaterThan(15);
    const floorsOwn = codes.filter((code) => stepOfProblem({ code }) === "floor");
    expect(floorsOwn.filter((code) => !/^(floor|band|rule)/.test(code))).toEqual([]);
  });
});
