/** Under a floor that moves the corners' labels keep their places, and only what they say changes. */
import { describe, expect, it } from "vitest";
import { createDrawContext, drawCorners } from "../../src/drawing";
import type { MarkLayer, TextMark } from "../../src/drawing/marks";
import { createSolver } from "../../src/solve";
import { demoProject } from "../support/demo";

const texts = ({ marks }: MarkLayer) => marks.filter((mark): mark is TextMark => mark.kind === "text");
const placeOf = ({ at, shift, anchor }: TextMark) => ({ at, shift, anchor });

describe("the corners' labels", () => {
  const project = demoProject("pottery-studio");
  const solver = createSolver();
  const settled = solver.solve(project);
  const floor = project.building?.floor ?? 0;
  const higher = solver.solve(project, { floor: floor + 0.1, detail: "drag" });

  it("stay where they are while the floor moves, and tell the new heights", () => {
    const context = createDrawContext({ metresPerMm: 0.25 });
    const before = texts(drawCorners(project, settled, context));
    const after = texts(drawCorners(project, higher, context));
    expect(before.length).toBeGreaterThan(4);
    expect(after.map(placeOf)).toEqual(before.map(placeOf));
    expect(after.map(({ text }) => text)).not.toEqual(before.map(({ text }) => text));
    const alone = texts(drawCorners(project, higher, createDrawContext({ metresPerMm: 0.25 })));
    expect(after.map(({ text }) => text)).toEqual(alone.map(({ text }) => text));
  });

  it("take their paper again once they were given up", () => {
    const context = createDrawContext({ metresPerMm: 0.25 });
    drawCorners(project, settled, context);
    context.labels.forget("corners");
    expect(context.labels.holds("corners")).toBe(false);
    drawCorners(project, higher, context);
    expect(context.labels.holds("corners")).toBe(true);
  });

  it("are placed anew when a drive that they keep off is another", () => {
    const context = createDrawContext({ metresPerMm: 0.25 });
    const before = drawCorners(project, settled, context);
    const { grading } = project;
    const moved = { ...project, grading: { ...grading, drives: [] } };
    const after = drawCorners(moved, settled, context);
    expect(after.marks).not.toBe(before.marks);
    expect(after).toEqual(drawCorners(moved, settled, createDrawContext({ metresPerMm: 0.25 })));
  });
});
