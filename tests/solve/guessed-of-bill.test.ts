/** Guessed shares of the bill’s lines where the shots end at x = 0 and the 12 × 8 m building begins. */
import { describe, expect, it } from "vitest";
import { createSolver } from "../../src/solve";
import { guessedOfItem } from "../../src/solve/guessed-of-bill";
import { plane, site } from "./sites";

describe("of a building that stands half beyond the shots", () => {
  const project = site({ surface: plane(100), reach: 60 });
  const shots = project.survey.shots.filter(({ place }) => place.kind !== "at" || place.x <= 0);
  const half = { ...project, survey: { ...project.survey, shots } };
  const results = createSolver().solve(half);
  const share = (stage: Parameters<typeof guessedOfItem>[0]["stage"]) => guessedOfItem({ stage }, results);

  it("stone under the floor goes by the area within the walls: all of it", () => {
    expect(share("base")).toBeCloseTo(1, 2);
  });

  it("the strip goes by the area that the work touches, not by the whole of the grid", () => {
    const { surface } = results;
    if (!surface) throw new Error("no surface");
    let [work, guesses] = [0, 0];
    surface.guessed.forEach((guess, i) => {
      if (surface.inside[i] !== 1 && !(Math.abs(surface.depth[i] ?? 0) > 1e-3)) return;
      work++;
      guesses += guess;
    });
    expect(share("strip")).toBeCloseTo(guesses / work, 9);
    expect(share("strip")).toBeLessThan(1);
  });
});
