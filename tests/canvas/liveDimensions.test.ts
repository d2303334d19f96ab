import { describe, expect, it } from "vitest";
import { liveDimensions } from "../../src/canvas/select/liveDimensions";
import {
  buildingEdits,
  type Edit,
  gradingEdits,
  type Project,
  siteEdits,
  thingKey,
} from "../../src/document";
import type { Selected } from "../../src/store/state";
import { checkEdit } from "../support/checkEdit";
import { handOn, metricProject } from "./support/hand";

/** A 10 by 6 building 20 m above the south lot line, a door of 4 m at 3 m from C in its south wall, a drive to it. */
function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, siteEdits.setLotOutline, {
    outline: [
      [-30, -20],
      [40, -20],
      [40, 40],
      [-30, 40],
    ],
  });
  project = checkEdit(project, buildingEdits.addDoor, { wall: 2, offset: 3, width: 4 });
  return checkEdit(project, siteEdits.addDrive, {
    line: [
      [5, -20],
      [5, -10],
      [5, 0],
    ],
    door: "d1",
    width: 3,
  });
}

const building: readonly Selected[] = [{ kind: "building" }];

function typed(project: Project, selection: readonly Selected[], label: string, m: number): Edit {
  const found = liveDimensions(project, selection).find((each) => each.label === label);
  if (!found) throw new Error(`there is no dimension "${label}"`);
  return found.change(project, m);
}

function changed(project: Project, selection: readonly Selected[], label: string, m: number): Project {
  const edit = typed(project, selection, label, m);
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

describe("dimensions of the selected thing", () => {
  it("tell the walls and the distances to the lot", () => {
    const all = liveDimensions(site(), building).map(({ label, m }) => `${label} ${m}`);
    expect(all).toEqual(
      expect.arrayContaining([
        "wall A–B 10",
        "wall B–C 6",
        "wall C–D 10",
        "wall D–A 6",
        "corner C to the south lot line 20",
      ]),
    );
  });

  it("say to which lot line they go, in words for where there is room and for where there is less", () => {
    const ties = liveDimensions(site(), building).filter(({ to }) => to);
    expect(ties.map(({ to }) => to?.join(", "))).toContain("to south line, to S line");
    expect(ties.map(({ key }) => key).filter((key) => key.startsWith("wall"))).toEqual([]);
  });

  it("a wall typed over keeps its beginning and all right angles", () => {
    const longer = changed(site(), building, "wall A–B", 12.5);
    expect(longer.building?.outline).toEqual([
      [0, 6],
      [12.5, 6],
      [12.5, 0],
      [0, 0],
    ]);
  });

  it("a distance to the lot line moves the whole building", () => {
    const tie = liveDimensions(site(), building).find(({ label }) => label.endsWith("to the south lot line"));
    if (!tie) throw new Error("there is no tie");
    const edit = tie.change(site(), 15);
    if (!edit.ok) throw new Error(edit.why);
    expect(edit.project.building?.outline[3]).toEqual([0, -5]);
    expect(edit.label).toBe("move building by its distance to the lot line");
  });

  it("a door's distances and width", () => {
    const door: readonly Selected[] = [{ kind: "door", id: "d1" }];
    expect(liveDimensions(site(), door).map(({ label, m }) => `${label} ${m}`)).toEqual([
      "from corner C 3",
      "width of the door 4",
      "from corner D 3",
    ]);
    expect(changed(site(), door, "from corner C", 1).building?.doors[0]).toMatchObject({
      offset: 1,
      width: 4,
    });
    expect(changed(site(), door, "width of the door", 5).building?.doors[0]).toMatchObject({
      offset: 3,
      width: 5,
    });
    expect(changed(site(), door, "from corner D", 1).building?.doors[0]).toMatchObject({
      offset: 5,
      width: 4,
    });
    expect(typed(site(), door, "from corner D", 8)).toMatchObject({ ok: false });
  });

  it("a drive keeps its end at the door; its width is typed too", () => {
    const of = site().grading.drives.map(({ id }): Selected => ({ kind: "drive", id }));
    expect(changed(site(), of, "piece 2 of the drive", 12).grading.drives[0]?.line).toEqual([
      [5, -22],
      [5, -12],
      [5, 0],
    ]);
    expect(changed(site(), of, "width of the drive", 4).grading.drives[0]?.width).toBe(4);
  });

  it("a lot line moves the corner at its end", () => {
    const lot = changed(site(), [{ kind: "lot" }], "lot line 1", 80).lot.outline;
    expect(lot[1]).toEqual([50, -20]);
    expect(lot[2]).toEqual([40, 40]);
  });

  it("refuses nothing and less, and a wall that would leave another none", () => {
    expect(typed(site(), building, "wall A–B", 0)).toMatchObject({
      ok: false,
      why: expect.stringMatching(/more than/),
    });
    const ell = checkEdit(site(), buildingEdits.pullOut, { wall: 0, from: 0, to: 4, depth: 3 });
    expect(typed(ell, building, "wall A–B", 11)).toMatchObject({
      ok: false,
      why: expect.stringMatching(/shrink/),
    });
  });

  it("what is locked has none, nor have several things", () => {
    const start = site();
    const locked = { ...start, drawing: { ...start.drawing, locked: [thingKey({ kind: "building" })] } };
    expect(liveDimensions(locked, building)).toEqual([]);
    expect(liveDimensions(site(), [...building, { kind: "lot" }])).toEqual([]);
  });
});

describe("dimensions of what is being drawn", () => {
  it("a rectangle's width typed over stays, the pointer says only the depth", () => {
    const hand = handOn(metricProject(), "building");
    hand.press(0, 0);
    hand.move(3, -4);
    expect(hand.typeOver("width", 8).ok).toBe(true);
    hand.move(5, -5);
    hand.click(5, -5);
    expect(hand.project.building?.outline).toEqual([
      [0, 0],
      [8, 0],
      [8, -5],
      [0, -5],
    ]);
  });

  it("a piece that stands takes its length, what follows moves along", () => {
    const hand = handOn(metricProject(), "swale");
    hand.click(0, 0);
    hand.click(4, 0);
    hand.click(4, 3);
    expect(hand.typeOver("piece 1", 6).ok).toBe(true);
    expect(hand.typeOver("piece 1", -1)).toMatchObject({ ok: false });
    hand.key("Enter");
    expect(hand.project.grading.swales[0]?.line).toEqual([
      [0, 0],
      [6, 0],
      [6, 3],
    ]);
  });
});

describe("widths of what is drawn by a line", () => {
  const line: [number, number][] = [
    [-10, 20],
    [10, 20],
  ];

  it("a swale's bottom and a berm's top are typed over on the plan", () => {
    let project = checkEdit(metricProject(), siteEdits.addSwale, { line });
    project = checkEdit(project, gradingEdits.addBerm, { line });
    const [swale, berm] = [project.grading.swales[0], project.grading.berms[0]];
    if (!swale || !berm) throw new Error("they are not drawn");
    const wider = changed(project, [{ kind: "swale", id: swale.id }], "bottom width of the swale", 0.9);
    expect(wider.grading.swales[0]?.bottomWidth).toBe(0.9);
    const broad = changed(project, [{ kind: "berm", id: berm.id }], "top width of the berm", 1.2);
    expect(broad.grading.berms[0]?.topWidth).toBe(1.2);
  });
});
