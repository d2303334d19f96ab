import { describe, expect, it } from "vitest";
import { newProject, type Project, surveyEdits } from "../../src/document";
import { createSolver } from "../../src/solve";
import { apart } from "../../src/survey/limits";
import { checkEdit } from "../support/checkEdit";

describe("a small distance between readings", () => {
  it.each([
    ["ft-in", "½″"],
    ["in", "½″"],
    ["ft", "0.04′"],
    ["m", "12 mm"],
    ["cm", "12 mm"],
    ["mm", "12 mm"],
    [null, "12 mm (½″)"],
  ] as const)("of 12 mm in %s is %s, whichever way", (notation, text) => {
    expect(apart(0.012, notation)).toBe(text);
    expect(apart(-0.012, notation)).toBe(text);
  });

  it("in a problem follows the plan's notation", () => {
    let project: Project = newProject();
    project = checkEdit(project, surveyEdits.addMark, { name: "Bolt", height: "100'" });
    project = checkEdit(project, surveyEdits.addSetup, {});
    const [mark] = project.survey.marks;
    for (const text of ["5'", "5' 0-1/2\""]) {
      project = checkEdit(project, surveyEdits.addShot, {});
      const id = project.survey.shots.at(-1)?.id ?? "";
      project = checkEdit(project, surveyEdits.setReading, { id, text });
      const kind = project.survey.shots.length === 1 ? "mark" : "check";
      project = checkEdit(project, surveyEdits.changeShot, { id, patch: { kind, of: mark?.id ?? "" } });
    }
    const told = (length: Project["display"]["length"]) =>
      createSolver()
        .solve({ ...project, display: { ...project.display, length } })
        .problems.find(({ what }) => what.includes("second look"))?.what ?? "";
    expect(told("ft-in")).toContain("½″ lower");
    expect(told("ft-in")).not.toContain("mm");
    expect(told("m")).toContain("13 mm lower");
  });
});
