import { describe, expect, it } from "vitest";
import { buildingEdits, type Project, surveyEdits } from "../../src/document";
import { createSolver } from "../../src/solve";
import { outsideBand } from "../../src/solve/floor-standing";
import { checkEdit } from "../support/checkEdit";
import { handOn, metricProject } from "./support/hand";

/** A 10 by 6 building at the origin: A (0,6), B (10,6), C (10,0), D (0,0). */
function withBuilding(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  return checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
}

/** Ground that falls 1 in 10 to the south, or as flat as said: heights 100 + y / 10. */
function onSlope(project: Project, run = 10): Project {
  let next = checkEdit(project, surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-30, 0] });
  next = checkEdit(next, surveyEdits.addShot, { kind: "mark", of: "m1", reading: "2 m" });
  for (const [x, y] of [
    [-40, -40],
    [40, -40],
    [40, 40],
    [-40, 40],
  ] as const) {
    const reading = `${(2 - y / run).toFixed(3)} m`;
    next = checkEdit(next, surveyEdits.addShot, { reading, place: { kind: "at", x, y } });
  }
  return next;
}

describe("the building tool", () => {
  it.each([
    ["Enter", "Enter"],
    ["Tab", "Enter"],
  ])("takes the width, %s, the depth, %s, from a clicked corner on", (between, end) => {
    const hand = handOn(metricProject(), "building");
    hand.click(0, 0);
    hand.move(3, 2);
    hand.type("12");
    hand.key(between);
    expect(hand.project.building).toBeNull();
    hand.type("5");
    hand.key(end);
    expect(hand.project.building?.outline).toEqual([
      [0, 5],
      [12, 5],
      [12, 0],
      [0, 0],
    ]);
  });

  it("takes a whole size by Enter before any click, and a typed place is no width", () => {
    const hand = handOn(metricProject(), "building");
    hand.move(0, 0);
    hand.type("12");
    hand.key("Enter");
    hand.type("5");
    hand.key("Enter");
    expect(hand.project.building?.outline[1]).toEqual([12, 5]);

    const placed = handOn(metricProject(), "building");
    placed.type("2, 3");
    placed.key("Enter");
    placed.type("12, 9");
    placed.key("Enter");
    expect(placed.project.building?.outline[1]).toEqual([12, 9]);
  });

  it("keeps a typed width where Enter or a click finds no depth, and says what is missing", () => {
    const hand = handOn(metricProject(), "building");
    hand.click(0, 0);
    hand.type("12");
    hand.key("Enter");
    hand.key("Enter");
    expect(hand.said.at(-1)).toBe(
      "Still missing: the building's depth. Type it, or click the opposite corner.",
    );
    hand.press(6, 0);
    hand.type("5");
    hand.key("Enter");
    expect(hand.project.building?.outline[1]).toEqual([12, 5]);

    const unplaced = handOn(metricProject(), "building");
    unplaced.move(0, 0);
    unplaced.type("12");
    unplaced.key("Enter");
    unplaced.key("Enter");
    expect(unplaced.said.at(-1)).toMatch(/^Still missing: the building's depth\./);
    unplaced.type("5");
    unplaced.key("Enter");
    expect(unplaced.project.building?.outline[1]).toEqual([12, 5]);
  });

  it("pulls a drawn outline's walls straight, the one that will close it too", () => {
    const hand = handOn(metricProject(), "building");
    hand.choose("outline");
    hand.click(0, 0);
    hand.click(10.02, 0.3);
    hand.click(14, 5);
    // Nearly north of the first corner and nearly west of the last one: both are meant.
    hand.move(0.3, 5.2);
    expect(hand.snapWord()).toBe("straight west and straight north");
    hand.click(0.3, 5.2);
    hand.key("Enter");
    const outline = hand.project.building?.outline ?? [];
    const at = (x: number) => outline.find((place) => Math.abs(place[0] - x) < 0.2);
    const [first, second, third, last] = [
      outline.find(([x, y]) => x === 0 && y === 0),
      at(10),
      at(14),
      outline.find(([x, y]) => Math.abs(x) < 1e-9 && y > 1),
    ];
    expect(first).toBeDefined();
    expect(second?.[1]).toBe(0);
    expect(last?.[1]).toBeCloseTo(third?.[1] ?? 0, 12);
  });

  it("draws by a drag, in round sides, and selects what it drew", () => {
    const hand = handOn(metricProject(), "building");
    hand.drag([
      [-5, -4],
      [2, 1],
      [5.06, 3.04],
    ]);
    expect(hand.project.building?.outline).toEqual([
      [-5, 3],
      [5, 3],
      [5, -4],
      [-5, -4],
    ]);
    expect(hand.tool).toBe("select");
    expect(hand.selection).toEqual([{ kind: "building" }]);
    expect(hand.labels).toEqual(["draw building"]);
  });

  it("draws by two clicks, in any direction", () => {
    const hand = handOn(metricProject(), "building");
    hand.click(5, 3);
    expect(hand.state()).toBe("drawing");
    hand.move(-3, -1);
    hand.click(-3, -1);
    expect(hand.project.building?.outline).toEqual([
      [-3, 3],
      [5, 3],
      [5, -1],
      [-3, -1],
    ]);
  });

  it("draws by typed sizes before any press: 9.75, Tab, 7.32, Enter", () => {
    const hand = handOn(metricProject(), "building");
    hand.move(2, 1);
    hand.type("9.75");
    hand.key("Tab");
    hand.type("7.32");
    expect(hand.texts()).toContain("9.750 m");
    hand.key("Enter");
    expect(hand.project.building?.outline).toEqual([
      [2, 8.32],
      [11.75, 8.32],
      [11.75, 1],
      [2, 1],
    ]);
  });

  it("keeps a typed side while the pointer gives the other", () => {
    const hand = handOn(metricProject(), "building");
    hand.click(0, 0);
    hand.move(-3, -4);
    hand.type("8");
    hand.move(-3, -5);
    hand.key("Enter");
    // In the depth's field, with nothing typed: as drawn.
    hand.key("Enter");
    expect(hand.project.building?.outline[2]).toEqual([0, -5]);
    expect(hand.project.building?.outline[0]).toEqual([-8, 0]);
  });

  it("says what can't be read, and draws nothing", () => {
    const hand = handOn(metricProject(), "building");
    hand.click(0, 0);
    hand.move(5, 5);
    hand.type("5/");
    hand.key("Enter");
    expect(hand.said.join()).toMatch(/5\//);
    expect(hand.project.building).toBeNull();
  });

  it("steps back by Esc: what is typed, the corner, then the tool", () => {
    const hand = handOn(metricProject(), "building");
    hand.click(0, 0);
    hand.move(5, 5);
    hand.type("8");
    hand.key("Escape");
    expect(hand.state()).toBe("drawing");
    hand.key("Escape");
    expect(hand.state()).toBe("ready");
    hand.key("Escape");
    expect(hand.tool).toBe("select");
    expect(hand.project.building).toBeNull();
  });

  it("leaves nothing half-drawn when the pointer is lost", () => {
    const hand = handOn(metricProject(), "building");
    hand.press(0, 0);
    hand.move(5, 5);
    hand.lose();
    expect(hand.state()).toBe("ready");
    expect(hand.project.building).toBeNull();
  });

  it("starts the floor a good foot above the highest corner: ground 100.4 at y = 4 makes 100.7", () => {
    const hand = handOn(onSlope(metricProject()), "building");
    hand.drag([
      [0, -2],
      [10, 4],
    ]);
    expect(hand.project.building?.floor).toBeCloseTo(100.7, 9);
  });

  it("starts the floor within what the rules leave, wherever they leave room", () => {
    const solver = createSolver();
    // A foot above the high corner is 100.5 and 100.4: just too low for water from uphill, too high for how much wall may
    // show, too low for what is to stand out.
    for (const [run, most, out] of [
      [20, null, null],
      [40, 0.4, null],
      [40, null, 0.5],
    ] as const) {
      const start = onSlope(metricProject(), run);
      const rules = { ...start.rules, mostShowing: most, leastOut: out };
      const hand = handOn({ ...start, rules }, "building");
      hand.drag([
        [0, -2],
        [10, 4],
      ]);
      const { band } = solver.solve(hand.project);
      const floor = hand.project.building?.floor ?? Number.NaN;
      expect(band.empty).toBe(false);
      expect(outsideBand(band, floor), `${most}, ${out}: ${floor}`).toBeNull();
    }
  });

  it("starts the floor above the mark where there is no ground yet, in whole inches", () => {
    const feet = { ...metricProject().display, length: "ft-in", rounding: 8 } as const;
    const project = checkEdit({ ...metricProject(), display: feet }, surveyEdits.addMark, {
      name: "bolt",
      height: "100'",
    });
    const hand = handOn(project, "building");
    hand.drag([
      [0, 0],
      [10, 6],
    ]);
    expect(hand.project.building?.floor).toBeCloseTo(101 * 0.3048, 9);
  });
});

describe("the lot tool", () => {
  it("drawn anew on corners of the old lot is a lot drawn, not one with a corner less", () => {
    const hand = handOn(metricProject(), "lot");
    for (const corners of [
      ["0, 0", "20, 0", "20, 30", "0, 30"],
      ["0, 0", "20, 0", "20, 30"],
      ["0, 0", "20, 0", "25, 30"],
    ]) {
      hand.use("lot");
      for (const corner of corners) {
        hand.type(corner);
        hand.key("Enter");
      }
      hand.key("Enter");
    }
    expect(hand.project.lot.outline).toHaveLength(3);
    expect(hand.labels).toEqual(["draw lot", "draw lot", "draw lot"]);
  });

  it("closes on its first corner", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(-20, -20);
    hand.click(20, -20);
    hand.click(20, 15);
    hand.move(-19.8, -19.7);
    expect(hand.snapWord()).toBe("closes the line");
    hand.click(-19.8, -19.7);
    expect(hand.project.lot.outline).toEqual([
      [-20, -20],
      [20, -20],
      [20, 15],
    ]);
    expect(hand.selection).toEqual([{ kind: "lot" }]);
  });

  it("takes a typed distance and bearing, clockwise from north, and Enter closes", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(0, 0);
    expect(hand.hint()).toMatch(/bearing \(clockwise from north\)/);
    hand.move(5, 1);
    hand.type("40");
    hand.key("Tab");
    hand.type("90");
    hand.key("Enter");
    hand.type("30");
    hand.key("Tab");
    hand.type("s 0 e");
    hand.key("Enter");
    hand.key("Enter");
    const [, b, c] = hand.project.lot.outline;
    expect(b?.[0]).toBeCloseTo(40, 9);
    expect(b?.[1]).toBeCloseTo(0, 9);
    expect(c?.[0]).toBeCloseTo(40, 9);
    expect(c?.[1]).toBeCloseTo(-30, 9);
  });

  it("tells a line's bearing from the project's north, also as the plan will write it", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(0, 0);
    hand.move(-10, 0, { free: true });
    expect(hand.texts()).toContain("10.000 m at 270.0° (due west)");
    // North turned 30° clockwise: what runs straight up runs 330° from it.
    const { lot } = metricProject();
    const turned = handOn({ ...metricProject(), lot: { ...lot, north: Math.PI / 6 } }, "lot");
    turned.click(0, 0);
    turned.move(0, 10, { free: true });
    expect(turned.texts()).toContain("10.000 m at 330.0° (N 30.0° W)");
    turned.type("20");
    turned.key("Tab");
    turned.type("0");
    turned.key("Enter");
    turned.move(30, 0, { free: true });
    turned.click(30, 0, { free: true });
    turned.key("Enter");
    expect(turned.project.lot.outline[1]?.[0]).toBeCloseTo(10, 9);
    expect(turned.project.lot.outline[1]?.[1]).toBeCloseTo(20 * Math.cos(Math.PI / 6), 9);
  });

  it("answers a word in the midst of typing, and keeps the line", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(0, 0);
    hand.type("40");
    hand.key("Tab");
    hand.type("west");
    expect(hand.said).toContain("Type a bearing clockwise from north, like 268.5, or like S 88.5 W.");
    expect(hand.state()).toBe("next");
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/"st".*Write a bearing/);
    expect(hand.project.lot.outline).toEqual([]);
  });

  it("does not close with two corners", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(0, 0);
    hand.click(10, 0);
    hand.key("Enter");
    expect(hand.project.lot.outline).toEqual([]);
    expect(hand.state()).toBe("next");
  });

  it("takes points back by Backspace and by Esc, to the first and beyond", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(0, 0);
    hand.click(10, 0);
    hand.click(10, 10);
    hand.key("Backspace");
    hand.key("Escape");
    expect(hand.state()).toBe("next");
    hand.key("Escape");
    expect(hand.state()).toBe("first");
    hand.key("Escape");
    expect(hand.tool).toBe("select");
  });

  it("keeps the points when the pointer is lost between clicks", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(0, 0);
    hand.click(10, 0);
    hand.lose();
    hand.click(10, 10);
    hand.key("Enter");
    expect(hand.project.lot.outline).toHaveLength(3);
  });

  it("draws a piece by a drag, and ends at a double click without a double point", () => {
    const hand = handOn(metricProject(), "lot");
    hand.drag([
      [0, 0],
      [4, 0],
      [10, 0],
    ]);
    hand.click(10, 10);
    hand.doubleClick(0, 10);
    expect(hand.project.lot.outline).toEqual([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]);
  });
});

describe("the door tool", () => {
  it("shows where the door would go, in the middle where that is near, and puts it there", () => {
    const hand = handOn(withBuilding(), "door");
    hand.move(5.3, 6.5);
    expect(hand.hint()).toMatch(/in the middle of wall A–B/);
    hand.click(5.3, 6.5);
    const door = hand.project.building?.doors[0];
    expect(door).toMatchObject({ wall: 0, width: 2.75, offset: 3.625 });
    expect(hand.selection).toEqual([{ kind: "door", id: "d1" }]);
  });

  it("takes a typed width", () => {
    const hand = handOn(withBuilding(), "door");
    hand.move(5.3, 6.5);
    hand.type("4");
    hand.key("Enter");
    expect(hand.project.building?.doors[0]).toMatchObject({ wall: 0, width: 4, offset: 3 });
  });

  it("goes on the wall nearest to a typed place, within the wall; a width may be typed before it", () => {
    const hand = handOn(withBuilding(), "door");
    hand.type("3, 40");
    expect(hand.hint()).toBe("Enter puts a door of 2.750 m on wall A–B");
    hand.move(5, -1);
    hand.key("Enter");
    expect(hand.project.building?.doors[0]).toMatchObject({ wall: 0, width: 2.75, offset: 1.625 });
    expect(hand.selection).toEqual([{ kind: "door", id: "d1" }]);
    hand.use("door");
    hand.type("2");
    hand.key("Tab");
    hand.type("0.2, -9");
    hand.key("Enter");
    // Wall C–D runs west: its end at D is 10 along.
    expect(hand.project.building?.doors[1]).toMatchObject({ wall: 2, width: 2, offset: 8 });
    expect(hand.said).toEqual([]);
  });

  it("says why where a typed place has no room, and goes on with the next one", () => {
    const hand = handOn(withBuilding(), "door");
    hand.type("7");
    hand.key("Tab");
    hand.type("30, 3");
    hand.key("Enter");
    expect(hand.said).toEqual([
      "The wall nearest to that place is shorter than a door of 7.000 m. Type the width first, Tab, then the place; or a place on another wall.",
    ]);
    hand.type("5, 6");
    hand.key("Enter");
    hand.use("door");
    hand.type("4, 8");
    hand.key("Enter");
    expect(hand.said[1]).toMatch(/would overlap/);
    expect(hand.project.building?.doors).toHaveLength(1);
  });

  it("goes by arrow keys to the longest free piece of a wall whose middle is taken", () => {
    const hand = handOn(withBuilding(), "door");
    hand.click(5.3, 6.5);
    // The door in the middle leaves 3.625 on either side, then one side, then nothing: that is said.
    for (const _ of [1, 2]) {
      hand.use("door");
      hand.key("ArrowUp");
      expect(hand.hint()).toMatch(
        /^Enter puts a door of 2\.750 m on wall A–B, [\d.]+ m from A; Shift\+arrows move it along the wall$/,
      );
      hand.key("Enter");
    }
    const offsets = hand.project.building?.doors.map(({ offset }) => Math.round(offset * 1e6) / 1e6);
    expect(offsets).toEqual([3.625, 0.4375, 6.8125]);
    hand.use("door");
    hand.key("ArrowUp");
    hand.key("Enter");
    expect(hand.said).toEqual([expect.stringMatching(/would overlap/)]);
  });

  it("says why where a door is already, and puts nothing there", () => {
    const hand = handOn(withBuilding(), "door");
    hand.click(5.3, 6.5);
    hand.use("door");
    hand.move(4, 6.3);
    expect(hand.hint()).toMatch(/would overlap/);
    hand.click(4, 6.3);
    expect(hand.project.building?.doors).toHaveLength(1);
    expect(hand.said).toEqual([expect.stringMatching(/would overlap/)]);
    expect(hand.tool).toBe("door");
  });

  it("puts nothing where no wall is near, or where the wall is too short", () => {
    const hand = handOn(withBuilding(), "door");
    hand.click(30, 30);
    hand.type("7");
    hand.click(10.2, 3);
    expect(hand.project.building?.doors).toEqual([]);
  });

  it("asks for a building first", () => {
    const hand = handOn(metricProject(), "door");
    expect(hand.hint()).toMatch(/Draw the building first/);
    hand.click(0, 0);
    expect(hand.project).toEqual(metricProject());
  });
});

describe("a pad that is drawn", () => {
  it("falls the way the ground does, so that no water stands on it: onSlope falls to the south", () => {
    const hand = handOn(onSlope(withBuilding()), "earth");
    for (const [x, y] of [
      [14, -14],
      [20, -14],
      [20, -8],
    ] as const)
      hand.click(x, y);
    hand.key("Enter");
    expect(hand.project.grading.pads[0]?.towards).toBeCloseTo(-Math.PI / 2, 9);
  });
});

describe("the drive tool", () => {
  const withDoor = () => checkEdit(withBuilding(), buildingEdits.addDoor, { wall: 2, offset: 3, width: 4 });

  it("of one point can't be ended: it says what it lacks and how to go on, and nothing is lost", () => {
    const hand = handOn(withDoor(), "drive");
    hand.click(6, -30);
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(
      /^A line needs at least two places .* this one has one. Click where it goes on/,
    );
    expect(hand.project.grading.drives).toEqual([]);
    hand.click(5.1, -0.2);
    expect(hand.project.grading.drives[0]?.line).toHaveLength(2);
  });

  it("ends at a door's middle and is tied to it", () => {
    const hand = handOn(withDoor(), "drive");
    hand.click(6, -30);
    hand.click(5.2, -10);
    hand.click(5.1, -0.2);
    expect(hand.project.grading.drives[0]).toMatchObject({ door: "d1" });
    expect(hand.project.grading.drives[0]?.line.at(-1)).toEqual([5, 0]);
    expect(hand.selection).toEqual([{ kind: "drive", id: "v1" }]);
  });

  it("drawn from the door to the road runs to the door", () => {
    const hand = handOn(withDoor(), "drive");
    hand.type("5, 0");
    hand.key("Enter");
    hand.click(5, -10);
    hand.click(6, -30);
    hand.key("Enter");
    const [drive] = hand.project.grading.drives;
    expect(drive).toMatchObject({ door: "d1" });
    expect(drive?.line.at(-1)?.[1]).toBeCloseTo(0, 9);
    expect(drive?.line[0]?.[1]).toBeLessThan(-29);
  });

  it("may begin at the door: it says so before, meanwhile, and that it was turned round", () => {
    const hand = handOn(withDoor(), "drive");
    hand.move(6, -30);
    expect(hand.hint()).toBe("Click where the drive leaves the road, or the door to draw it from there");
    hand.move(5.1, -0.2);
    expect(hand.hint()).toBe("Click the door to draw the drive from it down to the road");
    hand.click(5.1, -0.2);
    hand.move(5, -10);
    expect(hand.hint()).toBe("Click the next bend down to the road; Enter at the road ends the drive");
    hand.click(5, -10);
    hand.click(6, -30);
    expect(hand.said).toEqual([]);
    hand.key("Enter");
    expect(hand.said).toEqual(["The drive was turned round: it runs from the road to the door."]);
    expect(hand.project.grading.drives[0]?.line.at(-1)).toEqual([5, 0]);
  });

  it("from the road to the door isn't turned round, and nothing is said of it", () => {
    const hand = handOn(withDoor(), "drive");
    hand.click(6, -30);
    hand.click(5.1, -0.2);
    expect(hand.project.grading.drives).toHaveLength(1);
    expect(hand.said).toEqual([]);
    expect(handOn(withBuilding(), "drive").hint()).toBe("Click where the drive leaves the road");
  });

  it("is tied to the door that its typed end lies on", () => {
    const hand = handOn(withDoor(), "drive");
    hand.click(6, -30);
    expect(hand.hint()).toMatch(/door to end there, tied to it/);
    hand.type("4.5, 0");
    hand.key("Enter");
    hand.key("Enter");
    expect(hand.project.grading.drives[0]).toMatchObject({ door: "d1" });
  });

  it("by keys alone asks which way a typed length goes, and draws nothing meanwhile", () => {
    const hand = handOn(withDoor(), "drive");
    hand.type("0, -30");
    hand.key("Enter");
    hand.type("7");
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/^Which way\? Type its bearing as well/);
    hand.key("Tab");
    hand.type("0");
    hand.key("Enter");
    hand.key("Enter");
    const end = hand.project.grading.drives[0]?.line.at(-1);
    expect(end?.[0]).toBeCloseTo(0, 9);
    expect(end?.[1]).toBeCloseTo(-23, 9);
  });

  it("takes no way from a pointer that rests where it was before the last place was typed", () => {
    const hand = handOn(withDoor(), "drive");
    hand.click(0, -30);
    // The pointer says which way the first piece goes, then it rests.
    hand.move(-20, -30);
    hand.type("7");
    hand.key("Enter");
    hand.type("5");
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/^Which way\?.* or move the pointer/);
    // A held direction is the way, wherever the pointer lies.
    hand.key("ArrowRight");
    hand.key("Enter");
    hand.type("4");
    hand.move(-2, -10);
    hand.key("Enter");
    hand.key("Enter");
    const line = hand.project.grading.drives[0]?.line.map(([x, y]) => [Math.round(x * 10) / 10, y]);
    expect(line?.slice(0, 3)).toEqual([
      [0, -30],
      [-7, -30],
      [-2, -30],
    ]);
    expect(line?.[3]?.[0]).toBeCloseTo(-2, 1);
    expect(line?.[3]?.[1]).toBeCloseTo(-26, 9);
  });

  it("ends anywhere by Enter, tied to nothing", () => {
    const hand = handOn(withDoor(), "drive");
    hand.click(6, -30);
    hand.click(6, -12);
    hand.key("Enter");
    expect(hand.project.grading.drives[0]).toMatchObject({ door: null });
  });

  it("says how the ground runs along each piece", () => {
    const hand = handOn(onSlope(withDoor()), "drive");
    hand.click(20, -30);
    hand.move(20, -20);
    expect(hand.texts()).toEqual(["10.000 m, ground climbs 10.0 %"]);
  });
});

describe("the swale tool", () => {
  it("warns where a piece climbs, and draws from the high end to the outlet", () => {
    const hand = handOn(onSlope(withBuilding()), "swale");
    hand.click(-10, 10);
    hand.move(-10, 14);
    expect(hand.texts().join()).toMatch(/climbs 10\.0 %: water would stand/);
    hand.click(-20, 9);
    hand.move(-30, 8);
    expect(hand.texts().at(-1)).toMatch(/ground falls 1\.0 %/);
    hand.click(-30, 8);
    hand.key("Enter");
    expect(hand.project.grading.swales[0]?.line).toHaveLength(3);
    expect(hand.selection).toEqual([{ kind: "swale", id: "w1" }]);
  });
});

describe("the shot tool", () => {
  it("places unplaced rows in their order, then adds rows", () => {
    let project = checkEdit(withBuilding(), surveyEdits.addShot, { name: "NE stake", reading: "1.2 m" });
    project = checkEdit(project, surveyEdits.addShot, { name: "road edge", reading: "1.9 m" });
    const hand = handOn(project, "shot");
    expect(hand.hint()).toMatch(/“NE stake”/);
    hand.click(20, 20);
    expect(hand.hint()).toMatch(/“road edge”/);
    hand.click(0.2, 6.1);
    expect(hand.project.survey.shots.map(({ place }) => place)).toEqual([
      { kind: "at", x: 20, y: 20 },
      { kind: "corner", corner: 0 },
    ]);
    hand.click(25, 20);
    expect(hand.project.survey.shots[2]).toMatchObject({
      reading: null,
      place: { kind: "at", x: 25, y: 20 },
    });
    expect(hand.selection).toEqual([{ kind: "shot", id: "s3" }]);
    expect(hand.tool).toBe("shot");
  });

  it("places the selected row first", () => {
    let project = checkEdit(metricProject(), surveyEdits.addShot, { name: "one" });
    project = checkEdit(project, surveyEdits.addShot, { name: "two" });
    const hand = handOn(project, "shot");
    hand.selection = [{ kind: "shot", id: "s2" }];
    hand.click(3, 3);
    expect(hand.project.survey.shots.map(({ place }) => place.kind)).toEqual(["none", "at"]);
  });

  it("does not ask for the reading on the mark: its place is the mark's", () => {
    let project = checkEdit(metricProject(), surveyEdits.addMark, { name: "bolt", height: "100 m" });
    project = checkEdit(project, surveyEdits.addShot, { kind: "mark", of: "m1", reading: "1 m" });
    expect(handOn(project, "shot").hint()).toMatch(/Every row has its place/);
  });
});

describe("the mark tool", () => {
  it("makes the first mark at 100, and places one that has no place", () => {
    const hand = handOn(metricProject(), "mark");
    hand.click(4, 5);
    expect(hand.project.survey.marks[0]).toMatchObject({ at: [4, 5], height: { text: "100 m", m: 100 } });
    expect(hand.selection).toEqual([{ kind: "mark", id: "m1" }]);
    const placed = handOn(
      checkEdit(metricProject(), surveyEdits.addMark, { name: "bolt", height: "50 m" }),
      "mark",
    );
    placed.click(1, 2);
    expect(placed.project.survey.marks).toHaveLength(1);
    expect(placed.project.survey.marks[0]).toMatchObject({ name: "bolt", at: [1, 2], height: { m: 50 } });
  });
});
