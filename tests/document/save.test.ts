import { describe, expect, it } from "vitest";
import { openProject, type Project, projectPieces, projectText } from "../../src/document";
import { demoProject } from "../support/demo";

function cloud(count: number): Project {
  const project = demoProject("pottery-studio");
  const shots = Array.from({ length: count }, (_, i) => ({
    ...(project.survey.shots.at(-1) as Project["survey"]["shots"][number]),
    id: `p${i}`,
    name: `point “${i}”`,
    kind: "ground" as const,
    of: null,
    place: { kind: "at" as const, x: i / 7, y: i % 100 },
  }));
  return { ...project, survey: { ...project.survey, shots } };
}

describe("the text of a cloud of shots", () => {
  const project = cloud(5200);

  it("has a line for each of them, and opens as the same project", () => {
    const text = projectText(project);
    expect(text.split("\n").filter((line) => line.includes('"id":"p'))).toHaveLength(5200);
    const opened = openProject(text);
    expect(opened.ok && opened.warnings).toEqual([]);
    expect(opened.ok && opened.project).toEqual(project);
  });

  it("differs from that of few shots in those lines only", () => {
    const few = { ...project, survey: { ...project.survey, shots: project.survey.shots.slice(0, 1) } };
    const withoutShots = (text: string) => text.replace(/"shots": \[[\s\S]*?\n {4}\]/, "");
    expect(withoutShots(projectText(project))).toBe(withoutShots(projectText(few)));
  });

  it("comes in pieces, worked out one at a time", () => {
    let asked = 0;
    const watched = new Proxy(project.survey.shots, {
      get(list, key, self) {
        if (key === "5000") asked++;
        return Reflect.get(list, key, self);
      },
    });
    const pieces = projectPieces({ ...project, survey: { ...project.survey, shots: watched } });
    let text = "";
    for (let piece = pieces.next(); !text.includes('"p10"'); piece = pieces.next()) text += piece.value;
    expect(asked).toBe(0);
    for (const piece of pieces) text += piece;
    expect(asked).toBeGreaterThan(0);
    expect(openProject(text).ok).toBe(true);
  });
});
