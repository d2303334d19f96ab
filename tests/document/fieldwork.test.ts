import { describe, expect, it } from "vitest";
import {
  applyFix,
  buildingEdits,
  newProject,
  openProject,
  type Project,
  projectText,
  shotPlace,
  surveyEdits,
} from "../../src/document";
import { levelSurvey } from "../../src/survey";
import { checkEdit } from "../support/checkEdit";

const started = () => checkEdit(newProject(), surveyEdits.addSetup, {});
const refused = (edit: { ok: boolean; why?: string }) => (edit.ok ? "" : edit.why);

describe("a set-up's rod and beam", () => {
  it("takes the usual sense of each kind of rod, and another where the maker says so", () => {
    const rod = (project: Project) => project.survey.setups[0]?.rod;
    const direct = checkEdit(started(), surveyEdits.setRod, { id: "u1", kind: "direct" });
    expect(rod(direct)).toEqual({ kind: "direct", reads: "up", offset: null });
    const down = checkEdit(started(), surveyEdits.setRod, { id: "u1", kind: "cut-fill", reads: "down" });
    expect(rod(down)?.reads).toBe("down");
    const receiver = checkEdit(direct, surveyEdits.setRod, { id: "u1", kind: "plain", offset: `1 1/2"` });
    expect(rod(receiver)).toEqual({
      kind: "plain",
      reads: "down",
      offset: { text: `1 1/2"`, m: expect.closeTo(0.0381, 9) },
    });
    expect(rod(checkEdit(receiver, surveyEdits.setRod, { id: "u1", offset: "" }))?.offset).toBeNull();
    expect(refused(surveyEdits.setRod.run(direct, { id: "u1", offset: "much" }))).toContain("much");
  });

  it("takes accuracy as the data sheet has it, and a two-peg error", () => {
    const project = checkEdit(started(), surveyEdits.setAccuracy, { id: "u1", text: `1/16" at 100'` });
    expect(project.survey.setups[0]?.accuracy).toEqual({
      text: `1/16" at 100'`,
      ratio: expect.closeTo(5.2083e-5, 8),
    });
    expect(
      checkEdit(project, surveyEdits.setAccuracy, { id: "u1", text: "" }).survey.setups[0]?.accuracy,
    ).toBeNull();
    expect(refused(surveyEdits.setAccuracy.run(project, { id: "u1", text: "fine" }))).toContain("data sheet");
    expect(
      checkEdit(project, surveyEdits.setCollimation, { id: "u1", error: 1e-4 }).survey.setups[0]?.collimation,
    ).toBe(1e-4);
    expect(refused(surveyEdits.setCollimation.run(project, { id: "u1", error: Number.NaN }))).toContain(
      "no beam",
    );
    expect(checkEdit(project, surveyEdits.setLongSights, { on: true }).survey.longSights).toBe(true);
  });
});

describe("a bump", () => {
  function day() {
    let project = checkEdit(started(), surveyEdits.addMark, { name: "Bolt", height: "100 ft" });
    for (const [name, reading, kind] of [
      ["m", "40", "mark"],
      ["a", "50", "ground"],
      ["b", "52", "ground"],
      ["look", "42", "check"],
    ] as const)
      project = checkEdit(project, surveyEdits.addShot, {
        name,
        reading,
        kind,
        of: kind === "ground" ? null : "m1",
      });
    return project;
  }

  it("is told by its check and the row where it began, and can be taken back", () => {
    const told = checkEdit(day(), surveyEdits.reportBump, { check: "s4", from: "s3" });
    expect(told.survey.setups[0]?.bumps).toEqual([{ check: "s4", from: "s3" }]);
    const changed = checkEdit(told, surveyEdits.reportBump, { check: "s4", from: null });
    expect(changed.survey.setups[0]?.bumps).toEqual([{ check: "s4", from: null }]);
    const heights = levelSurvey(told.survey, []).result.points.map(({ height }) => height);
    expect(heights[2]).toBeCloseTo(30.48 - 10 * 0.0254, 9);
    expect(
      checkEdit(changed, surveyEdits.removeBump, { setup: "u1", check: "s4" }).survey.setups[0]?.bumps,
    ).toEqual([]);
  });

  it("is refused where it isn't told by a second look, or began after it", () => {
    expect(refused(surveyEdits.reportBump.run(day(), { check: "s2", from: null }))).toContain("second look");
    expect(refused(surveyEdits.reportBump.run(day(), { check: "s4", from: "s9" }))).toContain("same set-up");
  });
});

describe("a grid of stakes", () => {
  const grid = {
    at: [0, 0] as [number, number],
    rows: 2,
    columns: 3,
    rowSpacing: "10 ft",
    columnSpacing: "20'",
  };
  const laid = () => checkEdit(started(), surveyEdits.addGrid, grid);

  it("adds a row for each stake in the order they are walked, ready for readings alone", () => {
    let project = laid();
    expect(project.survey.shots.map(({ name }) => name)).toEqual(["1-1", "1-2", "1-3", "2-3", "2-2", "2-1"]);
    project = checkEdit(project, surveyEdits.setReading, { id: "s4", text: "62 5/8" });
    const fourth = project.survey.shots[3];
    expect(fourth && shotPlace(project, fourth)).toEqual([
      expect.closeTo(12.192, 9),
      expect.closeTo(3.048, 9),
    ]);
    const moved = checkEdit(project, surveyEdits.changeGrid, { id: "g1", patch: { at: [5, 5] } });
    const there = moved.survey.shots[3];
    expect(there && shotPlace(moved, there)?.[0]).toBeCloseTo(17.192, 9);
  });

  it("goes away with its empty rows, but not with readings", () => {
    expect(checkEdit(laid(), surveyEdits.removeGrid, { id: "g1" }).survey).toMatchObject({
      grids: [],
      shots: [],
    });
    const read = checkEdit(laid(), surveyEdits.setReading, { id: "s1", text: "60" });
    expect(refused(surveyEdits.removeGrid.run(read, { id: "g1" }))).toContain("have readings");
  });

  it.each([
    [{ ...grid, rowSpacing: "wide" }, "wide"],
    [{ ...grid, columnSpacing: "0" }, "some way apart"],
    [{ ...grid, rows: 0 }, "1 to 200"],
    [{ ...grid, rows: 100, columns: 100 }, "5,000 stakes"],
  ])("is refused in words", (args, why) => {
    expect(refused(surveyEdits.addGrid.run(started(), args))).toContain(why);
    expect(refused(surveyEdits.addGrid.run(newProject(), grid))).toContain("set-up of the laser first");
  });
});

describe("one-click mends", () => {
  const two = () => {
    let project = started();
    for (const reading of ["62 5/8", "70"]) project = checkEdit(project, surveyEdits.addShot, { reading });
    return project;
  };

  it("write the reading as its column does", () => {
    const fix = {
      words: "Mend the reading",
      edits: [{ command: "survey.correctReading", args: { id: "s1", m: 62.625 * 0.0254 + 0.3048 } }],
    } as const;
    const edit = applyFix(two(), fix);
    if (!edit.ok) throw new Error(edit.why);
    expect(edit.label).toBe("mend the reading");
    expect(edit.project.survey.shots[0]?.reading).toEqual({
      text: "74⅝″",
      m: expect.closeTo(74.625 * 0.0254, 12),
    });
  });

  it("are one edit, or none at all", () => {
    const swap = {
      words: "Exchange the two readings",
      edits: [
        { command: "survey.correctReading", args: { id: "s1", m: 70 * 0.0254 } },
        { command: "survey.correctReading", args: { id: "s9", m: 1 } },
      ],
    } as const;
    expect(refused(applyFix(two(), swap))).toBe("That shot is gone.");
  });

  it("accept until the reading is typed anew, set aside and take back", () => {
    const accepted = applyFix(two(), {
      words: "Accept",
      edits: [{ command: "survey.acceptShot", args: { id: "s1" } }],
    });
    if (!accepted.ok) throw new Error(accepted.why);
    expect(accepted.project.survey.shots[0]?.accepted).toBe(true);
    expect(
      checkEdit(accepted.project, surveyEdits.setReading, { id: "s1", text: "61" }).survey.shots[0]?.accepted,
    ).toBe(false);
    const aside = checkEdit(two(), surveyEdits.setAside, { id: "s2", aside: true });
    expect(aside.survey.shots[1]?.aside).toBe(true);
    expect(checkEdit(aside, surveyEdits.setAside, { id: "s2", aside: false }).survey.shots[1]?.aside).toBe(
      false,
    );
  });
});

describe("places that lean on others", () => {
  const m = (value: number) => ({ text: `${value} m`, m: value });
  function taped() {
    const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
    let project = checkEdit(started(), buildingEdits.drawBuilding, { outline, floor: 30 });
    project = checkEdit(project, surveyEdits.addMark, { name: "Bolt", height: "100 ft", at: [-5, 0] });
    const place = {
      kind: "tapes" as const,
      from: [
        { kind: "mark" as const, mark: "m1" },
        { kind: "corner" as const, corner: 0 },
      ] as [{ kind: "mark"; mark: string }, { kind: "corner"; corner: number }],
      lengths: [m(5), m(5)] as [{ text: string; m: number }, { text: string; m: number }],
      side: "left" as const,
    };
    project = checkEdit(project, surveyEdits.addShot, { name: "tree", reading: "60", place });
    return checkEdit(project, surveyEdits.addShot, {
      name: "beside",
      reading: "61",
      place: {
        kind: "baseline",
        from: { kind: "shot", shot: "s1" },
        to: { kind: "mark", mark: "m1" },
        along: m(1),
        right: m(0),
      },
    });
  }
  const at = (project: Project, i: number) => {
    const shot = project.survey.shots[i];
    return shot ? shotPlace(project, shot) : null;
  };

  it("stay where they were measured when the building moves", () => {
    const before = taped();
    const after = checkEdit(before, buildingEdits.moveBuilding, { dx: 3, dy: -2 });
    expect(after.survey.shots[0]?.place.kind).toBe("at");
    expect(at(after, 0)).toEqual(at(before, 0)?.map((v) => expect.closeTo(v, 9)));
    expect(at(after, 1)).toEqual(at(before, 1)?.map((v) => expect.closeTo(v, 9)));
  });

  it("keep what they are measured from", () => {
    expect(refused(surveyEdits.removeShots.run(taped(), { ids: ["s1"] }))).toContain(
      "measured from one of these",
    );
    expect(surveyEdits.removeShots.run(taped(), { ids: ["s1", "s2"] }).ok).toBe(true);
    expect(refused(surveyEdits.removeMark.run(taped(), { id: "m1" }))).toContain("measured from this mark");
  });

  it("are saved and opened as they were typed", () => {
    const opened = openProject(projectText(taped()));
    expect(opened.ok && opened.warnings).toEqual([]);
    expect(opened.ok && opened.project.survey).toEqual(taped().survey);
  });
});
