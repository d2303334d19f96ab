/** Lengths that look as if typed in another unit are asked about wherever they are typed. */
import { describe, expect, it } from "vitest";
import {
  newProject,
  type Point,
  type Project,
  pitEdits,
  plotEdits,
  siteEdits,
  surveyEdits,
} from "../../src/document";
import { createSolver } from "../../src/solve/pipeline";
import { checkEdit } from "../support/checkEdit";
import { demoProject } from "../support/demo";

const asked = (project: Project, code: string) =>
  createSolver()
    .solve(project)
    .problems.filter((problem) => problem.code === code)
    .map(({ where, what }) => `${where}: ${what}`);

describe("setbacks", () => {
  const square: Point[] = [
    [0, 0],
    [60, 0],
    [60, 60],
    [0, 60],
  ];
  const lot = checkEdit(newProject(), siteEdits.setLotOutline, { outline: square });
  const typed = (...texts: readonly string[]) =>
    texts.reduce((project, text, line) => checkEdit(project, plotEdits.setSetback, { line, text }), lot);

  it("far from the others are asked about, and kept", () => {
    const project = typed("25'", '25"', "25'", "500 m");
    expect(asked(project, "setback-doubtful")).toEqual([
      expect.stringMatching(
        /^setback from lot line 4: It is typed as 500 m, about 66 times longer than the others/,
      ),
    ]);
    expect(project.lot.setbacks[3]?.distance.m).toBe(500);
  });

  it("that differ as codes do are not", () => {
    expect(asked(typed("25'", "5'", "5'", "30'"), "setback-doubtful")).toEqual([]);
  });
});

describe("depths of test pits", () => {
  const pit = (project: Project, depths: Readonly<Record<string, string>>) => {
    const place = { kind: "at", x: project.survey.pits.length, y: 1 } as const;
    let next = checkEdit(project, pitEdits.addPit, { place });
    const id = next.survey.pits.at(-1)?.id ?? "";
    for (const [which, text] of Object.entries(depths))
      next = checkEdit(next, pitEdits.setPitDepth, { id, which: which as "topsoil", text });
    return next;
  };
  const start = newProject();

  it("are held against the same layer in the other pits", () => {
    const three = [1, 2, 3].reduce((now) => pit(now, { topsoil: '8"', rock: "7'" }), start);
    expect(asked(pit(three, { topsoil: "8 m" }), "pit-doubtful")).toEqual([
      expect.stringMatching(
        /^pit 4, topsoil: It is typed as 8 m, about 39 times longer than in the other pits/,
      ),
    ]);
    expect(asked(three, "pit-doubtful")).toEqual([]);
  });

  it("of one pit: far too deep is asked about, thin topsoil over deep rock is not", () => {
    expect(
      asked(pit(start, { topsoil: '6"', oldFill: '10"', rock: "4'", water: "150 m" }), "pit-doubtful"),
    ).toHaveLength(1);
    expect(
      asked(pit(start, { topsoil: '2"', oldFill: "3'", rock: "8'", water: "9'" }), "pit-doubtful"),
    ).toEqual([]);
  });
});

it("spacings of stakes are held against the building's sides", () => {
  const project = demoProject("pottery-studio");
  const laid = (spacing: string) =>
    checkEdit(project, surveyEdits.addGrid, {
      at: [0, 0],
      turn: 0,
      rows: 2,
      columns: 2,
      rowSpacing: spacing,
      columnSpacing: "10'",
    });
  expect(asked(laid("10'"), "stakes-doubtful")).toEqual([]);
  expect(asked(laid('1"'), "stakes-doubtful")).toEqual([
    expect.stringContaining('between rows: It is typed as 1"'),
  ]);
});

describe("layers of a test pit", () => {
  it("that lie in an order ground doesn't have are asked about: each is measured from the ground down", () => {
    const pitted = (depths: Readonly<Record<string, string>>) =>
      Object.entries(depths).reduce(
        (project, [which, text]) =>
          checkEdit(project, pitEdits.setPitDepth, { id: "p1", which: which as "rock", text }),
        checkEdit(newProject(), pitEdits.addPit, { place: { kind: "at", x: 0, y: 0 } }),
      );
    expect(asked(pitted({ topsoil: '14"', oldFill: '6"' }), "pit-doubtful")).toEqual([
      expect.stringContaining('pit 1, old fill: It is typed as 6" down, above topsoil at 14".'),
    ]);
    expect(asked(pitted({ topsoil: '6"', oldFill: '14"', rock: "3'", water: '2"' }), "pit-doubtful")).toEqual(
      [],
    );
  });
});
