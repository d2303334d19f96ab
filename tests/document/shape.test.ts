/** One place or one side of a thing set by its figures. */
import { describe, expect, it } from "vitest";
import {
  buildingEdits,
  drawingEdits,
  newProject,
  type Project,
  renameThing,
  shapeEdits,
  siteEdits,
  surveyEdits,
  type Thing,
  thingName,
  thingShape,
  windowEdits,
} from "../../src/document";
import { checkEdit, refusal } from "../support/checkEdit";

/** An L of six walls, and one of each other kind that has places of its own. */
function site(): Project {
  let now = checkEdit(newProject(), buildingEdits.drawBuilding, {
    outline: [
      [0, 8],
      [12, 8],
      [12, 3],
      [6, 3],
      [6, 0],
      [0, 0],
    ],
    floor: 0.3,
  });
  now = checkEdit(now, buildingEdits.addDoor, { wall: 4, offset: 1, width: 3 });
  now = checkEdit(now, siteEdits.addDrive, {
    line: [
      [3, -30],
      [3.5, 0],
    ],
    door: "d1",
  });
  now = checkEdit(now, siteEdits.addSwale, {
    line: [
      [-5, 14],
      [6, 14],
      [20, 10],
    ],
  });
  now = checkEdit(now, siteEdits.setLotOutline, {
    outline: [
      [-30, -40],
      [40, -40],
      [40, 30],
    ],
  });
  now = checkEdit(now, siteEdits.addFeature, { kind: "tree", points: [[20, 20]] });
  now = checkEdit(now, surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-12, 3] });
  now = checkEdit(now, surveyEdits.addShot, { name: "A", place: { kind: "corner", corner: 0 } });
  now = checkEdit(now, drawingEdits.addNote, { at: [3, 20], text: "spring", pointsTo: [5, 18] });
  now = checkEdit(now, drawingEdits.addDimension, {
    from: { kind: "corner", corner: 0 },
    to: { kind: "corner", corner: 1 },
    offset: 1,
  });
  return checkEdit(now, drawingEdits.addSection, {
    line: [
      [-10, 4],
      [25, 4],
    ],
  });
}

const plan = site();

describe("a place", () => {
  it.each([
    [{ kind: "building" }, 1],
    [{ kind: "lot" }, 2],
    [{ kind: "drive", id: "v1" }, 0],
    [{ kind: "swale", id: "w1" }, 1],
    [{ kind: "feature", id: "f1" }, 0],
    [{ kind: "mark", id: "m1" }, 0],
    [{ kind: "shot", id: "s1" }, 0],
    [{ kind: "note", id: "n1" }, 0],
    [{ kind: "note", id: "n1" }, 1],
    [{ kind: "dimension", id: "i1" }, 1],
    [{ kind: "section", id: "x1" }, 0],
  ] as [Thing, number][])("of %o is put elsewhere, the others stay", (thing, index) => {
    const was = thingShape(plan, thing)?.points ?? [];
    const now = checkEdit(plan, shapeEdits.setPlace, { thing, index, to: [14, 9] });
    const expected = was.map((at, i) => (i === index ? [14, 9] : at));
    expect(thingShape(now, thing)?.points).toEqual(expected);
  });

  it("unties a drive only when its end is moved", () => {
    const thing: Thing = { kind: "drive", id: "v1" };
    const start = checkEdit(plan, shapeEdits.setPlace, { thing, index: 0, to: [4, -31] });
    expect(start.grading.drives[0]?.door).toBe("d1");
    const end = checkEdit(plan, shapeEdits.setPlace, { thing, index: 1, to: [4, -1] });
    expect(end.grading.drives[0]?.door).toBeNull();
  });

  it("of a door slides it along its wall to the east or north that is typed; across the wall it is refused", () => {
    // Wall E–F runs from (6, 0) to the west: the door of 3 m at 1 m has its middle at (3.5, 0).
    const thing: Thing = { kind: "door", id: "d1" };
    const slid = checkEdit(plan, shapeEdits.setPlace, { thing, index: 0, to: [3, 0] });
    expect(slid.building?.doors[0]).toMatchObject({ wall: 4, offset: 1.5 });
    expect(refusal(plan, shapeEdits.setPlace, { thing, index: 0, to: [3.5, 1] })).toBe(
      `The ${plan.building?.doors[0]?.name} stays on its wall, which runs straight east and west: type how far east it is.`,
    );
    expect(refusal(plan, shapeEdits.setPlace, { thing, index: 0, to: [5.5, 0] })).not.toBe("");
  });

  it("of a window in a slanting wall comes to the coordinate that is typed", () => {
    const turned = checkEdit(newProject(), buildingEdits.drawBuilding, {
      outline: buildingEdits.rectangleOutline([0, 0], 10, 6, Math.PI / 6),
      floor: 0.3,
    });
    const glazed = checkEdit(turned, windowEdits.addWindow, { wall: 0, offset: 2, width: 1 });
    const thing: Thing = { kind: "window", id: glazed.building?.windows[0]?.id ?? "" };
    const middleOf = (project: Project) => {
      const [a, b] = thingShape(project, thing)?.points ?? [];
      return a && b ? [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] : [];
    };
    const [x = 0, y = 0] = middleOf(glazed);
    const now = checkEdit(glazed, shapeEdits.setPlace, { thing, index: 0, to: [x + 1, y] });
    expect(middleOf(now)[0]).toBeCloseTo(x + 1, 9);
    expect(middleOf(now)[1]).toBeCloseTo(y + Math.tan(Math.PI / 6), 9);
  });

  it("is refused where walls would cross, where it is locked, and where there is none", () => {
    const building: Thing = { kind: "building" };
    expect(refusal(plan, shapeEdits.setPlace, { thing: building, index: 0, to: [9, 1] })).toMatch(/cross/);
    const locked = checkEdit(plan, drawingEdits.lockThings, { things: [building], locked: true });
    expect(refusal(locked, shapeEdits.setPlace, { thing: building, index: 0, to: [1, 9] })).toMatch(/locked/);
    expect(refusal(plan, shapeEdits.setPlace, { thing: building, index: 9, to: [1, 9] })).toMatch(
      /no such place/,
    );
  });
});

describe("a side", () => {
  it("of an L keeps its right angles", () => {
    const now = checkEdit(plan, shapeEdits.setSide, { thing: { kind: "building" }, side: 0, length: 15 });
    expect(now.building?.outline).toEqual([
      [0, 8],
      [15, 8],
      [15, 3],
      [6, 3],
      [6, 0],
      [0, 0],
    ]);
    const last = checkEdit(plan, shapeEdits.setSide, { thing: { kind: "building" }, side: 5, length: 10 });
    expect(last.building?.outline).toEqual([
      [0, 10],
      [12, 10],
      [12, 3],
      [6, 3],
      [6, 0],
      [0, 0],
    ]);
  });

  it("of a lot moves its corner, of a line all that follows", () => {
    const lot = checkEdit(plan, shapeEdits.setSide, { thing: { kind: "lot" }, side: 0, length: 60 });
    expect(lot.lot.outline).toEqual([
      [-30, -40],
      [30, -40],
      [40, 30],
    ]);
    const swale = checkEdit(plan, shapeEdits.setSide, {
      thing: { kind: "swale", id: "w1" },
      side: 0,
      length: 10,
    });
    expect(swale.grading.swales[0]?.line).toEqual([
      [-5, 14],
      [5, 14],
      [19, 10],
    ]);
  });

  it("needs a length, and must be there", () => {
    const swale: Thing = { kind: "swale", id: "w1" };
    expect(refusal(plan, shapeEdits.setSide, { thing: swale, side: 0, length: 0 })).toMatch(
      /more than nothing/,
    );
    expect(refusal(plan, shapeEdits.setSide, { thing: swale, side: 2, length: 5 })).toMatch(/no such side/);
  });
});

describe("a name", () => {
  it.each([
    { kind: "building" },
    { kind: "door", id: "d1" },
    { kind: "drive", id: "v1" },
    { kind: "swale", id: "w1" },
    { kind: "feature", id: "f1" },
    { kind: "mark", id: "m1" },
    { kind: "section", id: "x1" },
  ] as Thing[])("of %o is another one", (thing) => {
    expect(thingName(checkEdit(plan, renameThing, { thing, name: " north one " }), thing)).toBe("north one");
    if (thing.kind !== "feature")
      expect(refusal(plan, renameThing, { thing, name: " " })).toMatch(/needs a name/);
  });

  it("of a shot is what its row says, of a note its words; a lot has none", () => {
    const shot: Thing = { kind: "shot", id: "s1" };
    expect(thingName(checkEdit(plan, renameThing, { thing: shot, name: "NE" }), shot)).toBe("shot NE");
    const note: Thing = { kind: "note", id: "n1" };
    expect(thingName(checkEdit(plan, renameThing, { thing: note, name: "dry well" }), note)).toBe(
      "note “dry well”",
    );
    expect(refusal(plan, renameThing, { thing: { kind: "lot" }, name: "mine" })).toMatch(/no name/);
  });
});
