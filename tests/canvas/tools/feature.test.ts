import { describe, expect, it } from "vitest";
import { handOn, metricProject } from "../support/hand";

describe("the feature tool", () => {
  it("puts one tree after another by single clicks, with what was typed to keep clear", () => {
    const hand = handOn(metricProject(), "feature");
    expect(hand.choices()?.chosen).toBe("tree");
    hand.click(3, 4);
    hand.type("2.5");
    expect(hand.choices()?.typed).toBe("keep clear 2.500 m: type a distance");
    hand.click(9, 4);
    hand.click(15, 4);
    expect(hand.project.lot.features.map(({ kind, points, keepClear }) => [kind, points, keepClear])).toEqual(
      [
        ["tree", [[3, 4]], 3.048],
        ["tree", [[9, 4]], 2.5],
        ["tree", [[15, 4]], 2.5],
      ],
    );
    expect(hand.labels).toEqual(["add tree", "add tree", "add tree"]);
    expect(hand.tool).toBe("feature");
    expect(hand.selection).toEqual([{ kind: "feature", id: "f3" }]);
  });

  it("warns of lines in the ground and overhead, and of wells, before a click", () => {
    const hand = handOn(metricProject(), "feature");
    const caution = (kind: string) => {
      hand.choose(kind);
      return hand.choices()?.caution ?? "";
    };
    expect(caution("buried-line")).toMatch(/located and marked before any digging/);
    expect(caution("overhead-line")).toMatch(/ask the utility/);
    expect(caution("well")).toMatch(/running water away/);
    expect(caution("fence")).toBe("");
  });

  it("draws a buried line by clicks and Enter; the kinds stay in sight", () => {
    const hand = handOn(metricProject(), "feature");
    hand.choose("buried-line");
    hand.type("1");
    hand.click(0, 0);
    expect(hand.choices()?.chosen).toBe("buried-line");
    hand.click(10, 0);
    hand.click(10, 8);
    hand.key("Enter");
    expect(hand.project.lot.features).toEqual([
      {
        id: "f1",
        kind: "buried-line",
        name: "",
        points: [
          [0, 0],
          [10, 0],
          [10, 8],
        ],
        keepClear: 1,
        trunk: null,
      },
    ]);
    expect(hand.labels).toEqual(["add buried line"]);
    expect(hand.choices()?.chosen).toBe("buried-line");
  });

  it("closes an area on its first corner, and needs three", () => {
    const hand = handOn(metricProject(), "feature");
    hand.choose("septic");
    hand.choose("outline");
    hand.click(0, 0);
    hand.click(10, 0);
    hand.key("Enter");
    expect(hand.project.lot.features).toEqual([]);
    hand.click(10, 8);
    hand.click(0.1, 0.1);
    expect(hand.project.lot.features[0]?.points).toHaveLength(3);
  });

  it("goes back by Esc: the line's places, then the tool", () => {
    const hand = handOn(metricProject(), "feature");
    hand.choose("fence");
    hand.click(0, 0);
    hand.click(10, 0);
    hand.key("Escape");
    hand.key("Escape");
    expect(hand.state()).toBe("ready");
    expect(hand.choices()?.chosen).toBe("fence");
    hand.key("Escape");
    expect(hand.tool).toBe("select");
  });

  it("begins with the usual distance of a kind, and says so; a fence has none", () => {
    const hand = handOn(metricProject(), "feature");
    hand.choose("well");
    expect(hand.choices()?.typed).toBe("keep clear 15.240 m, as usual: type a distance");
    hand.click(3, 4);
    expect(hand.project.lot.features[0]?.keepClear).toBe(15.24);
    hand.choose("fence");
    expect(hand.choices()?.typed).toBe("nothing kept clear yet: type a distance");
  });

  it("offers what was typed last for a kind when the kind or the tool is picked again", () => {
    const hand = handOn(metricProject(), "feature");
    hand.choose("stump");
    hand.type("2");
    hand.click(3, 4);
    hand.choose("well");
    hand.use("select");
    hand.use("feature");
    hand.choose("stump");
    expect(hand.choices()?.typed).toBe("keep clear 2.000 m: type a distance");
  });

  it("offers the kind chosen last when it is picked again, with nothing kept clear yet", () => {
    const hand = handOn(metricProject(), "feature");
    hand.choose("fence");
    hand.type("3");
    hand.use("select");
    hand.use("feature");
    expect(hand.choices()?.chosen).toBe("fence");
    expect(hand.choices()?.typed).toBe("nothing kept clear yet: type a distance");
  });

  it("takes two typed lengths as the place, one as what to keep clear", () => {
    const hand = handOn(metricProject(), "feature");
    hand.choose("tree");
    hand.move(-30, 20);
    hand.type("2.5");
    hand.key("Enter");
    expect(hand.project.lot.features).toEqual([]);
    hand.type("9, 6");
    hand.key("Enter");
    expect(hand.project.lot.features[0]).toMatchObject({ kind: "tree", points: [[9, 6]], keepClear: 2.5 });
    expect(hand.shownPlaces).toEqual([[9, 6]]);
    hand.choose("fence");
    for (const keys of ["5, 6", "9, 6", ""]) {
      hand.type(keys);
      hand.key("Enter");
    }
    expect(hand.project.lot.features[1]?.points).toEqual([
      [5, 6],
      [9, 6],
    ]);
  });
});
