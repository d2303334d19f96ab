/** A crowd of shots is thinned by scale and by what is seen. */
import { describe, expect, it } from "vitest";
import { newProject } from "../../src/document";
import { createDrawContext } from "../../src/drawing";
import { crowdFrom, shownShots } from "../../src/drawing/crowd";
import { createSolver } from "../../src/solve/pipeline";
import type { LevelledPoint, Results } from "../../src/solve/results";

const none = createSolver().solve(newProject());

/** Shots a metre apart in rows of a hundred; the 50th is a turning point. */
function grid(count: number): Results {
  const points = Array.from({ length: count }, (_, i): LevelledPoint => {
    const at: [number, number] = [(i % 100) + 0.5, Math.floor(i / 100) + 0.5];
    const kind = i === 50 ? "turning" : "ground";
    return { shot: `s${i}`, name: String(i), kind, at, height: 10, shift: null };
  });
  return { ...none, survey: { ...none.survey, points } };
}

describe("shots", () => {
  it("are all drawn where they are few, and on paper", () => {
    const few = grid(crowdFrom - 1);
    expect(shownShots(few, createDrawContext({ metresPerMm: 5 }))).toBe(few.survey.points);
    const many = grid(10_000);
    const paper = createDrawContext({ metresPerMm: 5, medium: "paper" });
    expect(shownShots(many, paper)).toBe(many.survey.points);
  });

  it("of a crowd leave one in each square of 2.4 mm: at 2.4 m a square some 42 by 42 of a hundred by a hundred", () => {
    const shown = shownShots(grid(10_000), createDrawContext({ metresPerMm: 1 }));
    // And the turning point, which is always shown.
    expect(shown.length).toBeGreaterThanOrEqual(42 * 42);
    expect(shown.length).toBeLessThanOrEqual(42 * 42 + 1);
    expect(shown.some(({ kind }) => kind === "turning")).toBe(true);
  });

  it("of a crowd are all drawn from near, but only where one looks and a little beyond", () => {
    const seen = { minX: 20, maxX: 30, minY: 20, maxY: 40 };
    const shown = shownShots(grid(10_000), createDrawContext({ metresPerMm: 0.05, seen }));
    // 35 % of 10 m and of 20 m beyond each side: columns at 16.5 to 33.5 m, rows at 13.5 to 46.5 m.
    expect(shown).toHaveLength(18 * 34);
  });

  it("stay the same for all layers of one drawing", () => {
    const results = grid(6000);
    const context = createDrawContext({ metresPerMm: 1 });
    expect(shownShots(results, context)).toBe(shownShots(results, context));
  });
});
