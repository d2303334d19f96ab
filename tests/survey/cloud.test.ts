import { expect, it } from "vitest";
import { type Survey, surveySchema } from "../../src/document/schema";
import { levelSurvey } from "../../src/survey";

/** As many shots as a scanner gives, each with something to say about it. */
function cloud(count: number): Survey {
  const survey = surveySchema.parse({
    marks: [{ id: "m", name: "bolt", height: { text: "100", m: 100 } }],
    setups: [{ id: "u", name: "first" }],
  });
  const shots = Array.from({ length: count }, (_, i) => ({
    id: `s${i}`,
    name: String(i),
    setup: "gone",
    reading: { text: "1.5", m: 1.5 },
    kind: "ground" as const,
    of: null,
    place: { kind: "at" as const, x: i % 500, y: Math.floor(i / 500) },
    note: "",
    aside: false,
    accepted: false,
  }));
  return { ...survey, shots };
}

it("a cloud with a problem a point is told, not choked on", () => {
  const { result, problems } = levelSurvey(cloud(250_000), []);
  expect(result.points).toHaveLength(250_000);
  expect(problems.length).toBeGreaterThan(0);
});
