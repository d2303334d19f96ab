import { describe, expect, it } from "vitest";
import { siteEdits } from "../../src/document";
import type { Project } from "../../src/document/schema";
import { nearestOnPolyline } from "../../src/geometry";
import { createSolver } from "../../src/solve/pipeline";
import { pondAt, swaleOutOf } from "../../src/solve/pond-swale";
import type { Pond } from "../../src/solve/results";
import { proposeSwale } from "../../src/solve/swale-proposal";
import { demoProject } from "../support/demo";
import { site } from "./sites";

/** Level ground with a hollow 4 m east of the shed, 0.3 m deep, and a bank to lower ground in the north. */
const hollowed = (x: number, y: number) =>
  (y > 30 ? 98 : 100) - (Math.hypot(x - 18, y - 4) < 4 ? 0.3 : 0) + 0.002 * x;

function hollowSite(floor: number): Project {
  const made = site({ surface: hollowed, reach: 44, spacing: 2 });
  const { building } = made;
  return building ? { ...made, building: { ...building, floor } } : made;
}

/** The plan with the swale that is proposed for its deepest pond. */
function drained(project: Project): Project {
  const results = createSolver().solve(project);
  const proposal = swaleOutOf(project, results, results.water.ponds[0] as Pond);
  if (proposal.kind === "refused") throw new Error(proposal.why);
  expect(proposal.route.result.drains).toBe(true);
  const { line, depth, leastFall } = proposal.route;
  const edit = siteEdits.addSwale.run(project, { line, shape: { depth, leastFall } });
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

const verdicts = (project: Project) =>
  createSolver()
    .solve(project)
    .water.walls.map(({ verdict }) => verdict);

describe("a wall that water stands at", () => {
  it("isn't passed however much the ground falls away from it, and tells how far off the water is", () => {
    const low = hollowSite(100.25);
    const { water } = createSolver().solve(low);
    const east = water.walls.find(({ verdict }) => verdict === "water stands");
    expect(east).toMatchObject({ fallsEnough: true, passes: false, guessed: 0 });
    expect(east?.standing?.off).toBeLessThan(3.048);
    expect(east?.standing?.depth).toBeGreaterThan(0.1);
    expect(verdicts(hollowSite(101.5))).toEqual(["passes", "passes", "passes", "passes"]);
  });

  it("passes once the swale that is proposed for the hollow drains it", () => {
    const low = hollowSite(100.25);
    expect(verdicts(low)).toContain("water stands");
    const after = drained(low);
    expect(createSolver().solve(after).water.ponds).toEqual([]);
    expect(verdicts(after)).toEqual(["passes", "passes", "passes", "passes"]);
  });

  it("on the flat demo too: its floor 5 in lower, all walls stand in water until the swale is there", () => {
    const demo = demoProject("potting-barn");
    if (!demo.building) throw new Error("it has a building");
    const low = { ...demo, building: { ...demo.building, floor: 15 } };
    expect(verdicts(low)).toEqual(["water stands", "water stands", "water stands", "water stands"]);
    const after = drained(low);
    expect(createSolver().solve(after).water.ponds).toEqual([]);
    expect(verdicts(after)).toEqual(["passes", "passes", "passes", "passes"]);
  });

  it("on the flat demo with the floor ever lower: what is laid drains the moat that the apron is dug into, or it is told not to", () => {
    const demo = demoProject("potting-barn");
    if (!demo.building) throw new Error("it has a building");
    const found = [14.78, 14.88, 14.93].map((floor) => {
      const low = { ...demo, building: { ...demo.building, floor } } as Project;
      const results = createSolver().solve(low);
      const proposal = swaleOutOf(low, results, results.water.ponds[0] as Pond);
      if (proposal.kind === "refused" || !proposal.route.result.drains) return "told";
      expect(createSolver().solve(drained(low)).water.ponds).toEqual([]);
      return "drained";
    });
    expect(found[0]).toBe("told");
    expect(found).toContain("drained");
  });

  it("is told as too little known where most of the ground about it is a guess", () => {
    const far = site({ reach: 10, spacing: 5 });
    const { building } = far;
    if (!building) throw new Error("it has a building");
    const outline = building.outline.map(([x, y]): [number, number] => [x + 40, y]);
    expect(new Set(verdicts({ ...far, building: { ...building, outline } }))).toEqual(
      new Set(["too few shots"]),
    );
  });
});

describe("a swale out of a hollow", () => {
  it("starts at the hollow's deepest spot, even where that lies near the walls", () => {
    const low = hollowSite(100.25);
    const results = createSolver().solve(low);
    const [pond] = results.water.ponds;
    if (!pond) throw new Error("there is a hollow");
    const proposal = swaleOutOf(low, results, pond);
    if (proposal.kind === "refused") throw new Error(proposal.why);
    const [start] = proposal.route.line;
    expect(Math.hypot((start?.[0] ?? 0) - pond.at[0], (start?.[1] ?? 0) - pond.at[1])).toBeLessThan(2);
  });

  it("can't come out within the hollow: nothing runs on from there", () => {
    const low = hollowSite(100.25);
    const results = createSolver().solve(low);
    const [pond] = results.water.ponds;
    if (!pond) throw new Error("there is a hollow");
    const refused = proposeSwale(low, results, { start: [0, 20], outlet: pond.at });
    expect(refused).toMatchObject({ kind: "refused", why: expect.stringContaining("holds water") });
  });

  it("keeps off the drive that dams the water where it may dip, and goes under it in a pipe only where nothing else does", () => {
    const project = demoProject("open-hillside");
    const dips: Project = {
      ...project,
      drainage: { ...project.drainage, pipe: { ...project.drainage.pipe, crossing: "dip" } },
    };
    const drive = project.grading.drives[0];
    if (!drive) throw new Error("it has a drive");
    const results = createSolver().solve(project);
    expect(results.water.ponds.length).toBeGreaterThan(0);
    for (const pond of results.water.ponds) {
      const proposal = swaleOutOf(dips, results, pond);
      const line = proposal.kind === "laid" ? proposal.route.line : [];
      for (const [x, y] of line)
        expect(nearestOnPolyline(drive.line, x, y).distance).toBeGreaterThan(drive.width / 2);
      if (proposal.kind === "refused") expect(proposal.why).toMatch(/a pipe|low place|nowhere|lies/);
      const piped = swaleOutOf(project, results, pond);
      if (proposal.kind === "laid" && proposal.route.result.drains) expect(piped).toEqual(proposal);
    }
  });

  it("never comes out under fill: what is laid leaves the hollow no deeper", () => {
    const project = demoProject("open-hillside");
    const results = createSolver().solve(project);
    const [pond] = results.water.ponds;
    if (!pond) throw new Error("there is a hollow");
    const proposal = swaleOutOf(project, results, pond);
    if (proposal.kind === "refused" || !proposal.route.result.drains) return;
    const after = createSolver().solve(drained(project));
    expect(pondAt(after, pond.at)?.depth ?? 0).toBeLessThanOrEqual(pond.depth);
  });

  it("is told to leave water where something dams it, by asking the results at the hollow's deepest spot", () => {
    const low = hollowSite(100.25);
    const results = createSolver().solve(low);
    const [pond] = results.water.ponds;
    if (!pond) throw new Error("there is a hollow");
    expect(pondAt(results, pond.at)).toBe(pond);
    expect(pondAt(createSolver().solve(drained(low)), pond.at)).toBeNull();
  });

  it("isn't there where no ground lies low enough, and says what it lacks", () => {
    const flat = (x: number, y: number) => 100 - (Math.hypot(x - 18, y - 4) < 4 ? 0.3 : 0);
    const project = site({ surface: flat, reach: 44, spacing: 2 });
    const results = createSolver().solve(project);
    const proposal = swaleOutOf(project, results, results.water.ponds[0] as Pond);
    if (proposal.kind === "laid") expect(proposal.route.result.drains).toBe(false);
    expect(proposal.kind === "laid" ? proposal.route.result.why : proposal.why).not.toBe("");
  });

  it("that can't come out names the bed on fill that would, and the floor that goes with it", () => {
    // A bowl all round: no place nearby lies low enough.
    const bowl = (x: number, y: number) => 100 + 0.02 * Math.hypot(x - 18, y - 4);
    const project = site({ surface: bowl, reach: 44, spacing: 2 });
    const results = createSolver().solve(project);
    const [start, outlet]: [number, number][] = [
      [18, 14],
      [-20, 14],
    ];
    const proposal = proposeSwale(project, results, {
      start: start as [number, number],
      outlet: outlet as [number, number],
    });
    if (proposal.kind !== "laid" || !proposal.raised) throw new Error("it is laid, and doesn't drain");
    expect(proposal.route.result.drains).toBe(false);
    const { stations } = proposal.route.result;
    const end = stations.at(-1);
    if (!end) throw new Error("it has an end");
    // By hand: from the ground at the outlet up at the least fall; highest over the ground at its start or on the way.
    const beds = stations.map(
      ({ distance }) => end.existing + project.rules.leastSwaleFall * (end.distance - distance),
    );
    const over = Math.max(...stations.map(({ existing }, i) => (beds[i] as number) - existing));
    expect(proposal.raised.over).toBeCloseTo(over, 9);
    expect(over).toBeGreaterThan(0.5);
    const { passing, floor } = proposal.raised;
    expect((floor ?? 0) - (passing ?? 0)).toBeCloseTo(
      project.rules.aboveSwale + project.grading.apron.showing - (project.building?.topOfWallAboveFloor ?? 0),
      9,
    );
  });
});
