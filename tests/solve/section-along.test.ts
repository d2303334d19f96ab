import { describe, expect, it } from "vitest";
import { buildingEdits, type Point, type Project, surveyEdits } from "../../src/document";
import { createSolver } from "../../src/solve/pipeline";
import { sectionAlong } from "../../src/solve/section-along";
import { metricProject } from "../canvas/support/hand";
import { checkEdit } from "../support/checkEdit";

/** A 10 by 6 building with its floor at 101 on ground that falls 1 in 10 to the south: heights 100 + y / 10. */
function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let next = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 101 });
  next = checkEdit(next, surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-30, 0] });
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

const along = (from: Point, to: Point, project = site()) =>
  sectionAlong([from, to], project, createSolver().solve(project), project.building?.floor ?? null);

describe("a section along a person's line", () => {
  it("runs from its first place to its second, with the heights of the ground", () => {
    const section = along([5, 30], [5, -30]);
    const existing = Array.from(section?.existing ?? []);
    expect(existing.slice(0, 2)).toEqual([0, expect.closeTo(103, 3)]);
    expect(existing.slice(-2)).toEqual([expect.closeTo(60, 9), expect.closeTo(97, 3)]);
    expect([section?.start, section?.end]).toEqual([
      [5, 30],
      [5, -30],
    ]);
  });

  it("enters the building at 24 m and leaves it at 30 m; inside it runs along the floor", () => {
    const section = along([5, 30], [5, -30]);
    expect(section?.building?.[0]).toBeCloseTo(24, 9);
    expect(section?.building?.[1]).toBeCloseTo(30, 9);
    const inside = Array.from({ length: 240 }, (_, i) => i).filter((i) => {
      const distance = section?.existing[2 * i] as number;
      return distance > 24.01 && distance < 29.99;
    });
    expect(inside.length).toBeGreaterThan(20);
    for (const i of inside) expect(section?.finished[2 * i + 1]).toBe(101);
  });

  it("begins and ends inside the building where it is drawn so, and misses it elsewhere", () => {
    expect(along([5, 3], [5, -30])?.building).toEqual([0, expect.closeTo(3, 9)]);
    expect(along([20, 30], [20, -30])?.building).toBeNull();
  });

  it("says where the ground is a guess, and is nothing without ground", () => {
    const section = along([5, 0], [5, 60]);
    expect(section?.guessed[0]).toBe(0);
    expect(section?.guessed.at(-1)).toBe(1);
    expect(along([0, 0], [10, 0], metricProject())).toBeNull();
  });
});
