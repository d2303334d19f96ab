import { describe, expect, it } from "vitest";
import { downhillWind, placeWords } from "../../src/canvas/overlays/placeWords";
import { buildingEdits, type Project, surveyEdits } from "../../src/document";
import { createSolver } from "../../src/solve/pipeline";
import { readPlace } from "../../src/solve/read-place";
import { checkEdit } from "../support/checkEdit";
import { metricProject } from "./support/hand";

/** Ground that falls 1 in 10 to the south, heights 100 + y / 10, within 40 m of the origin. */
function slope(): Project {
  let next = checkEdit(metricProject(), surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-30, 0] });
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

function withBuilding(): Project {
  const outline = buildingEdits.rectangleOutline([-5, -3], 10, 6);
  return checkEdit(slope(), buildingEdits.drawBuilding, { outline, floor: 101 });
}

const read = (project: Project, at: [number, number]) => {
  const results = createSolver().solve(project);
  const reading = readPlace(results, project, at, project.building?.floor ?? null);
  return reading && { reading, words: placeWords(reading, project, at) };
};

describe("a place in words", () => {
  it("is nothing without ground", () => {
    expect(read(metricProject(), [0, 0])).toBeNull();
  });

  it("is the ground alone before there is a building: 100.5 at y = 5, falling 10 % to the south", () => {
    expect(read(slope(), [12, 5])?.words).toEqual({
      lead: "ground 100.500 m",
      falls: "falls 10.0 % to S",
      heights: "",
      certainty: { word: "measured", why: "" },
      near: null,
    });
  });

  it("says where it is a guess", () => {
    expect(read(slope(), [60, 0])?.words.certainty).toEqual({ word: "guessed", why: ": no shots around it" });
  });

  it("is the floor inside the walls: floor 101 over ground 100.2 at y = 2", () => {
    const found = read(withBuilding(), [1, 2]);
    expect(found?.words.lead).toBe("floor 0.800 m above the ground");
    expect(found?.words.heights).toBe("ground 100.200 m, floor 101.000 m");
    // (5, 3) is corner B: 4 east and 1 north of here.
    expect(found?.words.certainty.word).toBe("measured");
    expect(found?.words.near).toEqual({ off: "4.123 m", corner: "B" });
  });

  it("is fill on the low side: the apron lies 0.1524 below the wall's top and falls 5 %", () => {
    // 1 m south of the south wall: finished 101 - 0.1524 - 0.05 = 100.7976, ground 99.6 at y = -4.
    const found = read(withBuilding(), [0, -4]);
    expect(found?.reading.finished).toBeCloseTo(100.7976, 2);
    expect(found?.words.lead).toMatch(/^1\.\d+ m of fill$/);
    expect(found?.words.falls).toMatch(/^falls 5\.\d % to S$/);
  });

  it("on a wall's line is the ground before the wall, at every corner and wall alike", () => {
    // Up on the high side the apron may lie in a cut; all round it is one height: 101 - 0.1524.
    const places: [number, number][] = [
      [-5, -3],
      [5, -3],
      [5, 3],
      [-5, 3],
      [0, -3],
      [5, 0],
      [0, 3],
      [-5, 0],
    ];
    for (const at of places) {
      const found = read(withBuilding(), at);
      expect(found?.reading.inside, `${at}`).toBe(false);
      expect(Math.abs((found?.reading.finished ?? 0) - (101 - 0.1524)), `${at}`).toBeLessThan(0.03);
    }
  });

  it("is no change far away", () => {
    expect(read(withBuilding(), [0, 39])?.reading.inside).toBe(false);
    expect(read(withBuilding(), [30, 30])?.words.lead).toBe("no change");
  });
});

describe("the wind that water runs to", () => {
  it.each([
    [0, 0.1, 0, "S"],
    [0.1, 0, 0, "W"],
    [-0.1, 0.1, 0, "SE"],
    [-0.1, -0.1, 0, "NE"],
    // True north lies 45° clockwise of the plan's y axis: the plan's south is true south-east.
    [0, 0.1, Math.PI / 4, "SE"],
  ] as const)("gradient (%d, %d) with north at %d falls to %s", (gx, gy, north, wind) => {
    expect(downhillWind(gx, gy, north)).toBe(wind);
  });
});
