import { describe, expect, it } from "vitest";
import { buildingEdits, type Project, surveyEdits } from "../../../src/document";
import { createSolver } from "../../../src/solve/pipeline";
import { checkEdit } from "../../support/checkEdit";
import { handOn, metricProject } from "../support/hand";

/** Shots on a lattice; the mark reads 2 m at 100. */
function ground(height: (x: number, y: number) => number): Project {
  let next = checkEdit(metricProject(), surveyEdits.addMark, { name: "bolt", height: "100 m", at: [-30, 0] });
  next = checkEdit(next, surveyEdits.addShot, { kind: "mark", of: "m1", reading: "2 m" });
  for (const x of [-50, -25, 0, 25, 50])
    for (const y of [-40, -20, 0, 20, 40])
      next = checkEdit(next, surveyEdits.addShot, {
        reading: `${(102 - height(x, y)).toFixed(4)} m`,
        place: { kind: "at", x, y },
      });
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  return checkEdit(next, buildingEdits.drawBuilding, { outline, floor: 101 });
}

const slope = ground((x, y) => 100 + 0.04 * y - 0.02 * x);

describe("the tool that lays a swale", () => {
  it("lays it from two clicks, off the walls, and selects it; it drains", () => {
    const hand = handOn(slope, "swale-route");
    hand.click(-10, 14);
    expect(hand.state()).toBe("aiming");
    hand.move(25, -5);
    expect(hand.texts().some((text) => text.startsWith("bed "))).toBe(true);
    expect(hand.texts().some((text) => text.includes("comes out at"))).toBe(true);
    hand.click(25, -5);
    expect(hand.labels).toEqual(["draw swale"]);
    expect(hand.selection).toEqual([{ kind: "swale", id: "w1" }]);
    const [swale] = createSolver().solve(hand.project).water.swales;
    expect(swale?.drains).toBe(true);
    expect(hand.project.grading.swales[0]?.leastFall).toBe(0.01);
  });

  it("takes typed places too", () => {
    const hand = handOn(slope, "swale-route");
    hand.type("-10, 14");
    hand.key("Enter");
    hand.type("25, -5");
    hand.key("Enter");
    expect(hand.project.grading.swales[0]?.line.at(-1)).toEqual([25, -5]);
  });

  it("stays one that drains, or says why not, when its end is changed", () => {
    const hand = handOn(slope, "swale-route");
    hand.click(-10, 14);
    hand.click(25, -5);
    const project = structuredClone(hand.project);
    const swale = project.grading.swales[0];
    if (!swale) throw new Error("it was drawn");
    swale.line[swale.line.length - 1] = [25, -8];
    expect(createSolver().solve(project).water.swales[0]?.drains).toBe(true);
    swale.line[swale.line.length - 1] = [25, 35];
    const [refused] = createSolver().solve(project).water.swales;
    expect(refused?.drains).toBe(false);
    expect(refused?.why).toMatch(/under the ground at its outlet/);
  });

  it("says what would work where the bed can't come out, and takes it", () => {
    // Falls 4 % south, but the way east climbs.
    const hand = handOn(
      ground((x, y) => 100 + 0.04 * y + 0.03 * x),
      "swale-route",
    );
    hand.click(-10, 14);
    hand.click(30, 14);
    expect(hand.state()).toBe("refused");
    expect(hand.reading()?.title).toBe("No way out there");
    expect(hand.reading()?.rows.map(({ name }) => name)).toContain("Nearest outlet that works, from yours");
    expect(hand.project.grading.swales).toHaveLength(0);
    hand.makeUse();
    expect(hand.project.grading.swales).toHaveLength(1);
    expect(createSolver().solve(hand.project).water.swales[0]?.drains).toBe(true);
  });

  it("goes back by Esc: from the outlet to the start, then away", () => {
    const hand = handOn(slope, "swale-route");
    hand.click(-10, 14);
    hand.key("Escape");
    expect(hand.state()).toBe("ready");
    hand.key("Escape");
    expect(hand.tool).toBe("select");
  });

  it("says where nothing is known", () => {
    const hand = handOn(metricProject(), "swale-route");
    hand.click(0, 0);
    hand.click(10, 0);
    expect(hand.said.at(-1)).toMatch(/no measured ground/);
  });
});
