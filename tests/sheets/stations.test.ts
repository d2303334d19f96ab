import { describe, expect, it } from "vitest";
import { createDrawContext, drawPlan, sheetBounds } from "../../src/drawing";
import { textBox } from "../../src/drawing/context";
import { boxesOverlap } from "../../src/drawing/labels";
import { chooseSheet } from "../../src/sheets/scales";
import { createSolver } from "../../src/solve/pipeline";
import { routeStations } from "../../src/solve/route-stations";
import { demoProject } from "../support/demo";

const demos = ["pottery-studio", "potting-barn", "joinery-shed", "open-hillside"];
const papers = ["letter", "tabloid", "a4", "a3"] as const;

describe.each(demos)("on the plan of %s", (name) => {
  const project = demoProject(name);
  const results = createSolver().solve(project);

  it.each(papers)("on %s every station and corner is lettered, none over another", (paper) => {
    const bounds = sheetBounds(project, results);
    if (!bounds) throw new Error("the demos have something to draw");
    const { scale } = chooseSheet(bounds, paper, project.display);
    const metresPerMm = scale.ratio / 1000;
    const options = { metresPerMm, medium: "paper", turn: project.drawing.turn } as const;
    const marks = drawPlan(project, results, options, createDrawContext(options)).flatMap((one) => one.marks);
    const texts = marks.flatMap((mark) =>
      mark.kind === "text" && (mark.style === "station-label" || mark.style === "corner-label") ? [mark] : [],
    );
    const told = routeStations(project.grading, results.drives, results.water.swales);
    const wanted = [
      ...[...told.drives.values(), ...told.swales.values()].flat().map((one) => one.name),
      ...results.corners.map((corner) => corner.name),
    ];
    expect(texts.map((mark) => mark.text).sort()).toEqual(wanted.sort());
    const boxes = texts.map((mark) => textBox(mark, metresPerMm, 0, project.drawing.turn));
    for (const [i, one] of boxes.entries()) {
      for (const other of boxes.slice(i + 1)) expect(boxesOverlap(one, other), texts[i]?.text).toBe(false);
    }
  });
});
