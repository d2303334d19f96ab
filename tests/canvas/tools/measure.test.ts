import { describe, expect, it } from "vitest";
import { angleAt, readMeasured } from "../../../src/canvas/tools/measure/reading";
import { buildingEdits, type Project, surveyEdits } from "../../../src/document";
import { createSolver } from "../../../src/solve/pipeline";
import { checkEdit } from "../../support/checkEdit";
import { type Hand, handOn, metricProject } from "../support/hand";

/** Ground that falls 1 in 10 to the south: heights 100 + y / 10. */
function onSlope(project: Project): Project {
  let next = checkEdit(project, surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-30, 0] });
  next = checkEdit(next, surveyEdits.addShot, { kind: "mark", of: "m1", reading: "2 m" });
  for (const [x, y] of [
    [-40, -40],
    [40, -40],
    [40, 40],
    [-40, 40],
  ] as const) {
    const reading = `${(102 - (100 + y / 10)).toFixed(3)} m`;
    next = checkEdit(next, surveyEdits.addShot, { reading, place: { kind: "at", x, y } });
  }
  return next;
}

const row = (hand: Hand, name: string) => hand.reading()?.rows.find((one) => one.name === name)?.value;

describe("the measure tool", () => {
  it("tells distance, bearing and fall between two places, and keeps nothing", () => {
    const project = onSlope(metricProject());
    const hand = handOn(project, "measure");
    hand.click(3, 30);
    hand.move(3, 10);
    // 20 m straight south on ground that falls 1 in 10.
    expect(row(hand, "distance")).toBe("20.000 m");
    expect(row(hand, "bearing")).toBe("180.0°");
    expect(row(hand, "ground as it is")).toBe("falls 2.000 m (10.0 %)");
    hand.click(3, 10);
    hand.key("Enter");
    expect(hand.state()).toBe("measured");
    expect(row(hand, "distance")).toBe("20.000 m");
    hand.move(30, 30);
    expect(row(hand, "distance")).toBe("20.000 m");
    hand.key("Escape");
    expect(hand.reading()).toBeNull();
    hand.key("Escape");
    expect(hand.tool).toBe("select");
    expect(hand.project).toBe(project);
  });

  it("tells the finished fall apart from that of the ground", () => {
    const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
    const project = checkEdit(onSlope(metricProject()), buildingEdits.drawBuilding, { outline, floor: 101 });
    const results = createSolver().solve(project);
    const within = readMeasured(
      {
        points: [
          [5, 5],
          [5, 1],
        ],
        closed: false,
      },
      project,
      results,
    );
    const value = (name: string) => within?.rows.find((one) => one.name === name)?.value;
    expect(value("ground as it is")).toBe("falls 0.400 m (10.0 %)");
    expect(value("finished")).toBe("level");
  });

  it("tells when a height is a guess", () => {
    const hand = handOn(onSlope(metricProject()), "measure");
    hand.click(0, 30);
    hand.move(0, 44);
    expect(row(hand, "ground as it is")).toMatch(/, guessed$/);
  });

  it("gives the angle at a second place, and the area when it is closed", () => {
    const hand = handOn(metricProject(), "measure");
    hand.click(0, 0);
    hand.click(12, 0);
    hand.move(12, 5);
    expect(row(hand, "angle")).toBe("90.0°");
    expect(row(hand, "length in all")).toBe("17.000 m");
    hand.click(12, 5);
    hand.click(0.1, 0.1);
    expect(hand.state()).toBe("measured");
    // A right triangle of 5, 12, 13: 30 m² (322.9 square feet), 30 m round it.
    expect(row(hand, "area")).toBe("323 ft²");
    expect(row(hand, "round it")).toBe("30.000 m");
    expect(hand.reading()?.act).toBeNull();
  });

  it("places a typed length, and Esc takes places back one by one", () => {
    const hand = handOn(metricProject(), "measure");
    hand.click(0, 0);
    hand.move(4, 0.02);
    hand.type("7.25");
    hand.key("Enter");
    hand.move(9, 3);
    hand.key("Escape");
    expect(hand.state()).toBe("measuring");
    hand.key("Escape");
    expect(hand.state()).toBe("ready");
  });

  it("takes a bearing first, and wants the length before Enter places anything", () => {
    const hand = handOn(metricProject(), "measure");
    hand.click(0, 0);
    hand.type("N 90 E");
    hand.key("Enter");
    expect(hand.said.at(-1)).toMatch(/type the length too/);
    hand.key("Tab");
    hand.type("7.25");
    hand.key("Enter");
    hand.key("Enter");
    expect(hand.state()).toBe("measured");
    expect(row(hand, "distance")).toBe("7.250 m");
    expect(row(hand, "bearing")).toBe("90.0°");
  });

  it("becomes a dimension, which keeps to the building's corners", () => {
    const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
    const project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
    const hand = handOn(project, "measure");
    hand.click(0, 0);
    hand.click(10, 6);
    hand.key("Enter");
    expect(hand.reading()?.act).toBe("Make it a dimension");
    hand.makeUse();
    expect(hand.state()).toBe("standingOff");
    hand.key("Escape");
    expect(hand.state()).toBe("measured");
    hand.key("Enter");
    hand.type("1");
    hand.key("Enter");
    expect(hand.project.drawing.dimensions).toEqual([
      { id: "i1", from: { kind: "corner", corner: 3 }, to: { kind: "corner", corner: 1 }, offset: 1 },
    ]);
    expect(hand.tool).toBe("select");
  });
});

describe("the angle at a place", () => {
  it.each([
    [[1, 0], [0, 1], 90],
    [[1, 0], [-1, 0], 180],
    [[1, 0], [1, 1], 45],
    [[1, 0], [1, -1], 45],
  ] as const)("between %j and %j is %d°", (before, after, degrees) => {
    const angle = angleAt([before[0], before[1]], [0, 0], [after[0], after[1]]);
    expect(((angle ?? 0) * 180) / Math.PI).toBeCloseTo(degrees, 9);
  });

  it("isn't there without both pieces", () => {
    expect(angleAt([0, 0], [0, 0], [1, 0])).toBeNull();
  });
});
