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
