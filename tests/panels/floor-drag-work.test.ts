/** A floor under the hand must not cost more where more was shot: what a frame asks of the shots is counted, not timed. */
import { describe, expect, it } from "vitest";
import type { Project } from "../../src/document";
import { notationOf } from "../../src/panels/notation";
import { sentence } from "../../src/panels/sentence";
import { steps } from "../../src/panels/steps";
import { createSolver } from "../../src/solve/pipeline";
import type { Results } from "../../src/solve/results";
import { lookedAt } from "../../src/solve/to-look-at";
import { demoProject } from "../support/demo";

/** A list that counts how often one of its items is asked for. */
function counting<T>(list: readonly T[]) {
  let asked = 0;
  const counted = new Proxy([...list], {
    get(target, key, receiver) {
      if (typeof key === "string" && /^\d+$/.test(key)) asked++;
      return Reflect.get(target, key, receiver);
    },
  });
  return { list: counted as readonly T[], asked: () => asked };
}

function withManyShots(project: Project): Project {
  const more = Array.from({ length: 400 }, (_, i) => ({
    ...(project.survey.shots.at(-1) as Project["survey"]["shots"][number]),
    id: `more${i}`,
    name: `more ${i}`,
    kind: "ground" as const,
    of: null,
    place: { kind: "at" as const, x: 5 + 1.3 * (i % 20), y: 4 + 1.3 * Math.floor(i / 20) },
  }));
  return { ...project, survey: { ...project.survey, shots: [...project.survey.shots, ...more] } };
}

/** What the window tells in each frame of a drag, beside the drawing. */
function tell(project: Project, results: Results, floor: number): void {
  const notation = notationOf(project.display);
  const look = lookedAt(project, results.problems, results, floor, notation);
  steps(project, results, notation, look);
  sentence(project, results, notation);
}

describe("a floor under the hand", () => {
  it("asks nothing of the shots, their heights or their problems, however many there are", () => {
    const many = withManyShots(demoProject("pottery-studio"));
    const shots = counting(many.survey.shots);
    const project = { ...many, survey: { ...many.survey, shots: shots.list as typeof many.survey.shots } };
    const solver = createSolver();
    const settled = solver.solve(project);
    const floor = project.building?.floor ?? 0;
    const points = counting(settled.survey.points);
    const problems = counting(settled.problems);
    const counted = (results: Results): Results => ({
      ...results,
      survey: { ...results.survey, points: points.list },
      problems: problems.list,
    });
    tell(project, counted(settled), floor);
    const before = [shots.asked(), points.asked(), problems.asked()];
    expect(Math.min(...before)).toBeGreaterThan(0);

    for (const by of [0.1, 0.2, -0.1]) {
      const results = solver.solve(project, { floor: floor + by, detail: "drag" });
      tell(project, counted(results), floor + by);
    }
    expect([shots.asked(), points.asked(), problems.asked()]).toEqual(before);
  });
});
