/** Nonsense in a file: a clear message at its place, and the rest as if it weren't there. */
import { describe, expect, it } from "vitest";
import { openProject, type Project, siteEdits } from "../../src/document";
import { resultsToJson } from "../../src/solve/json";
import { createSolver } from "../../src/solve/pipeline";
import { plane, shed, site } from "./sites";

const sound = {
  id: "w1",
  name: "uphill swale",
  line: [
    [-3, 14],
    [20, 16],
  ],
};
/** A drive whose banks don't run at all. */
const steepBanked = {
  id: "v1",
  name: "way in",
  line: [
    [3, -20],
    [3, -9],
  ],
  sideSlope: 0,
};
const grading = (more: object = {}) => ({ swales: [sound], ...more });
/** By way of a file's text, as nonsense comes. */
function plan(given: object): Project {
  const base = site({ surface: plane(100, 0, 0.02), spacing: 20, building: { ...shed, floor: 101 } });
  const opened = openProject(JSON.stringify({ ...base, grading: given }));
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return opened.project;
}

const nonsense: readonly (readonly [string, object, string, string])[] = [
  [
    "a drive of one point",
    { drives: [{ id: "v1", name: "way in", line: [[3, -9]] }] },
    "way in",
    "one point",
  ],
  ["a drive of none", { drives: [{ id: "v1", name: "way in", line: [] }] }, "way in", "no point"],
  [
    "a drive with side slopes of 0 : 1",
    {
      drives: [
        {
          id: "v1",
          name: "way in",
          line: [
            [3, -20],
            [3, -9],
          ],
          sideSlope: 0,
        },
      ],
    },
    "way in",
    "side slope says 0 : 1",
  ],
  [
    "a swale of one point",
    { swales: [sound, { id: "w2", name: "", line: [[3, 20]] }] },
    "swale",
    "one point",
  ],
  [
    "a retaining wall of one point",
    { walls: [{ id: "r1", name: "low wall", line: [[3, 20]] }] },
    "low wall",
    "one point",
  ],
  [
    "a pad of two points",
    {
      pads: [
        {
          id: "q1",
          name: "turning",
          outline: [
            [30, 0],
            [35, 0],
          ],
        },
      ],
    },
    "turning",
    "two points",
  ],
];

describe("nonsense in a file", () => {
  it.each(nonsense)("%s is told by its name, and the rest is solved without it", (_, more, where, what) => {
    const [odd, without] = [plan(grading(more)), plan(grading())].map((project) =>
      createSolver().solve(project),
    );
    const told = odd?.problems.filter(({ code }) => code.endsWith("-set-aside")) ?? [];
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ severity: "error", where });
    expect(told[0]?.what).toContain(what);
    expect(odd?.earthwork).toEqual(without?.earthwork);
    expect(() => odd && resultsToJson(odd, plan(grading(more)))).not.toThrow();
    expect(odd?.water.swales).toEqual(without?.water.swales);
    expect(odd?.problems.filter(({ code }) => !code.endsWith("-set-aside"))).toEqual(without?.problems);
  });

  it("side slopes of 0 : 1 of the plan or of one side are reckoned with the usual ones, and told", () => {
    const odd = plan(grading({ slopes: { fill: 0 }, apron: { sides: [{ wall: 1, cut: 0 }] } }));
    const usual = plan(grading({ apron: { sides: [{ wall: 1 }] } }));
    const results = createSolver().solve(odd);
    expect(
      results.problems.filter(({ code }) => code === "slopes-without-sense").map(({ what }) => what),
    ).toEqual([
      "The fill slope says 0 : 1. Until it is mended 3 : 1 is reckoned with.",
      "The cut slope says 0 : 1. Until it is mended that of all sides is reckoned with.",
    ]);
    expect(results.earthwork).toEqual(createSolver().solve(usual).earthwork);
  });

  it("an apron that rises to the wall, or has no width, is reckoned with the usual figures, and told", () => {
    const odd = plan(grading({ apron: { fall: -0.05, width: 0, sides: [{ wall: 1, fall: -0.01 }] } }));
    const usual = plan(grading({ apron: { sides: [{ wall: 1 }] } }));
    const results = createSolver().solve(odd);
    expect(odd.grading.apron).toMatchObject({ fall: -0.05, width: 0 });
    expect(
      results.problems
        .filter(({ code }) => code === "apron-without-sense")
        .map(({ where, what }) => [where, what]),
    ).toEqual([
      [
        "the apron of side 2",
        "Its fall away from the wall says -1 %. Until it is mended that of all sides is reckoned with.",
      ],
      [
        "the apron",
        "Its fall away from the wall says -5 %. Until it is mended the usual one is reckoned with.",
      ],
      ["the apron", "Its width says 0 m. Until it is mended the usual one is reckoned with."],
    ]);
    expect(results.earthwork).toEqual(createSolver().solve(usual).earthwork);
  });

  it("counts again once its slope is typed", () => {
    const edit = siteEdits.changeDrive.run(plan(grading({ drives: [steepBanked] })), {
      id: "v1",
      patch: { sideSlope: 3 },
    });
    if (!edit.ok) throw new Error(edit.why);
    const results = createSolver().solve(edit.project);
    expect(results.drives).toHaveLength(1);
    expect(results.problems.some(({ code }) => code.endsWith("-set-aside"))).toBe(false);
  });

  it("lets other fields be changed, so that two bad figures are mended one after the other", () => {
    const change = (project: Project, patch: Parameters<typeof siteEdits.changeDrive.run>[1]["patch"]) => {
      const edit = siteEdits.changeDrive.run(project, { id: "v1", patch });
      if (!edit.ok) throw new Error(edit.why);
      return edit.project;
    };
    const brought = plan(grading({ drives: [{ ...steepBanked, width: 0 }] }));
    const named = change(brought, { name: "lane" });
    expect(named.grading.drives[0]).toMatchObject({ name: "lane", sideSlope: 0, width: 0 });
    const half = change(named, { width: 3 });
    expect(createSolver().solve(half).drives).toHaveLength(0);
    expect(createSolver().solve(change(half, { sideSlope: 3 })).drives).toHaveLength(1);
    expect(siteEdits.changeDrive.run(half, { id: "v1", patch: { width: -1 } })).toMatchObject({ ok: false });
    expect(siteEdits.changeDrive.run(half, { id: "v1", patch: { sideSlope: -1 } })).toMatchObject({
      ok: false,
    });
  });

  it("can be taken out", () => {
    const project = plan(grading({ drives: [{ id: "v1", name: "way in", line: [[3, -9]] }] }));
    const edit = siteEdits.removeDrive.run(project, { id: "v1" });
    expect(edit.ok && edit.project.grading.drives).toEqual([]);
  });

  it("keeps two stretches of the same nonsense apart by name", () => {
    const text = JSON.stringify({
      drysill: 1,
      grading: {
        drives: [
          { id: "a", name: "A", line: [] },
          { id: "b", name: "B", line: [] },
        ],
      },
    });
    const opened = openProject(text);
    if (!opened.ok) throw new Error("should open");
    expect(
      createSolver()
        .solve(opened.project)
        .problems.filter(({ code }) => code === "drive-set-aside")
        .map(({ where }) => where),
    ).toEqual(["A", "B"]);
  });
});
