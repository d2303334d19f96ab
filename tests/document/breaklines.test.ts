import { describe, expect, it } from "vitest";
import type { Edit, Project } from "../../src/document";
import {
  arrangeEdits,
  newProject,
  openProject,
  projectText,
  renameThing,
  shapeEdits,
  surveyEdits,
  thingName,
  thingShape,
} from "../../src/document";

function project(edit: Edit): Project {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

const drawn = project(
  surveyEdits.addBreakline.run(newProject(), {
    kind: "bank-top",
    points: [
      [0, 0, 100],
      [5, 0, null],
      [9, 2, 101],
    ],
  }),
);

describe("edits of breaklines", () => {
  it("one is added with its kind's name, opened again as saved", () => {
    expect(thingName(drawn, { kind: "breakline", id: "b1" })).toBe("top of bank");
    const again = openProject(projectText(drawn));
    expect(again.ok && again.project.survey.breaklines).toEqual(drawn.survey.breaklines);
  });

  it("lines of a file join in one step, or none of them", () => {
    const points: [number, number, number | null][] = [
      [0, 0, 1],
      [1, 1, 1],
    ];
    const joined = project(
      surveyEdits.joinBreaklines.run(drawn, {
        lines: [{ points }, { kind: "ditch", name: "old drain", points }],
      }),
    );
    expect(joined.survey.breaklines.map(({ id, name }) => [id, name])).toEqual([
      ["b1", "top of bank"],
      ["b2", "ridge"],
      ["b3", "old drain"],
    ]);
    const refused = surveyEdits.joinBreaklines.run(drawn, {
      lines: [{ points }, { kind: "hole", points }],
    });
    expect(refused).toEqual({ ok: false, why: expect.stringContaining("at least three places") });
  });

  it("a place pulled keeps its height; a place put in has none of its own", () => {
    const moved = project(
      shapeEdits.setPlace.run(drawn, { thing: { kind: "breakline", id: "b1" }, index: 2, to: [10, 3] }),
    );
    expect(moved.survey.breaklines[0]?.points[2]).toEqual([10, 3, 101]);
    const more = project(
      surveyEdits.setBreaklinePlaces.run(drawn, {
        id: "b1",
        points: [
          [0, 0],
          [2, 0],
          [5, 0],
          [9, 2],
        ],
        what: "pull",
      }),
    );
    expect(more.survey.breaklines[0]?.points.map(([, , z]) => z)).toEqual([100, null, null, 101]);
  });

  it("heights are typed and taken away", () => {
    const typed = project(surveyEdits.setBreaklineHeight.run(drawn, { id: "b1", index: 1, text: "99.5 m" }));
    expect(typed.survey.breaklines[0]?.points[1]).toEqual([5, 0, 99.5]);
    const bare = project(surveyEdits.setBreaklineHeight.run(typed, { id: "b1", index: 1, text: "" }));
    expect(bare.survey.breaklines[0]?.points[1]).toEqual([5, 0, null]);
    expect(surveyEdits.setBreaklineHeight.run(drawn, { id: "b1", index: 7, text: "1 m" }).ok).toBe(false);
  });

  it("it moves, is copied, renamed and taken away like other things", () => {
    const thing = { kind: "breakline", id: "b1" } as const;
    const moved = project(arrangeEdits.moveThings.run(drawn, { things: [thing], by: [1, 2] }));
    expect(moved.survey.breaklines[0]?.points[0]).toEqual([1, 2, 100]);
    const copied = project(arrangeEdits.duplicateThings.run(drawn, { things: [thing], by: [0, 10] }));
    expect(thingShape(copied, { kind: "breakline", id: "b2" })?.points[0]).toEqual([0, 10]);
    expect(project(renameThing.run(drawn, { thing, name: "lip" })).survey.breaklines[0]?.name).toBe("lip");
    expect(project(arrangeEdits.removeThings.run(drawn, { things: [thing] })).survey.breaklines).toEqual([]);
  });
});
