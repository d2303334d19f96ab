import { describe, expect, it } from "vitest";
import { surveyEdits } from "../../src/document";
import type { Project } from "../../src/document/schema";
import { drawGuessed } from "../../src/drawing";
import { createSolver } from "../../src/solve/pipeline";
import { groundAt } from "../../src/terrain";
import { plane, site } from "./sites";

const solveOnce = (project: Project) => createSolver().solve(project);

type Lines = Project["survey"]["breaklines"];

function withLines(breaklines: Lines, change: Partial<Project["survey"]> = {}): Project {
  const project = site({ surface: plane(100) });
  return { ...project, survey: { ...project.survey, breaklines, ...change } };
}

const ditch: Lines[number] = {
  id: "b1",
  name: "ditch",
  kind: "ditch",
  points: [
    [-35, 25, 98],
    [35, 25, 98],
  ],
};

describe("breaklines in the ground", () => {
  it("a ditch across level shots is as deep as typed along its whole length", () => {
    const { ground, problems } = solveOnce(withLines([ditch]));
    if (!ground) throw new Error("no ground");
    for (let x = -34.7; x < 35; x += 3.3) expect(groundAt(ground, x, 25)?.z).toBeCloseTo(98, 9);
    expect(groundAt(ground, 0, 31)?.z).toBeCloseTo(100, 9);
    expect(problems.filter(({ code }) => code.startsWith("breakline"))).toEqual([]);
  });

  it("where two cross at other heights, the place and both heights are told", () => {
    const ridge: Lines[number] = {
      id: "b2",
      name: "path",
      kind: "ridge",
      points: [
        [3, 15, 101],
        [3, 35, 101],
      ],
    };
    const { problems, ground } = solveOnce(withLines([ditch, ridge]));
    const [told] = problems.filter(({ code }) => code === "breaklines-disagree");
    expect(told?.at?.[0]).toBeCloseTo(3, 3);
    expect(told?.at?.[1]).toBeCloseTo(25, 3);
    expect(told?.where).toContain("“ditch”");
    expect(told?.where).toContain("“path”");
    expect(told?.what).toContain("98.000 m");
    expect(told?.what).toContain("101.000 m");
    expect(ground && groundAt(ground, 3, 25)?.z).toBeCloseTo(99.5, 3);
  });

  it("two lines without heights of their own don't disagree", () => {
    const bare = (id: string, points: [number, number][]): Lines[number] => ({
      id,
      name: id,
      kind: "ridge",
      points: points.map(([x, y]) => [x, y, null]),
    });
    const project = { ...site({ surface: (x, y) => 100 + 0.002 * x * y }) };
    const breaklines = [
      bare("a", [
        [-30, -29],
        [31, 28],
      ]),
      bare("b", [
        [-30, 29],
        [31, -28],
      ]),
    ];
    const { problems } = solveOnce({ ...project, survey: { ...project.survey, breaklines } });
    expect(problems.filter(({ code }) => code.startsWith("breakline"))).toEqual([]);
  });

  it("what lies beyond the shots without a height is left out, and said", () => {
    const long: Lines[number] = {
      ...ditch,
      points: [
        [-500, 25, null],
        [0, 25, null],
        [500, 25, null],
      ],
    };
    const { problems, ground } = solveOnce(withLines([long]));
    expect(problems.filter(({ code }) => code === "breakline-beyond-shots")).toHaveLength(1);
    expect(ground && groundAt(ground, 17, 25)?.z).toBeCloseTo(100, 9);
  });

  it("a pond under the building makes its earth a guess; figures and hatching say so", () => {
    const hole: Lines[number] = {
      id: "b1",
      name: "pond",
      kind: "hole",
      points: [
        [-1, -1, null],
        [13, -1, null],
        [13, 9, null],
        [-1, 9, null],
      ],
    };
    const without = solveOnce(withLines([]));
    const project = withLines([hole]);
    const results = solveOnce(project);
    expect(without.earthwork?.guessedShare).toBe(0);
    expect(results.earthwork?.guessedShare).toBeGreaterThan(0.3);
    expect(results.corners.every(({ guessed }) => guessed)).toBe(true);
    const marks = (of: typeof results) => drawGuessed(project, of).marks.length;
    expect(marks(results)).toBeGreaterThan(marks(without));
  });

  it("the longest side at the shots' edge is kept to, and let go by nothing or 0", () => {
    const bare = site({ surface: plane(100) });
    const shots = bare.survey.shots.filter(
      ({ place }) => place.kind !== "at" || place.x <= 20 || place.y <= 20,
    );
    const project = { ...bare, survey: { ...bare.survey, shots } };
    const at = (edited: Project) => {
      const { ground } = solveOnce(edited);
      return ground && groundAt(ground, 33, 33)?.guessed;
    };
    const set = (m: number | null) => {
      const edit = surveyEdits.setLongestEdge.run(project, { m });
      if (!edit.ok) throw new Error(edit.why);
      return edit.project;
    };
    expect(set(15).survey.longestEdge).toBe(15);
    expect(set(0).survey.longestEdge).toBeNull();
    expect(set(null).survey.longestEdge).toBeNull();
    expect(surveyEdits.setLongestEdge.run(project, { m: -3 }).ok).toBe(false);
    expect(at(set(15))).toBe(true);
  });
});
