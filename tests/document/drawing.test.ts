/** Notes, dimensions, section lines, pictures, windows and locks: what each edit does and what it refuses. */
import { describe, expect, it } from "vitest";
import {
  buildingEdits,
  drawingEdits,
  type Edit,
  newProject,
  openProject,
  type Project,
  projectText,
  windowEdits,
} from "../../src/document";

function became(edit: Edit): Project {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

const plan = newProject();
const barn = became(
  buildingEdits.drawBuilding.run(plan, {
    outline: [
      [0, 8],
      [12, 8],
      [12, 0],
      [0, 0],
    ],
    floor: 0.3,
  }),
);

describe("notes", () => {
  it("keeps its words and place, and goes through the file and back", () => {
    const noted = became(
      drawingEdits.addNote.run(plan, { at: [3, 4], text: "  spring runs in March ", pointsTo: [5, 6] }),
    );
    expect(noted.drawing.notes).toEqual([
      { id: "n1", at: [3, 4], text: "spring runs in March", pointsTo: [5, 6] },
    ]);
    const opened = openProject(projectText(noted));
    expect(opened.ok && opened.project.drawing).toEqual(noted.drawing);
  });

  it("refuses one without words and says how it is taken away", () => {
    expect(drawingEdits.addNote.run(plan, { at: [0, 0], text: "  " })).toMatchObject({ ok: false });
    const noted = became(drawingEdits.addNote.run(plan, { at: [0, 0], text: "well" }));
    expect(drawingEdits.changeNote.run(noted, { id: "n1", patch: { text: " " } })).toEqual({
      ok: false,
      why: "A note needs some words. Delete takes it away.",
    });
  });
});

describe("dimensions and section lines", () => {
  it("ties a dimension's end to a corner", () => {
    const edit = drawingEdits.addDimension.run(barn, {
      from: { kind: "corner", corner: 0 },
      to: { kind: "at", x: 4, y: 20 },
      offset: 1.5,
    });
    expect(became(edit).drawing.dimensions[0]).toMatchObject({ id: "i1", offset: 1.5 });
  });

  it("names section lines by letters and refuses one without length", () => {
    const one = became(
      drawingEdits.addSection.run(plan, {
        line: [
          [0, 0],
          [10, 0],
        ],
      }),
    );
    const two = became(
      drawingEdits.addSection.run(one, {
        line: [
          [0, 0],
          [0, 9],
        ],
      }),
    );
    expect(two.drawing.sections.map(({ name }) => name)).toEqual(["section P", "section Q"]);
    const point = drawingEdits.addSection.run(plan, {
      line: [
        [1, 1],
        [1, 1],
      ],
    });
    expect(point.ok).toBe(false);
  });

  it("takes away just what was meant", () => {
    const noted = became(drawingEdits.addNote.run(plan, { at: [0, 0], text: "a" }));
    const both = became(drawingEdits.addNote.run(noted, { at: [1, 0], text: "b" }));
    const left = became(drawingEdits.removeDrawn.run(both, { kind: "note", id: "n1" }));
    expect(left.drawing.notes.map(({ text }) => text)).toEqual(["b"]);
  });
});

describe("pictures", () => {
  const underlay = {
    name: "plat",
    media: "image/png",
    data: "iVBORw0KGgo=",
    width: 400,
    height: 300,
    at: [0, 0] as [number, number],
    scale: 0.1,
    turn: 0,
    strength: 0.5,
  } as const;

  it("is placed, turned and faded", () => {
    const placed = became(drawingEdits.addUnderlay.run(plan, { underlay: { ...underlay, at: [0, 0] } }));
    const changed = became(
      drawingEdits.changeUnderlay.run(placed, { id: "u1", patch: { turn: 0.3, strength: 1 } }),
    );
    expect(changed.drawing.underlays[0]).toMatchObject({ turn: 0.3, strength: 1, scale: 0.1 });
  });

  it("refuses a scale of nothing and a strength beyond full", () => {
    const placed = became(drawingEdits.addUnderlay.run(plan, { underlay: { ...underlay, at: [0, 0] } }));
    expect(drawingEdits.changeUnderlay.run(placed, { id: "u1", patch: { scale: 0 } }).ok).toBe(false);
    expect(drawingEdits.changeUnderlay.run(placed, { id: "u1", patch: { strength: 1.1 } }).ok).toBe(false);
  });
});

describe("windows", () => {
  it("keeps windows of a wall apart and inside it", () => {
    const lit = became(windowEdits.addWindow.run(barn, { wall: 0, offset: 2, width: 1.2 }));
    expect(windowEdits.addWindow.run(lit, { wall: 0, offset: 3, width: 1.2 })).toMatchObject({ ok: false });
    expect(windowEdits.addWindow.run(lit, { wall: 0, offset: 11.5, width: 1.2 })).toMatchObject({
      ok: false,
    });
    expect(windowEdits.addWindow.run(lit, { wall: 0, offset: 3.2, width: 1.2 }).ok).toBe(true);
  });

  it("keeps doors and windows off each other", () => {
    const open = became(buildingEdits.addDoor.run(barn, { wall: 0, offset: 2, width: 3 }));
    expect(windowEdits.addWindow.run(open, { wall: 0, offset: 4, width: 1.2 })).toEqual({
      ok: false,
      why: "There is a door (door) there already. Choose a free piece of the wall.",
    });
    const lit = became(windowEdits.addWindow.run(open, { wall: 0, offset: 5, width: 1.2 }));
    expect(buildingEdits.addDoor.run(lit, { wall: 0, offset: 6, width: 2 }).ok).toBe(false);
    expect(buildingEdits.changeDoor.run(lit, { id: "d1", patch: { width: 3.1 } }).ok).toBe(false);
    expect(windowEdits.changeWindow.run(lit, { id: "o1", patch: { offset: 4.9 } }).ok).toBe(false);
    expect(windowEdits.changeWindow.run(lit, { id: "o1", patch: { name: "south window" } }).ok).toBe(true);
  });

  it("slides a window along when its wall gets shorter", () => {
    const lit = became(windowEdits.addWindow.run(barn, { wall: 0, offset: 10, width: 1.2 }));
    const outline: [number, number][] = [
      [0, 8],
      [9, 8],
      [9, 0],
      [0, 0],
    ];
    const shorter = became(buildingEdits.setOutline.run(lit, { outline }));
    expect(shorter.building?.windows[0]).toMatchObject({ wall: 0, width: 1.2, offset: 7.8 });
  });
});

describe("turn, locks and hiding", () => {
  it("keeps the plan's turn within one turn", () => {
    expect(became(drawingEdits.turnPlan.run(plan, { turn: 2 * Math.PI + 0.5 })).drawing.turn).toBeCloseTo(
      0.5,
      12,
    );
    expect(drawingEdits.turnPlan.run(plan, { turn: Number.NaN }).ok).toBe(false);
  });

  it("locks and unlocks things once each", () => {
    const things = [{ kind: "building" }, { kind: "shot", id: "s1" }] as const;
    const locked = became(drawingEdits.lockThings.run(plan, { things, locked: true }));
    const twice = became(drawingEdits.lockThings.run(locked, { things, locked: true }));
    expect(twice.drawing.locked).toEqual(["building", "shot:s1"]);
    const freed = became(
      drawingEdits.lockThings.run(twice, { things: [{ kind: "building" }], locked: false }),
    );
    expect(freed.drawing.locked).toEqual(["shot:s1"]);
    expect(became(drawingEdits.hideThings.run(plan, { things, hidden: true })).drawing.hidden).toHaveLength(
      2,
    );
  });
});
