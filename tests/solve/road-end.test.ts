/** Where the drive meets the building and the road: what is part of the drive is not held against the walls or the line. */
import { describe, expect, it } from "vitest";
import type { Project } from "../../src/document";
import { createSolver } from "../../src/solve";
import { demoProject } from "../support/demo";
import { plane, type Surface, shed, site } from "./sites";

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
    expect(told?.what).toMatch(/stands 1′ 7⅝″ above .* at 3 : 1 its fill runs about \d+′ \S+ out past it/);
  });

  describe("its fill runs out over the ground as it is there", () => {
    // The road end at the origin, the drive to the north; half a metre over the ground, at 3 : 1.
    const told = (surface: Surface) => {
      const drive = {
        id: "d",
        name: "drive",
        line: [
          [0, 0],
          [0, 20],
        ],
        width: 3,
        sideSlope: 3,
        roadHeight: surface(0, 0) + 0.5,
      };
      const outline = [
        [10, 30],
        [22, 30],
        [22, 38],
        [10, 38],
      ];
      const project = site({
        surface,
        building: { ...shed, outline },
        rest: { grading: { drives: [drive] } },
      });
      return createSolver()
        .solve(project)
        .problems.find(({ code }) => code === "drive-fill-into-road");
    };

    it("on level ground height × slope", () => {
      expect(told(plane(100))?.what).toMatch(/at 3 : 1 its fill runs about 1\.50\d? m out past it/);
    });

    it("farther where it falls away from the drive: 0.5 ÷ (1/3 − 1/10)", () => {
      expect(told(plane(100, 0, 0.1))?.what).toMatch(/runs about 2\.14\d? m out past it/);
    });

    it("less far where it rises: 0.5 ÷ (1/3 + 1/10)", () => {
      expect(told(plane(100, 0, -0.1))?.what).toMatch(/runs about 1\.15\d? m out past it/);
    });

    it("to the farthest of the drive's width where the ground falls across it: 1.5 m to the side it lies 0.15 m lower", () => {
      expect(told(plane(100, 0.1, 0))?.what).toMatch(/runs about 1\.95\d? m out past it/);
    });

    it("never to an end where it falls as steeply", () => {
      expect(told(plane(100, 0, 0.34))?.what).toMatch(
        /its fill doesn't meet the ground within 30\.00\d? m past it/,
      );
    });
  });

  it("but slopes that pass the line elsewhere are told", () => {
    const project = studio();
    const outline = project.lot.outline.map(([x, y]): [number, number] => [Math.min(x, 24), y]);
    expect(codes({ ...project, lot: { ...project.lot, outline } })).toContain("grading-past-lot");
  });
});
