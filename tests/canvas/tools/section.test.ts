import { describe, expect, it } from "vitest";
import { handOn, metricProject } from "../support/hand";

describe("the section line tool", () => {
  it("takes two places, selects the line and gives it a name", () => {
    const hand = handOn(metricProject(), "section");
    hand.click(-5, 3);
    hand.click(15, 3);
    expect(hand.project.drawing.sections).toEqual([
      {
        id: "x1",
        name: "section P",
        line: [
          [-5, 3],
          [15, 3],
        ],
      },
    ]);
    expect(hand.labels).toEqual(["draw section line"]);
    expect([hand.tool, hand.selection]).toEqual(["select", [{ kind: "section", id: "x1" }]]);
  });

  it("takes a typed length and bearing, and Esc takes the first place back", () => {
    const hand = handOn(metricProject(), "section");
    hand.click(0, 0);
    hand.key("Escape");
    expect(hand.state()).toBe("first");
    hand.click(0, 0);
    hand.type("20");
    hand.key("Tab");
    hand.type("180");
    hand.key("Enter");
    const [, end] = hand.project.drawing.sections[0]?.line ?? [];
    expect(end).toEqual([expect.closeTo(0, 9), expect.closeTo(-20, 9)]);
  });
});
