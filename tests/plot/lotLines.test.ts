/** A lot's lines as a person counts them: a curve of the deed is one, however many chords draw it. */
import { describe, expect, it } from "vitest";
import { newProject, type Point, type Project, plotEdits, siteEdits } from "../../src/document";
import { deedOutline, lotLines, lotSize, piecesOf } from "../../src/plot";
import { createSolver } from "../../src/solve/pipeline";
import { checkEdit } from "../support/checkEdit";

/** A lot of 5 courses: 40 m square, its north-east corner rounded by a quarter circle of 10 m. */
const courses = [
  { bearing: "N 90-00-00 E", distance: "40 m" },
  { bearing: "N 0-00-00 E", distance: "30 m" },
  { bearing: "N 45-00-00 W", distance: "15.707963267948966 m", radius: "10 m", turns: "left" as const },
  { bearing: "N 90-00-00 W", distance: "30 m" },
  { bearing: "S 0-00-00 E", distance: "40 m" },
];

function roundedLot(): Project {
  let project = newProject();
  for (const course of courses) project = checkEdit(project, plotEdits.addCourse, course);
  const drawn = project.lot.deed && deedOutline(project.lot.deed, project.lot.north);
  if (!drawn) throw new Error("the deed is not drawn");
  return checkEdit(project, plotEdits.drawDeed, { outline: drawn.outline });
}

describe("the lines of a lot by its deed", () => {
  const project = roundedLot();
  const { lot } = project;

  it("enclose what the curve encloses, not its chords, and are as long as the deed says", () => {
    const { plot } = createSolver().solve(project);
    // 40 m square less the corner outside a quarter circle of 10 m.
    expect(plot.lot?.area).toBeCloseTo(1600 - (100 - 25 * Math.PI), 6);
    expect(plot.lot?.perimeter).toBeCloseTo(140 + 5 * Math.PI, 6);
    expect(plot.lot?.area).toBeCloseTo(plot.deed?.area ?? 0, 6);
    expect(plot.lot?.perimeter).toBeCloseTo(plot.deed?.perimeter ?? 0, 6);
    // Told the other way round, or with corners alone, as it should be.
    expect(lotSize({ ...lot, deed: null })?.area).toBeLessThan(plot.lot?.area ?? 0);
  });

  it("are its five courses, the curve one of them with its radius and length", () => {
    expect(lot.outline.length).toBeGreaterThan(15);
    expect(lotLines(lot).map(({ curve }) => curve)).toEqual([
      null,
      null,
      { radius: 10, length: expect.closeTo((Math.PI / 2) * 10, 9) },
      null,
      null,
    ]);
    const all = lotLines(lot).flatMap((line) => piecesOf(line, lot.outline.length));
    expect(all).toEqual(lot.outline.map((_, piece) => piece));
  });

  it("stay so while a corner elsewhere is moved; a curve whose own place was moved is chords", () => {
    const moved = (index: number) => {
      const outline = lot.outline.map(([x, y], i): Point => (i === index ? [x + 1, y - 1] : [x, y]));
      return checkEdit(project, siteEdits.setLotOutline, { outline }).lot;
    };
    expect(lotLines(moved(0))).toHaveLength(5);
    expect(lotLines(moved(4))).toHaveLength(lot.outline.length);
  });

  it("without a deed are the pieces of the outline", () => {
    expect(lotLines({ ...lot, deed: null })).toHaveLength(lot.outline.length);
    expect(lotLines({ ...lot, outline: [] })).toEqual([]);
  });

  it("a setback along the curve is one line, and what crosses it is said once", () => {
    const curve = lotLines(lot)[2];
    if (!curve) throw new Error("no curve");
    let typed = project;
    for (const line of piecesOf(curve, lot.outline.length))
      typed = checkEdit(typed, plotEdits.setSetback, { line, text: "5 m" });
    const { plot } = createSolver().solve(typed);
    expect(plot.setbacks).toHaveLength(1);
    expect(plot.setbacks[0]?.runs).toHaveLength(1);
    // Parallel to a quarter circle of 10 m, 5 m inside it: a quarter circle of 5 m about (30, 30), less what the chords take.
    for (const [x, y] of plot.setbacks[0]?.runs[0] ?? [])
      expect(Math.abs(Math.hypot(x - 30, y - 30) - 5)).toBeLessThan(0.03);
  });
});
