import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  buildingEdits,
  drawingEdits,
  newProject,
  type Point,
  type Project,
  surveyEdits,
} from "../../src/document";
import { signedArea } from "../../src/geometry";
import { checkEdit } from "../support/checkEdit";

/** 10 by 6: A (0, 6), B (10, 6), C (10, 0), D (0, 0); wall 0 is the north one and runs east. */
function barn(turn = 0, at: Point = [0, 0]): Project {
  const outline = buildingEdits.rectangleOutline(at, 10, 6, turn);
  return checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
}

const outlineOf = (project: Project) => project.building?.outline ?? [];
const areaOf = (project: Project) => Math.abs(signedArea(outlineOf(project)));

function lengthsOf(outline: readonly Point[]): number[] {
  return outline.map(([x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length] as Point;
    return Math.hypot(nx - x, ny - y);
  });
}

function areAllSquare(outline: readonly Point[]): boolean {
  return outline.every((at, i) => {
    const before = outline.at(i - 1) as Point;
    const after = outline[(i + 1) % outline.length] as Point;
    const [ux, uy, vx, vy] = [at[0] - before[0], at[1] - before[1], after[0] - at[0], after[1] - at[1]];
    return Math.abs(ux * vx + uy * vy) < 1e-7 * Math.hypot(ux, uy) * Math.hypot(vx, vy);
  });
}

describe("a piece of a wall pulled out", () => {
  it("from the middle makes a T of eight corners", () => {
    const project = checkEdit(barn(), buildingEdits.pullOut, { wall: 0, from: 3, to: 7, depth: 2 });
    expect(outlineOf(project)).toEqual([
      [0, 6],
      [3, 6],
      [3, 8],
      [7, 8],
      [7, 6],
      [10, 6],
      [10, 0],
      [0, 0],
    ]);
  });

  it("slid along the wall too, its sides lean: the area is still width by depth", () => {
    const args = { wall: 0, from: 3, to: 7, depth: 2, slide: 1.5 };
    const project = checkEdit(barn(), buildingEdits.pullOut, args);
    expect(outlineOf(project).slice(1, 5)).toEqual([
      [3, 6],
      [4.5, 8],
      [8.5, 8],
      [7, 6],
    ]);
    expect(areaOf(project)).toBeCloseTo(68, 9);
  });

  it("from a square corner makes an L of six: the corner goes along", () => {
    const project = checkEdit(barn(), buildingEdits.pullOut, { wall: 0, from: 0, to: 4, depth: 3 });
    expect(outlineOf(project)).toEqual([
      [0, 9],
      [4, 9],
      [4, 6],
      [10, 6],
      [10, 0],
      [0, 0],
    ]);
  });

  it("pushed in from the middle makes a U, over the whole wall only moves it", () => {
    const u = checkEdit(barn(), buildingEdits.pullOut, { wall: 0, from: 3, to: 7, depth: -2 });
    expect(outlineOf(u)).toHaveLength(8);
    expect(areaOf(u)).toBeCloseTo(52, 9);
    const whole = checkEdit(barn(), buildingEdits.pullOut, { wall: 0, from: 0, to: 10, depth: 2 });
    expect(lengthsOf(outlineOf(whole))).toEqual([10, 8, 10, 8]);
  });

  it("that fills the notch of an L exactly leaves a rectangle", () => {
    const ell = checkEdit(barn(), buildingEdits.pullOut, { wall: 0, from: 0, to: 4, depth: 3 });
    // Wall C-D runs from (4, 6) to (10, 6).
    const filled = checkEdit(ell, buildingEdits.pullOut, { wall: 2, from: 0, to: 6, depth: 3 });
    expect(outlineOf(filled)).toEqual([
      [0, 9],
      [10, 9],
      [10, 0],
      [0, 0],
    ]);
  });

  it("at a corner that isn't square stands out square from the wall", () => {
    const outline: Point[] = [
      [0, 0],
      [10, 0],
      [13, 6],
      [0, 6],
    ];
    const skew = checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 1 });
    const project = checkEdit(skew, buildingEdits.pullOut, { wall: 0, from: 6, to: 10, depth: 2 });
    expect(outlineOf(project)).toEqual([
      [0, 0],
      [6, 0],
      [6, -2],
      [10, -2],
      [10, 0],
      [13, 6],
      [0, 6],
    ]);
  });

  const mm = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 1000);

  it("keeps right angles, and the area grows by width times depth, however the building is turned", () => {
    const some = fc.record({
      wall: fc.integer({ min: 0, max: 3 }),
      turn: fc.integer({ min: -180, max: 180 }),
      from: fc.oneof(fc.constant(0), mm(500, 2500)),
      width: mm(300, 3400),
      depth: fc.oneof(mm(300, 9000), mm(-2500, -300)),
    });
    fc.assert(
      fc.property(some, ({ wall, turn, from, width, depth }) => {
        const start = barn((turn * Math.PI) / 180, [40, -30]);
        const project = checkEdit(start, buildingEdits.pullOut, { wall, from, to: from + width, depth });
        expect(areaOf(project)).toBeCloseTo(60 + width * depth, 6);
        expect(areAllSquare(outlineOf(project))).toBe(true);
        expect(outlineOf(project)).toHaveLength(from === 0 ? 6 : 8);
      }),
    );
  });
});

function edges(project: Project, id: string): number[] {
  const { outline, doors } = project.building as NonNullable<Project["building"]>;
  const door = doors.find((each) => each.id === id);
  if (!door) throw new Error("the door is gone");
  const [a, b] = [outline[door.wall] as Point, outline[(door.wall + 1) % outline.length] as Point];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [door.offset, door.offset + door.width].flatMap((s) => [
    a[0] + ((b[0] - a[0]) * s) / length,
    a[1] + ((b[1] - a[1]) * s) / length,
  ]);
}

describe("what stands on the walls and names corners", () => {
  /** A door near each end of the north wall, one in its middle, and one in the east wall. */
  function doored(): Project {
    let project = barn();
    for (const [wall, offset] of [
      [0, 0.5],
      [0, 4.5],
      [0, 8.5],
      [1, 2],
    ] as const)
      project = checkEdit(project, buildingEdits.addDoor, { wall, offset, width: 1 });
    return project;
  }

  it("doors beside the piece keep their place, those in it go out with it", () => {
    const before = doored();
    const after = checkEdit(before, buildingEdits.pullOut, { wall: 0, from: 3, to: 7, depth: 2 });
    for (const id of ["d1", "d3", "d4"]) expect(edges(after, id)).toEqual(edges(before, id));
    expect(edges(after, "d2")).toEqual([4.5, 8, 5.5, 8]);
    expect(after.building?.doors.map(({ wall }) => wall)).toEqual([0, 2, 4, 5]);
  });

  it("a door in the wall beyond a carried corner keeps its place too", () => {
    const before = doored();
    const after = checkEdit(before, buildingEdits.pullOut, { wall: 0, from: 6, to: 10, depth: 2 });
    expect(edges(after, "d4")).toEqual(edges(before, "d4"));
    expect(after.building?.doors[3]?.offset).toBeCloseTo(4, 9);
    expect(edges(after, "d3")).toEqual([8.5, 8, 9.5, 8]);
  });

  it("a cut through a door, and a door that would lose its wall, are refused by name", () => {
    const cut = buildingEdits.pullOut.run(doored(), { wall: 0, from: 5, to: 8, depth: 2 });
    expect(cut).toMatchObject({ ok: false, why: expect.stringMatching(/begin or end in the door/) });
    const lost = buildingEdits.pullOut.run(doored(), { wall: 0, from: 6, to: 10, depth: -2.5 });
    expect(lost).toMatchObject({ ok: false, why: expect.stringMatching(/left without a wall/) });
  });

  it("shots at corners stay on the ground, tied where the corner stayed; dimensions and tapes follow", () => {
    let project = barn();
    for (const corner of [0, 1, 2])
      project = checkEdit(project, surveyEdits.addShot, { reading: "60", place: { kind: "corner", corner } });
    project = checkEdit(project, drawingEdits.addDimension, {
      from: { kind: "corner", corner: 1 },
      to: { kind: "corner", corner: 2 },
    });
    project = {
      ...project,
      grading: { ...project.grading, apron: { ...project.grading.apron, leave: [0, 2] } },
      staking: {
        tapes: [{ id: "t1", from: 0, to: 2, length: { text: "11.662 m", m: 11.662 }, held: "level" }],
      },
    };
    // The west part of the north wall: corner A goes along, B and C get new numbers.
    const after = checkEdit(project, buildingEdits.pullOut, { wall: 0, from: 0, to: 4, depth: 3 });
    expect(after.survey.shots.map(({ place }) => place)).toEqual([
      { kind: "at", x: 0, y: 6 },
      { kind: "corner", corner: 3 },
      { kind: "corner", corner: 4 },
    ]);
    expect(after.drawing.dimensions[0]).toMatchObject({ from: { corner: 3 }, to: { corner: 4 } });
    expect(after.staking.tapes[0]).toMatchObject({ from: 0, to: 4 });
    expect(after.grading.apron.leave).toEqual([0, 1, 2, 4]);
  });

  it("ground measured off a wall or from a corner keeps its place", () => {
    let project = barn();
    const measure = (m: number) => ({ text: `${m} m`, m });
    project = checkEdit(project, surveyEdits.addShot, {
      reading: "60",
      place: { kind: "wall", wall: 2, along: measure(2), out: measure(3) },
    });
    project = checkEdit(project, surveyEdits.addShot, {
      reading: "60",
      place: {
        kind: "baseline",
        from: { kind: "corner", corner: 0 },
        to: { kind: "corner", corner: 2 },
        along: measure(2),
        right: measure(1),
      },
    });
    const after = checkEdit(project, buildingEdits.pullOut, { wall: 0, from: 0, to: 4, depth: 3 });
    expect(after.survey.shots[0]?.place).toMatchObject({ kind: "wall", wall: 4 });
    expect(after.survey.shots[1]?.place).toMatchObject({
      from: { kind: "at", x: 0, y: 6 },
      to: { kind: "corner", corner: 4 },
    });
  });

  it("refuses what is too small, not a number, or laps over the building", () => {
    const why = (args: { wall: number; from: number; to: number; depth: number }, project = barn()) => {
      const edit = buildingEdits.pullOut.run(project, args);
      return edit.ok ? "" : edit.why;
    };
    expect(why({ wall: 0, from: 3, to: 3.1, depth: 2 })).toMatch(/at least 0.3 m/);
    expect(why({ wall: 0, from: 3, to: 9.98, depth: 2 })).toMatch(/scrap of wall/);
    expect(why({ wall: 0, from: 3, to: 7, depth: Number.NaN })).toMatch(/not a number/);
    expect(why({ wall: 7, from: 3, to: 7, depth: 2 })).toMatch(/no such wall/);
    expect(why({ wall: 0, from: 3, to: 7, depth: -6 })).not.toBe("");
    expect(why({ wall: 0, from: 3, to: 7, depth: -8 })).not.toBe("");
    // In a U, an arm pulled over to the other arm.
    const u = checkEdit(barn(), buildingEdits.pullOut, { wall: 0, from: 3, to: 7, depth: -4 });
    expect(why({ wall: 1, from: 1, to: 3, depth: 6 }, u)).not.toBe("");
    expect(buildingEdits.pullOut.run(newProject(), { wall: 0, from: 0, to: 1, depth: 1 }).ok).toBe(false);
  });
});
