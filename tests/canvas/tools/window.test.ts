import { describe, expect, it } from "vitest";
import { buildingEdits, type Project } from "../../../src/document";
import { checkEdit } from "../../support/checkEdit";
import { handOn, metricProject } from "../support/hand";

/** A 10 by 6 building at the origin: A (0,6), B (10,6), C (10,0), D (0,0), a door in the north wall. */
function withDoor(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  const project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  return checkEdit(project, buildingEdits.addDoor, { wall: 0, offset: 3, width: 3 });
}

describe("the window tool", () => {
  it("needs a building", () => {
    expect(handOn(metricProject(), "window").hint()).toBe("Draw the building first: a window needs a wall");
  });

  it("puts a window of a typed width on a wall, in the middle where the pointer is near it", () => {
    const hand = handOn(withDoor(), "window");
    hand.move(5.1, 0.2);
    hand.type("1.8");
    expect(hand.hint()).toBe("Click to put a window of 1.800 m in the middle of wall C–D");
    hand.click(5.1, 0.2);
    expect(hand.project.building?.windows[0]).toMatchObject({ id: "o1", wall: 2, width: 1.8 });
    expect(hand.project.building?.windows[0]?.offset).toBeCloseTo(4.1, 9);
    expect(hand.labels).toEqual(["add window"]);
    expect(hand.selection).toEqual([{ kind: "window", id: "o1" }]);
  });

  it("says before the click that a door is in the way, and puts nothing there", () => {
    const hand = handOn(withDoor(), "window");
    hand.move(5, 6.2);
    expect(hand.hint()).toMatch(/There is a door \(door\) there already/);
    hand.click(5, 6.2);
    expect(hand.project.building?.windows).toEqual([]);
  });

  it("a typed place that is refused stays, and what is typed next takes its place", () => {
    const hand = handOn(withDoor(), "window");
    hand.type("4.5, 6");
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/There is a door \(door\) there already/);
    expect(hand.typed()).toEqual({ texts: ["4.5, 6", ""], refused: true });
    hand.move(3, 3);
    hand.type("8, 6");
    expect(hand.typed()).toEqual({ texts: ["8, 6", ""], refused: false });
    hand.key("Enter");
    expect(hand.project.building?.windows).toHaveLength(1);
    expect(hand.project.building?.windows[0]?.wall).toBe(0);
  });

  it("goes along the wall by Shift and arrows, and says how far from its corner it is", () => {
    const hand = handOn(withDoor(), "window");
    hand.key("ArrowDown");
    expect(hand.hint()).toMatch(/^Enter puts a window of 1\.200 m in the middle of wall C–D/);
    expect(hand.hint()).toMatch(/Shift\+arrows move it along the wall$/);
    hand.key("ArrowLeft", true);
    hand.key("ArrowLeft", true);
    expect(hand.hint()).toMatch(/4\.600 m from C/);
    hand.key("ArrowRight", true);
    hand.key("Enter");
    expect(hand.project.building?.windows[0]).toMatchObject({ wall: 2 });
    expect(hand.project.building?.windows[0]?.offset).toBeCloseTo(4.5, 9);
  });

  it("answers a click beside every wall in words", () => {
    const hand = handOn(withDoor(), "window");
    hand.click(40, 40);
    expect(hand.said.at(-1)).toBe("There is no wall there: click on one, or type a place.");
    expect(hand.project.building?.windows).toEqual([]);
  });

  it("goes by arrow keys alone into the middle of the wall that faces that way, a typed width with it", () => {
    const hand = handOn(withDoor(), "window");
    hand.key("ArrowRight");
    hand.type("1.8");
    expect(hand.hint()).toBe(
      "Enter puts a window of 1.800 m in the middle of wall B–C, 2.100 m from B; Shift+arrows move it along the wall",
    );
    hand.key("ArrowDown");
    hand.key("Enter");
    expect(hand.project.building?.windows[0]).toMatchObject({ wall: 2, width: 1.8 });
    expect(hand.project.building?.windows[0]?.offset).toBeCloseTo(4.1, 9);
  });

  it("the same arrow again goes on to the next wall that faces that way", () => {
    // An L: two walls face north, E–F (the longer) and C–D.
    const outline = [
      [0, 0],
      [10, 0],
      [10, 3],
      [6, 3],
      [6, 9],
      [0, 9],
    ] as [number, number][];
    const project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
    const hand = handOn(project, "window");
    hand.key("ArrowUp");
    expect(hand.hint()).toContain("wall E–F");
    hand.key("ArrowUp");
    expect(hand.hint()).toContain("wall C–D");
    hand.key("ArrowUp");
    expect(hand.hint()).toContain("wall E–F");
  });
});
