/** A wall's length stands outside its wall, nearer to it than to any other; else a line leads from the wall to it. */
import { describe, expect, it } from "vitest";
import type { Project } from "../../src/document";
import { drawPlan } from "../../src/drawing";
import { createDrawContext, textBox } from "../../src/drawing/context";
import type { LineMark, TextMark } from "../../src/drawing/marks";
import { wallsOf } from "../../src/drawing/walls";
import { dimensionText } from "../../src/drawing/words";
import { containsPoint, distanceToSegment, type Point, segmentsMeet } from "../../src/geometry";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

/** An L whose notch has two short walls, which leave no room for a line between them on a small plan. */
function lShaped(): Project {
  const project = demoProject("joinery-shed");
  const { building } = project;
  if (!building) throw new Error("The shed is there.");
  const outline: [number, number][] = [
    [10, 10],
    [22, 10],
    [22, 16],
    [18.2, 16],
    [18.2, 19.1],
    [10, 19.1],
  ];
  return { ...project, building: { ...building, outline, doors: [] } };
}

const plans: readonly (readonly [string, Project])[] = [
  ["the joinery shed", demoProject("joinery-shed")],
  ["an L with a small notch", lShaped()],
  ["the hillside house", demoProject("open-hillside")],
  ["the potting barn", demoProject("potting-barn")],
];

describe.each(plans)("walls of %s", (_name, project) => {
  const outline = project.building?.outline ?? [];
  const walls = wallsOf(outline);
  const results = createSolver().solve(project);

  it.each([0.1, 0.2, 0.3, 0.4, 0.6, 0.9])("tell their own length, at %d m a millimetre", (metresPerMm) => {
    const options = { metresPerMm, medium: "screen" } as const;
    const context = createDrawContext(options);
    const layers = drawPlan(project, results, options, context);
    const { marks = [] } = layers.find(({ id }) => id === "dimensions") ?? {};
    const middleOf = (mark: TextMark): Point => {
      const { x, y } = textBox(mark, metresPerMm);
      return [x * metresPerMm, y * metresPerMm];
    };
    const lengths = new Set(walls.map(({ length }) => dimensionText(length, project.display, context)));
    const texts = marks.filter((mark): mark is TextMark => mark.kind === "text" && lengths.has(mark.text));
    for (const text of texts) {
      const [x, y] = middleOf(text);
      expect(containsPoint(outline, x, y), `${text.text} is outside`).toBe(false);
      const leader = marks.find(
        (mark): mark is LineMark =>
          mark.kind === "line" && mark.points[0] === text.at[0] && mark.points[1] === text.at[1],
      );
      if (leader) {
        const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = Array.from(leader.points);
        const from = walls.find((wall) => distanceToSegment(wall.from, wall.to, x0, y0) < 1e-6);
        expect(dimensionText(from?.length ?? 0, project.display, context)).toBe(text.text);
        const crossed = walls.filter(
          (wall) => wall !== from && segmentsMeet([x0, y0], [x1, y1], wall.from, wall.to),
        );
        expect(crossed, `the line to ${text.text} crosses no wall`).toEqual([]);
        const long = Math.hypot(x1 - x0, y1 - y0) / metresPerMm;
        expect(long, `the line to ${text.text} is short, mm`).toBeLessThan(7.6);
      } else {
        const near = walls.map((wall) => distanceToSegment(wall.from, wall.to, x, y));
        const nearest = walls[near.indexOf(Math.min(...near))];
        expect(dimensionText(nearest?.length ?? 0, project.display, context)).toBe(text.text);
      }
    }
  });
});
