import { describe, expect, it } from "vitest";
import { newProject, surveyEdits } from "../../src/document";
import { firmGround, pitDepthAt, pitSpots, pitSummary, underFooting } from "../../src/survey";
import { checkEdit } from "../support/checkEdit";

function dug() {
  let project = newProject();
  const pits = [
    { x: 0, y: 0, topsoil: "0.2 m", oldFill: "", rock: "1.4 m", water: "" },
    { x: 10, y: 0, topsoil: "0.3 m", oldFill: "0.9 m", rock: "", water: "1.6 m" },
    { x: 0, y: 10, topsoil: "0.4 m", oldFill: "", rock: "", water: "" },
  ];
  pits.forEach(({ x, y, ...depths }, i) => {
    project = checkEdit(project, surveyEdits.addPit, { place: { kind: "at", x, y } });
    for (const [which, text] of Object.entries(depths))
      project = checkEdit(project, surveyEdits.setPitDepth, {
        id: `p${i + 1}`,
        which: which as "topsoil",
        text,
      });
  });
  return project;
}

describe("test pits", () => {
  const project = dug();
  const pits = pitSpots(project.survey, []);

  it("say how many there are and what they met", () => {
    expect(pitSummary(pits, "topsoil")).toEqual({
      count: 3,
      of: 3,
      mean: expect.closeTo(0.3, 9),
      least: 0.2,
      most: 0.4,
    });
    expect(pitSummary(pits, "rock")).toMatchObject({ count: 1, of: 3, mean: 1.4 });
    expect(pitSummary([], "rock")).toBeNull();
  });

  it("at a pit its own depth, between pits a mean by distance", () => {
    expect(pitDepthAt(pits, "topsoil", [10, 0])).toEqual({ depth: 0.3, count: 3, nearest: 0 });
    // Squares of distances 25, 25 and 125: weights 5, 5, 1.
    expect(pitDepthAt(pits, "topsoil", [5, 0])?.depth).toBeCloseTo((5 * 0.2 + 5 * 0.3 + 0.4) / 11, 9);
    expect(pitDepthAt([], "topsoil", [5, 0])).toBeNull();
  });

  it("firm ground lies below topsoil and old fill", () => {
    expect(firmGround(pits, [10, 0], 30)).toMatchObject({
      under: "oldFill",
      depth: 0.9,
      height: 29.1,
      count: 1,
    });
    expect(firmGround(pits.slice(0, 1), [3, 3], 30)).toMatchObject({ under: "topsoil", height: 29.8 });
    expect(firmGround([], [3, 3], 30)).toBeNull();
  });

  it("a trench meets loose ground below its bottom, rock and water above it", () => {
    // Bottom 0.5 m below the ground: on old fill; 1.7 m: through rock and in water.
    expect(underFooting(pits, [10, 0], 30, 29.5)).toEqual([
      { layer: "oldFill", height: expect.closeTo(29.1, 9), by: expect.closeTo(0.4, 9), count: 1 },
    ]);
    expect(underFooting(pits, [0, 0], 30, 28.3).map(({ layer }) => layer)).toEqual(["rock", "water"]);
    expect(underFooting(pits, [0, 0], 30, 28.95)).toEqual([]);
  });

  it("depths are typed in the project's notation and refused in words", () => {
    const typed = checkEdit(project, surveyEdits.setPitDepth, { id: "p1", which: "rock", text: `4' 6"` });
    expect(typed.survey.pits[0]?.rock).toEqual({ text: `4' 6"`, m: expect.closeTo(1.3716, 9) });
    const cleared = checkEdit(typed, surveyEdits.setPitDepth, { id: "p1", which: "rock", text: "" });
    expect(cleared.survey.pits[0]?.rock).toBeNull();
    const bad = surveyEdits.setPitDepth.run(project, { id: "p1", which: "rock", text: "-1 m" });
    expect(bad.ok ? "" : bad.why).toContain("isn't negative");
    expect(surveyEdits.removePit.run(project, { id: "p2" })).toMatchObject({ ok: true });
    expect(surveyEdits.changePit.run(project, { id: "p9", patch: {} }).ok).toBe(false);
  });
});
