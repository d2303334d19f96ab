import { describe, expect, it } from "vitest";
import { buildingEdits, type Point, type Project, siteEdits, surveyEdits } from "../../src/document";
import { checkEdit } from "../support/checkEdit";
import { type Hand, handOn, metricProject } from "./support/hand";

/** A 10 by 6 building at the origin with a door and a drive to it, a swale, a lot, a shot and a mark. */
function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, buildingEdits.addDoor, { wall: 2, offset: 3, width: 4 });
  project = checkEdit(project, siteEdits.addDrive, {
    line: [
      [5, -30],
      [5, 0],
    ],
    door: "d1",
  });
  project = checkEdit(project, siteEdits.addSwale, {
    line: [
      [-20, 20],
      [0, 18],
      [30, 10],
    ],
  });
  project = checkEdit(project, siteEdits.setLotOutline, {
    outline: [
      [-40, -35],
      [45, -35],
      [45, 35],
      [-40, 35],
    ],
  });
  project = checkEdit(project, surveyEdits.addShot, { name: "oak", place: { kind: "at", x: 20, y: -10 } });
  return checkEdit(project, surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-20, -10] });
}

function selecting(x: number, y: number): Hand {
  const hand = handOn(site());
  hand.click(x, y);
  hand.labels.length = 0;
  return hand;
}

const outlineOf = (hand: Hand) => hand.project.building?.outline;

describe("what a click selects: the smallest thing first", () => {
  it.each([
    ["a shot", [20.3, -10.2], { kind: "shot", id: "s1" }],
    ["a mark", [-20.3, -10], { kind: "mark", id: "m1" }],
    ["a door before its wall", [5, 0.2], { kind: "door", id: "d1" }],
    ["the building inside", [7, 4], { kind: "building" }],
    ["the building on its wall", [9.7, 3], { kind: "building" }],
    ["a swale on its line", [-10, 19], { kind: "swale", id: "w1" }],
    ["a drive on its line", [5, -20], { kind: "drive", id: "v1" }],
    ["a drive on its width", [6.5, -20], { kind: "drive", id: "v1" }],
    ["the lot on its line", [0, 35.4], { kind: "lot" }],
  ] as const)("%s", (_what, [x, y], thing) => {
    expect(selecting(x, y).selection).toEqual([thing]);
  });

  it("open ground lets go, and Ctrl adds and takes away", () => {
    const hand = selecting(7, 4);
    hand.click(20, -10, { adds: true });
    expect(hand.selection).toHaveLength(2);
    hand.click(7, 4, { adds: true });
    expect(hand.selection).toEqual([{ kind: "shot", id: "s1" }]);
    hand.click(-10, -20);
    expect(hand.selection).toEqual([]);
  });
});

describe("a drag", () => {
  it("on open ground moves the plan, and leaves the selection", () => {
    const hand = selecting(7, 4);
    hand.drag([
      [-10, -20],
      [-9, -20],
      [-5, -18],
    ]);
    expect(hand.panned).toEqual([50, -20]);
    expect(hand.selection).toEqual([{ kind: "building" }]);
    expect(hand.labels).toEqual([]);
  });

  it("on a thing that isn't selected moves the plan, not the thing", () => {
    const hand = handOn(site());
    hand.drag([
      [7, 4],
      [8, 4],
      [12, 4],
    ]);
    expect(outlineOf(hand)?.[3]).toEqual([0, 0]);
    expect(hand.panned).toEqual([50, 0]);
  });

  it("moves the selected building straight and in round steps, as one edit", () => {
    const hand = selecting(7, 4);
    hand.press(7, 4);
    hand.move(9, 4);
    hand.move(11.92, 4.1);
    expect(hand.snapWord()).toMatch(/wall A–B/);
    expect(hand.shown?.building?.outline[3]).toEqual([5, 0]);
    expect(outlineOf(hand)?.[3]).toEqual([0, 0]);
    hand.release(11.92, 4.1);
    expect(outlineOf(hand)?.[3]).toEqual([5, 0]);
    expect(hand.labels).toEqual(["move building"]);
  });

  it("moves freely with Shift, and by a typed distance", () => {
    const free = selecting(7, 4);
    free.drag(
      [
        [7, 4],
        [9, 4],
        [9.13, 5.27],
      ],
      { free: true },
    );
    expect(outlineOf(free)?.[3]?.[0]).toBeCloseTo(2.13, 9);
    const typed = selecting(7, 4);
    typed.press(7, 4);
    typed.move(9, 4);
    typed.type("3.25");
    typed.key("Enter");
    expect(outlineOf(typed)?.[3]).toEqual([3.25, 0]);
    typed.release(9, 4);
    expect(typed.labels).toEqual(["move building"]);
  });

  it("is given up by Esc and when the pointer is lost", () => {
    for (const giveUp of [(hand: Hand) => hand.key("Escape"), (hand: Hand) => hand.lose()]) {
      const hand = selecting(7, 4);
      hand.press(7, 4);
      hand.move(12, 4);
      expect(hand.shown).not.toBeNull();
      giveUp(hand);
      expect(hand.shown).toBeNull();
      hand.release(12, 4);
      expect(hand.labels).toEqual([]);
      expect(outlineOf(hand)?.[3]).toEqual([0, 0]);
    }
  });
});

describe("handles of the building", () => {
  it("pull a wall: the neighbour's length comes out round", () => {
    const hand = selecting(7, 4);
    hand.drag([
      [10, 3],
      [11, 3],
      [12.07, 3.4],
    ]);
    expect(outlineOf(hand)).toEqual([
      [0, 6],
      [12, 6],
      [12, 0],
      [0, 0],
    ]);
    expect(hand.labels).toEqual(["pull a wall"]);
  });

  it("pull a wall to a typed length of its neighbour", () => {
    const hand = selecting(7, 4);
    hand.press(10, 3);
    hand.move(11, 3);
    hand.type("8.25");
    hand.key("Enter");
    // The neighbour after wall B–C is C–D: 8.25 m long now.
    expect(outlineOf(hand)?.[2]).toEqual([8.25, 0]);
  });

  it("stop a wall before the building turns inside out", () => {
    const hand = selecting(7, 4);
    hand.drag([
      [10, 3],
      [5, 3],
      [-20, 3],
    ]);
    expect(outlineOf(hand)?.[2]).toEqual([5, 0]);
  });

  it("ask for a length on a click", () => {
    const hand = selecting(7, 4);
    hand.click(10, 3);
    expect(hand.question).toMatchObject({ label: "wall C–D", m: 10 });
    expect(hand.question?.answer(11.5).ok).toBe(true);
    expect(outlineOf(hand)?.[1]).toEqual([11.5, 6]);
  });

  it("pull a corner with both its walls, or alone with Shift", () => {
    const hand = selecting(7, 4);
    hand.drag([
      [10, 6],
      [11, 6.5],
      [12.06, 7.02],
    ]);
    expect(outlineOf(hand)).toEqual([
      [0, 7],
      [12, 7],
      [12, 0],
      [0, 0],
    ]);
    const alone = selecting(7, 4);
    alone.drag(
      [
        [10, 6],
        [11, 6.5],
        [12.06, 7.02],
      ],
      { free: true },
    );
    expect(outlineOf(alone)?.[0]).toEqual([0, 6]);
    expect(outlineOf(alone)?.[1]).toEqual([12.06, 7.02]);
  });

  it("turn it by steps, and take a typed angle, clockwise as bearings are", () => {
    // The turn handle stands 30 px, 3 m, off the upper wall: at (5, 9); the middle is (5, 3).
    const hand = selecting(7, 4);
    hand.drag([
      [5, 9],
      [4, 9],
      [2, 8.19],
    ]);
    const [a, b] = outlineOf(hand) as [Point, Point];
    // atan(3 / 5.19) is 30°.
    expect(Math.atan2(b[1] - a[1], b[0] - a[0])).toBeCloseTo(Math.PI / 6, 9);
    const typed = selecting(7, 4);
    typed.press(5, 9);
    typed.move(4, 9);
    typed.type("12.5");
    typed.key("Enter");
    const [c, d] = outlineOf(typed) as [Point, Point];
    expect(Math.atan2(d[1] - c[1], d[0] - c[0])).toBeCloseTo((-12.5 * Math.PI) / 180, 9);
  });
});

describe("doors, lines and spots under the hand", () => {
  it("a door slides along its wall and takes its drive along", () => {
    const hand = selecting(5, 0);
    hand.drag([
      [5, 0.1],
      [4, 0.1],
      [3.04, 0.4],
    ]);
    expect(hand.project.building?.doors[0]).toMatchObject({ offset: 5, width: 4 });
    expect(hand.project.grading.drives[0]?.line.at(-1)).toEqual([3, 0]);
  });

  it("a door's edge makes it wider", () => {
    const hand = selecting(5, 0);
    // Wall C–D runs west: the near edge lies at x = 7.
    hand.drag([
      [7, 0],
      [7.5, 0],
      [8.04, 0.1],
    ]);
    expect(hand.project.building?.doors[0]).toMatchObject({ offset: 2, width: 5 });
  });

  it("a place of a swale moves, is made between two, and goes by a double click", () => {
    const hand = selecting(-10, 19);
    hand.drag([
      [0, 18],
      [0, 20],
      [0.5, 22],
    ]);
    expect(hand.project.grading.swales[0]?.line[1]?.[1]).toBeGreaterThan(20);
    const made = selecting(-10, 19);
    made.drag([
      [15, 14],
      [15, 15],
      [15.3, 16.2],
    ]);
    expect(made.project.grading.swales[0]?.line).toHaveLength(4);
    const gone = selecting(-10, 19);
    gone.doubleClick(0, 18);
    expect(gone.project.grading.swales[0]?.line).toEqual([
      [-20, 20],
      [30, 10],
    ]);
  });

  it("a drive's end is tied to the door it is pulled to, and untied when pulled away", () => {
    const away = selecting(5, -20);
    away.drag([
      [5, 0],
      [6, -4],
      [7, -8],
    ]);
    expect(away.project.grading.drives[0]).toMatchObject({ door: null });
    away.drag([
      [7, -8],
      [6, -4],
      [5.1, -0.1],
    ]);
    expect(away.project.grading.drives[0]).toMatchObject({ door: "d1" });
    expect(away.project.grading.drives[0]?.line.at(-1)).toEqual([5, 0]);
  });

  it("a lot keeps three corners", () => {
    const hand = handOn({
      ...site(),
      lot: {
        ...site().lot,
        outline: [
          [-40, -35],
          [45, -35],
          [45, 35],
        ],
      },
    });
    hand.click(45, 10);
    hand.doubleClick(45, 35);
    expect(hand.project.lot.outline).toHaveLength(3);
    expect(hand.said.join()).toMatch(/at least 3/);
  });

  it("a shot moves, and counts as a corner where it is put on one", () => {
    const hand = selecting(20, -10);
    hand.drag([
      [20, -10],
      [21, -10],
      [10.2, 6.1],
    ]);
    expect(hand.project.survey.shots[0]?.place).toEqual({ kind: "corner", corner: 1 });
    expect(hand.labels).toEqual(["move shot oak"]);
  });
});

describe("keys", () => {
  it("nudge by 10 mm, and by ten times that with Shift", () => {
    const hand = selecting(7, 4);
    hand.key("ArrowRight");
    hand.key("ArrowUp", true);
    expect(outlineOf(hand)?.[3]?.[0]).toBeCloseTo(0.01, 12);
    expect(outlineOf(hand)?.[3]?.[1]).toBeCloseTo(0.1, 12);
  });

  it("nudge a door only along its wall", () => {
    const hand = selecting(5, 0);
    hand.key("ArrowUp");
    expect(hand.project.building?.doors[0]?.offset).toBeCloseTo(3, 12);
    hand.key("ArrowLeft");
    expect(hand.project.building?.doors[0]?.offset).toBeCloseTo(3.01, 12);
  });

  it.each([
    ["a shot", [20, -10], (project: Project) => project.survey.shots.length],
    ["a mark", [-20, -10], (project: Project) => project.survey.marks.length],
    ["a door", [5, 0], (project: Project) => project.building?.doors.length],
    ["a swale", [-10, 19], (project: Project) => project.grading.swales.length],
    ["a drive", [5, -20], (project: Project) => project.grading.drives.length],
    ["the lot", [0, 35], (project: Project) => project.lot.outline.length],
  ] as const)("Delete removes %s", (_what, [x, y], left) => {
    const hand = selecting(x, y);
    hand.key("Delete");
    expect(left(hand.project)).toBe(0);
    expect(hand.selection).toEqual([]);
  });

  it("Delete removes several things as one step", () => {
    const hand = selecting(20, -10);
    hand.click(-10, 19, { adds: true });
    hand.labels.length = 0;
    hand.key("Delete");
    expect(hand.labels).toEqual(["remove 2 things"]);
  });

  it("Esc lets go of the selection", () => {
    const hand = selecting(7, 4);
    hand.key("Escape");
    expect(hand.selection).toEqual([]);
  });
});

describe("right angles let go", () => {
  const ring = (hand: ReturnType<typeof handOn>) => hand.project.building?.outline ?? [];
  const barn = () =>
    checkEdit(metricProject(), buildingEdits.drawBuilding, {
      outline: buildingEdits.rectangleOutline([0, 0], 10, 6),
      floor: 30,
    });
  const northWall: [number, number][] = [
    [5, 6],
    [6, 7],
    [7, 8],
  ];

  it("with Alt a wall is carried anywhere, its neighbours swing along", () => {
    const hand = handOn(barn());
    hand.selection = [{ kind: "building" }];
    hand.drag(northWall, { copies: true });
    expect(ring(hand)).toEqual([
      [2, 8],
      [12, 8],
      [10, 0],
      [0, 0],
    ]);
  });

  it("a corner that is moved alone is pulled to where its walls lie straight, or square to the others", () => {
    const hand = handOn(barn());
    hand.selection = [{ kind: "building" }];
    const alt = { copies: true };
    hand.drag(
      [
        [10, 6],
        [11, 8],
        [12.1, 9],
      ],
      alt,
    );
    const free = ring(hand)[1] as [number, number];
    expect([free[0], free[1]]).toEqual([expect.closeTo(12.1, 1), expect.closeTo(9, 1)]);
    hand.press(free[0], free[1], alt);
    hand.move(13, 7, alt);
    hand.move(14, 6.3, alt);
    expect(hand.snapWord()).toMatch(/straight|parallel|square/);
    hand.release(14, 6.3, alt);
    // Near level with A, but nowhere near square over C: only the wall from A lies straight.
    expect(ring(hand)[1]?.[1]).toBe(6);
    hand.press(ring(hand)[1]?.[0] as number, 6, alt);
    hand.move(11, 7, alt);
    hand.move(10.4, 6.4, alt);
    hand.release(10.4, 6.4, alt);
    expect(ring(hand)[1]).toEqual([10, 6]);
  });

  it("a wall that is carried goes straight along its neighbours when it nearly does", () => {
    const hand = handOn(barn());
    hand.selection = [{ kind: "building" }];
    hand.drag(
      [
        [5, 6],
        [5.1, 8],
        [5.2, 10],
      ],
      { copies: true },
    );
    expect(ring(hand)).toEqual([
      [0, 10],
      [10, 10],
      [10, 0],
      [0, 0],
    ]);
  });

  it("where they are not to be kept, Alt keeps them", () => {
    const hand = handOn(barn());
    hand.snapping = { ...hand.snapping, rightAngles: false };
    hand.selection = [{ kind: "building" }];
    hand.drag(northWall, { copies: true });
    expect(ring(hand)[0]).toEqual([0, 8]);
    expect(ring(hand)[1]).toEqual([10, 8]);
    hand.drag([
      [10, 8],
      [11, 9],
      [12, 9],
    ]);
    expect(ring(hand)[1]).toEqual([12, 9]);
    expect(ring(hand)[0]).toEqual([0, 8]);
  });
});
