/** Notes, dimensions, section lines, windows and features under the select tool: picked, pulled, nudged, taken away. */
import { describe, expect, it } from "vitest";
import { handleAt, handlesFor } from "../../../src/canvas/select/handles";
import { thingAt } from "../../../src/canvas/select/hit";
import { outlineMarks } from "../../../src/canvas/select/outlineMarks";
import { toScreen } from "../../../src/canvas/view/view";
import {
  buildingEdits,
  drawingEdits,
  type Project,
  siteEdits,
  type Thing,
  windowEdits,
} from "../../../src/document";
import { checkEdit } from "../../support/checkEdit";
import { handOn, metricProject, view } from "../support/hand";

/** A 10 by 6 building: A (0,6), B (10,6), C (10,0), D (0,0); one of each drawn thing. */
function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, windowEdits.addWindow, { wall: 2, offset: 2, width: 3 });
  project = checkEdit(project, drawingEdits.addNote, {
    at: [20, 20],
    text: "stone wall",
    pointsTo: [15, 15],
  });
  project = checkEdit(project, drawingEdits.addDimension, {
    from: { kind: "corner", corner: 3 },
    to: { kind: "corner", corner: 2 },
    offset: -4,
  });
  project = checkEdit(project, drawingEdits.addSection, {
    line: [
      [-20, -15],
      [20, -15],
    ],
  });
  return checkEdit(project, siteEdits.addFeature, {
    kind: "septic",
    points: [
      [-30, 20],
      [-20, 20],
      [-20, 30],
      [-30, 30],
    ],
  });
}

const note: Thing = { kind: "note", id: "n1" };
const dimension: Thing = { kind: "dimension", id: "i1" };
const section: Thing = { kind: "section", id: "x1" };
const window: Thing = { kind: "window", id: "o1" };
const feature: Thing = { kind: "feature", id: "f1" };
const metresPerMm = 96 / 25.4 / view.scale;

describe("what lies under the pointer", () => {
  it.each([
    ["the words of a note", [22, 20], note],
    ["a dimension's line", [5, -4], dimension],
    ["a section line", [-10, -15.3], section],
    ["a window", [7, 0.2], window],
    ["the last side of an area", [-30, 25], feature],
    ["nothing between a note and what it points to", [17, 17], null],
  ] as const)("%s", (_what, [x, y], thing) => {
    expect(thingAt(site(), [x, y], 0.8, metresPerMm)).toEqual(thing);
  });

  it("is nothing hidden", () => {
    const hidden = checkEdit(site(), drawingEdits.hideThings, { things: [note, section], hidden: true });
    expect(thingAt(hidden, [22, 20], 0.8, metresPerMm)).toBeNull();
    expect(thingAt(hidden, [-10, -15], 0.8, metresPerMm)).toBeNull();
  });

  it("is outlined: a note by a frame round its words and its leader", () => {
    const marks = outlineMarks(site(), note, "selected", metresPerMm);
    expect(marks).toHaveLength(2);
    const frame = marks[1]?.kind === "line" ? Array.from(marks[1].points) : [];
    expect(Math.min(frame[0] ?? 0, frame[4] ?? 0)).toBeGreaterThan(19.5);
    for (const thing of [dimension, section, window, feature])
      expect(outlineMarks(site(), thing, "hovered", metresPerMm)).toHaveLength(1);
  });
});

function selecting(thing: Thing) {
  const hand = handOn(site());
  hand.selection = [thing];
  return hand;
}

describe("a note", () => {
  it("moves by its words; what it points to stays", () => {
    const hand = selecting(note);
    hand.drag([
      [22, 20],
      [24, 21],
      [25, 24],
    ]);
    expect(hand.project.drawing.notes[0]).toMatchObject({ at: [23, 24], pointsTo: [15, 15] });
    expect(hand.labels).toEqual(["move note"]);
  });

  it("points elsewhere when its leader's end is pulled, and to nothing after a double click", () => {
    const hand = selecting(note);
    hand.drag([
      [15, 15],
      [12, 10],
      [10.1, 6.1],
    ]);
    // Onto corner B.
    expect(hand.project.drawing.notes[0]?.pointsTo).toEqual([10, 6]);
    hand.doubleClick(10, 6);
    expect(hand.project.drawing.notes[0]?.pointsTo).toBeNull();
    expect(hand.labels).toEqual(["point the note", "take the note's line away"]);
  });

  it("gets a leader by pulling the knob beside it", () => {
    const bare = checkEdit(site(), drawingEdits.changeNote, { id: "n1", patch: { pointsTo: null } });
    const hand = handOn(bare);
    hand.selection = [note];
    hand.drag([
      [18.4, 20],
      [10, 20],
      [3, 18],
    ]);
    expect(hand.project.drawing.notes[0]?.pointsTo).toEqual([3, 18]);
  });

  it("is rewritten by a double click and by Enter", () => {
    const hand = handOn(site());
    hand.doubleClick(22, 20);
    expect(hand.words).toMatchObject({ text: "stone wall" });
    hand.words?.answer("dry stone wall");
    expect(hand.project.drawing.notes[0]?.text).toBe("dry stone wall");
    expect(hand.labels).toEqual(["rewrite note"]);
    hand.words = null;
    hand.key("Enter");
    expect(hand.words).toMatchObject({ text: "dry stone wall" });
  });
});

describe("a dimension", () => {
  it("stands off where its line is pulled, or by what is typed", () => {
    const hand = selecting(dimension);
    hand.drag([
      [5, -4],
      [5, -5],
      [5, -7],
    ]);
    expect(hand.project.drawing.dimensions[0]?.offset).toBe(-7);
    hand.move(5, -7);
    hand.press(5, -7);
    hand.move(5, -8);
    hand.type("2.5");
    hand.key("Enter");
    expect(hand.project.drawing.dimensions[0]?.offset).toBe(-2.5);
  });

  it("follows the corner that its end is pulled to", () => {
    const hand = selecting(dimension);
    hand.drag([
      [10, 0],
      [10, 3],
      [10.1, 5.9],
    ]);
    expect(hand.project.drawing.dimensions[0]?.to).toEqual({ kind: "corner", corner: 1 });
    expect(hand.labels).toEqual(["move an end of the dimension"]);
  });
});

describe("a section line", () => {
  it("moves by an end or as a whole, and never bends", () => {
    const hand = selecting(section);
    expect(handlesFor(hand.project, hand.selection, view).map(({ kind }) => kind)).toEqual([
      "vertex",
      "vertex",
    ]);
    hand.drag([
      [20, -15],
      [22, -16],
      [25, -18],
    ]);
    expect(hand.project.drawing.sections[0]?.line[0]).toEqual([-20, -15]);
    expect(hand.project.drawing.sections[0]?.line[1][0]).toBeGreaterThan(23);
    hand.doubleClick(-20, -15);
    expect(hand.said[0]).toBe("the section line needs at least 2 places.");
  });
});

describe("a section line's name", () => {
  it("is asked for by a double click on the line, and kept as one step", () => {
    const hand = handOn(site());
    hand.doubleClick(-10, -15.2);
    expect(hand.words).toMatchObject({ label: "Name of the section line", text: "section P" });
    hand.words?.answer(" through the hollow ");
    expect(hand.project.drawing.sections[0]?.name).toBe("through the hollow");
    expect(hand.labels).toEqual(["name section line"]);
  });
});

describe("a window", () => {
  it("slides along its wall and is made wider by an edge", () => {
    const hand = selecting(window);
    hand.drag([
      [6.5, 0],
      [6, 0],
      [3.5, 0.3],
    ]);
    // Wall C–D runs west from (10, 0): now from x = 5 to x = 2.
    expect(hand.project.building?.windows[0]?.offset).toBeCloseTo(5, 9);
    hand.move(2, 0);
    hand.press(2, 0);
    hand.move(1.5, 0);
    hand.type("4.5");
    hand.key("Enter");
    expect(hand.project.building?.windows[0]).toMatchObject({ offset: 5, width: 4.5 });
    expect(hand.labels).toEqual(["change window", "change window"]);
  });
});

describe("a feature's corners", () => {
  it("move, and new ones are made between, the last and the first too", () => {
    const hand = selecting(feature);
    hand.drag([
      [-30, 25],
      [-33, 25],
      [-35, 25],
    ]);
    expect(hand.project.lot.features[0]?.points).toHaveLength(5);
    expect(hand.project.lot.features[0]?.points[4]).toEqual([expect.closeTo(-35, 0), expect.closeTo(25, 0)]);
    const at = handleAt(handlesFor(hand.project, hand.selection, view), view, toScreen(view, [-20, 20]), 8);
    expect(at).toMatchObject({ kind: "vertex", index: 1 });
  });
});

describe("arrow keys and Delete", () => {
  it.each([
    ["note", note, (p: Project) => p.drawing.notes[0]?.at, [20.01, 20]],
    ["section line", section, (p: Project) => p.drawing.sections[0]?.line[1], [20.01, -15]],
    ["window", window, (p: Project) => p.building?.windows[0]?.offset, 1.99],
    ["dimension", dimension, (p: Project) => p.drawing.dimensions[0]?.offset, -4],
  ] as const)("a %s goes east by one step; two steps are one to undo", (word, thing, read, once) => {
    const hand = selecting(thing);
    hand.key("ArrowRight");
    const got = read(hand.project);
    if (Array.isArray(once)) expect(got).toEqual(once.map((value) => expect.closeTo(value, 9)));
    else expect(got).toBeCloseTo(once as number, 9);
    hand.key("Delete");
    expect(read(hand.project)).toBeUndefined();
    expect(hand.labels.at(-1)).toBe(`remove ${word}`);
    expect(hand.selection).toEqual([]);
  });

  it("bring a dimension's line nearer across its way", () => {
    const hand = selecting(dimension);
    hand.key("ArrowUp", true);
    expect(hand.project.drawing.dimensions[0]?.offset).toBeCloseTo(-3.9, 9);
  });
});
