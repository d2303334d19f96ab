import { describe, expect, it } from "vitest";
import { buildingEdits, type Project, pitEdits, surveyEdits, type Thing } from "../../../src/document";
import { checkEdit } from "../../support/checkEdit";
import { handOn, metricProject } from "../support/hand";

function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, surveyEdits.addShot, { place: { kind: "at", x: -20, y: 5 } });
  project = checkEdit(project, surveyEdits.addShot, { place: { kind: "at", x: -25, y: 5 } });
  return checkEdit(project, pitEdits.addPit, { place: { kind: "at", x: 20, y: 5 } });
}

function placing(thing: Thing) {
  const hand = handOn(site());
  hand.selection = [thing];
  hand.use("place");
  return hand;
}

describe("placing by a click", () => {
  it("puts a shot that has a place elsewhere, alone, and goes back to selecting", () => {
    const hand = placing({ kind: "shot", id: "s1" });
    hand.click(-31, 12, { free: true });
    expect(hand.project.survey.shots.map(({ place }) => place)).toEqual([
      { kind: "at", x: -31, y: 12 },
      { kind: "at", x: -25, y: 5 },
    ]);
    expect(hand.tool).toBe("select");
    expect(hand.selection).toEqual([{ kind: "shot", id: "s1" }]);
    expect(hand.labels).toEqual(["move shot"]);
  });

  it("on a corner of the building ties a shot and a pit to it", () => {
    for (const thing of [
      { kind: "shot", id: "s1" },
      { kind: "pit", id: "p1" },
    ] as const) {
      const hand = placing(thing);
      hand.click(0.2, 5.9);
      const { shots, pits } = hand.project.survey;
      expect((thing.kind === "shot" ? shots : pits)[0]?.place).toEqual({ kind: "corner", corner: 0 });
    }
  });

  it("Esc leaves it where it was; without one spot selected it asks for one", () => {
    const hand = placing({ kind: "shot", id: "s1" });
    hand.move(3, 20);
    hand.key("Escape");
    expect(hand.labels).toEqual([]);
    expect(placing({ kind: "building" }).hint()).toMatch(/^Select one shot/);
  });
});
