import { describe, expect, it } from "vitest";
import { snap } from "../../src/canvas/snap/snap";
import { handStep } from "../../src/canvas/snap/step";
import { snapTargets } from "../../src/canvas/snap/targets";
import { buildingEdits, drawingEdits, type Project, siteEdits, surveyEdits } from "../../src/document";
import { FOOT, INCH } from "../../src/units";
import { checkEdit } from "../support/checkEdit";
import { metricProject } from "./support/hand";

/** A 10 by 6 building at the origin (A top left), a lot line askew, a shot and a mark. */
function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, siteEdits.setLotOutline, {
    outline: [
      [-20, -20],
      [40, -10],
      [30, 40],
      [-20, 40],
    ],
  });
  project = checkEdit(project, buildingEdits.addDoor, { wall: 2, offset: 3, width: 4 });
  project = checkEdit(project, surveyEdits.addShot, { name: "oak", place: { kind: "at", x: 15, y: 3 } });
  return checkEdit(project, surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-5, 3] });
}

const targets = snapTargets(site());

describe("snapping to places", () => {
  it.each([
    ["a corner", [10.3, 6.2], "corner B", [10, 6]],
    ["the middle of a wall", [4.9, 6.2], "middle of wall A–B", [5, 6]],
    ["a door's middle, before its wall", [5.1, -0.2], "middle of the door", [5, 0]],
    ["a shot", [15.2, 3.1], "shot oak", [15, 3]],
    ["a mark", [-5.2, 3.1], "bolt", [-5, 3]],
    ["a wall", [8, 6.3], "on wall A–B", [8, 6]],
    ["a corner of the lot", [39.8, -9.9], "corner of the lot", [40, -10]],
  ] as const)("%s", (_what, [x, y], word, at) => {
    const found = snap({ at: [x, y], targets, reach: 0.5 });
    expect(found.word).toBe(word);
    expect(found.at[0]).toBeCloseTo(at[0], 9);
    expect(found.at[1]).toBeCloseTo(at[1], 9);
  });

  it("leaves a place alone where nothing is near", () => {
    expect(snap({ at: [20, 20], targets, reach: 0.5 })).toEqual({
      at: [20, 20],
      word: null,
      tie: null,
      guide: null,
    });
  });

  it("ties to a corner and to a door, so that a tool can", () => {
    expect(snap({ at: [10, 6], targets, reach: 0.5 }).tie).toEqual({ kind: "building-corner", corner: 1 });
    expect(snap({ at: [5, 0], targets, reach: 0.5 }).tie).toEqual({ kind: "door", id: "d1" });
  });

  it("a door in the middle of its wall is met as the door, however the wall lies", () => {
    for (let k = 0; k < 40; k++) {
      const [c, s] = [Math.cos(k), Math.sin(k)];
      const outline = buildingEdits
        .rectangleOutline([0.1 * k, 0.7], 12.192, 9.144)
        .map(([x, y]): [number, number] => [c * x - s * y, s * x + c * y]);
      const built = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
      const offset = (12.192 - 2.7432) / 2;
      const project = checkEdit(built, buildingEdits.addDoor, { wall: 2, offset, width: 2.7432 });
      const [a, b] = [outline[2], outline[3]] as [[number, number], [number, number]];
      const middle: [number, number] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      expect(snap({ at: middle, targets: snapTargets(project), reach: 0.5 }).tie, `at ${k}`).toEqual({
        kind: "door",
        id: "d1",
      });
    }
  });

  it("does not catch what is under the hand", () => {
    const others = snapTargets(site(), ({ kind }) => kind === "building");
    expect(snap({ at: [10.1, 6.1], targets: others, reach: 0.5 }).word).toBeNull();
  });
});

describe("snapping to directions", () => {
  it("keeps straight east, with a round length: 3.93 m in steps of 0.25 m is 4 m", () => {
    const found = snap({ at: [23.93, 20.1], targets, reach: 0.5, from: [20, 20], step: 0.25 });
    expect(found.word).toBe("parallel to wall A–B");
    expect(found.at).toEqual([24, 20]);
    expect(found.guide).toEqual([20, 20]);
  });

  it("keeps square to the lot line: 60 east and 10 north turned by a quarter is −10 and 60", () => {
    const [dx, dy] = [-10 / Math.hypot(10, 60), 60 / Math.hypot(10, 60)];
    const at: [number, number] = [20 + dx * 8 + 0.02, 20 + dy * 8];
    const found = snap({ at, targets, reach: 0.5, from: [20, 20], step: 0.5 });
    expect(found.word).toBe("square to the lot line");
    expect(found.at[0]).toBeCloseTo(20 + dx * 8, 6);
    expect(found.at[1]).toBeCloseTo(20 + dy * 8, 6);
  });

  it("names the plan's own axes where there is nothing else", () => {
    const none = snapTargets(metricProject());
    expect(snap({ at: [0.02, -5], targets: none, reach: 0.5, from: [0, 0] }).word).toBe("straight south");
  });

  it("meets an edge in a kept direction: due south of (15, 5) the lot line y = -20 + (x + 20)/6 lies at -14.17", () => {
    const found = snap({ at: [15.1, -14], targets, reach: 0.5, from: [15, 5] });
    expect(found.word).toBe("parallel to wall B–C, on the lot line");
    expect(found.at[0]).toBeCloseTo(15, 9);
    expect(found.at[1]).toBeCloseTo(-20 + 35 / 6, 9);
  });

  it("rounds the length in any other direction: 5.07 m is 5 m", () => {
    const found = snap({
      at: [20 + 5.07 * 0.6, 20 + 5.07 * 0.8],
      targets,
      reach: 0.5,
      from: [20, 20],
      step: 0.5,
    });
    expect(found.word).toBeNull();
    expect(found.at[0]).toBeCloseTo(23, 9);
    expect(found.at[1]).toBeCloseTo(24, 9);
  });
});

describe("the step of a drawing hand", () => {
  it.each([
    ["an inch where it is 5 px", "ft-in", 200, INCH],
    ["six inches on a common plan", "ft-in", 40, 6 * INCH],
    ["a foot where six inches are too fine", "ft-in", 20, FOOT],
    ["a tenth of a metre", "m", 50, 0.1],
    ["half a metre far out", "m", 12, 0.5],
    ["the coarsest where nothing else will do", "m", 0.01, 50],
  ] as const)("%s", (_what, notation, scale, step) => {
    expect(handStep(notation, scale)).toBeCloseTo(step, 12);
  });
});

describe("snapping to what stands on the lot", () => {
  const fenced = (): Project => {
    const project = checkEdit(site(), siteEdits.addFeature, { kind: "well", points: [[25, 25]] });
    return checkEdit(project, siteEdits.addFeature, {
      kind: "septic",
      points: [
        [-15, 20],
        [-5, 20],
        [-5, 30],
        [-15, 30],
      ],
    });
  };
  const word = (at: [number, number], project = fenced()) =>
    snap({ at, targets: snapTargets(project), reach: 1 }).word;

  it("finds a place, a corner of an area, and the side from its last corner to its first", () => {
    expect(word([25.2, 25.1])).toBe("the well");
    expect(word([-5.2, 29.8])).toBe("point of the septic");
    expect(word([-15.3, 25])).toBe("on the septic");
  });

  it("passes over what is hidden", () => {
    const things = [{ kind: "feature", id: "f1" }] as const;
    const hidden = checkEdit(fenced(), drawingEdits.hideThings, { things, hidden: true });
    expect(word([25.2, 25.1], hidden)).toBeNull();
  });
});
