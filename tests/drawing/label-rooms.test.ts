/** Where labels stand when their first place is taken: off the works, or at the end of a leader, never struck by a wall. */
import { describe, expect, it } from "vitest";
import { drawPlan } from "../../src/drawing";
import { createDrawContext, textBox } from "../../src/drawing/context";
import type { DrawingMark, TextMark } from "../../src/drawing/marks";
import { chooseTies } from "../../src/drawing/ties";
import { containsPoint, distanceToSegment, type Point } from "../../src/geometry";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

const paper = { heightsFrom: "mark", medium: "paper" } as const;

function marksOf(id: string, ratio: number): readonly DrawingMark[] {
  const project = demoProject(id);
  const options = { ...paper, metresPerMm: ratio / 1000 };
  const layers = drawPlan(project, createSolver().solve(project), options, createDrawContext(options));
  return layers.flatMap(({ marks }) => marks);
}

const textsOf = (marks: readonly DrawingMark[], pattern: RegExp) =>
  marks.filter((mark): mark is TextMark => mark.kind === "text" && pattern.test(mark.text));

describe("labels on paper", () => {
  it.each([150, 200, 250])("say where water stands off the drive and the floor, at 1:%d", (ratio) => {
    const { grading, building } = demoProject("joinery-shed");
    const labels = textsOf(marksOf("joinery-shed", ratio), /^holds .* of water$/);
    expect(labels).toHaveLength(1);
    const { x, y, width, angle } = textBox(labels[0] as TextMark, ratio / 1000);
    for (const share of [-0.5, 0, 0.5]) {
      const [px, py] = [x + share * width * Math.cos(angle), y + share * width * Math.sin(angle)].map(
        (mm) => (mm * ratio) / 1000,
      ) as [number, number];
      expect(containsPoint(building?.outline ?? [], px, py)).toBe(false);
      for (const { line, width: wide } of grading.drives) {
        for (const [i, to] of line.slice(1).entries())
          expect(distanceToSegment(line[i] as Point, to, px, py)).toBeGreaterThan(wide / 2);
      }
    }
  });

  it("tell the floor outside a building too small for it, as the floor's", () => {
    const outline = demoProject("open-hillside").building?.outline ?? [];
    const [label] = textsOf(marksOf("open-hillside", 500), /^floor /);
    expect(label?.text).toBe("floor mark +1.30 m");
    const { x, y } = textBox(label as TextMark, 0.5);
    expect(containsPoint(outline, x * 0.5, y * 0.5)).toBe(false);
    expect(textsOf(marksOf("open-hillside", 200), /^floor /)).toEqual([]);
  });
});

describe("the building's size on the screen", () => {
  // 9.754 m × 7.315 m.
  const project = demoProject("pottery-studio");
  const metric = { ...project, display: { ...project.display, length: "m" as const } };
  const outline = project.building?.outline ?? [];
  const results = createSolver().solve(metric);

  /** The texts of the size at so many pixels to the metre, and whether all lie inside the walls. */
  function sizeAt(pxPerMetre: number) {
    const metresPerMm = 96 / 25.4 / pxPerMetre;
    const options = { metresPerMm };
    const layers = drawPlan(metric, results, options, createDrawContext(options));
    const texts = textsOf(
      layers.find(({ id }) => id === "building")?.marks ?? [],
      /^[\d.]+( m)? ×( [\d.]+ m)?$|^[\d.]+ m$/,
    );
    const inside = texts.every((text) => {
      const { x, y, width, height } = textBox(text, metresPerMm, 0);
      return [-0.5, 0.5].every((across) =>
        [-0.5, 0.5].every((up) =>
          containsPoint(outline, (x + across * width) * metresPerMm, (y + up * height) * metresPerMm),
        ),
      );
    });
    return { told: texts.map(({ text }) => text), inside };
  }

  it("is told in one line where that fits, with its unit once where it is tighter", () => {
    expect(sizeAt(20)).toEqual({ told: ["9.754 m × 7.315 m"], inside: true });
    expect(sizeAt(10.5)).toEqual({ told: ["9.754 × 7.315 m"], inside: true });
  });

  it("is told in two lines, or smaller, in a smaller building, before it goes outside", () => {
    for (const scale of [9, 8, 7, 6]) {
      const { told, inside } = sizeAt(scale);
      expect(told.join(" "), `${scale} px to the metre`).toMatch(/9\.754.* × 7\.315 m/);
      expect(inside, `${scale} px to the metre`).toBe(true);
    }
    expect(sizeAt(3).inside).toBe(false);
  });
});

describe("ties", () => {
  const outline: Point[] = [
    [10, 10],
    [20, 10],
    [20, 16],
    [10, 16],
  ];
  const lot: Point[] = [
    [0, 0],
    [40, 0],
    [40, 22],
    [0, 22],
  ];

  it("go to the nearest line, but not over a swale that is dug between, where another line is clear", () => {
    const lengths = (ties: ReturnType<typeof chooseTies>) => ties.map(([first]) => first?.lotSide);
    expect(lengths(chooseTies(outline, lot))[0]).toBe(2);
    const swale: Point[] = [
      [0, 19],
      [40, 19],
    ];
    const [first, , other] = chooseTies(outline, lot, [swale]);
    expect(first?.[0]?.lotSide).not.toBe(2);
    expect(other?.[0]?.lotSide).not.toBe(2);
  });
});
