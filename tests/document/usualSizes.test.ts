import { describe, expect, it } from "vitest";
import { buildingEdits, newProject, type Project, siteEdits } from "../../src/document";

const square: [number, number][] = [
  [0, 8],
  [12, 8],
  [12, 0],
  [0, 0],
];

function built(project: Project): Project {
  const edits = [
    buildingEdits.drawBuilding.run(project, { outline: square, floor: 100 }),
    siteEdits.addSwale.run(project, { line: square.slice(0, 2) }),
  ].map((edit) => {
    if (!edit.ok) throw new Error(edit.why);
    return edit.project;
  });
  return { ...(edits[0] as Project), grading: (edits[1] as Project).grading };
}

describe("sizes that a new thing begins with", () => {
  const feet = newProject();
  const metric: Project = { ...feet, display: { ...feet.display, length: "m" } };

  it("are whole centimetres in a metric plan", () => {
    const { building, grading } = built(metric);
    expect(building?.foundation).toMatchObject({ wallHeight: 1.2, wallThickness: 0.2, footingWidth: 0.4 });
    expect(building?.foundation.block).toEqual({ length: 0.4, height: 0.2 });
    expect(grading.swales[0]).toMatchObject({ depth: 0.2, bottomWidth: 0.6 });
  });

  it("are feet and inches in theirs; what a published rule names stays in both", () => {
    expect(built(feet).building?.foundation.wallHeight).toBe(1.2192);
    expect(built(metric).building?.foundation.trench.spoilBack).toBe(0.6096);
  });
});
