/** Several things under the hand: boxed, moved together, copied, turned about a place, mirrored; locked ones stay. */
import { describe, expect, it } from "vitest";
import { thingsInBox } from "../../../src/canvas/select/box";
import { handlesFor } from "../../../src/canvas/select/handles";
import { toScreen } from "../../../src/canvas/view/view";
import {
  buildingEdits,
  drawingEdits,
  type Point,
  type Project,
  siteEdits,
  surveyEdits,
  type Thing,
} from "../../../src/document";
import { checkEdit } from "../../support/checkEdit";
import { type Hand, handOn, metricProject, view } from "../support/hand";

/** A 10 by 6 building at the origin, a swale north of it, two trees and a shot to the east, a lot round all. */
function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, siteEdits.addSwale, {
    line: [
      [-20, 20],
      [30, 20],
    ],
  });
  for (const at of [
    [30, 0],
    [34, 5],
  ] as Point[])
    project = checkEdit(project, siteEdits.addFeature, { kind: "tree", points: [at] });
  project = checkEdit(project, surveyEdits.addShot, { name: "oak", place: { kind: "at", x: 32, y: -6 } });
  return checkEdit(project, siteEdits.setLotOutline, {
    outline: [
      [-40, -35],
      [45, -35],
      [45, 35],
      [-40, 35],
    ],
  });
}

const building: Thing = { kind: "building" };
const swale: Thing = { kind: "swale", id: "w1" };
const trees: readonly Thing[] = [
  { kind: "feature", id: "f1" },
  { kind: "feature", id: "f2" },
];

function holding(...things: readonly Thing[]): Hand {
  const hand = handOn(site());
  hand.selection = things;
  return hand;
}

const treePlaces = (hand: Hand) => hand.project.lot.features.map(({ points }) => points[0]);
const locked = (project: Project, ...things: readonly Thing[]) =>
  checkEdit(project, drawingEdits.lockThings, { things, locked: true });

describe("what is selected", () => {
  it("says that it is locked instead of how to drag it", () => {
    const hand = handOn(locked(site(), swale));
    hand.selection = [swale];
    hand.move(-30, -30);
    expect(hand.hint()).toBe("The swale is selected and locked: right click to unlock, Esc lets go");
    hand.selection = [swale, building];
    hand.move(-30, -31);
    expect(hand.hint()).toContain("drag one to move");
  });
});

describe("a box", () => {
  const boxed = (project: Project, a: Point, b: Point) =>
    thingsInBox(project, view, toScreen(view, a), toScreen(view, b));

  it.each([
    ["what lies in it", [28, -8], [36, 7], [...trees, { kind: "shot", id: "s1" }]],
    ["what it touches, from any corner to any other", [5, 25], [-2, 3], [building, swale]],
    ["a line that runs through it", [4, 19], [6, 21], [swale]],
    ["nothing inside the building's walls", [2, 2], [5, 4], []],
    [
      "the lot only as a whole",
      [-38, -37],
      [50, 37],
      [...trees, { kind: "shot", id: "s1" }, building, swale],
    ],
  ] as [string, Point, Point, Thing[]][])("takes %s", (_what, a, b, things) =>
    expect(boxed(site(), a, b)).toEqual(things),
  );

  it("takes the lot when it lies in it, and nothing that is locked or hidden", () => {
    expect(boxed(site(), [-42, -37], [50, 37])).toContainEqual({ kind: "lot" });
    const shut = locked(site(), swale);
    expect(boxed(shut, [4, 19], [6, 21])).toEqual([]);
    const unseen = checkEdit(site(), drawingEdits.hideThings, { things: [swale], hidden: true });
    expect(boxed(unseen, [4, 19], [6, 21])).toEqual([]);
  });

  it("is drawn with Shift, adds with Ctrl, and is given up by Esc", () => {
    const hand = handOn(site());
    hand.press(28, -8, { free: true });
    hand.move(33, 2, { free: true });
    expect(hand.state()).toBe("boxing");
    expect(hand.hint()).toMatch(/touches 2 things/);
    hand.move(36, 7, { free: true });
    hand.release(36, 7, { free: true });
    expect(hand.selection).toHaveLength(3);
    expect(hand.panned).toEqual([0, 0]);
    hand.drag(
      [
        [4, 19],
        [5, 20],
        [6, 21],
      ],
      { free: true, adds: true },
    );
    expect(hand.selection).toHaveLength(4);
    hand.press(28, -8, { free: true });
    hand.move(36, 7, { free: true });
    hand.key("Escape");
    hand.release(36, 7);
    expect(hand.selection).toHaveLength(4);
  });
});

describe("several things", () => {
  it("move together in round steps, as one edit", () => {
    const hand = holding(building, ...trees);
    hand.press(7, 4);
    hand.move(9, 4);
    hand.move(11.94, 4.1);
    expect(hand.shown?.lot.features[0]?.points[0]).toEqual([35, 0]);
    hand.release(11.94, 4.1);
    expect(hand.project.building?.outline[3]).toEqual([5, 0]);
    expect(treePlaces(hand)).toEqual([
      [35, 0],
      [39, 5],
    ]);
    expect(hand.labels).toEqual(["move 3 things"]);
  });

  it("snap by the place they are held at", () => {
    const hand = holding(...trees);
    hand.press(30, 0);
    hand.move(20, 10);
    hand.move(10.3, 6.2);
    expect(hand.snapWord()).toBe("corner B");
    hand.release(10.3, 6.2);
    expect(treePlaces(hand)).toEqual([
      [10, 6],
      [14, 11],
    ]);
  });

  it("say when shots go with them", () => {
    const hand = holding(trees[0] as Thing, { kind: "shot", id: "s1" });
    hand.press(30, 0);
    hand.move(31, 0);
    hand.move(33, 0.1);
    expect(hand.texts().join()).toMatch(/moved 3.*, one shot with them/);
  });

  it("are nudged and removed as one step", () => {
    const hand = holding(...trees);
    hand.key("ArrowRight");
    expect(treePlaces(hand)[1]?.[0]).toBeCloseTo(34.01, 12);
    hand.key("Delete");
    expect(hand.project.lot.features).toEqual([]);
    expect(hand.labels).toEqual(["move 2 things", "remove 2 things"]);
  });

  it("leave a copy's original with Alt, and the copy is selected", () => {
    const hand = holding(...trees);
    hand.drag(
      [
        [30, 0],
        [31, 0],
        [33, 0.1],
      ],
      { copies: true },
    );
    expect(treePlaces(hand)).toEqual([
      [30, 0],
      [34, 5],
      [33, 0],
      [37, 5],
    ]);
    expect(hand.selection).toEqual([
      { kind: "feature", id: "f3" },
      { kind: "feature", id: "f4" },
    ]);
    expect(hand.labels).toEqual(["duplicate 2 things"]);
  });
});

describe("turning about a chosen place", () => {
  it("turns about the middle of the things by a typed angle, clockwise", () => {
    const hand = holding(...trees);
    hand.use("turn");
    hand.type("90");
    expect(hand.shown?.lot.features[0]?.points[0]?.[0]).toBeCloseTo(29.5, 9);
    hand.key("Enter");
    // About (32, 2.5): from (30, 0) a quarter clockwise to (29.5, 4.5).
    expect(treePlaces(hand)[0]?.[0]).toBeCloseTo(29.5, 9);
    expect(treePlaces(hand)[0]?.[1]).toBeCloseTo(4.5, 9);
    expect(hand.tool).toBe("select");
    expect(hand.selection).toEqual(trees);
    expect(hand.labels).toEqual(["turn 2 things"]);
  });

  it("turns about a corner that the centre was dragged to", () => {
    const hand = holding(building);
    hand.use("turn");
    // The middle of the building is (5, 3).
    hand.drag([
      [5, 3],
      [3, 2],
      [0.2, 0.1],
    ]);
    hand.drag([
      [10, 0],
      [9, 3],
      [0.1, 9.4],
    ]);
    const outline = hand.project.building?.outline ?? [];
    expect(outline[3]?.[0]).toBeCloseTo(0, 9);
    expect(outline[3]?.[1]).toBeCloseTo(0, 9);
    expect(outline[2]?.[0]).toBeCloseTo(0, 9);
    expect(outline[2]?.[1]).toBeCloseTo(10, 9);
  });

  it("asks for the place: a click gives it, or two typed lengths; then the angle", () => {
    const hand = holding({ kind: "feature", id: "f1" });
    hand.use("turn");
    expect(hand.hint()).toMatch(/^Click the place to turn about, or type it/);
    // Corner C of the building, by a click near it; the tree stands 20 m east of it.
    hand.click(10.1, 0.2);
    expect(hand.hint()).toMatch(/^Drag to turn about this place, or type an angle/);
    hand.type("90");
    hand.key("Enter");
    expect(treePlaces(hand)[0]?.[0]).toBeCloseTo(10, 9);
    expect(treePlaces(hand)[0]?.[1]).toBeCloseTo(-20, 9);
    hand.use("turn");
    hand.type("10, 0");
    hand.key("Enter");
    expect(hand.shownPlaces.at(-1)).toEqual([10, 0]);
    hand.type("-90");
    hand.key("Enter");
    expect(treePlaces(hand)[0]?.[0]).toBeCloseTo(30, 9);
    expect(treePlaces(hand)[0]?.[1]).toBeCloseTo(0, 9);
  });

  it("keeps no step of a tree turned about itself, and says so", () => {
    const hand = holding({ kind: "feature", id: "f1" });
    const before = hand.project;
    hand.use("turn");
    hand.type("30");
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/^Turned about itself it stands as it did/);
    expect([hand.labels, hand.project, hand.shown, hand.tool]).toEqual([[], before, null, "turn"]);
  });

  it("is left by Esc with nothing changed", () => {
    const hand = holding(...trees);
    hand.use("turn");
    hand.type("30");
    hand.key("Escape");
    expect(hand.shown).toBeNull();
    hand.key("Escape");
    expect(hand.tool).toBe("select");
    expect(hand.labels).toEqual([]);
  });
});

describe("mirroring", () => {
  it("about a wall by one click", () => {
    const hand = holding(...trees);
    hand.use("mirror");
    hand.move(10.1, 2.2);
    expect(hand.hint()).toBe("Click to mirror about the line on wall B–C");
    expect(hand.shown?.lot.features[0]?.points[0]).toEqual([-10, 0]);
    hand.click(10.1, 2.2);
    expect(treePlaces(hand)).toEqual([
      [-10, 0],
      [-14, 5],
    ]);
    expect(hand.labels).toEqual(["mirror 2 things"]);
    expect(hand.tool).toBe("select");
  });

  it("about a line through two places", () => {
    const hand = holding(...trees);
    hand.use("mirror");
    hand.click(20, -20);
    hand.move(20.1, -10);
    hand.click(20.1, -5);
    const [first, second] = treePlaces(hand);
    expect(first?.[0]).toBeCloseTo(10, 9);
    expect(first?.[1]).toBeCloseTo(0, 9);
    expect(second?.[0]).toBeCloseTo(6, 9);
    expect(second?.[1]).toBeCloseTo(5, 9);
  });

  it("about a line through two typed places, the second from the plan's origin or from the first", () => {
    for (const second of ["20, -5", "@0, 15"]) {
      const hand = holding(...trees);
      hand.use("mirror");
      hand.type("20, -20");
      hand.key("Enter");
      expect(hand.hint()).toMatch(/second place/);
      hand.move(3, 3);
      hand.type(second);
      hand.key("Enter");
      expect(treePlaces(hand)[0]?.[0], second).toBeCloseTo(10, 9);
      expect(treePlaces(hand)[1]?.[1], second).toBeCloseTo(5, 9);
      expect(hand.labels).toEqual(["mirror 2 things"]);
      expect(hand.tool).toBe("select");
    }
  });

  it("about a line of a typed bearing through a place, shown before it is taken", () => {
    const hand = holding(...trees);
    hand.use("mirror");
    hand.click(20, -20);
    // The pointer's side of the place doesn't matter: a line runs both ways.
    hand.move(28, -40);
    hand.type("N 0 E");
    expect(hand.shown?.lot.features[0]?.points[0]?.[0]).toBeCloseTo(10, 9);
    hand.key("Enter");
    expect(treePlaces(hand)[0]?.[0]).toBeCloseTo(10, 9);
    expect(treePlaces(hand)[0]?.[1]).toBeCloseTo(0, 9);
  });

  it("says what is wanted on Enter alone, and mirrors nothing", () => {
    const hand = holding(...trees);
    hand.use("mirror");
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/click it, or type it/);
    hand.click(20, -20);
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/second place/);
    hand.type("20, -20");
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/second place/);
    expect(hand.labels).toEqual([]);
  });

  it("is given up place by place", () => {
    const hand = holding(...trees);
    hand.use("mirror");
    hand.click(20, -20);
    hand.move(25, -10);
    hand.key("Escape");
    expect(hand.shown).toBeNull();
    hand.key("Escape");
    expect(hand.tool).toBe("select");
    expect(hand.labels).toEqual([]);
  });
});

describe("locked things", () => {
  it("have no handles, aren't moved or removed, and say why", () => {
    const project = locked(site(), building);
    expect(handlesFor(project, [building], view)).toEqual([]);
    const hand = handOn(project);
    hand.click(7, 4);
    expect(hand.selection).toEqual([building]);
    hand.drag([
      [7, 4],
      [8, 4],
      [12, 4],
    ]);
    hand.key("Delete");
    hand.key("ArrowUp");
    expect(hand.labels).toEqual([]);
    expect(hand.said).toEqual(Array(3).fill("Building is locked. Unlock it first."));
  });
});
