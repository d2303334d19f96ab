import { describe, expect, it } from "vitest";
import { handOn, metricProject } from "../support/hand";

describe("the note tool", () => {
  it("asks for words where it was clicked, and writes them as one step", () => {
    const hand = handOn(metricProject(), "note");
    expect(hand.hint()).toBe("Click or type where the words go, or drag to there from what they are about");
    hand.click(4, 3);
    expect(hand.words).toMatchObject({ at: [4, 3], text: "" });
    expect(hand.project.drawing.notes).toEqual([]);
    hand.words?.answer("spring runs in March");
    expect(hand.project.drawing.notes).toEqual([
      { id: "n1", at: [4, 3], text: "spring runs in March", pointsTo: null },
    ]);
    expect(hand.labels).toEqual(["write note"]);
    expect([hand.tool, hand.selection]).toEqual(["select", [{ kind: "note", id: "n1" }]]);
  });

  it("points to where a drag began", () => {
    const hand = handOn(metricProject(), "note");
    hand.drag([
      [0, 0],
      [4, 1],
      [8, 5],
    ]);
    hand.words?.answer("stone wall");
    expect(hand.project.drawing.notes[0]).toMatchObject({ at: [8, 5], pointsTo: [0, 0] });
  });

  it("refuses to write nothing, and Esc writes nothing either", () => {
    const hand = handOn(metricProject(), "note");
    hand.click(4, 3);
    expect(hand.words?.answer("  ")).toMatchObject({ ok: false });
    expect(hand.tool).toBe("note");
    hand.lose();
    expect(hand.state()).toBe("ready");
    hand.key("Escape");
    expect(hand.tool).toBe("select");
    expect(hand.project.drawing.notes).toEqual([]);
  });
});
