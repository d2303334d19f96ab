import { describe, expect, it } from "vitest";
import { newProject } from "../../src/document";
import { notationOf } from "../../src/panels/notation";
import { byTightness, limitOf, spanWords } from "../../src/solve/limit-standing";
import type { BandRule } from "../../src/solve/results";

const notation = notationOf(newProject().display);
const rule = (kind: BandRule["kind"], height: number | null, on = true): BandRule => ({
  id: `${kind} ${height}`,
  kind,
  name: "a rule",
  height,
  place: "corner A",
  value: 0,
  source: "first principles",
  on,
});
const inch = 0.0254;

describe("a limit against the floor", () => {
  it.each([
    ["below it by 2 inches", rule("notBelow", 10), 10 - 2 * inch, "broken", "2″ too low"],
    ["above it by 3 inches", rule("notAbove", 10), 10 + 3 * inch, "broken", "3″ too high"],
    ["half an inch to spare", rule("notBelow", 10), 10 + inch / 2, "near", "½″ to spare"],
    ["less than shows", rule("notBelow", 10), 10 - 1e-4, "broken", "a hair too low"],
    ["a foot to spare", rule("notAbove", 10), 10 - 12 * inch, "kept", "1′ 0″ to spare"],
    ["right on it", rule("notAbove", 10), 10, "near", "just kept"],
    ["no bearing", rule("notAbove", null), 10, "silent", ""],
    ["switched off", rule("notAbove", 1, false), 10, "off", "switched off"],
  ] as const)("%s", (_what, limit, floor, state, margin) => {
    expect(limitOf(limit, floor, notation)).toEqual({ state, margin });
  });

  it("the broken come first, then the tighter", () => {
    const rules = [
      rule("notBelow", 5),
      rule("notAbove", null),
      rule("notBelow", 10.5),
      rule("notBelow", 9.9),
    ];
    expect(byTightness(rules, 10, notation).map(({ height }) => height)).toEqual([10.5, 9.9, 5, null]);
  });

  it("the ends of a span are told inwards, so that what is read keeps the limits", () => {
    const step = 0.01;
    const words = { length: (m: number) => `${m.toFixed(2)} m` };
    expect(spanWords([99.234, 101.418], words, step)).toBe("99.24 m to 101.41 m");
    expect(spanWords([99.24, null], words, step)).toBe("99.24 m or more");
    expect(spanWords([null, 101.418], words, step)).toBe("101.41 m or less");
  });
});
