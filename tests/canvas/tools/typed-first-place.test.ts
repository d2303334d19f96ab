/** Whatever a click places can be placed by two typed lengths from the plan's origin, in every tool that draws. */
import { describe, expect, it } from "vitest";
import { type Project, surveyEdits } from "../../../src/document";
import type { ToolName } from "../../../src/store/state";
import { checkEdit } from "../../support/checkEdit";
import { type Hand, handOn, metricProject } from "../support/hand";

function typedFirst(tool: ToolName, place: string, kind?: string, project = metricProject()): Hand {
  const hand = handOn(project, tool);
  if (kind !== undefined) hand.choose(kind);
  hand.move(-30, 20);
  hand.type(place);
  // The pointer doesn't take the typed place away again.
  hand.move(-31, 21);
  hand.key("Enter");
  return hand;
}

/** Level ground, so that a grade point has a height to begin from. */
function levelGround(): Project {
  let next = checkEdit(metricProject(), surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-30, 0] });
  next = checkEdit(next, surveyEdits.addShot, { kind: "mark", of: "m1", reading: "2 m" });
  for (const [x, y] of [
    [-40, -40],
    [40, -40],
    [0, 40],
  ] as const)
    next = checkEdit(next, surveyEdits.addShot, { reading: "2 m", place: { kind: "at", x, y } });
  return next;
}

describe("a first place that is typed", () => {
  it("begins a measurement", () => {
    const hand = typedFirst("measure", "5, 6");
    hand.move(5, 16);
    expect(hand.reading()?.rows[0]).toEqual({ name: "distance", value: "10.000 m" });
  });

  it("begins a breakline, and the next place may be typed too", () => {
    const hand = typedFirst("breakline", "5, 6", "ridge");
    hand.type("12, 6");
    hand.key("Enter");
    hand.key("Enter");
    expect(hand.project.survey.breaklines[0]).toMatchObject({
      kind: "ridge",
      points: [
        [5, 6, null],
        [12, 6, null],
      ],
    });
  });

  it("puts a test pit, and brings it into sight", () => {
    const hand = typedFirst("pit", "5 W, 6 S");
    expect(hand.project.survey.pits[0]?.place).toEqual({ kind: "at", x: -5, y: -6 });
    expect(hand.shownPlaces).toEqual([[-5, -6]]);
    // It is used up: the next Enter puts no second pit, and says what is wanted.
    hand.key("Enter");
    expect(hand.project.survey.pits).toHaveLength(1);
    expect(hand.said.at(-1)).toMatch(/click it, or type it/);
  });

  it("begins a berm and puts a grade point", () => {
    const berm = typedFirst("earth", "5, 6", "berm");
    berm.type("9, 6");
    berm.key("Enter");
    berm.key("Enter");
    expect(berm.project.grading.berms[0]?.line).toEqual([
      [5, 6],
      [9, 6],
    ]);
    const point = typedFirst("earth", "5, 6", "point", levelGround());
    expect(point.project.grading.points[0]).toMatchObject({ at: [5, 6], height: 100 });
  });

  it("is where a note's words go", () => {
    const hand = typedFirst("note", "5, 6");
    expect(hand.words).toMatchObject({ at: [5, 6], text: "" });
    hand.words?.answer("spring");
    expect(hand.project.drawing.notes[0]).toMatchObject({ at: [5, 6], pointsTo: null });
  });

  it("begins a dimension", () => {
    const hand = typedFirst("dimension", "5, 6");
    hand.type("9, 6");
    hand.key("Enter");
    hand.type("1");
    hand.key("Enter");
    expect(hand.project.drawing.dimensions[0]).toMatchObject({
      from: { kind: "at", x: 5, y: 6 },
      to: { kind: "at", x: 9, y: 6 },
    });
  });

  it("puts the mark and a shot", () => {
    expect(typedFirst("mark", "5, 6").project.survey.marks[0]?.at).toEqual([5, 6]);
    expect(typedFirst("shot", "5, 6").project.survey.shots[0]?.place).toEqual({ kind: "at", x: 5, y: 6 });
  });
});
