import { describe, expect, it } from "vitest";
import { applyFix } from "../../src/document";
import type { Project } from "../../src/document/schema";
import { createSolver } from "../../src/solve/pipeline";
import type { Problem } from "../../src/solve/results";
import { plane, shed, site } from "./sites";

type Part = Record<string, unknown>;
const solve = (project: Project) => createSolver().solve(project);
const problem = (project: Project, code: string): Problem | undefined =>
  solve(project).problems.find((found) => found.code === code);
const built = (foundation: Part, part: Part = {}, rest: Part = {}, surface = plane(100)) =>
  site({ surface, building: { ...shed, foundation, ...part }, rest });
const falling = plane(100, 0.08, 0);
const left = { grading: { apron: { leave: [0, 1, 2, 3] } } };

describe("a footing that isn't deep enough", () => {
  it("is told with its place, what it lacks and the corners; one click steps it down", () => {
    const project = built({ frostDepth: 1.1 }, { floor: 101 }, {}, falling);
    const found = problem(project, "footing-frost");
    expect(found?.where).toMatch(/^footing at corner [A-D]$/);
    expect(found?.what).toMatch(/less than the frost depth \(corners? /);
    const step = found?.fixes?.[0];
    expect(step?.words).toBe("Step the footing down where it is shallow");
    const mended = step && applyFix(project, step);
    if (!mended?.ok) throw new Error("the mend must be accepted");
    expect(problem(mended.project, "footing-frost")).toBeUndefined();
    const { foundation } = solve(mended.project);
    expect(foundation?.stepped?.levels).toBeGreaterThan(0);
    expect(foundation?.stepped?.steps.length).toBeGreaterThan(0);
  });

  it("is mended as well by a wall that is taller by just what lacks", () => {
    const project = built({ frostDepth: 1.1 }, { floor: 101 }, {}, falling);
    const taller = problem(project, "footing-frost")?.fixes?.[1];
    const mended = taller && applyFix(project, taller);
    if (!mended?.ok) throw new Error("the mend must be accepted");
    expect(problem(mended.project, "footing-frost")).toBeUndefined();
    expect(solve(mended.project).foundation?.cover.undisturbed.margin).toBeCloseTo(0, 9);
  });

  it("counts finished ground where the inspector does", () => {
    const raised = built({ frostDepth: 1.1, frostFrom: "finished" }, { floor: 101 }, {}, falling);
    expect(problem(raised, "footing-frost")).toBeUndefined();
  });

  it("says so where it would stand on fill: that adds cover, never bearing", () => {
    expect(problem(built({}, { floor: 101.6 }), "footing-in-fill")?.what).toContain("stand on fill");
    expect(problem(built({}, { floor: 101.1 }), "footing-shallow")?.what).toContain("only");
    expect(problem(built({}, { floor: 100.3 }), "footing-shallow")).toBeUndefined();
  });

  it("holes and edges are made deeper by one click", () => {
    for (const foundation of [
      { kind: "posts", posts: { holeDepth: 0.2 } },
      { kind: "thickened-edge", edge: { depth: 0.3 } },
    ]) {
      const project = built(foundation, { floor: 100.2 });
      const found = problem(project, "footing-shallow") ?? problem(project, "footing-in-fill");
      const [fix] = found?.fixes ?? [];
      const mended = fix && applyFix(project, fix);
      if (!mended?.ok) throw new Error("the mend must be accepted");
      expect(problem(mended.project, "footing-shallow")).toBeUndefined();
      expect(problem(mended.project, "footing-in-fill")).toBeUndefined();
    }
  });
});

describe("fill under the slab", () => {
  it("beyond the published limit is a caution with its lifts", () => {
    const found = problem(built({}, { floor: 100.8 }), "slab-fill");
    expect(found?.what).toMatch(/lifts of 0\.152 m; 0\.610 m is the published limit/);
    expect(problem(built({}, { floor: 100.6 }), "slab-fill")).toBeUndefined();
  });

  it("of earth may be 8 in; clean stone is one click away", () => {
    const project = built({ slabFill: { kind: "earth" } }, { floor: 100.6 });
    const [fix] = problem(project, "slab-fill")?.fixes ?? [];
    const mended = fix && applyFix(project, fix);
    if (!mended?.ok) throw new Error("the mend must be accepted");
    expect(problem(mended.project, "slab-fill")).toBeUndefined();
  });

  it("a thickened edge on a filled pad wants an engineer; half on cut, half on fill is told", () => {
    const kind = { kind: "thickened-edge", edge: { depth: 0.4 } };
    const onFill = problem(built(kind, { floor: 100.6 }), "edge-on-fill");
    expect(onFill?.how).toContain("engineer");
    // Under the edge, not under the slab: its bottom at 100.2 over stripped ground at 99.85.
    expect(onFill?.what).toMatch(/0\.35/);
    expect(problem(built(kind, { floor: 100.1 }), "edge-on-fill")).toBeUndefined();
    expect(
      problem(built({ ...kind, edge: { depth: 1.5 } }, { floor: 100.6 }), "edge-on-fill"),
    ).toBeUndefined();
    expect(problem(built({}, { floor: 100.2 }, {}, falling), "slab-cut-and-fill")).toBeDefined();
    expect(problem(built({}, { floor: 100.6 }), "slab-cut-and-fill")).toBeUndefined();
  });
});

describe("other kinds", () => {
  it("a crawl space under 18 in is told", () => {
    const crawl = (clearance: number) =>
      built({ kind: "crawl-space", crawl: { clearance } }, { floor: 100.8, topOfWallAboveFloor: -0.27 });
    expect(problem(crawl(0.4), "crawl-clearance")?.how).toContain("18 in");
    expect(problem(crawl(0.46), "crawl-clearance")).toBeUndefined();
  });

  it("posts in fill are told, and their holes are no trench", () => {
    const posts = built({ kind: "posts" }, { floor: 100.9 });
    expect(problem(posts, "posts-in-fill")?.what).toMatch(/^\d+ of \d+ stand in up to/);
    expect(problem(posts, "trench-ladder")).toBeUndefined();
  });

  it("benches in loose soil are told", () => {
    const benched = (soil: string) => built({ trench: { soil, sides: "benched" } });
    expect(problem(benched("C"), "trench-benched-loose")).toBeDefined();
    expect(problem(benched("B"), "trench-benched-loose")).toBeUndefined();
  });
});

describe("a wall with fill on one side", () => {
  it("asks for an engineer beyond 48 in, and where the tables have no such wall", () => {
    expect(problem(built({}, { floor: 101.3 }, left), "wall-holds-fill")?.how).toMatch(/^Ask an engineer/);
    const thin = problem(
      built({ wall: "block", wallThickness: 0.14 }, { floor: 101 }, left),
      "wall-holds-fill",
    );
    expect(thin?.what).toContain("no such wall");
  });
});

describe("ground over a door's sill", () => {
  it("is a caution with the door's place", () => {
    const doors = [
      { id: "d1", name: "side door", kind: "walk", wall: 0, offset: 1, width: 1, sillBelowFloor: 0.4 },
    ];
    const found = problem(built({}, { floor: 100.5, doors }), "ground-over-sill");
    expect(found?.where).toBe("side door");
    expect(found?.ids).toEqual(["d1"]);
  });
});
