import { describe, expect, it } from "vitest";
import {
  allThings,
  arrangeEdits,
  buildingEdits,
  drawingEdits,
  newProject,
  type Project,
  pitEdits,
  renameThing,
  shapeEdits,
  thingName,
  thingShape,
  visibleProject,
} from "../../src/document";
import { checkEdit, refusal } from "../support/checkEdit";

const pit = { kind: "pit", id: "p1" } as const;

/** A pit on corner B (10, 6) of a building at the origin. */
function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  const drawn = checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  return checkEdit(drawn, pitEdits.addPit, { place: { kind: "corner", corner: 1 } });
}

describe("a test pit as a thing of the plan", () => {
  it("is listed, named and lies where its place is", () => {
    expect(allThings(site())).toContainEqual(pit);
    expect(thingName(site(), pit)).toBe("pit 1");
    expect(thingShape(site(), pit)?.points).toEqual([[10, 6]]);
    const named = checkEdit(site(), renameThing, { thing: pit, name: "by the oak" });
    expect(thingName(named, pit)).toBe("by the oak");
  });

  it("moves by hand and by typed places, and is then tied to nothing", () => {
    const moved = checkEdit(site(), arrangeEdits.moveThings, { things: [pit], by: [1, -2] });
    expect(moved.survey.pits[0]?.place).toEqual({ kind: "at", x: 11, y: 4 });
    const typed = checkEdit(site(), shapeEdits.setPlace, { thing: pit, index: 0, to: [3, 3] });
    expect(typed.survey.pits[0]?.place).toEqual({ kind: "at", x: 3, y: 3 });
  });

  it("is removed, hidden and kept from being changed like other things, but not copied", () => {
    expect(checkEdit(site(), arrangeEdits.removeThings, { things: [pit] }).survey.pits).toEqual([]);
    const hidden = checkEdit(site(), drawingEdits.hideThings, { things: [pit], hidden: true });
    expect(visibleProject(hidden).survey.pits).toEqual([]);
    const locked = checkEdit(site(), drawingEdits.lockThings, { things: [pit], locked: true });
    expect(refusal(locked, arrangeEdits.moveThings, { things: [pit], by: [1, 1] })).toContain("locked");
    expect(refusal(site(), arrangeEdits.duplicateThings, { things: [pit], by: [1, 1] })).toContain("dug");
  });
});
