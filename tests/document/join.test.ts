import { describe, expect, it } from "vitest";
import { newProject, openProject, projectText, surveyEdits } from "../../src/document";
import { createSolver } from "../../src/solve/pipeline";

const points = [
  { name: "a", x: 0, y: 0, z: 10.125 },
  { name: "b", x: 10, y: 0, z: 11 },
  { name: "c", x: 0, y: 10, z: -2.5 },
  { name: "d", x: 5, y: 5, z: Number.NaN },
];

describe("points from a file join the survey", () => {
  it("as heights of a set-up of their own, which solve and save give back", () => {
    const edit = surveyEdits.joinPoints.run(newProject("p"), { points, from: "Points from lot.csv" });
    if (!edit.ok) throw new Error(edit.why);
    expect([edit.made, edit.label]).toEqual(["u1", "add 4 points from a file"]);
    const reopened = openProject(projectText(edit.project));
    if (!reopened.ok) throw new Error("It doesn't open again.");
    const { survey, ground } = createSolver().solve(reopened.project);
    expect(survey.points.map(({ name, at, height }) => [name, at, height])).toEqual([
      ["a", [0, 0], 10.125],
      ["b", [10, 0], 11],
      ["c", [0, 10], -2.5],
      ["d", [5, 5], null],
    ]);
    expect(ground?.measuredTriangles).toBe(1);
  });

  it("twice: ids go on, and nothing is replaced", () => {
    const once = surveyEdits.joinPoints.run(newProject("p"), { points, from: "one" });
    if (!once.ok) throw new Error(once.why);
    const twice = surveyEdits.joinPoints.run(once.project, { points, from: "two" });
    if (!twice.ok) throw new Error(twice.why);
    expect(twice.project.survey.shots.map(({ id }) => id)).toEqual([
      "s1",
      "s2",
      "s3",
      "s4",
      "s5",
      "s6",
      "s7",
      "s8",
    ]);
  });

  it("also where there are hundreds of thousands already", () => {
    const many = Array.from({ length: 300_000 }, (_, i) => ({ name: "", x: i, y: 0, z: 1 }));
    const once = surveyEdits.joinPoints.run(newProject("p"), { points: many, from: "one" });
    if (!once.ok) throw new Error(once.why);
    const twice = surveyEdits.joinPoints.run(once.project, { points, from: "two" });
    expect(twice.ok && twice.project.survey.shots.at(-1)?.id).toBe("s300004");
  });

  it("refuses none, and places that aren't any", () => {
    const run = (list: typeof points) =>
      surveyEdits.joinPoints.run(newProject("p"), { points: list, from: "" });
    expect(run([])).toEqual({ ok: false, why: "There is no point to add." });
    expect(run([{ name: "q", x: Number.NaN, y: 0, z: 1 }])).toMatchObject({ ok: false });
  });
});
