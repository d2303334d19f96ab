/** What comes in beside what the plan has: how far off, and the shift by a common point. */
import { describe, expect, it } from "vitest";
import {
  farApart,
  type Incoming,
  type KnownPoint,
  knownPoints,
  pointNamed,
  readIncoming,
  shiftBetween,
  shifted,
} from "../../../src/files/incoming";
import { createSolver } from "../../../src/solve/pipeline";
import { demoProject } from "../../support/demo";

const plan: readonly KnownPoint[] = [
  { name: "bolt", x: 0, y: 0, z: 30 },
  { name: "corner A", x: 30, y: 40, z: null },
  { name: "stake", x: 20, y: 10, z: 28 },
];
const box = (minX: number, minY: number, minZ = 29, maxZ = 31) => ({
  minX,
  minY,
  maxX: minX + 10,
  maxY: minY + 10,
  minZ,
  maxZ,
});

/** A table in metres, with its points' names. */
async function table(...rows: readonly string[]): Promise<Incoming> {
  const read = await readIncoming("p.csv", new TextEncoder().encode(["name,x,y,z", ...rows].join("\n")));
  if (!read.ok) throw new Error(read.message);
  return read.incoming;
}

describe("how far off a file lies", () => {
  it.each([
    ["over the plan: nothing to ask", box(5, 5), null],
    ["beside it, nearer than the plan is across (50 m)", box(70, 0), null],
    ["3-4-5 from corner to corner", box(330, 440), { distance: 500, above: 0 }],
    ["to the west and south", box(-310, -10), { distance: 300, above: 0 }],
    ["over the plan on another datum", box(0, 0, 250, 260), { distance: 0, above: 220 }],
    ["far below", box(0, 0, 1, 2), { distance: 0, above: -26 }],
    [
      "without heights nothing is said of them",
      box(330, 440, Number.NaN, Number.NaN),
      { distance: 500, above: 0 },
    ],
  ])("%s", (_why, bounds, expected) => {
    expect(farApart(bounds, plan)).toEqual(expected);
  });

  it("an empty plan has nothing to be far from", () => {
    expect(farApart(box(1e6, 1e6), [])).toBeNull();
    expect(farApart(null, plan)).toBeNull();
  });
});

describe("a shift by a common point", () => {
  it("is found by name or by row, and brings the point and all beside it onto the plan's", async () => {
    const file = await table("BM7,500000,4000000,250", "x,500010,4000005,251");
    expect(pointNamed(file, " bm7 ")).toMatchObject({ name: "BM7", z: 250 });
    expect(pointNamed(file, "2")).toMatchObject({ name: "x" });
    expect(pointNamed(file, "3")).toBeNull();
    expect(pointNamed(file, "")).toBeNull();
    const [bolt] = plan;
    const there = pointNamed(file, "BM7");
    if (!there || !bolt) throw new Error("no point");
    const moved = shifted(file, shiftBetween(there, bolt));
    expect([...moved.points.x, ...moved.points.y, ...moved.points.z]).toEqual([0, 10, 0, 5, 30, 31]);
    expect(moved.bounds).toEqual({ minX: 0, maxX: 10, minY: 0, maxY: 5, minZ: 30, maxZ: 31 });
    expect(farApart(moved.bounds, plan)).toBeNull();
    expect(file.points.x[0]).toBe(500000);
  });

  it("leaves heights alone where one of the two has none", () => {
    const [, corner] = plan;
    expect(shiftBetween({ name: "p", x: 1, y: 2, z: 250 }, corner as KnownPoint)).toEqual([29, 38, 0]);
  });
});

it("the plan's known points are its marks, corners and placed shots, a second look not twice", () => {
  const project = demoProject("pottery-studio");
  const points = knownPoints(project, createSolver().solve(project));
  const names = points.map(({ name }) => name);
  expect(names).toContain("capped bolt");
  expect(names).toContain("corner A");
  const placed = project.survey.shots.filter(({ place, kind }) => place.kind !== "none" && kind === "ground");
  expect(points.length).toBeGreaterThanOrEqual(placed.length);
  expect(points.find(({ name }) => name === "capped bolt")).toMatchObject({ z: 30.48 });
});
