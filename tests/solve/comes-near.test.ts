/** What comes too near to a line is named: a slope or a wall is offered for side slopes, not for a swale. */
import { describe, expect, it } from "vitest";
import type { Project } from "../../src/document/schema";
import { createSolver } from "../../src/solve";
import type { Problem } from "../../src/solve/results";
import { plane, shed, site } from "./sites";

type Part = Record<string, unknown>;

// 2 m of fill at the wall's foot on level ground: a 2 m level apron, then 3 : 1, so it ends 8 m from the wall.
const usual = { apron: { showing: 0, fall: 1e-9, width: 2 }, slopes: { fill: 3, cut: 3 } };
const plan = (grading: Part, lot: Part): Project =>
  site({
    surface: plane(100),
    building: { ...shed, floor: 102, topOfWallAboveFloor: 0 },
    rest: { grading: { ...usual, ...grading }, lot },
  });
const problem = (project: Project, code: string): Problem | undefined =>
  createSolver()
    .solve(project)
    .problems.find((found) => found.code === code);

const swale = {
  id: "sw",
  name: "swale 1",
  line: [
    [30, 10],
    [30, -20],
  ],
  depth: 0.4,
  fall: 0,
  bottomWidth: 1,
  sideSlope: 3,
};
const lotWithSouth = (y: number) => ({
  outline: [
    [-30, y],
    [50, y],
    [50, 40],
    [-30, 40],
  ],
});
/** The swale's bank ends 1.7 m from its line: it comes to 0.3 m from the oak. */
const oak = { id: "oak", name: "the oak", kind: "tree", points: [[32, 0]], keepClear: 1 };

describe("a swale that comes too near", () => {
  it("to a tree is named, with what to do; neither slope nor wall is offered", () => {
    const told = problem(plan({ swales: [swale] }, { features: [oak] }), "grading-near-feature");
    expect(told?.where).toBe("the oak");
    expect(told?.how).toMatch(
      /^Swale 1 is what comes there: move it away, or make it shallower or its banks steeper\./,
    );
    expect(told?.how).not.toMatch(/slope stops|retaining wall/);
    expect(told?.fixes ?? []).toEqual([]);
    expect(told?.ids).toEqual(["oak", "sw"]);
  });

  it("to the lot line is named; no slope or wall of the building is spoken of", () => {
    // The slope ends at y = −8, the swale goes on to −20.
    const told = problem(plan({ swales: [swale] }, lotWithSouth(-10)), "grading-past-lot");
    expect(told?.how).toMatch(/^Swale 1 is what comes there: move it away/);
    expect(told?.how).toMatch(/Only a licensed surveyor/);
    expect(told?.how).not.toMatch(/side slopes, a lower floor/);
    expect(told?.fixes ?? []).toEqual([]);
    expect(told?.ids).toEqual(["sw"]);
  });

  it("where the fill slope passes the line elsewhere, the offer speaks of that place and its own side alone", () => {
    const rest = { ...usual.apron, sides: [0, 1, 2, 3].map((wall) => ({ wall, fill: 3 })) };
    const told = problem(plan({ apron: rest, swales: [swale] }, lotWithSouth(-7)), "grading-past-lot");
    expect(told?.how).toMatch(
      /^Swale 1 is what comes there: .* Elsewhere the fill slope stops there at 2\.5 : 1/,
    );
    // Only the south side comes to the line.
    expect(told?.fixes?.[0]?.words).toBe("Take 2.5 : 1 for the fill slope before A-B");
  });
});

describe("other shapes that come too near", () => {
  it("a berm and a parking pad are named", () => {
    const berm = { id: "b", name: "berm 1", line: swale.line, height: 0.5, topWidth: 1, sideSlope: 3 };
    const bermTold = problem(plan({ berms: [berm] }, { features: [oak] }), "grading-near-feature");
    expect(bermTold?.how).toMatch(
      /^Berm 1 is what comes there: move it away, or make it lower or its sides steeper\./,
    );
    const pad = {
      id: "p",
      name: "parking",
      outline: [
        [25, -5],
        [31.5, -5],
        [31.5, 5],
        [25, 5],
      ],
      level: { kind: "height", height: 100.5 },
    };
    const padTold = problem(plan({ pads: [pad] }, { features: [oak] }), "grading-near-feature");
    expect(padTold?.how).toMatch(
      /^Parking is what comes there: move it away, or make it smaller or its side slopes steeper\./,
    );
  });

  it("the building's own slopes are offered a slope as before", () => {
    const near = { ...oak, points: [[6, -9.5]], keepClear: 3 };
    const told = problem(plan({ swales: [swale] }, { features: [near] }), "grading-near-feature");
    expect(told?.how).toMatch(/^The fill slope stops before what stays clear at /);
    expect(told?.ids).toEqual(["oak"]);
  });
});
