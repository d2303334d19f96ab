import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openProject, type Project } from "../../src/document";
import {
  createDrawContext,
  type DrawingMark,
  drawCorners,
  drawPlan,
  drawShots,
  gradeRuns,
  type MarkLayer,
} from "../../src/drawing";
import { readable, textBox } from "../../src/drawing/context";
import { labelContour } from "../../src/drawing/contour-labels";
import { boxesOverlap } from "../../src/drawing/labels";
import { bearingText } from "../../src/drawing/lot";
import { chooseTies } from "../../src/drawing/ties";
import { dimensionText } from "../../src/drawing/words";
import type { Point } from "../../src/geometry";
import { createSolver } from "../../src/solve/pipeline";

function demo(name: string): Project {
  const opened = openProject(readFileSync(`demo-projects/${name}.drysill.json`, "utf8"));
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return opened.project;
}

const texts = (layers: readonly MarkLayer[]) =>
  layers.flatMap((layer) => (layer.marks as readonly DrawingMark[]).filter((mark) => mark.kind === "text"));

describe("the whole plan", () => {
  it.each(["pottery-studio", "joinery-shed", "potting-barn"])(
    "of %s has no text across another, at any scale of screen or paper",
    (name) => {
      const project = demo(name);
      const results = createSolver().solve(project);
      for (const metresPerMm of [0.03, 0.08, 0.2, 0.5]) {
        for (const medium of ["screen", "paper"] as const) {
          const layers = drawPlan(project, results, { metresPerMm, medium });
          const boxes = texts(layers).map((mark) => ({ mark, box: textBox(mark, metresPerMm, -0.2) }));
          for (const [i, one] of boxes.entries()) {
            for (const other of boxes.slice(i + 1)) {
              const met = boxesOverlap(one.box, other.box) ? `${one.mark.text} on ${other.mark.text}` : "";
              // A corner must be told even where its building is smaller than the words.
              const crowded =
                metresPerMm >= 0.2 && [one, other].some(({ mark }) => mark.style.startsWith("corner"));
              if (!crowded) expect(met, `${metresPerMm} ${medium}`).toBe("");
            }
          }
        }
      }
    },
  );

  it("tells each corner by name and how far the wall stands out there", () => {
    const project = demo("pottery-studio");
    const results = createSolver().solve(project);
    const told = texts(drawPlan(project, results, { metresPerMm: 0.2 })).map((mark) => mark.text);
    expect(told).toEqual(expect.arrayContaining(["A", "B", "C", "D", "32′ × 24′", "diagonals 40′ 0″"]));
    expect(told.filter((text) => text.endsWith(" out"))).toHaveLength(4);
  });

  it.each(["pottery-studio", "joinery-shed", "potting-barn", "open-hillside"])(
    "of %s has each corner's letter by its own ring, on screen and paper",
    (name) => {
      const project = demo(name);
      const results = createSolver().solve(project);
      for (const metresPerMm of [0.05, 0.1, 0.2, 0.33]) {
        for (const medium of ["screen", "paper"] as const) {
          const letters = texts(drawPlan(project, results, { metresPerMm, medium })).filter(
            ({ style }) => style === "corner-label",
          );
          expect(letters.map(({ text }) => text).sort()).toEqual(
            results.corners.map((one) => one.name).sort(),
          );
          for (const letter of letters) {
            const box = textBox(letter, metresPerMm, 0);
            const away = results.corners.map(({ name: corner, x, y }) => ({
              corner,
              mm: Math.hypot(x / metresPerMm - box.x, y / metresPerMm - box.y),
            }));
            const nearest = away.reduce((a, b) => (b.mm < a.mm ? b : a));
            expect([letter.text, nearest.corner], `${metresPerMm} ${medium}`).toEqual([
              letter.text,
              letter.text,
            ]);
            expect(nearest.mm, `${letter.text}, ${metresPerMm} ${medium}`).toBeLessThan(8);
          }
        }
      }
    },
  );

  it.each(["pottery-studio", "joinery-shed", "potting-barn", "open-hillside"])(
    "of %s tells the length of every wall, at any scale of paper",
    (name) => {
      const project = demo(name);
      const results = createSolver().solve(project);
      const outline = project.building?.outline ?? [];
      for (const metresPerMm of [0.05, 0.1, 0.25, 0.36]) {
        const context = createDrawContext({ metresPerMm, medium: "paper" });
        const told = texts(drawPlan(project, results, { metresPerMm, medium: "paper" })).map(
          ({ text }) => text,
        );
        outline.forEach(([x, y], i) => {
          const [bx, by] = outline[(i + 1) % outline.length] ?? [0, 0];
          const wall = dimensionText(Math.hypot(bx - x, by - y), project.display, context);
          const walls = outline.filter((a, k) => {
            const b = outline[(k + 1) % outline.length] ?? a;
            return dimensionText(Math.hypot(b[0] - a[0], b[1] - a[1]), project.display, context) === wall;
          });
          expect(
            told.filter((text) => text === wall).length,
            `${wall} at ${metresPerMm}`,
          ).toBeGreaterThanOrEqual(walls.length);
        });
      }
    },
  );

  it("tells on paper what to fill or cut at each corner, from the ground as it is to the finished one", () => {
    const project = demo("pottery-studio");
    const results = createSolver().solve(project);
    const [a] = results.corners;
    // A: floor and wall 11¾″ above the ground, 6″ of it to show, so 5¾″ of fill.
    expect(a && a.finished - a.ground).toBeCloseTo((11.75 - 6) * 0.0254, 3);
    const paper = drawPlan(project, results, { metresPerMm: 0.2, medium: "paper" });
    const told = texts(paper).map((mark) => mark.text);
    expect(told).toContain("5¾″ of fill");
    expect(told.filter((text) => text.endsWith(" out"))).toEqual([]);
  });

  it("is the same when drawn twice in one context: a layer gives its places back first", () => {
    const project = demo("pottery-studio");
    const results = createSolver().solve(project);
    const options = { metresPerMm: 0.2 };
    const context = createDrawContext(options);
    const shots = drawShots(project, results, context);
    expect(drawShots(project, results, context)).toEqual(shots);
  });

  it("keeps the corners' labels in place while the floor is dragged", () => {
    const project = demo("pottery-studio");
    const solver = createSolver();
    const floor = project.building?.floor ?? 0;
    const context = createDrawContext({ metresPerMm: 0.15 });
    const places = [0, 0.11, 0.253].map((lift) => {
      const results = solver.solve(project, { floor: floor + lift });
      return texts([drawCorners(project, results, context)]).map((mark) => [mark.at, mark.shift]);
    });
    expect(places[1]).toEqual(places[0]);
    expect(places[2]).toEqual(places[0]);
  });
});

describe("text along lines", () => {
  it("is read from below or from the right, whichever way the line runs", () => {
    fc.assert(
      fc.property(fc.integer({ min: -3600, max: 3600 }), (tenths) => {
        const angle = (tenths * Math.PI) / 1800;
        const turned = readable(angle);
        expect(turned).toBeGreaterThan(-Math.PI / 2);
        expect(turned).toBeLessThan(Math.PI / 2 + 0.11);
        expect(Math.abs(Math.sin(turned - angle))).toBeLessThan(1e-9);
      }),
    );
  });

  it("breaks a contour under its height: 100 mm of straight line less the text and its margins", () => {
    const context = createDrawContext({ metresPerMm: 0.1 });
    const label = { text: "101.5", style: "contour-label", group: "existing" } as const;
    const line = Float64Array.from([0, 0, 4, 0, 10, 0]);
    const { pieces, labels } = labelContour(line, label, context, () => [0, 1]);
    expect(labels).toHaveLength(1);
    expect(labels[0]?.angle).toBeCloseTo(0, 9);
    const length = pieces.reduce((sum, piece) => sum + ((piece[piece.length - 2] ?? 0) - (piece[0] ?? 0)), 0);
    // "101.5" at an em of 2.4 mm: four figures of 0.497 and a point of 0.249 em, and 0.9 mm before and after.
    expect(10 - length).toBeCloseTo(0.1 * ((4 * 0.497 + 0.249) * 2.4 + 1.8), 6);
  });

  it("leaves a line bare that is too short, and a place that is taken", () => {
    const context = createDrawContext({ metresPerMm: 0.1 });
    const label = { text: "101.5", style: "contour-label", group: "existing" } as const;
    const short = Float64Array.from([0, 0, 1, 0]);
    expect(labelContour(short, label, context, () => null)).toEqual({ pieces: [short], labels: [] });
    context.labels.take("other", { x: 50, y: 0, width: 120, height: 4, angle: 0 });
    const long = Float64Array.from([0, 0, 10, 0]);
    expect(labelContour(long, label, context, () => null).labels).toEqual([]);
  });
});

describe("ties to the lot", () => {
  const lot: Point[] = [
    [0, 0],
    [40, 0],
    [40, 30],
    [0, 30],
  ];

  it("of a building square to its lot: one to the nearest line, one to a line across", () => {
    const building: Point[] = [
      [5, 8],
      [15, 8],
      [15, 14],
      [5, 14],
    ];
    const [[first] = [], twins, [other] = []] = chooseTies(building, lot);
    expect(first?.length).toBe(5);
    expect(first?.lotSide).toBe(3);
    expect(twins).toEqual([]);
    expect(other?.length).toBe(8);
    expect(other?.lotSide).toBe(0);
  });

  it("of a turned building: two to the nearest line, so that the turn is fixed as well", () => {
    const building: Point[] = [
      [6, 8],
      [15, 9],
      [14.3, 15],
      [5.3, 14],
    ];
    const [[first] = [], [twin] = []] = chooseTies(building, lot);
    expect(first?.length).toBeCloseTo(5.3, 9);
    expect(twin?.lotSide).toBe(first?.lotSide);
    expect(twin?.length).toBeCloseTo(6, 9);
  });
});

describe("grades along a drive", () => {
  const station = (distance: number, finished: number, grade: number | null) => ({
    distance,
    finished,
    grade,
    existing: 0,
    at: [distance, 0] as [number, number],
  });

  it("that read as one are told once: 8 %, 8 %, then a landing of 2 %", () => {
    const runs = gradeRuns([
      station(0, 0, 0.08),
      station(5, 0.4, 0.08),
      station(10, 0.8, 0.02),
      station(14, 0.88, null),
    ]);
    expect(runs).toHaveLength(2);
    expect(runs[0]).toMatchObject({ from: 0, to: 10 });
    expect(runs[0]?.grade).toBeCloseTo(0.08, 12);
    expect(runs[1]?.grade).toBeCloseTo(0.02, 12);
  });

  it("that read as one keep the steepest of them: 12.4 % and 12.6 % are 12.5 % over all", () => {
    const [run] = gradeRuns([station(0, 0, 0.124), station(5, 0.62, 0.126), station(10, 1.25, null)]);
    expect(run?.grade).toBeCloseTo(0.125, 12);
    expect(run?.steepest).toBeCloseTo(0.126, 12);
  });
});

describe("bearings of lot lines", () => {
  it.each([
    [[10, 0], 0, "due east"],
    [[1, 1], 0, "N 45.0° E"],
    [[-1, -1.5], 0, "S 33.7° W"],
    [[0, -1], 0, "due south"],
    [[1, 1], Math.PI / 4, "due north"],
  ] as const)("towards %s with north at %s is %s", ([x, y], north, text) => {
    expect(bearingText([0, 0], [x, y], north)).toBe(text);
  });
});
