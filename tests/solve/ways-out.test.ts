import { describe, expect, it } from "vitest";
import { createSolver } from "../../src/solve/pipeline";
import { waysOut } from "../../src/solve/ways-out";
import { plane, shed, site } from "./sites";

/** Ground that falls 11 in 100 to the south: too much for a wall of 4 ft on a level footing. */
const steep = (
  display: Record<string, unknown> = {},
  foundation: Record<string, unknown> = {},
  fall = 0.11,
) => {
  const project = site({
    surface: plane(100, 0, fall),
    building: { ...shed, foundation: { kind: "crawl-space", ...foundation } },
  });
  return { ...project, display: { ...project.display, ...display } };
};

// Every case solves plans by the dozen.
describe("ways out of an empty band", { timeout: 30_000 }, () => {
  it("names the two rules that clash and by how much", () => {
    const { band } = createSolver().solve(steep());
    expect(band.empty).toBe(true);
    expect(band.clash).toMatchObject({ low: { id: "aboveUphillGround" }, high: { id: "intoUndisturbed" } });
    expect(band.clash?.gap).toBeCloseTo((band.low ?? 0) - (band.high ?? 0), 12);
  });

  it.each([
    ["metres", {}, 0.01, " m "],
    ["feet and inches", { length: "ft-in", rounding: 8 } as const, 0.0254, "″"],
  ])("a taller wall by the gap, rounded up, gives a band: in %s", (_units, display, unit, sign) => {
    const project = steep(display);
    const before = createSolver().solve(project).band;
    const way = waysOut(project).find(({ id }) => id === "tallerWall");
    const grown =
      (way?.project.building?.foundation.wallHeight ?? 0) - (project.building?.foundation.wallHeight ?? 0);
    expect(grown).toBeGreaterThanOrEqual((before.clash?.gap ?? 0) - 1e-9);
    expect(grown - (before.clash?.gap ?? 0)).toBeLessThan(unit);
    expect(way?.what).toContain(sign);
  });

  it("each way works when solved anew: its floor keeps every rule", () => {
    // Much steeper, and the apron on the low side is more than any wall of the tables may hold.
    const ways = waysOut(steep());
    expect(ways.map(({ id }) => id)).toEqual(expect.arrayContaining(["tallerWall", "steppedFooting"]));
    for (const { project } of ways) {
      const { band, floor } = createSolver().solve(project);
      expect(band.empty).toBe(false);
      expect(floor).toBeGreaterThanOrEqual((band.low ?? -1e9) - 1e-6);
      expect(floor).toBeLessThanOrEqual((band.high ?? 1e9) + 1e-6);
    }
  });

  it("a terrace beside steep ground: the building is moved onto it", () => {
    const terrace = (_x: number, y: number) => 100 + 0.125 * Math.max(0, y);
    const project = site({ surface: terrace, building: shed });
    const way = waysOut(project).find(({ id }) => id === "move");
    expect(way?.what).toContain("to the plan's south");
    expect(createSolver().solve(way?.project ?? project).band.empty).toBe(false);
  });

  it("where two others clash then, the next change comes with the first", () => {
    const project = steep({}, { kind: "stem-wall" });
    const ids = waysOut(project).map(({ id }) => id);
    expect(ids).toContain("crawlSpace+tallerWall");
  });

  it("more fill than published, where it is approved, comes with what it brings and costs", () => {
    const project = {
      ...steep({}, { kind: "stem-wall" }, 0.06),
      prices: { "fill-loose": 30, slab: 200, wall: 250 },
    };
    const high = { ...project, rules: { ...project.rules, aboveUphillGround: 0.3 } };
    const before = createSolver().solve(high);
    expect(before.band.clash?.high.id).toBe("fillUnderSlab");
    const way = waysOut(high).find(({ id }) => id.includes("approvedFill"));
    const approved = way?.project.building?.foundation.slabFill.approved ?? 0;
    expect(approved - 0.6096).toBeGreaterThanOrEqual((before.band.clash?.gap ?? 0) - 1e-9);
    const after = createSolver().solve(way?.project ?? high);
    expect(after.band.empty).toBe(false);
    expect(way?.dearer).toBeCloseTo(after.cost.total - before.cost.total, 6);
    const told = new Set(before.problems.map(({ code, where }) => `${code} ${where}`));
    for (const { code, where } of after.problems.filter((each) => !told.has(`${each.code} ${each.where}`)))
      expect(way?.brings.some((each) => each.code === code && each.where === where)).toBe(true);
  });

  it("none where there is a band, and none of the wall's where steps already go down", () => {
    expect(waysOut(site())).toEqual([]);
    expect(createSolver().solve(site()).band.clash).toBeNull();
    expect(waysOut(steep({}, { steps: { on: true } })).some(({ id }) => id === "tallerWall")).toBe(false);
  });

  it("a drive too steep for the door is led over a longer way", () => {
    // The uphill ground asks for more than a short drive from a low road can climb.
    const doors = [
      { id: "d", name: "door", kind: "overhead", wall: 0, offset: 4, width: 3, sillBelowFloor: 0 },
    ];
    const drives = [
      {
        id: "v",
        name: "drive",
        line: [
          [5.5, -22],
          [5.5, 0],
        ],
        door: "d",
        roadHeight: 98.2,
        landing: { length: 3, fall: 0.02 },
      },
    ];
    const project = site({
      surface: plane(100, 0, 0.06),
      building: { ...shed, doors },
      // The drive's limits against the hill's alone.
      rest: {
        grading: { drives },
        rules: { off: ["fillUnderSlab", "intoUndisturbed", "unbalancedFill", "fallAway"] },
      },
    });
    const { band } = createSolver().solve(project);
    expect(band.clash?.high.id).toMatch(/steepestDrive|landing/);
    const way = waysOut(project).find(({ id }) => id === "longerDrive");
    expect(way?.what).toMatch(/^drive [\d.]+ m longer, round a bend$/);
    const solved = createSolver().solve(way?.project ?? project);
    expect(solved.band.empty).toBe(false);
    expect(Math.abs(solved.drives[0]?.steepest ?? 1)).toBeLessThanOrEqual(0.12 + 1e-6);
  });
});
