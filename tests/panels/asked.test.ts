import { describe, expect, it } from "vitest";
import { newProject, type Project, surveyEdits } from "../../src/document";
import { notationOf } from "../../src/panels/notation";
import { questionAt } from "../../src/panels/survey/AskedLine";
import { questionsOf } from "../../src/panels/survey/asked";
import { plusMinus, rowState } from "../../src/panels/survey/rowState";
import { levelSurvey } from "../../src/survey";

function book(readings: readonly string[], reading: "ft" | "in" | "m" = "ft"): Project {
  let project: Project = newProject();
  project = { ...project, display: { ...project.display, reading, length: "ft", rounding: 2 } };
  for (const [i, text] of readings.entries()) {
    const edit = surveyEdits.addShot.run(project, { name: `${i + 1}`, reading: text });
    if (!edit.ok) throw new Error(edit.why);
    project = edit.project;
  }
  return project;
}

const ask = (project: Project) =>
  questionsOf(project, levelSurvey(project.survey, []).problems, notationOf(project.display));

const alike = ["5.1", "5.3", "4.9", "5.2"];

describe("readings that are asked about", () => {
  it("inches typed as feet: the question names what was meant, and its answer writes it with its unit", () => {
    const project = book([...alike, "62.5"]);
    const [question, ...rest] = ask(project);
    expect(rest).toEqual([]);
    expect(question).toMatchObject({
      row: 4,
      words: "62.50′? its neighbours are near 5.20′: did you mean inches?",
    });
    expect(question?.answers.map(({ words }) => words)).toEqual([
      "62.5 in, 5.21′",
      "It is right",
      "Set it aside",
    ]);
    const mended = question?.answers[0]?.edit(project);
    if (!mended?.ok) throw new Error("refused");
    expect(mended.project.survey.shots[4]?.reading).toEqual({ text: "62.5 in", m: 62.5 * 0.0254 });
    expect(ask(mended.project)).toEqual([]);
  });

  it("a reading typed in the name's column is asked about, and moved by one click: it alone, or all of them", () => {
    let project = book(alike);
    for (const name of ["5-3-3/8", `63.375"`, "1.609 m", "12", "1/50", "NE stake"]) {
      const edit = surveyEdits.addShot.run(project, { name });
      if (!edit.ok) throw new Error(edit.why);
      project = edit.project;
    }
    const asked = ask(project);
    expect(asked.map(({ row }) => row)).toEqual([4, 5, 6]);
    expect(asked[0]?.words).toContain("reads as 5.28′");
    expect(asked[0]?.answers.map(({ words }) => words)).toEqual([
      "Move it to the reading",
      "Move all 3",
      "It is a name",
    ]);
    const one = asked[1]?.answers[0]?.edit(project);
    if (!one?.ok) throw new Error("refused");
    expect(one.project.survey.shots[5]).toMatchObject({ name: "", reading: { text: `63.375"` } });
    const all = asked[0]?.answers[1]?.edit(project);
    if (!all?.ok) throw new Error("refused");
    expect(all.project.survey.shots.slice(4, 7).map(({ reading }) => reading?.text)).toEqual([
      "5-3-3/8",
      `63.375"`,
      "1.609 m",
    ]);
    expect(all.project.survey.shots.slice(7).map(({ name }) => name)).toEqual(["12", "1/50", "NE stake"]);
    const left = asked[0]?.answers[2]?.edit(project);
    if (!left?.ok) throw new Error("refused");
    expect(ask(left.project).map(({ row }) => row)).toEqual([5, 6]);
  });

  it("millimetres typed as metres; what no unit explains is asked about too", () => {
    const metres = ["1.52", "1.61", "1.49", "1.55"];
    expect(ask(book([...metres, "1580"], "m"))[0]?.answers[0]?.words).toContain("1580 mm");
    const odd = ask(book([...alike, "777"]))[0];
    expect(odd?.answers.map(({ words }) => words)).toEqual(["It is right", "Set it aside"]);
  });

  it("what was accepted or set aside is not asked about again", () => {
    const project = book([...alike, "62.5"]);
    const [question] = ask(project);
    for (const words of ["It is right", "Set it aside"]) {
      const edit = question?.answers.find((answer) => answer.words === words)?.edit(project);
      if (!edit?.ok) throw new Error("refused");
      expect(ask(edit.project)).toEqual([]);
      expect(levelSurvey(edit.project.survey, []).problems.map(({ code }) => code)).not.toContain(
        "reading-doubtful",
      );
    }
  });

  it("a page of like readings is asked nothing", () => {
    expect(ask(book([...alike, "6.4", "3.9"]))).toEqual([]);
  });

  it("the row's own question first, else the last one above it", () => {
    const questions = [2, 5, 9].map((row) => ({ shot: `s${row}`, row, words: "", answers: [] }));
    expect([5, 7, 0].map((row) => questionAt(questions, row)?.row)).toEqual([5, 5, 2]);
    expect(questionAt([], 3)).toBeNull();
  });
});

describe("rows that count in nothing", () => {
  it("set aside, waiting, not tied; a row that counts or is empty has no such word", () => {
    const project = book(alike);
    const [shot] = project.survey.shots;
    const [point] = levelSurvey(project.survey, []).result.points;
    if (!shot || !point) throw new Error("no shot");
    expect(rowState(shot, point, false)).toBe("untied");
    expect(rowState(shot, { ...point, waiting: true }, false)).toBe("waiting");
    expect(rowState({ ...shot, aside: true }, undefined, false)).toBe("aside");
    expect(rowState(shot, { ...point, height: 30 }, false)).toBeNull();
    expect(rowState({ ...shot, reading: null }, point, false)).toBeNull();
  });

  it("± in the plan's notation, nothing where it isn't known", () => {
    const notation = notationOf({ ...newProject().display, length: "mm", rounding: 0 });
    expect([0.0042, 0.0001, null, undefined].map((sigma) => plusMinus(sigma, notation))).toEqual([
      "±4 mm",
      "± under 1 mm",
      "",
      "",
    ]);
  });
});
