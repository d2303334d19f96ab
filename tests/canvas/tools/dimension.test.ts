import { describe, expect, it } from "vitest";
import { buildingEdits, type Project } from "../../../src/document";
import { checkEdit } from "../../support/checkEdit";
import { handOn, metricProject } from "../support/hand";

/** A 10 by 6 building at the origin: A (0,6), B (10,6), C (10,0), D (0,0). */
function withBuilding(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  return checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
}

describe("the dimension tool", () => {
  it("ties its ends to corners and stands off where the pointer is", () => {
    const hand = handOn(withBuilding(), "dimension");
    hand.move(0.2, 0.3);
    expect(hand.snapWord()).toBe("corner D");
    hand.click(0.2, 0.3);
    hand.click(9.8, 0.1);
    expect(hand.state()).toBe("standingOff");
    hand.move(5, -3);
    expect(hand.texts()).toContain("10.000 m");
    expect(hand.texts()).toContain("stands off 3.000 m");
    hand.click(5, -3);
    expect(hand.project.drawing.dimensions).toEqual([
      { id: "i1", from: { kind: "corner", corner: 3 }, to: { kind: "corner", corner: 2 }, offset: -3 },
    ]);
    expect(hand.labels).toEqual(["draw dimension"]);
    expect([hand.tool, hand.selection]).toEqual(["select", [{ kind: "dimension", id: "i1" }]]);
  });

  it("takes a typed length and bearing, then a typed stand-off on the pointer's side", () => {
    const hand = handOn(metricProject(), "dimension");
    hand.click(0, 0);
    hand.type("12.5");
    hand.key("Tab");
    hand.type("90");
    hand.key("Enter");
    expect(hand.state()).toBe("standingOff");
    hand.move(3, -1);
    hand.type("2");
    hand.key("Enter");
    const [dimension] = hand.project.drawing.dimensions;
    expect(dimension?.offset).toBe(-2);
    expect(dimension?.to).toMatchObject({ kind: "at" });
    const { x, y } = (dimension?.to ?? {}) as { x: number; y: number };
    expect([x, y]).toEqual([expect.closeTo(12.5, 9), expect.closeTo(0, 9)]);
  });

  it("sets both places by one drag, and Esc goes back place by place", () => {
    const hand = handOn(metricProject(), "dimension");
    hand.drag([
      [0, 0],
      [3, 0],
      [6, 0],
    ]);
    expect(hand.state()).toBe("standingOff");
    hand.key("Escape");
    expect(hand.state()).toBe("second");
    hand.key("Escape");
    expect(hand.state()).toBe("picking");
    hand.key("Escape");
    expect(hand.tool).toBe("select");
    expect(hand.project.drawing.dimensions).toEqual([]);
  });

  it("makes nothing of the same place twice", () => {
    const hand = handOn(metricProject(), "dimension");
    hand.click(0, 0);
    hand.click(0, 0);
    expect(hand.state()).toBe("second");
  });
});
