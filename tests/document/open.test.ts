import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { newProject, openProject, projectText } from "../../src/document";

function faults(text: string): string[] {
  const opened = openProject(text);
  return opened.ok
    ? []
    : opened.problems.map(({ path, message }) => (path ? `${path}: ${message}` : message));
}

describe("opening a project file", () => {
  it("opens the smallest file, with every default in place", () => {
    const opened = openProject('{"drysill": 1}');
    expect(opened.ok && opened.project).toEqual(newProject());
  });

  it("gives back what was saved, to the last digit", () => {
    const project = { ...newProject("Shed"), building: null, about: "1/3 m is 0.3333333333333333" };
    const opened = openProject(projectText(project));
    expect(opened.ok && opened.project).toEqual(project);
  });

  it("says where it was cut short", () => {
    const text = projectText(newProject()).slice(0, 120);
    expect(faults(text)[0]).toMatch(/damaged or cut short/);
  });

  it.each([
    ["", "The file is empty."],
    ["[1, 2]", "one { … } object"],
    ['{"name": "x"}', 'no "drysill" version'],
    ['{"drysill": 99}', "newer Drysill"],
    ['{"drysill": 1.5}', 'no "drysill" version'],
    ["# A heading\n\nSome words.\n", "not a Drysill plan"],
  ])("refuses %j in words", (text, words) => {
    expect(faults(text)[0]).toContain(words);
  });

  it("names every fault by its place, counting from one, not only the first", () => {
    const text = JSON.stringify({
      drysill: 1,
      survey: {
        shots: [
          { id: "s1", setup: "u1", reading: { text: "5", m: "five" } },
          { id: "s2", reading: null },
        ],
      },
      grading: { slopes: { fill: 0 } },
    });
    expect(faults(text)).toEqual([
      "survey › shots › 1 › reading › m: Expected a number, found string.",
      "survey › shots › 2 › setup: Expected a text, found nothing.",
      "grading › slopes › fill: A side slope is the run for one of rise and should be more than 0: 3 means 3 : 1. For an upright face draw a retaining wall.",
    ]);
  });

  it("says of a kind that it doesn't know which there are", () => {
    const pad = (level: unknown) => ({
      id: "p1",
      outline: [
        [0, 0],
        [1, 0],
        [1, 1],
      ],
      level,
    });
    const grading = { pads: [pad({ kind: "sea" }), pad({})] };
    expect(faults(JSON.stringify({ drysill: 1, grading }))).toEqual([
      "grading › pads › 1 › level › kind: Should be one of: ground, height, floor.",
      "grading › pads › 2 › level › kind: Should be one of: ground, height, floor.",
    ]);
  });

  it("keeps pieces without sense as they were typed, and opens the rest about them", () => {
    const line = [[1, 2]];
    const grading = {
      slopes: { fill: 0 },
      apron: { sides: [{ wall: 0, cut: 0 }] },
      drives: [
        { id: "v1", line },
        { id: "v2", line: [], sideSlope: 0 },
      ],
      swales: [{ id: "w1", line, colour: "blue" }],
      pads: [
        {
          id: "q1",
          outline: [
            [0, 0],
            [5, 0],
          ],
        },
      ],
      walls: [{ id: "r1", line, exposed: -1 }],
    };
    const option = { id: "o1", name: "other", building: null, grading };
    const opened = openProject(JSON.stringify({ drysill: 1, grading, options: [option] }));
    if (!opened.ok) throw new Error("should open");
    expect(opened.project.grading).toMatchObject(grading);
    expect(opened.project.grading.drives[0]?.width).toBeGreaterThan(0);
    expect(opened.warnings.map(({ path }) => path)).toEqual([
      "grading › swales › 1 › colour",
      "options › 1 › grading › swales › 1 › colour",
    ]);
    const again = openProject(projectText(opened.project));
    expect(again.ok && again.project).toEqual(opened.project);
  });

  it("refuses a piece that holds other things than it should, and names what it lacks beside it", () => {
    const drives = [{ id: "v1", line: [[1, 2]], name: 7 }, { id: "v2" }];
    expect(faults(JSON.stringify({ drysill: 1, grading: { drives } }))).toEqual([
      "grading › drives › 1 › name: Expected a text, found number.",
      "grading › drives › 1 › line: Needs at least 2 entries, the places [x, y] where it starts and ends: add what is missing, or take the whole thing out.",
      "grading › drives › 2 › line: Expected a list, found nothing.",
    ]);
  });

  it("keeps a field that it doesn't know, and says so", () => {
    const text = JSON.stringify({
      drysill: 1,
      colour: "red",
      survey: { shots: [{ id: "s1", setup: "u1", reading: null, who: "Kim" }] },
    });
    const opened = openProject(text);
    if (!opened.ok) throw new Error("should open");
    expect(opened.warnings.map(({ path }) => path)).toEqual(["colour", "survey › shots › 1 › who"]);
    expect(JSON.parse(projectText(opened.project))).toMatchObject(JSON.parse(text));
  });

  it("refuses heights that no site has", () => {
    expect(
      faults('{"drysill": 1, "building": {"outline": [[0,0],[1,0],[1,1]], "floor": 1e300}}')[0],
    ).toContain("building › floor");
  });
});

describe("the demo projects", () => {
  const files = readdirSync("demo-projects").filter((name) => name.endsWith(".json"));

  it("are there", () => expect(files.length).toBeGreaterThanOrEqual(4));

  it.each(files)("%s opens without a warning and saves to what it was", (name) => {
    const text = readFileSync(`demo-projects/${name}`, "utf8");
    const opened = openProject(text);
    expect(opened).toMatchObject({ ok: true, warnings: [] });
    expect(opened.ok && projectText(opened.project)).toBe(text);
  });
});

describe("opening a cloud of shots", () => {
  const shot = (i: number) => ({ id: `s${i}`, setup: "u1", reading: { text: "5", m: 5 } });
  const cloud = (more: Record<number, object> = {}) => ({
    drysill: 1,
    survey: { shots: Array.from({ length: 6000 }, (_, i) => ({ ...shot(i), ...more[i] })) },
  });

  it("reads each as it reads few", () => {
    const opened = openProject(JSON.stringify(cloud()));
    const one = openProject(JSON.stringify({ drysill: 1, survey: { shots: [shot(5999)] } }));
    expect(opened.ok && opened.project.survey.shots).toHaveLength(6000);
    expect(opened.ok && opened.project.survey.shots.at(-1)).toEqual(one.ok && one.project.survey.shots[0]);
    expect(opened.ok && opened.warnings).toEqual([]);
  });

  it("names every fault by its place", () => {
    const text = JSON.stringify({ ...cloud({ 0: { setup: 7 }, 5500: { reading: "5" } }), name: 3 });
    expect(faults(text)).toEqual([
      "name: Expected a text, found number.",
      "survey › shots › 1 › setup: Expected a text, found number.",
      "survey › shots › 5501 › reading: Expected an object { … }, found string.",
    ]);
  });

  it("keeps a field that it doesn't know, and says so", () => {
    const opened = openProject(JSON.stringify(cloud({ 4321: { colour: "red" } })));
    expect(opened.ok && opened.warnings.map(({ path }) => path)).toEqual(["survey › shots › 4322 › colour"]);
    expect(opened.ok && opened.project.survey.shots[4321]).toMatchObject({ id: "s4321", colour: "red" });
  });
});
