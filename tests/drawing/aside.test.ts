import { describe, expect, it } from "vitest";
import { surveyEdits } from "../../src/document";
import { createDrawContext, drawShots } from "../../src/drawing";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

describe("shots set aside", () => {
  it("stay on the screen as grey crosses without a height, and are not on paper", () => {
    const project = demoProject("pottery-studio");
    const shot = project.survey.shots.find(({ name }) => name === "west side");
    if (shot?.place.kind !== "at") throw new Error("no place");
    const { x, y } = shot.place;
    const edit = surveyEdits.setAside.run(project, { id: shot.id, aside: true });
    if (!edit.ok) throw new Error(edit.why);
    const results = createSolver().solve(edit.project);
    const crosses = (medium: "screen" | "paper") =>
      drawShots(edit.project, results, createDrawContext({ metresPerMm: 0.1, medium })).marks.filter(
        (mark) => mark.kind === "symbol" && mark.at[0] === x && mark.at[1] === y,
      );
    expect(crosses("screen")).toMatchObject([{ symbol: "cross", style: "shot-untied" }]);
    expect(crosses("paper")).toEqual([]);
  });
});
