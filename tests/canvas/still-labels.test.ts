import { describe, expect, it } from "vitest";
import { createStillLabels } from "../../src/canvas/scene/stillLabels";
import type { MarkLayer, TextMark } from "../../src/drawing/marks";

const value = (text: string, up: number): TextMark => ({
  kind: "text",
  at: [1, 2],
  text,
  style: "corner-value",
  shift: [3, up],
});
const corners = (...texts: TextMark[]): MarkLayer => ({
  id: "corners",
  marks: [{ kind: "symbol", at: [1, 2], symbol: "ring", size: 2, style: "corner-ring" }, ...texts],
});

describe("labels while the floor is under the hand", () => {
  it("keep their places and say the new figures, then go where they were placed", () => {
    const labels = createStillLabels();
    labels.show([corners(value("1′ out", 4))], false);
    const jumped = corners(value("1′ 2″ out", -7));
    expect(labels.show([jumped], true)).toEqual([corners(value("1′ 2″ out", 4))]);
    expect(labels.show([jumped], false)).toEqual([jumped]);
  });

  it("follow a layer that writes more or other texts than before", () => {
    const labels = createStillLabels();
    labels.show([corners(value("1′ out", 4))], false);
    const two = corners(value("1′ 2″ out", -7), value("6″ out", 1));
    expect(labels.show([two], true)).toEqual([two]);
    const other = corners({ ...value("A", 1), style: "corner-label" });
    expect(labels.show([other], true)).toEqual([other]);
  });

  it("show a layer that was not there before as it is", () => {
    const fresh = corners(value("6″ out", 1));
    expect(createStillLabels().show([fresh], true)).toEqual([fresh]);
  });
});
