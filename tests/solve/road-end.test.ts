/** Where the drive meets the building and the road: what is part of the drive is not held against the walls or the line. */
import { describe, expect, it } from "vitest";
import type { Project } from "../../src/document";
import { createSolver } from "../../src/solve";
import { demoProject } from "../support/demo";

const studio = () => demoProject("pottery-studio");
const codes = (project: Project) =>
  createSolver()
    .solve(project)
    .problems.map(({ code }) => code);

describe("the drive at the door", () => {
  it("and its shoulders may fall at 2 % where earth beside a wall falls 6 in in 10 ft", () => {
    const { walls } = createSolver().solve(studio()).water;
    expect(walls.map(({ name, passes }) => [name, passes])).toEqual([
      ["A-B", true],
      ["B-C", true],
      ["C-D", true],
      ["D-A", true],
    ]);
  });
});

describe("the drive at the road", () => {
  it("crosses the lot line without a caution, since it has to", () => {
    expect(codes(studio())).not.toContain("grading-past-lot");
  });

  it("says how far above the ground it stands, and that its fill runs into the road", () => {
    const raised = (by: number) => {
      const project = studio();
      const [drive, ...others] = project.grading.drives;
      if (!drive) throw new Error("the studio has a drive");
      const ground = createSolver().solve(project).drives[0]?.stations[0]?.existing ?? Number.NaN;
      const drives = [{ ...drive, roadHeight: ground + by, sideSlope: 3 }, ...others];
      const { problems } = createSolver().solve({ ...project, grading: { ...project.grading, drives } });
      return problems.find(({ code }) => code === "drive-fill-into-road");
    };
    expect(raised(0.02)).toBeUndefined();
    expect(raised(-0.5)).toBeUndefined();
    const told = raised(0.5);
    expect(told?.at).toEqual([...(studio().grading.drives[0]?.line[0] ?? [])]);
    expect(told?.severity).toBe("caution");
    expect(told?.what).toMatch(/stands 1′ 7⅝″ above .* at 3 : 1 its fill runs about 4′ 11″/);
  });

  it("but slopes that pass the line elsewhere are told", () => {
    const project = studio();
    const outline = project.lot.outline.map(([x, y]): [number, number] => [Math.min(x, 24), y]);
    expect(codes({ ...project, lot: { ...project.lot, outline } })).toContain("grading-past-lot");
  });
});
