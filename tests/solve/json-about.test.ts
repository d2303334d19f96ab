/** `solve --json`: each figure with its unit, rule and share of guessed ground. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openProject } from "../../src/document/open";
import type { Project } from "../../src/document/schema";
import { type CubicPiece, cubicAt } from "../../src/earthwork";
import { type AboutFigure, numberPaths } from "../../src/solve/about";
import { resultsToJson } from "../../src/solve/json";
import { createSolver } from "../../src/solve/pipeline";
import { plane, shed, site } from "./sites";

const demos = ["joinery-shed", "open-hillside", "pottery-studio", "potting-barn"];

function demo(name: string): Project {
  const opened = openProject(readFileSync(`demo-projects/${name}.drysill.json`, "utf8"));
  if (!opened.ok) throw new Error("the demo doesn't open");
  return opened.project;
}

/** A plan with one of everything that its results tell of. */
function everything(): Project {
  return site({
    surface: (x, y) => 100 + 0.06 * x - 0.03 * y + 0.4 * Math.exp(-((x + 15) ** 2 + (y - 20) ** 2) / 60),
    building: {
      ...shed,
      floor: 101,
      doors: [
        { id: "d1", name: "door", wall: 0, offset: 4, width: 3, sillBelowFloor: 0 },
        { id: "d2", name: "walk door", wall: 1, offset: 3, width: 0.9, sillBelowFloor: 0 },
      ],
    },
    rest: {
      grading: {
        drives: [
          {
            id: "v1",
            name: "drive",
            door: "d1",
            line: [
              [5.5, -30],
              [5.5, 0],
            ],
            breaks: [{ at: 13, height: 101.2, curve: 6 }],
          },
        ],
        swales: [
          {
            id: "w1",
            name: "swale",
            line: [
              [30, -14],
              [-30, -14],
            ],
            depth: 0.4,
          },
        ],
        pads: [
          {
            id: "p1",
            name: "parking",
            outline: [
              [18, 10],
              [24, 10],
              [24, 16],
              [18, 16],
            ],
          },
        ],
        berms: [
          {
            id: "b1",
            line: [
              [20, 20],
              [20, 30],
            ],
          },
        ],
        walls: [
          {
            id: "r1",
            name: "retaining wall",
            exposed: 0.3,
            line: [
              [-4, -4],
              [-4, 12],
            ],
          },
        ],
        points: [{ id: "g1", at: [-20, 0], height: 99.5 }],
      },
      lot: {
        lines: [
          [-40, -35],
          [40, -35],
          [40, 40],
          [-40, 40],
        ],
        setbacks: [{ line: 0, distance: { text: "34 m", m: 34 } }],
      },
      prices: { "fill-loose": 20, concrete: 150 },
      storm: { intensity: 2e-5, depth: 0.05 },
      drainage: { roof: { shape: "gable" } },
    },
  });
}

const solvedJson = (project: Project) => {
  const results = createSolver().solve(project);
  const raw = JSON.parse(JSON.stringify(resultsToJson(results, project)));
  const { about, ...figures } = raw;
  return { about: about as Record<string, AboutFigure>, figures, results };
};

describe.each([
  ...demos.map((name) => [name, () => demo(name)] as const),
  ["a plan with everything", everything] as const,
  ["an empty plan", () => site({ building: null, reach: 0 })] as const,
])("every number of %s", (_name, project) => {
  const { about, figures } = solvedJson(project());

  it("has a unit and a rule, under its own path", () => {
    const paths = numberPaths(figures);
    expect(paths.filter((path) => !about[path]?.unit || !about[path]?.rule)).toEqual([]);
    expect(Object.keys(about).sort()).toEqual([...paths].sort());
  });

  it("is called an index only where its values are whole, and only sides, corners and lines are", () => {
    for (const [path, { unit }] of Object.entries(about)) {
      const values = valuesAt(figures, path);
      if (unit === "index")
        expect([path, values.filter((value) => !Number.isInteger(value))]).toEqual([path, []]);
      if (/^foundation\.takeOff\./.test(path)) expect([path, unit]).not.toEqual([path, "index"]);
    }
  });

  it("has shares of guessed ground between 0 and 1, one for each item where they are a list", () => {
    for (const [path, { guessedShare }] of Object.entries(about)) {
      const shares = [guessedShare ?? 0].flat();
      expect(shares.filter((share) => share !== null && !(share >= 0 && share <= 1))).toEqual([]);
      if (Array.isArray(guessedShare)) expect(guessedShare).toHaveLength(itemsAt(figures, path));
    }
  });
});

/** All numbers at a path. */
function valuesAt(figures: unknown, path: string): number[] {
  const steps = path.replace(/\[\]/g, ".[]").split(".");
  let values: unknown[] = [figures];
  for (const step of steps)
    values = values.flatMap((value) =>
      step === "[]"
        ? Array.isArray(value)
          ? value
          : []
        : [(value as Record<string, unknown> | null)?.[step]],
    );
  return values.filter((value) => typeof value === "number");
}

/** Items of the first list on a path. */
function itemsAt(figures: Record<string, unknown>, path: string): number {
  const names = path.slice(0, path.indexOf("[]")).split(".");
  const list = names.reduce<unknown>((value, name) => (value as Record<string, unknown>)[name], figures);
  return (list as unknown[]).length;
}

describe("what the figures lean on", () => {
  it("is told where the ground is a guess, and is nothing where it is measured", () => {
    const measured = solvedJson(site({ surface: plane(100, 0.05, 0.02) })).about;
    expect(measured["earthwork.inside.cut"]).toMatchObject({ unit: "m3", guessedShare: 0 });
    expect(measured["corners[].ground"]).toMatchObject({ unit: "m", guessedShare: [0, 0, 0, 0] });
    expect(measured["trench[].bottom"]?.guessedShare).toEqual([0, 0, 0, 0]);
    const far = solvedJson(site({ surface: plane(100, 0.05, 0.02), reach: 5, spacing: 5 }));
    expect(far.about["corners[].ground"]?.guessedShare).toEqual([0, 1, 1, 1]);
    expect(far.about["earthwork.total.fill"]?.guessedShare).toBe(far.figures.earthwork.guessedShare);
    expect(far.about["foundation.cover.bearing.least"]?.guessedShare).toBeCloseTo(
      far.results.guessed.trench ?? 0,
      9,
    );
    expect(measured["setout.rows[].height"]?.guessedShare).toEqual(far.figures.setout.rows.map(() => 0));
    expect(far.about["setout.markHeight"]).not.toHaveProperty("guessedShare");
  });
});

describe("set-out heights", () => {
  it("say how much of each rests on guessed ground: beds and drives lie on it, the floor doesn't", () => {
    const project = everything();
    const { figures, about, results } = solvedJson({
      ...project,
      grading: {
        ...project.grading,
        swales: project.grading.swales.map((swale) => ({
          ...swale,
          line: [
            [30, -14],
            [90, -14],
          ],
        })),
      },
    });
    const shares = about["setout.rows[].height"]?.guessedShare as number[];
    const shareOf = (what: string) =>
      shares[figures.setout.rows.findIndex((row: { what: string }) => row.what === what)];
    expect(shareOf("finished floor")).toBe(0);
    expect(shareOf("bed of swale")).toBe(results.guessed.swales[0]?.share);
    expect(shareOf("bed of swale")).toBeGreaterThan(0.3);
    expect(about["setout.rows[].reading"]?.guessedShare ?? shares).toEqual(shares);
  });

  it("and the concrete of a wall is told in m3, its bars in m, its boards in m2", () => {
    const { about } = solvedJson(site({ surface: plane(100, 0.02) }));
    const unit = (path: string) => about[`foundation.takeOff.${path}`]?.unit ?? null;
    expect(unit("wall")).toBe("m3");
    expect([null, "m"]).toContain(unit("steel.wall"));
    expect([null, "m2"]).toContain(unit("forms.wall"));
  });
});

describe("the curve inside the walls, written out", () => {
  it("gives the volumes of the results at their floor, and the clipped prisms' at any other", () => {
    const project = demo("joinery-shed");
    const { figures } = solvedJson(project);
    const at = (floor: number) => {
      const pieces = figures.curveInside.pieces as CubicPiece[];
      const piece = pieces.find(({ to }) => to === null || floor <= to);
      if (!piece) throw new Error("no piece");
      return cubicAt(piece, floor);
    };
    for (const floor of [figures.floor, figures.floor - 0.45, figures.floor - 0.9]) {
      const inside = createSolver().solve(project, { floor }).earthwork?.inside;
      expect(at(floor).fill).toBeCloseTo(inside?.fill ?? Number.NaN, 8);
      expect(at(floor).cut).toBeCloseTo(inside?.cut ?? Number.NaN, 8);
    }
  });
});

describe("sections", () => {
  it("of a drive on level ground: a trapezoid of fill across, hand-worked", () => {
    const project = site({
      rest: {
        grading: {
          drives: [
            {
              id: "v1",
              name: "drive",
              door: null,
              line: [
                [-40, -30],
                [-10, -30],
              ],
              width: 4,
              sideSlope: 2,
              roadHeight: 100,
              breaks: [
                { at: 10, height: 101 },
                { at: 20, height: 101 },
              ],
            },
          ],
        },
      },
    });
    const { figures } = solvedJson(project);
    const across = figures.sections.filter((one: { kind: string }) => one.kind === "across a drive");
    expect(across.length).toBe(figures.drives[0].stations.length);
    const level = across.filter(({ distance }: { distance: number }) => distance > 11.9 && distance < 18.1);
    expect(level.length).toBeGreaterThan(0);
    // 1 m high, 4 m wide at the top, 2 : 1 to both sides: 4 + 2 = 6 m2.
    for (const { cut, fill } of level) {
      expect(fill).toBeCloseTo(6, 1);
      expect(cut).toBeCloseTo(0, 6);
    }
    const along = figures.sections.find((one: { kind: string }) => one.kind === "along a drive");
    // Up and down 10 m each, level for 10 m: 10 × 1 + 2 × 10 × 1 ÷ 2 = 20 m2.
    expect(along.fill).toBeCloseTo(20, 0);
  });

  it("go through the building both ways", () => {
    const { figures } = solvedJson(site({ surface: plane(100) }));
    const [down, across] = figures.sections;
    expect([down.kind, across.kind]).toEqual(["down the fall", "across the fall"]);
    expect(down.fill).toBeGreaterThan(0);
    expect(across.fill).toBeGreaterThan(0);
  });
});

describe("one step of the floor", () => {
  it("is told for an inch and for 10 mm, in loads", () => {
    const project = site({ surface: plane(100) });
    const { figures } = solvedJson(project);
    const [inch, centimetre] = figures.sensitivity;
    expect([inch.step, centimetre.step]).toEqual([0.0254, 0.01]);
    expect(inch.loadsIn).toBeGreaterThan(centimetre.loadsIn);
    // No cut on level ground; the higher the bottom of the trench, the less soil it leaves.
    expect(inch.loadsOut).toBeLessThan(0);
    expect(inch.loadsOut).toBeGreaterThan(-0.1);
    // Inside the walls alone the fill grows by area × step; side slopes add to it.
    expect(centimetre.fill).toBeGreaterThan(96 * 0.01);
  });
});

describe("limits", () => {
  it("say what their value counts in", () => {
    const { figures } = solvedJson(everything());
    const unit = (id: string) => figures.band.rules.find((rule: { id: string }) => rule.id === id)?.unit;
    expect(unit("aboveUphillGround")).toBe("m");
    expect(unit("steepestDrive")).toBe("rise over run");
    expect(unit("costLimit")).toBe("money");
  });
});
