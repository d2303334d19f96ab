import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openProject, type Project, plotEdits, surveyEdits } from "../../src/document";
import { createSolver } from "../../src/solve/pipeline";
import { checkEdit } from "../support/checkEdit";
import { site } from "./sites";

function demo(): Project {
  const opened = openProject(readFileSync("demo-projects/pottery-studio.drysill.json", "utf8"));
  if (!opened.ok) throw new Error("the studio doesn't open");
  return opened.project;
}
const solved = (project: Project) => createSolver().solve(project);
const lengthOf = (project: Project, i: number, j: number) => {
  const outline = project.building?.outline ?? [];
  const [ax = 0, ay = 0] = outline[i] ?? [];
  const [bx = 0, by = 0] = outline[j] ?? [];
  return Math.hypot(bx - ax, by - ay);
};

/** All six tapes of a four-cornered building as planned, with one slip in metres. */
function taped(slip: { from: number; to: number; by: number } | null): Project {
  let project = demo();
  for (const [from, to] of [
    [0, 1],
    [1, 2],
    [2, 3],
    [0, 3],
    [0, 2],
    [1, 3],
  ] as const) {
    const by = slip?.from === from && slip.to === to ? slip.by : 0;
    project = checkEdit(project, plotEdits.addTape, {
      from,
      to,
      text: `${lengthOf(project, from, to) + by} m`,
    });
  }
  return project;
}

describe("the building as it was taped", () => {
  it("is not spoken of before anything is typed, and fine where it fits the plan", () => {
    expect(solved(demo()).plot).toMatchObject({
      squared: null,
      untaped: null,
      misread: null,
      out: null,
      tapes: [],
      crossings: [],
    });
    const results = solved(taped(null));
    expect(results.plot.out?.most).toBeCloseTo(0, 6);
    expect(
      results.problems.filter(({ code }) => code.startsWith("tape") || code === "out-of-square"),
    ).toEqual([]);
  });

  it.each([
    { by: 0.3048, words: "as with a foot misread" },
    { by: -1, words: "as with a metre misread" },
    { by: 0.15, words: "A–C doesn't fit the others" },
    { by: 20, words: "A–C can't be" },
  ])("names a tape that is off by $by m, and moves no corner for it", ({ by, words }) => {
    const { plot, problems } = solved(taped({ from: 0, to: 2, by }));
    expect(plot.misread?.tape).toBe("A–C");
    expect(plot.moves).toEqual([]);
    // By the others the building stands as planned.
    expect(plot.out?.most).toBeCloseTo(0, 6);
    expect(plot.squared?.residuals[4]?.residual).toBeCloseTo(by, 6);
    const told = problems.filter(({ code }) => code === "tapes-disagree" || code === "out-of-square");
    expect(told).toMatchObject([{ where: "tape A–C", severity: "error", ids: ["t5"] }]);
    expect(told[0]?.what).toContain(words);
    expect(told[0]?.how).toContain("Pull A–C again");
  });

  it("says of a lesser misfit that it can't tell which, and which corner to move", () => {
    const { plot, problems } = solved(taped({ from: 0, to: 2, by: 0.018 }));
    expect(plot.squared?.redundancy).toBe(1);
    const disagree = problems.find(({ code }) => code === "tapes-disagree");
    expect(disagree?.what).toContain("one of them is off");
    const moves = problems.filter(({ code }) => code === "out-of-square");
    expect(moves.length).toBeGreaterThan(0);
    expect(moves[0]?.how).toMatch(/^Move it .+ (towards|away from) [A-D].*, holding the first side\.$/);
  });

  it("with a second pull of the odd one, points at the first", () => {
    const odd = taped({ from: 0, to: 2, by: 0.15 });
    const again = checkEdit(odd, plotEdits.addTape, { from: 0, to: 2, text: `${lengthOf(odd, 0, 2)} m` });
    const disagree = solved(again).problems.find(({ code }) => code === "tapes-disagree");
    expect(disagree).toMatchObject({ where: "tape A–C", ids: ["t5"] });
    expect(disagree?.what).toContain("A–C doesn't fit the others");
  });

  it("says what is missing while the tapes fix nothing, and what lay on the slope without heights", () => {
    const sides = checkEdit(demo(), plotEdits.addTape, { from: 0, to: 1, text: "20 ft", held: "level" });
    expect(solved(sides).plot.untaped).toContain("Only 2 corners");
    const bare = { ...demo(), survey: { ...demo().survey, shots: [] } };
    const slope = checkEdit(bare, plotEdits.addTape, { from: 0, to: 1, text: "20 ft", held: "slope" });
    expect(solved(slope).problems.find(({ code }) => code === "tape-not-level")?.what).toContain(
      "no heights",
    );
  });
});

describe("setbacks", () => {
  it("say how far the building stands in one", () => {
    const project = demo();
    const wide = project.lot.outline.reduce(
      (now, _, line) => checkEdit(now, plotEdits.setSetback, { line, text: "60 m", name: "side" }),
      project,
    );
    const { plot, problems } = solved(wide);
    expect(plot.crossings.length).toBeGreaterThan(0);
    const told = problems.find(({ code }) => code === "in-setback");
    expect(told?.what).toMatch(/^It stands .+ in the side setback from lot line \d of .+\.$/);
    expect(solved(project).plot.setbacks).toEqual([]);
  });
});

describe("test pits", () => {
  function pitted(depths: Partial<Record<"topsoil" | "oldFill" | "rock" | "water", string>>): Project {
    const project = demo();
    const [x = 0, y = 0] = project.building?.outline[0] ?? [];
    let now = checkEdit(project, surveyEdits.addPit, { place: { kind: "at", x, y } });
    for (const [which, text] of Object.entries(depths))
      now = checkEdit(now, surveyEdits.setPitDepth, { id: "p1", which: which as "rock", text });
    return now;
  }

  it("are counted, and give firm ground, rock and water at the corners", () => {
    const { pits, corners } = solved(pitted({ topsoil: "0.2 m", water: "9 m" }));
    expect(pits.count).toBe(1);
    expect(pits.corners[0]?.firm).toBeCloseTo((corners[0]?.ground ?? 0) - 0.2, 9);
    expect(pits.corners[0]?.water).toBeCloseTo((corners[0]?.ground ?? 0) - 9, 9);
    expect(pits.corners[0]?.rock).toBeNull();
    expect(solved(demo()).pits).toMatchObject({ count: 0, topsoil: null });
  });

  it("that met water over the trench's bottom offer a drain round the footing", () => {
    const project = pitted({ water: "0.1 m" });
    const { problems } = solved(project);
    const fix = problems.find(({ code }) => code === "water-in-trench")?.fixes?.[0];
    if (!fix) throw new Error("water in the trench has a mend");
    const edit = surveyEdits.applyFix(project, fix);
    if (!edit.ok) throw new Error(edit.why);
    const drained = edit.project;
    expect(drained.building?.foundation.drain).toBe(true);
    expect(solved(drained).water.footingDrain?.pits?.above).toBeGreaterThan(0);
  });

  it("speak for the middle of a side where the trench is worse there than at its corners", () => {
    const project = demo();
    const [a, b] = project.building?.outline ?? [];
    if (!a || !b) throw new Error("the demo has a building");
    const places = [a, b, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]] as const;
    let now: Project = project;
    for (const [i, [x, y]] of places.entries()) {
      now = checkEdit(now, surveyEdits.addPit, { place: { kind: "at", x, y } });
      const text = i === 2 ? "0.1 m" : "9 m";
      now = checkEdit(now, surveyEdits.setPitDepth, { id: `p${i + 1}`, which: "water", text });
    }
    const told = solved(now).problems.filter(({ code }) => code === "water-in-trench");
    const side = told.find(({ where }) => where.startsWith("trench along wall A-B, "));
    expect(side?.what).toMatch(/stands .+ above the bottom of the trench/);
    expect(told.some(({ where }) => where === "trench at corner A")).toBe(false);
  });

  it("caution about old fill below the trench, rock and water above its bottom, and another strip", () => {
    const codes = (project: Project) => solved(project).problems.map(({ code }) => code);
    expect(codes(pitted({ oldFill: "8 m" }))).toContain("footing-on-fill");
    expect(codes(pitted({ rock: "0.05 m", water: "0.1 m" }))).toEqual(
      expect.arrayContaining(["rock-in-trench", "water-in-trench"]),
    );
    expect(codes(pitted({ topsoil: "0.6 m" }))).toContain("strip-unlike-pits");
    const strip = demo().materials.stripDepth;
    expect(codes(pitted({ topsoil: `${strip} m` }))).not.toContain("strip-unlike-pits");
  });
});

describe("how much rests on guessed ground", () => {
  const guessed = (x: number) => {
    // Shots reach from 0 to 40 each way; the drive runs from x, beyond or within them, to the middle.
    const project = site({
      reach: 20,
      spacing: 5,
      rest: {
        grading: {
          drives: [
            {
              id: "d",
              line: [
                [x, 4],
                [0, 4],
              ],
            },
          ],
          swales: [
            {
              id: "s",
              line: [
                [-15, 18],
                [15, 18],
              ],
            },
          ],
        },
      },
    });
    return solved(project).guessed;
  };

  it("is told of each drive and swale, and of the trench: the share of its length beyond the shots", () => {
    expect(guessed(-15)).toEqual({
      drives: [{ id: "d", share: 0 }],
      swales: [{ id: "s", share: 0 }],
      trench: 0,
    });
    // 20 of 40 m lie beyond the outermost shots.
    expect(guessed(-40).drives[0]?.share).toBeCloseTo(0.5, 1);
  });
});
