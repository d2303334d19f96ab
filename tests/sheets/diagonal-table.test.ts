import { describe, expect, it } from "vitest";
import { buildingEdits, newProject, type Project } from "../../src/document";
import { diagonalTable } from "../../src/sheets/diagonal-table";
import { figuresFor } from "../../src/sheets/tables";
import { createSolver } from "../../src/solve/pipeline";
import { checkEdit } from "../support/checkEdit";

function tableFor(outline: readonly [number, number][]) {
  const blank = newProject();
  const metric: Project = { ...blank, display: { ...blank.display, length: "m", rounding: 2 } };
  const project = checkEdit(metric, buildingEdits.drawBuilding, { outline, floor: 30 });
  return diagonalTable(project, figuresFor(project, createSolver().solve(project)));
}

const corners: [number, number][] = [
  [0, 8],
  [6, 8],
  [6, 3],
  [9, 3],
  [9, 0],
  [0, 0],
];

describe("diagonals to check", () => {
  it("are named and measured for any footprint that isn't a rectangle", () => {
    const table = tableFor(corners);
    expect(table?.title).toBe("Diagonals, m");
    expect(table?.rows).toHaveLength(9);
    expect(table?.rows[0]).toEqual(["A–C", "7.81", ""]);
  });

  it("aren't repeated for a rectangle, whose diagonals stand in the drawing; told for one out of square", () => {
    const rectangle: [number, number][] = [
      [0, 6],
      [8, 6],
      [8, 0],
      [0, 0],
    ];
    expect(tableFor(rectangle)).toBeNull();
    expect(
      tableFor([
        [0, 6],
        [8.05, 6],
        [8, 0],
        [0, 0],
      ])?.rows,
    ).toHaveLength(2);
  });
});
