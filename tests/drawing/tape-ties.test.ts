import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openProject } from "../../src/document";
import { tapeTies } from "../../src/drawing";
import { innerCorners } from "../../src/drawing/walls";
import { createSolver } from "../../src/solve/pipeline";

const opened = openProject(readFileSync("demo-projects/pottery-studio.drysill.json", "utf8"));
if (!opened.ok) throw new Error("the demo opens");
const { project } = opened;

describe("two tapes to a corner", () => {
  it("meet at the corner again: the place where both circles cross", () => {
    const results = createSolver().solve(project);
    const ties = tapeTies(project, results);
    expect(ties.map((one) => one.corner)).toEqual(["A", "B", "C", "D"]);
    const mark = results.survey.mark?.at;
    const lot = project.lot.outline;
    for (const [i, { fromMark, other }] of ties.entries()) {
      const corner = results.corners[i];
      if (!corner || !mark || !fromMark || !other) throw new Error("each corner has two ties");
      expect(fromMark.length).toBeCloseTo(Math.hypot(corner.x - mark[0], corner.y - mark[1]), 9);
      // The second length is that to some corner of the lot, or of the building.
      const lengths = [...lot, ...results.corners.map(({ x, y }) => [x, y] as const)].map(([x, y]) =>
        Math.hypot(corner.x - x, corner.y - y),
      );
      expect(Math.min(...lengths.map((length) => Math.abs(length - other.length)))).toBeLessThan(1e-9);
    }
  });

  it("come from two other known points while the mark has no place, and cross at 30° or more", () => {
    const marks = project.survey.marks.map((mark) => ({ ...mark, at: null }));
    const unplaced = { ...project, survey: { ...project.survey, marks } };
    const results = createSolver().solve(unplaced);
    const points = [...project.lot.outline, ...results.corners.map(({ x, y }) => [x, y] as const)];
    for (const [i, { fromMark, instead, other }] of tapeTies(unplaced, results).entries()) {
      const corner = results.corners[i];
      expect(fromMark).toBeNull();
      if (!corner || !instead || !other) throw new Error("each corner has two ties");
      const ways = [instead, other].map(({ length }) => {
        const end = points.find(([x, y]) => Math.abs(Math.hypot(x - corner.x, y - corner.y) - length) < 1e-9);
        if (!end) throw new Error("a tape ends at a known point");
        return Math.atan2(end[1] - corner.y, end[0] - corner.x);
      });
      expect(Math.abs(Math.sin((ways[0] ?? 0) - (ways[1] ?? 0)))).toBeGreaterThanOrEqual(0.5 - 1e-9);
    }
  });

  it("are none where neither a mark nor a lot is known", () => {
    const bare = {
      ...project,
      lot: { ...project.lot, outline: [] },
      survey: { ...project.survey, marks: project.survey.marks.map((mark) => ({ ...mark, at: null })) },
    };
    for (const { fromMark, instead, other } of tapeTies(bare, createSolver().solve(bare)))
      expect([fromMark, instead, other]).toEqual([null, null, null]);
  });

  it("never lean on a corner that isn't found yet", () => {
    const ties = tapeTies(project, createSolver().solve(project));
    const order = ties.map((one) => `corner ${one.corner}`);
    for (const [i, { other }] of ties.entries()) expect(order.slice(i)).not.toContain(other?.to);
  });
});

describe("inner corners", () => {
  it("are those where the building takes more than half a turn, whichever way the outline runs", () => {
    const ell: [number, number][] = [
      [0, 0],
      [4, 0],
      [4, 2],
      [2, 2],
      [2, 4],
      [0, 4],
    ];
    expect(innerCorners(ell)).toEqual([false, false, false, true, false, false]);
    expect(innerCorners([...ell].reverse())).toEqual([false, false, true, false, false, false]);
  });
});
