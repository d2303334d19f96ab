import { describe, expect, it } from "vitest";
import { buildingEdits, type Edit, newProject, type Project, surveyEdits } from "../../src/document";
import { groundApart } from "../../src/panels/heightsApart";
import { notationOf } from "../../src/panels/notation";
import { sentence, sentenceText } from "../../src/panels/sentence";
import { createSolver } from "../../src/solve/pipeline";
import { checkEdit } from "../support/checkEdit";
import { demoProject } from "../support/demo";

const text = (project: Project, floor?: number) =>
  sentenceText(
    sentence(
      project,
      createSolver().solve(project, floor === undefined ? {} : { floor }),
      notationOf(project.display),
    ),
  );

function after(edit: Edit): Project {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

/** A plane that falls by 1 in 20 to the east: four shots on a square of 20 m. */
function plane(): Project {
  let project: Project = newProject("plane");
  project = {
    ...project,
    display: { ...project.display, length: "m", reading: "m", area: "m2", volume: "m3", rounding: 3 },
  };
  project = after(surveyEdits.addMark.run(project, { name: "pin", height: "10" }));
  const mark = project.survey.marks[0]?.id ?? "";
  project = after(surveyEdits.addShot.run(project, { reading: "1.000", kind: "mark", of: mark }));
  for (const [x, y] of [
    [0, 0],
    [20, 0],
    [20, 20],
    [0, 20],
  ] as const) {
    const place = { kind: "at", x, y } as const;
    project = after(surveyEdits.addShot.run(project, { reading: String(1 + x / 20), place }));
  }
  return project;
}

describe("before there is a ground", () => {
  it("says what to do first", () => {
    expect(text(newProject())).toBe(
      "Nothing is measured yet. Add a mark that stays, read it at the laser, then shoot the ground.",
    );
  });

  it("counts the shots that are missing", () => {
    const project = plane();
    const two = { ...project, survey: { ...project.survey, shots: project.survey.shots.slice(0, 3) } };
    expect(text(two)).toBe("2 shots have a height and a place; the ground needs 1 more.");
  });

  it("names a set-up without a height", () => {
    const project = plane();
    const untied = { ...project, survey: { ...project.survey, shots: project.survey.shots.slice(1) } };
    expect(text(untied)).toMatch(/^Set-up 1 has no height yet/);
  });
});

describe("before there is a building", () => {
  it("says how much the ground falls and where to, told from true north", () => {
    const project = plane();
    expect(text(project)).toBe(
      "The shots lie within 1.000 m of height and the ground falls to the east. Draw the building next.",
    );
    const turned = { ...project, lot: { ...project.lot, north: Math.PI / 2 } };
    expect(text(turned)).toContain("falls to the north");
  });
});

describe("how far the ground's heights are apart", () => {
  it("counts ground shots with a place alone", () => {
    const { points } = createSolver().solve(plane()).survey;
    expect(groundApart(points, [])).toBeCloseTo(1, 9);
    expect(points.some(({ kind }) => kind === "mark")).toBe(true);
    const mark = points.map((point) => (point.kind === "mark" ? { ...point, height: 99 } : point));
    expect(groundApart(mark, [])).toBeCloseTo(1, 9);
    expect(groundApart([], [])).toBeNull();
  });

  it("counts the heights of breaklines too, and says so", () => {
    const project = plane();
    const points: [number, number, number | null][] = [
      [0, 0, 1000],
      [5, 5, null],
      [9, 9, 1001],
    ];
    const lined = checkEdit(project, surveyEdits.joinBreaklines, { lines: [{ kind: "ridge", points }] });
    expect(text(lined)).toMatch(/^The shots and lines lie within /);
    const { survey } = createSolver().solve(lined);
    expect(groundApart(survey.points, lined.survey.breaklines)).toBeGreaterThan(900);
  });
});

describe("a swale in the sentence", () => {
  it("falls too little, or doesn't drain", () => {
    const studio = demoProject("pottery-studio");
    expect(studio.grading.swales.length).toBeGreaterThan(0);
    const strict = { ...studio, rules: { ...studio.rules, leastSwaleFall: 0.5 } };
    expect(text(strict)).toContain("falls too little");
    expect(text(strict)).not.toContain("doesn't drain");
  });
});

describe("with a building", () => {
  const outline = buildingEdits.rectangleOutline([5, 5], 10, 10);
  const built = after(buildingEdits.drawBuilding.run(plane(), { outline, floor: 10.2 }));

  it("says how far the floor stands out at the highest and the lowest corner", () => {
    // Ground: 10 - 0.05 x, so 9.75 m at x = 5 (A, D) and 9.25 m at x = 15 (B, C).
    expect(text(built)).toMatch(/^The floor stands 0\.450 m out of the ground at A and 0\.950 m at [BC];/);
  });

  it("says it where the floor lies below the ground", () => {
    expect(text(built, 9.5)).toMatch(
      /^The floor stands 0\.250 m below the ground at A and 0\.250 m out of the ground at [BC];/,
    );
  });

  it("doesn't reckon loads for a floor that lies far from all ground: it asks for the figure", () => {
    const sunk = demoProject("pottery-studio");
    if (!sunk.building) throw new Error("it stands");
    const far = text({ ...sunk, building: { ...sunk.building, floor: -1524 } });
    expect(far).toMatch(/^The floor lies .* below all the ground that was shot .*: check its figure/);
    expect(far).not.toContain("loads");
  });

  it("follows the bill's loads", () => {
    const results = createSolver().solve(built);
    const loads = results.bill.find(({ id }) => id === "fill-loads")?.quantity ?? 0;
    expect(loads).toBeGreaterThan(1);
    expect(text(built)).toContain(`${loads} loads of fill`);
  });

  it("says where no height meets every limit", () => {
    // The ground under the floor falls by half a metre, more than the fill under a slab may have.
    expect(text(built)).toMatch(/no floor height meets every limit\.$/);
  });

  it("names the limit that the floor breaks, and by how much", () => {
    const free = { ...built, rules: { ...built.rules, off: ["fillUnderSlab", "intoUndisturbed"] } };
    const low = createSolver().solve(free).band.low ?? Number.NaN;
    expect(text(free, low - 0.1)).toMatch(/the floor is 0\.100 m too low for this limit: /);
    expect(text(free, low)).not.toContain("too low");
  });
});

describe("the demos", () => {
  it.each(["pottery-studio", "joinery-shed", "potting-barn", "open-hillside"])(
    "%s: every figure in it is one of the results",
    (id) => {
      const project = demoProject(id);
      const results = createSolver().solve(project);
      const notation = notationOf(project.display);
      const said = text(project);
      const grounds = results.corners.map(({ ground }) => ground);
      const high = results.corners.find(({ ground }) => ground === Math.max(...grounds));
      expect(said).toContain(notation.length(Math.abs(high?.floorAboveGround ?? Number.NaN)));
      const steepest = Math.max(...results.drives.map((drive) => drive.steepest));
      expect(said).toContain(`up to ${notation.slope(steepest)}`);
      const wet = results.water.walls.filter((wall) => !wall.passes).length;
      expect(said.includes("water leaves on every side but") || said.includes("no side")).toBe(wet > 0);
      expect(said).toMatch(/\.$/);
      expect(said).not.toMatch(/NaN|undefined|null/);
    },
  );
});
