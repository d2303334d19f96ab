import { describe, expect, it } from "vitest";
import { lockFor } from "../../../src/canvas/snap/lock";
import { arcOf, isOnArc } from "../../../src/canvas/snap/rounds";
import { snapTargets } from "../../../src/canvas/snap/targets";
import { buildingEdits, type Point, plotEdits, siteEdits } from "../../../src/document";
import { deedOutline } from "../../../src/plot";
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
    const lock = lockFor(key, { from: [0, 0], to: [3, 4], edge: null, circle: null, turn });
    expect(lock).toMatchObject({ word, along, oneWay: true });
  });

  describe("T goes along the line that touches a round", () => {
    /** A tree at (10, 0) that keeps 6 m clear. From (0, 0) the touching lines rise and fall at asin(6 / 10): 4 to 3. */
    const withTree = () =>
      checkEdit(metricProject(), siteEdits.addFeature, {
        kind: "tree",
        name: "oak",
        points: [[10, 0]],
        keepClear: 6,
      });
    const endOf = (hand: ReturnType<typeof handOn>) => {
      const [, to] = hand.project.grading.swales[0]?.line ?? [];
      if (!to) throw new Error("there is no swale");
      return to;
    };

    it.each([
      ["the side that the pointer is on, above", 4.5, [8, 6]],
      ["and below", -4.5, [8, -6]],
    ] as const)("%s", (_side, y, to) => {
      const hand = handOn(withTree(), "swale");
      hand.click(0, 0);
      hand.move(6.5, y);
      hand.key("t");
      expect(hand.snapWord()).toMatch(/^locked touching what oak keeps clear/);
      // The pointer may go anywhere: the way is held, the length typed.
      hand.move(2, 12);
      hand.type("10");
      hand.key("Enter");
      hand.key("Enter");
      expect(endOf(hand)[0]).toBeCloseTo(to[0], 9);
      expect(endOf(hand)[1]).toBeCloseTo(to[1], 9);
    });

    it("the touching place itself catches: 8 m off by Pythagoras", () => {
      const hand = handOn(withTree(), "swale");
      hand.click(0, 0);
      hand.move(6.5, 4.5);
      hand.key("t");
      hand.move(6.6, 4.6);
      expect(hand.snapWord()).toBe("locked touching what oak keeps clear, where it touches");
      hand.click(6.6, 4.6);
      hand.key("Enter");
      expect(Math.hypot(...endOf(hand))).toBeCloseTo(8, 9);
      expect(Math.hypot(endOf(hand)[0] - 10, endOf(hand)[1])).toBeCloseTo(6, 9);
    });

    it("says why where no line touches, and what to point at where nothing is round", () => {
      const within = handOn(withTree(), "swale");
      within.click(9, 1, { free: true });
      within.move(10, 0);
      within.key("t");
      expect(within.said).toEqual(["From inside what oak keeps clear no line touches it. Begin outside it."]);
      const off = handOn(metricProject(), "swale");
      off.click(0, 0);
      off.move(10, 0);
      off.key("T");
      expect(off.said).toEqual([
        "Point at something round first, like a tree's clear circle or a curve of the lot, then press T.",
      ]);
    });

    it("goes on straight from the end of a lot's curve, and touches only where the curve is", () => {
      // A quarter of a circle about (0, 0), radius 10, of which the lot has the part from east to north.
      const quarter = arcOf([10, 0], [Math.SQRT1_2 * 10, Math.SQRT1_2 * 10], [0, 10], "the lot's curve");
      if (!quarter) throw new Error("no curve");
      const lock = (from: Point, at: Point) =>
        lockFor("t", { from, to: at, edge: null, circle: { circle: quarter, at }, turn: 0 });
      const on = lock([0, 10], [1, 10]);
      if (typeof on === "string") throw new Error(on);
      expect(Math.abs(on.along[0])).toBeCloseTo(1, 9);
      expect(on.along[1]).toBeCloseTo(0, 9);
      expect(on.oneWay).toBe(false);
      expect(lock([20, 0], [5, Math.sqrt(75)])).toMatchObject({ oneWay: true });
      // From the far side both lines touch where the lot has no curve.
      expect(lock([-20, -20], [7, 7])).toBe(
        "From there no line touches the lot's curve. Begin elsewhere, or point at another round.",
      );
    });

    it("a curve of the deed is such a round, with its own radius and only as far as it goes", () => {
      // 40 m square, its north-east corner rounded by a quarter circle of 10 m about (30, 30).
      const courses = [
        { bearing: "N 90-00-00 E", distance: "40 m" },
        { bearing: "N 0-00-00 E", distance: "30 m" },
        { bearing: "N 45-00-00 W", distance: "15.707963267948966 m", radius: "10 m", turns: "left" as const },
        { bearing: "N 90-00-00 W", distance: "30 m" },
        { bearing: "S 0-00-00 E", distance: "40 m" },
      ];
      const written = courses.reduce(
        (project, course) => checkEdit(project, plotEdits.addCourse, course),
        metricProject(),
      );
      const drawn = written.lot.deed && deedOutline(written.lot.deed, written.lot.north);
      if (!drawn) throw new Error("the deed is not drawn");
      const project = checkEdit(written, plotEdits.drawDeed, { outline: drawn.outline });
      const [circle, ...others] = snapTargets(project).circles;
      if (!circle) throw new Error("there is no round");
      expect(others).toEqual([]);
      expect(circle.radius).toBeCloseTo(10, 6);
      expect(circle.centre[0]).toBeCloseTo(30, 6);
      expect(circle.centre[1]).toBeCloseTo(30, 6);
      const half = 10 * Math.SQRT1_2;
      expect(isOnArc(circle, [30 + half, 30 + half])).toBe(true);
      expect(isOnArc(circle, [30 - half, 30 + half])).toBe(false);
      // Straight above (50, 30): sqrt(20² − 10²) to the touching place, 60° round from east.
      const hand = handOn(project, "swale");
      hand.click(50, 30, { free: true });
      hand.move(30 + half, 30 + half, { free: true });
      hand.key("t");
      hand.type(String(Math.sqrt(300)));
      hand.key("Enter");
      hand.key("Enter");
      const to = endOf(hand);
      expect(to[0]).toBeCloseTo(35, 4);
      expect(to[1]).toBeCloseTo(30 + 10 * Math.sin(Math.PI / 3), 4);
    });
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
