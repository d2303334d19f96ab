/** Pads, terraces, berms, retaining walls and grade points under the hand: they do what every thing of the plan does. */
import { describe, expect, it } from "vitest";
import { thingsInBox } from "../../../src/canvas/select/box";
import { handlesFor } from "../../../src/canvas/select/handles";
import { thingAt } from "../../../src/canvas/select/hit";
import { outlineMarks } from "../../../src/canvas/select/outlineMarks";
import { snapTargets } from "../../../src/canvas/snap/targets";
import { toScreen } from "../../../src/canvas/view/view";
import {
  allThings,
  arrangeEdits,
  drawingEdits,
  gradingEdits,
  type Point,
  type Project,
  renameThing,
  shapeEdits,
  type Thing,
  thingName,
  thingShape,
} from "../../../src/document";
import { checkEdit } from "../../support/checkEdit";
import { demoProject } from "../../support/demo";
import { handOn, metricProject, view } from "../support/hand";

const square: Point[] = [
  [0, 0],
  [10, 0],
  [10, 8],
  [0, 8],
];

function site(): Project {
  let project = checkEdit(metricProject(), gradingEdits.addPad, { outline: square, use: "terrace" });
  project = checkEdit(project, gradingEdits.addBerm, {
    line: [
      [-30, 20],
      [-10, 20],
    ],
  });
  project = checkEdit(project, gradingEdits.addRetainingWall, {
    line: [
      [20, -10],
      [20, 10],
    ],
    lowSide: "right",
  });
  return checkEdit(project, gradingEdits.addGradePoint, { at: [30, 30], height: 2 });
}

const [pad, berm, wall, point] = allThings(site()) as [Thing, Thing, Thing, Thing];
const places = (project: Project, thing: Thing) => thingShape(project, thing)?.points;

function selecting(thing: Thing) {
  const hand = handOn(site());
  hand.selection = [thing];
  return hand;
}

describe("shapes of the ground", () => {
  it("are things with names of their own", () => {
    const project = site();
    expect([pad, berm, wall, point].map((thing) => thingName(project, thing))).toEqual([
      "terrace",
      "berm",
      "retaining wall",
      "grade point",
    ]);
    const named = checkEdit(project, renameThing, { thing: wall, name: "by the road" });
    expect(thingName(named, wall)).toBe("by the road");
  });

  it.each([
    ["the edge of a terrace", [5, 0.2], pad],
    ["the inside of a terrace", [5, 4], pad],
    ["along a berm", [-20, 20.2], berm],
    ["on the top of a berm", [-20, 19.8], berm],
    ["along a retaining wall", [20.3, 4], wall],
    ["a grade point", [30.2, 30], point],
    ["open ground", [-5, -20], null],
  ] as const)("are picked: %s", (_what, [x, y], thing) => {
    expect(thingAt(site(), [x, y], 0.5)).toEqual(thing);
  });

  it("are picked on their edge before the building above them, and not while they or their layer are hidden", () => {
    const hidden = checkEdit(site(), drawingEdits.hideThings, { things: [pad, point], hidden: true });
    expect(thingAt(hidden, [5, 4], 0.5)).toBeNull();
    expect(thingAt(hidden, [30, 30], 0.5)).toBeNull();
  });

  it("are caught by a box, unless they are locked", () => {
    const corner = (x: number, y: number) => toScreen(view, [x, y]);
    const all = thingsInBox(site(), view, corner(-40, 40), corner(40, -20));
    expect(all).toEqual([pad, berm, wall, point]);
    const locked = checkEdit(site(), drawingEdits.lockThings, { things: [berm], locked: true });
    expect(thingsInBox(locked, view, corner(-40, 40), corner(40, -20))).toEqual([pad, wall, point]);
  });

  it("are outlined where they are picked, and snapped to by their names", () => {
    for (const thing of [pad, berm, wall, point])
      expect(outlineMarks(site(), thing, "selected", 0.1), thing.kind).toHaveLength(1);
    const { points, edges } = snapTargets(site());
    expect(points.map(({ word }) => word)).toEqual(
      expect.arrayContaining(["point of the terrace", "point of the berm", "the grade point"]),
    );
    expect(edges.map(({ word }) => word)).toContain("on the retaining wall");
  });

  it.each([
    ["terrace", pad, [10, 8], [14, 12], 2, "change the terrace"],
    ["berm", berm, [-10, 20], [-5, 25], 1, "change the berm"],
    ["retaining wall", wall, [20, 10], [22, 14], 1, "change the retaining wall"],
  ] as const)("the places of a %s are pulled", (_name, thing, from, to, index, label) => {
    const hand = selecting(thing);
    hand.drag(
      [from, to].map(([x, y]): Point => [x, y]),
      { free: true },
    );
    expect(places(hand.project, thing)?.[index]).toEqual([to[0], to[1]]);
    expect(hand.labels).toEqual([label]);
  });

  it("a new place is pulled out of a side, and a double click takes one away", () => {
    const hand = selecting(pad);
    const between = handlesFor(hand.project, [pad], view).filter(({ kind }) => kind === "between");
    expect(between).toHaveLength(4);
    hand.drag(
      [
        [5, 0],
        [5, -3],
      ],
      { free: true },
    );
    expect(places(hand.project, pad)).toHaveLength(5);
    hand.doubleClick(5, -3);
    expect(places(hand.project, pad)).toEqual(square);
    expect(hand.labels.at(-1)).toMatch(/terrace/);
  });

  it("a grade point is dragged; its height stays", () => {
    const hand = selecting(point);
    hand.drag(
      [
        [30, 30],
        [33, 31],
      ],
      { free: true },
    );
    expect(hand.project.grading.points[0]).toMatchObject({ at: [33, 31], height: 2 });
    expect(hand.labels).toEqual(["move a grade point"]);
  });

  it("the whole is dragged", () => {
    const hand = selecting(berm);
    hand.drag(
      [
        [-24, 20],
        [-24, 26],
      ],
      { free: true },
    );
    expect(places(hand.project, berm)).toEqual([
      [-30, 26],
      [-10, 26],
    ]);
    expect(hand.labels).toEqual(["move berm"]);
  });

  it("turned, a pad falls the way it fell, turned along", () => {
    const turned = checkEdit(site(), arrangeEdits.turnThings, { things: [pad], about: [0, 0], angle: 0.5 });
    const before = site().grading.pads[0]?.towards ?? Number.NaN;
    expect(turned.grading.pads[0]?.towards).toBeCloseTo(before + 0.5, 12);
  });

  it("mirrored, a wall's lower side stays the lower ground's, and a pad falls to the mirrored side", () => {
    const things = [pad, wall];
    const mirrored = checkEdit(site(), arrangeEdits.mirrorThings, { things, a: [0, 0], b: [0, 1] });
    expect(mirrored.grading.walls[0]).toMatchObject({
      line: [
        [-20, -10],
        [-20, 10],
      ],
      lowSide: "left",
    });
    // It fell east (0); mirrored about the north line it falls west.
    expect(Math.cos(mirrored.grading.pads[0]?.towards ?? 0)).toBeCloseTo(-1, 12);
  });

  it("are copied, each with an id of its own, and taken away together", () => {
    const things = [pad, berm, wall, point];
    const copied = checkEdit(site(), arrangeEdits.duplicateThings, { things, by: [1, 1] });
    expect(allThings(copied)).toHaveLength(8);
    expect(new Set(allThings(copied).map((thing) => ("id" in thing ? thing.id : ""))).size).toBe(8);
    const gone = arrangeEdits.removeThings.run(copied, { things });
    expect(gone).toMatchObject({ ok: true, label: "remove 4 things" });
    expect(gone.ok && allThings(gone.project)).toHaveLength(4);
    const one = arrangeEdits.removeThings.run(site(), { things: [wall] });
    expect(one).toMatchObject({ ok: true, label: "remove retaining wall" });
  });

  it("locked they are refused with their name", () => {
    const locked = checkEdit(site(), drawingEdits.lockThings, { things: [wall], locked: true });
    expect(arrangeEdits.moveThings.run(locked, { things: [wall], by: [1, 0] })).toEqual({
      ok: false,
      why: "Retaining wall is locked. Unlock it first.",
    });
  });

  it("their places and sides are typed", () => {
    const moved = checkEdit(site(), shapeEdits.setPlace, { thing: point, index: 0, to: [1, 2] });
    expect(moved.grading.points[0]?.at).toEqual([1, 2]);
    const longer = checkEdit(site(), shapeEdits.setSide, { thing: berm, side: 0, length: 25 });
    expect(places(longer, berm)?.[1]).toEqual([-5, 20]);
  });
});

describe("a shape of the ground that was drawn", () => {
  it.each([
    ["berm", "berm"],
    ["wall", "retaining-wall"],
    ["terrace", "pad"],
    ["point", "grade-point"],
  ] as const)("%s: is selected, so that its figures stand beside the plan", (kind, thing) => {
    const hand = handOn(demoProject("pottery-studio"), "earth");
    hand.choose(kind);
    hand.click(2, 2);
    if (kind !== "point") {
      hand.click(12, 2);
      hand.click(12, 9);
      hand.key("Enter");
    }
    expect(hand.tool).toBe("select");
    expect(hand.selection.map((one) => one.kind)).toEqual([thing]);
  });
});
