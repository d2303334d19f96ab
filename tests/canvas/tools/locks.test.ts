import { describe, expect, it } from "vitest";
import { lockFor } from "../../../src/canvas/snap/lock";
import { buildingEdits, type Point, siteEdits } from "../../../src/document";
import { checkEdit } from "../../support/checkEdit";
import { handOn, metricProject } from "../support/hand";

const lotOf = (hand: ReturnType<typeof handOn>) => hand.project.lot.outline;

describe("directions locked by key while a line is drawn", () => {
  it("arrows give the way, typed lengths the rest: a lot of 30 by 20 without a mouse after its first corner", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(-10, -10);
    for (const [key, length] of [
      ["ArrowRight", "30"],
      ["ArrowUp", "20"],
      ["ArrowLeft", "30"],
    ] as const) {
      hand.key(key);
      hand.type(length);
      hand.key("Enter");
    }
    hand.key("Enter");
    expect(lotOf(hand)).toEqual([
      [-10, -10],
      [20, -10],
      [20, 10],
      [-10, 10],
    ]);
  });

  it("the same key lets go, and so does Esc, before it steps back", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(-10, -10);
    hand.move(0, 8);
    hand.key("ArrowRight");
    expect(hand.snapWord()).toBe("locked east");
    hand.key("ArrowRight");
    expect(hand.snapWord()).toBeNull();
    hand.key("ArrowUp");
    expect(hand.snapWord()).toBe("locked north");
    hand.key("Escape");
    expect(hand.snapWord()).toBeNull();
    expect(hand.state()).toBe("next");
  });

  it("holds for one piece", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(-10, -10);
    hand.key("ArrowRight");
    hand.click(5, 3);
    hand.move(9, 9);
    expect(hand.snapWord() ?? "").not.toContain("locked");
  });

  it("A and P go along and square to the line under the pointer, K keeps the direction", () => {
    const outline = buildingEdits.rectangleOutline([0, 0], 10, 6, Math.PI / 6);
    const project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 1 });
    const hand = handOn(project, "swale");
    const [c, d] = [outline[2], outline[3]] as [Point, Point];
    hand.click(-20, -9);
    hand.move((c[0] + 2 * d[0]) / 3, (c[1] + 2 * d[1]) / 3);
    hand.key("a");
    hand.move(-10, -20);
    expect(hand.snapWord()).toBe("locked parallel to wall C–D");
    hand.key("a");
    hand.move((c[0] + 2 * d[0]) / 3, (c[1] + 2 * d[1]) / 3);
    hand.key("P");
    expect(hand.snapWord()).toMatch(/^locked square to wall C–D/);
    hand.key("P");
    hand.move(-17, -5);
    hand.key("k");
    hand.type("10");
    hand.key("Enter");
    hand.key("Enter");
    const [from, to] = hand.project.grading.swales[0]?.line ?? [];
    if (!from || !to) throw new Error("there is no swale");
    expect(from).toEqual([-20, -9]);
    expect(to[0]).toBeCloseTo(-14, 1);
    expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(10, 9);
  });

  it("A and P heed the lot line under the pointer as they heed a wall", () => {
    const outline: Point[] = [
      [-30, -30],
      [30, -20],
      [30, 30],
      [-30, 30],
    ];
    const project = checkEdit(metricProject(), siteEdits.setLotOutline, { outline });
    for (const [key, word, dx, dy] of [
      ["a", "locked parallel to the lot line", 6, 1],
      ["p", "locked square to the lot line", -1, 6],
    ] as const) {
      const hand = handOn(project, "swale");
      hand.click(-10, 0, { free: true });
      hand.move(-6, -26);
      hand.key(key);
      expect(hand.snapWord()).toMatch(new RegExp(`^${word}`));
      hand.move(8, 9);
      hand.type("12");
      hand.key("Enter");
      hand.key("Enter");
      const [from, to] = hand.project.grading.swales[0]?.line ?? [];
      if (!from || !to) throw new Error("there is no swale");
      const across = (to[0] - from[0]) * dy - (to[1] - from[1]) * dx;
      expect(across, key).toBeCloseTo(0, 9);
    }
  });

  it.each([
    ["ArrowRight", 0, "locked east", [1, 0]],
    ["ArrowUp", 0, "locked north", [0, 1]],
    ["ArrowLeft", 0, "locked west", [-1, 0]],
    ["ArrowDown", 0, "locked south", [0, -1]],
    // A plan turned by a quarter counter-clockwise shows its east side up.
    ["ArrowUp", Math.PI / 2, "locked east", [1, 0]],
    ["ArrowRight", Math.PI / 2, "locked south", [0, -1]],
  ] as const)("%s on a plan turned by %f means %s", (key, turn, word, along) => {
    const lock = lockFor(key, { from: [0, 0], to: [3, 4], edge: null, turn });
    expect(lock).toMatchObject({ word, along, oneWay: true });
  });

  it("says what to point at where there is no line", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(-10, -10);
    hand.move(20, 20);
    hand.key("a");
    expect(hand.said).toEqual(["Point at a wall, a lot line or another line first, then press A."]);
  });

  it("holds while a place of a line is pulled", () => {
    const hand = handOn(metricProject(), "lot");
    for (const [x, y] of [
      [-20, -10],
      [20, -10],
      [20, 15],
      [-20, 15],
    ] as const)
      hand.click(x, y);
    hand.key("Enter");
    hand.move(20, -10);
    hand.press(20, -10);
    hand.move(25, -4);
    hand.key("ArrowRight");
    hand.move(26, -2);
    hand.type("50");
    hand.key("Enter");
    expect(lotOf(hand)[1]).toEqual([30, -10]);
  });
});
