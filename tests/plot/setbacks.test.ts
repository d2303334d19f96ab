import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildingEdits, newProject, type Point, plotEdits, surveyEdits } from "../../src/document";
import { containsPoint, distanceToSegment } from "../../src/geometry";
import {
  cornerHeights,
  deedOutline,
  levelTapes,
  lineSetbacks,
  setbackCrossings,
  setbackLines,
  squareUp,
} from "../../src/plot";
import { createSolver } from "../../src/solve/pipeline";
import { levelSurvey } from "../../src/survey";
import { checkEdit } from "../support/checkEdit";

const LOT: Point[] = [
  [0, 0],
  [40, 0],
  [40, 30],
  [0, 30],
];
const all = (distance: number) => LOT.map((_, line) => ({ line, distance }));
const house = (x: number, y: number, w = 10, h = 8) => ({
  name: "house",
  closed: true,
  points: [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ] as Point[],
});

describe("setback lines", () => {
  it("of a rectangle make the rectangle within", () => {
    const lines = setbackLines(LOT, all(5));
    expect(lines.map(({ line, runs }) => [line, runs.length])).toEqual([
      [0, 1],
      [1, 1],
      [2, 1],
      [3, 1],
    ]);
    const [south] = lines[0]?.runs ?? [];
    expect(south?.[0]?.[0]).toBeCloseTo(5, 3);
    expect(south?.at(-1)?.[0]).toBeCloseTo(35, 3);
    expect(south?.every(([, y]) => Math.abs(y - 5) < 1e-6)).toBe(true);
  });

  it("run the same whichever way the lot was drawn", () => {
    const back = [...LOT].reverse();
    for (const { runs } of setbackLines(back, all(5)))
      for (const [x, y] of runs.flat()) expect(Math.min(x, y, 40 - x, 30 - y)).toBeCloseTo(5, 3);
  });

  it("of different widths give way to each other; none where nothing is left", () => {
    const lines = setbackLines(LOT, [
      { line: 0, distance: 10 },
      { line: 1, distance: 2 },
      { line: 9, distance: 3 },
    ]);
    expect(lines.map(({ line }) => line)).toEqual([0, 1]);
    expect(lines[1]?.runs[0]?.[0]?.[1]).toBeCloseTo(10, 3);
    expect(setbackLines(LOT, all(16)).flatMap(({ runs }) => runs)).toEqual([]);
  });

  it("every place on them is inside and keeps all setbacks, also round a corner that points into the lot", () => {
    const ell: Point[] = [
      [0, 0],
      [40, 0],
      [40, 15],
      [20, 15],
      [20, 40],
      [0, 40],
    ];
    const width = fc.integer({ min: 500, max: 6000 }).map((v) => v / 1000);
    fc.assert(
      fc.property(fc.array(width, { minLength: 6, maxLength: 6 }), (widths) => {
        const setbacks = widths.map((distance, line) => ({ line, distance }));
        for (const { line, distance, runs } of setbackLines(ell, setbacks)) {
          for (const [x, y] of runs.flat()) {
            expect(containsPoint(ell, x, y)).toBe(true);
            const to = (i: number) => distanceToSegment(ell[i] as Point, ell[(i + 1) % 6] as Point, x, y);
            expect(Math.abs(to(line) - distance)).toBeLessThan(0.02);
            for (const other of setbacks) expect(to(other.line)).toBeGreaterThan(other.distance - 0.001);
          }
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe("what crosses", () => {
  it("a house in two setbacks is told with how far", () => {
    const found = setbackCrossings(LOT, all(5), [house(3, 24)]);
    expect(found.map(({ line, by, thing }) => [thing, line, Math.round(by * 1e6) / 1e6])).toEqual([
      ["house", 2, 7],
      ["house", 3, 2],
    ]);
    expect(setbackCrossings(LOT, all(5), [house(5, 5), house(20, 17)])).toEqual([]);
    expect(setbackCrossings(LOT, all(5), [house(20, 17.01)])).toMatchObject([
      { line: 2, by: expect.closeTo(0.01, 9) },
    ]);
  });

  it("a line counts between its corners, and outside the lot it counts more", () => {
    const drive = {
      name: "drive",
      closed: false,
      points: [
        [20, 10],
        [20, -4],
      ] as Point[],
    };
    expect(setbackCrossings(LOT, [{ line: 0, distance: 3 }], [drive])).toMatchObject([
      { thing: "drive", line: 0, by: expect.closeTo(7, 9), at: [20, -4] },
    ]);
    const long = {
      name: "wall",
      closed: false,
      points: [
        [-10, 28],
        [50, 28],
      ] as Point[],
    };
    expect(setbackCrossings(LOT, [{ line: 2, distance: 3 }], [long])[0]?.by).toBeCloseTo(1, 9);
  });
});

describe("from the document", () => {
  const outline = buildingEdits.rectangleOutline([0, 0], 9, 6);
  const built = checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 30 });

  it("a tape on the slope is turned level by the shots at its ends, and the loss is told", () => {
    let project = checkEdit(built, surveyEdits.addMark, { name: "Bolt", height: "30 m" });
    const shot = (reading: string, corner: number) => {
      project = checkEdit(project, surveyEdits.addShot, { reading, place: { kind: "corner", corner } });
    };
    project = checkEdit(project, surveyEdits.addShot, { reading: "1 m", kind: "mark", of: "m1" });
    shot("1.2 m", 0);
    shot("2.4 m", 1);
    project = checkEdit(project, plotEdits.addTape, { from: 0, to: 1, text: "9.080 m", held: "slope" });
    project = checkEdit(project, plotEdits.addTape, { from: 1, to: 2, text: "6 m", held: "slope" });
    project = checkEdit(project, plotEdits.addTape, { from: 2, to: 3, text: "9 m" });
    const heights = cornerHeights(project.survey.shots, levelSurvey(project.survey, outline).result.points);
    const { level, left } = levelTapes(project.staking, ["A", "B", "C", "D"], heights);
    expect(level[0]).toMatchObject({
      from: "A",
      to: "B",
      distance: expect.closeTo(9.0004, 3),
      lost: expect.closeTo(0.0796, 3),
    });
    expect(level[1]).toMatchObject({ from: "C", to: "D", distance: 9, lost: 0 });
    expect(left).toEqual([{ id: "t2", why: "no-height" }]);
    expect(squareUp(level).ok).toBe(false);
  });

  it("a length a hundred times off its neighbours is asked about, a short jog of a lot isn't", () => {
    let project = newProject();
    for (const [bearing, distance] of [
      ["0", "100 ft"],
      ["90", "80 ft"],
      ["180", "100 in"],
      ["270", "80 ft"],
      ["0", "6 ft"],
    ] as const)
      project = checkEdit(project, plotEdits.addCourse, { bearing, distance });
    const told = (of: typeof project) =>
      createSolver()
        .solve(of)
        .problems.filter(({ code }) => code === "course-doubtful")
        .map(({ where, what }) => [where, what]);
    expect(told(project)).toEqual([]);
    const far = checkEdit(project, plotEdits.addCourse, { bearing: "10", distance: "90 in" });
    expect(told(far)).toEqual([]);
    const wrong = checkEdit(project, plotEdits.addCourse, { bearing: "10", distance: "9500" });
    expect(told(wrong)).toEqual([
      [
        "course 6 of the deed",
        "It is typed as 9500, about 119 times longer than the others. Is its unit right, and no figure too many or too few?",
      ],
    ]);
  });

  it("a deed is typed course by course, drawn to the plan's north, and gets its setbacks", () => {
    let project = newProject();
    for (const [bearing, distance] of [
      ["N 0-00-00 E", "30 m"],
      ["N 90 E", "40 m"],
      ["S 0 E", "30 m"],
      ["270", "40 m"],
    ] as const)
      project = checkEdit(project, plotEdits.addCourse, { bearing, distance });
    project = checkEdit(project, plotEdits.changeDeed, { patch: { start: [5, 5], adjust: true } });
    const drawn = project.lot.deed && deedOutline(project.lot.deed, Math.PI / 2);
    expect(drawn?.traverse.misclosure).toBe(0);
    expect(drawn?.outline[1]).toEqual([expect.closeTo(35, 9), expect.closeTo(5, 9)]);
    project = checkEdit(project, plotEdits.drawDeed, { outline: drawn?.outline ?? [] });
    project = checkEdit(project, plotEdits.setSetback, { line: 2, text: "15 ft", name: "rear" });
    project = checkEdit(project, plotEdits.setSetback, { line: 0, text: "3 m" });
    expect(lineSetbacks(project.lot)).toEqual([
      { line: 0, distance: 3 },
      { line: 2, distance: expect.closeTo(4.572, 9) },
    ]);
    project = checkEdit(project, plotEdits.setSetback, { line: 0, text: "" });
    expect(project.lot.setbacks).toHaveLength(1);
  });

  it.each([
    [
      "a tape to a corner that isn't there",
      () => plotEdits.addTape.run(built, { from: 0, to: 7, text: "3 m" }),
      "two different corners",
    ],
    [
      "a tape of nothing",
      () => plotEdits.addTape.run(built, { from: 0, to: 1, text: "0" }),
      "more than nothing",
    ],
    [
      "a bearing not understood",
      () => plotEdits.addCourse.run(built, { bearing: "uphill", distance: "3 m" }),
      "isn't understood",
    ],
    [
      "a setback without a line",
      () => plotEdits.setSetback.run(built, { line: 0, text: "3 m" }),
      "isn't there",
    ],
    [
      "a negative setback",
      () =>
        plotEdits.setSetback.run(
          { ...built, lot: { ...built.lot, outline: LOT } },
          { line: 0, text: "-3 m" },
        ),
      "isn't negative",
    ],
    [
      "a curve of nonsense",
      () => plotEdits.addCourse.run(built, { bearing: "N", distance: "3 m", radius: "wide" }),
      "wide",
    ],
  ])("refuses %s in words", (_what, run, why) => {
    const edit = run();
    expect(edit.ok ? "" : edit.why).toContain(why);
  });
});
