/** Setback lines, test pits and the moves that the tapes ask for, as marks. */
import { describe, expect, it } from "vitest";
import { buildingEdits, newProject, type Project, pitEdits, plotEdits, siteEdits } from "../../src/document";
import { type DrawingMark, drawPlan, type MarkLayer } from "../../src/drawing";
import { createSolver } from "../../src/solve/pipeline";
import { checkEdit } from "../support/checkEdit";

/** A 40 by 30 lot and on it a 10 by 6 building: A (0,6), B (10,6), C (10,0), D (0,0); lengths in metres. */
function site(): Project {
  const blank = newProject();
  const metric: Project = { ...blank, display: { ...blank.display, length: "m", rounding: 2 } };
  const lot = checkEdit(metric, siteEdits.setLotOutline, {
    outline: [
      [-15, -12],
      [25, -12],
      [25, 18],
      [-15, 18],
    ],
  });
  return checkEdit(lot, buildingEdits.drawBuilding, {
    outline: buildingEdits.rectangleOutline([0, 0], 10, 6),
    floor: 30,
  });
}

function layer(
  project: Project,
  id: MarkLayer["id"],
  medium: "screen" | "paper" = "screen",
): readonly DrawingMark[] {
  const layers = drawPlan(project, createSolver().solve(project), { metresPerMm: 0.1, medium });
  return layers.find((one) => one.id === id)?.marks ?? [];
}

const textsOf = (marks: readonly DrawingMark[]) => marks.flatMap((m) => (m.kind === "text" ? [m.text] : []));

describe("setbacks", () => {
  it("are drawn inside their line, on screen and paper, with what was typed", () => {
    const project = checkEdit(site(), plotEdits.setSetback, { line: 0, text: "5 m", name: "street" });
    for (const medium of ["screen", "paper"] as const) {
      const marks = layer(project, "setbacks", medium);
      const [line] = marks.flatMap((m) => (m.kind === "line" ? [Array.from(m.points)] : []));
      expect(line?.filter((_, i) => i % 2 === 1)).toEqual([expect.closeTo(-7, 9), expect.closeTo(-7, 9)]);
      expect(textsOf(marks)).toEqual(["street setback 5.00 m"]);
    }
    expect(layer(site(), "setbacks")).toEqual([]);
  });
});

describe("test pits", () => {
  it("stand at their places with what they met; one without a place isn't drawn", () => {
    let project = checkEdit(site(), pitEdits.addPit, { place: { kind: "at", x: 14, y: 3 } });
    project = checkEdit(project, pitEdits.addPit, { name: "lost" });
    const [pit] = project.survey.pits;
    project = checkEdit(project, pitEdits.setPitDepth, {
      id: pit?.id ?? "",
      which: "topsoil",
      text: "0.2 m",
    });
    project = checkEdit(project, pitEdits.setPitDepth, { id: pit?.id ?? "", which: "water", text: "1.1 m" });
    const marks = layer(project, "pits", "paper");
    expect(marks.flatMap((m) => (m.kind === "symbol" ? [m.at] : []))).toEqual([
      [14, 3],
      [14, 3],
    ]);
    expect(textsOf(marks)).toEqual(["pit 1: topsoil 0.20 m, water 1.10 m"]);
  });
});

describe("moves of corners", () => {
  /** All sides and diagonals as planned, but the diagonal A–C 10 cm too long. */
  function askew(): Project {
    return [
      [0, 1, 10],
      [1, 2, 6],
      [2, 3, 10],
      [0, 3, 6],
      [0, 2, Math.hypot(10, 6) + 0.1],
    ].reduce(
      (project, [from = 0, to = 0, m = 0]) =>
        checkEdit(project, plotEdits.addTape, { from, to, text: `${m} m` }),
      site(),
    );
  }

  it("point the way that the words tell, at the corners beyond the held side, on screen only", () => {
    const project = askew();
    const { moves } = createSolver().solve(project).plot;
    const moved = moves.filter(({ distance }) => distance > 0.0016);
    expect(moved.map(({ corner }) => corner)).toEqual(["C", "D"]);
    // The long diagonal leans C and D away from A along A–B: they go back, west.
    for (const { way } of moved) expect(way[0]).toBeLessThan(-0.99);
    const marks = layer(project, "squaring");
    const arrows = marks.flatMap((m) => (m.kind === "symbol" ? [m] : []));
    expect(arrows).toHaveLength(2);
    for (const { angle } of arrows) expect(Math.cos(angle ?? 0)).toBeLessThan(-0.99);
    expect(textsOf(marks)).toEqual(moved.map(({ distance }) => `${distance.toFixed(2)} m`));
    expect(layer(project, "squaring", "paper")).toEqual([]);
  });

  it("aren't drawn before anything is taped", () => {
    expect(layer(site(), "squaring")).toEqual([]);
  });
});
