import { expect, it } from "vitest";
import { newProject } from "../../src/document";
import { notationOf } from "../../src/panels/notation";
import { wordsFor } from "../../src/solve/words";
import { bothUnits } from "../../src/units";

it("a rule's figure leads with the plan's own unit", () => {
  for (const notation of ["ft-in", "in", "ft"] as const)
    expect(bothUnits("4 ft", "1.2 m", notation)).toBe("4 ft (1.2 m)");
  for (const notation of ["m", "cm", "mm"] as const)
    expect(bothUnits("4 ft", "1.2 m", notation)).toBe("1.2 m (4 ft)");
});

it("so do sentences and panels of a metric plan", () => {
  const display = { ...newProject().display, length: "m" as const };
  expect(wordsFor(display).rule("5 ft", "1.5 m")).toBe("1.5 m (5 ft)");
  expect(notationOf(display).rule("5 ft", "1.5 m")).toBe("1.5 m (5 ft)");
});
