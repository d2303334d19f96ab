import { describe, expect, it } from "vitest";
import { check } from "../../src/cli/check";
import { solve } from "../../src/cli/solve";
import { createSolver } from "../../src/solve/pipeline";
import { toLookAt } from "../../src/solve/to-look-at";
import { wordsFor } from "../../src/solve/words";
import { demoProject } from "../support/demo";
import { run } from "./fakeIo";

const commands = [check, solve];
const metres = (m: number) => ({ text: `${m}`, m });

/** A level field 10 m each way at height 9, read from a beam at 10; a building of 4 x 5 m in its middle. */
function field(changes: Record<string, unknown> = {}): Record<string, unknown> {
  const places: [number, number][] = [
    [-20, -20],
    [30, -20],
    [30, 30],
    [-20, 30],
  ];
  return {
    drysill: 1,
    name: "Level field",
    display: { length: "m", reading: "m", area: "m2", volume: "m3", rounding: 3 },
    survey: {
      marks: [{ id: "peg", name: "Peg", at: [0, 0], height: metres(9.5) }],
      setups: [{ id: "one", name: "Morning" }],
      shots: [
        { id: "m", name: "peg", setup: "one", kind: "mark", of: "peg", reading: metres(0.5) },
        ...places.map(([x, y], i) => ({
          id: `g${i}`,
          name: `ground ${i}`,
          setup: "one",
          reading: metres(1),
          place: { kind: "at", x, y },
        })),
      ],
    },
    building: {
      outline: [
        [3, 3],
        [7, 3],
        [7, 8],
        [3, 8],
      ],
      floor: 9.6,
    },
    ...changes,
  };
}

const file = (project: unknown) => ({ "p.json": JSON.stringify(project) });

function withShots(...more: Record<string, unknown>[]): Record<string, unknown> {
  const base = field();
  const survey = base.survey as { shots: unknown[] };
  return { ...base, survey: { ...survey, shots: [...survey.shots, ...more] } };
}

describe("check", () => {
  it("lists what the window and the sheets list: limits that are broken and water that stands", async () => {
    const barn = demoProject("potting-barn");
    const low = {
      ...barn,
      building: barn.building && { ...barn.building, floor: barn.building.floor - 0.5 },
    };
    const { code, out } = await run(["check", "p.json"], commands, { "p.json": JSON.stringify(low) });
    const results = createSolver().solve(low);
    const listed = toLookAt(low, results.problems, results, results.floor, wordsFor(low.display));
    expect(code).toBe(0);
    expect(listed.some(({ code: each }) => each.startsWith("floor-"))).toBe(true);
    expect(listed.some(({ code: each }) => each.startsWith("pond-"))).toBe(true);
    for (const { what } of listed) expect(out).toContain(what);
    // `solve` is asked the same, as a page and as JSON.
    const page = await run(["solve", "p.json"], commands, { "p.json": JSON.stringify(low) });
    const json = await run(["solve", "p.json", "--json"], commands, { "p.json": JSON.stringify(low) });
    const told: { problems: { what: string }[] } = JSON.parse(json.out);
    for (const { what } of listed) expect(page.out).toContain(what);
    expect(told.problems.map(({ what }) => what)).toEqual(listed.map(({ what }) => what));
  });

  it("says sound and exits 0, cautions or not", async () => {
    const sound = await run(["check", "p.json"], commands, file(field()));
    expect(sound).toMatchObject({ code: 0, said: "" });
    expect(sound.out).toMatch(/^p\.json: sound/);
    const bumped = withShots({
      id: "c",
      name: "peg again",
      setup: "one",
      kind: "check",
      of: "peg",
      reading: metres(0.51),
    });
    const doubtful = await run(["check", "p.json"], commands, file(bumped));
    expect(doubtful).toMatchObject({ code: 0, said: "" });
    expect(doubtful.out).toContain(
      'caution: set-up "Morning", shot "peg again"\n    The second look at "Peg" comes out 10 mm lower',
    );
  });

  it("lists what is wrong with its place, gravest first, and exits 2", async () => {
    const broken = withShots(
      { id: "c", name: "peg again", setup: "one", kind: "check", of: "peg", reading: metres(0.51) },
      { id: "x", name: "lost", setup: "two", reading: metres(1) },
    );
    const { code, out, said } = await run(["check", "p.json"], commands, file({ ...broken, colour: "red" }));
    expect(code).toBe(2);
    expect(said).toBe("p.json is not sound: 1 error to mend.");
    expect(out).toMatch(/^p\.json: not sound; 1 error, \d+ cautions?, 2 notes\./);
    const at = (text: string) => out.indexOf(text);
    expect(at('error: shot "lost"')).toBeGreaterThan(0);
    expect(at("caution: set-up")).toBeGreaterThan(at("error: shot"));
    expect(at("note: colour")).toBeGreaterThan(at("caution: set-up"));
  });

  it.each<[string, string, string]>([
    [
      "a field of the wrong kind",
      JSON.stringify(field({ building: { outline: [[0, 0]], floor: "high" } })),
      "building › floor: Expected a number",
    ],
    ["no JSON", "{ hello", "not valid JSON"],
    ["an empty file", "", "The file is empty."],
    ["another kind of file", "[1, 2]", "not a Drysill project"],
    ["a newer program's file", '{"drysill": 99}', "saved by a newer Drysill"],
  ])("exits 2 on %s, with every reason on standard error", async (_what, text, reason) => {
    const { code, out, said } = await run(["check", "p.json"], commands, { "p.json": text });
    expect([code, out]).toEqual([2, ""]);
    expect(said).toMatch(/^p\.json can't be opened:\n {2}/);
    expect(said).toContain(reason);
  });

  it("names every faulty field of a file", async () => {
    const text = JSON.stringify(field({ name: 5, building: { outline: [[0, 0]], floor: null } }));
    const { said } = await run(["check", "p.json"], commands, { "p.json": text });
    expect(said.split("\n").length).toBeGreaterThanOrEqual(4);
  });
});

describe("solve", () => {
  it("prints a summary in the project's notation", async () => {
    const { code, out, said } = await run(["solve", "p.json"], commands, file(field()));
    expect([code, said]).toEqual([0, ""]);
    expect(out).toContain("Level field\n4 of 4 shots levelled. Reference mark: Peg, at 9.500 m.");
    expect(out).toMatch(/Floor +9\.600 m +0\.100 m above the mark/);
    expect(out).toMatch(/\nA +9\.000 m +0\.600 m above +0\.152 m above/);
    expect(out).toMatch(/under the floor +0\.0 m³/);
    expect(out).toMatch(/bottom of trench .* −/);
    expect(out).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(out).not.toMatch(/ $/m);
  });

  it("prints feet and inches where the project has them", async () => {
    const { out } = await run(["solve", "p.json"], commands, file(field({ display: {} })));
    expect(out).toMatch(/Floor +31′ 6″ +3⅞″ above the mark/);
    expect(out).toMatch(/yd³/);
  });

  it("has something to say of a project that is just begun", async () => {
    const { code, out } = await run(["solve", "p.json"], commands, { "p.json": '{"drysill": 1}' });
    expect(code).toBe(0);
    expect(out).toContain("0 of 0 shots levelled. No reference mark yet.\n\nNo building yet, so no floor.");
    expect(out).not.toMatch(/NaN|undefined|null/);
  });

  it("prints all results as JSON, in metres", async () => {
    const { code, out, said } = await run(["solve", "p.json", "--json"], commands, file(field()));
    expect([code, said]).toEqual([0, ""]);
    const json = JSON.parse(out);
    expect(json.floor).toBe(9.6);
    expect(json.corners[0]).toMatchObject({ name: "A", x: 3, y: 3, guessed: false });
    expect(json.corners[0].ground).toBeCloseTo(9, 9);
    expect(json.corners[0].wallAboveGround).toBeCloseTo(0.6, 9);
  });

  it.each([
    ["9.75", 9.75],
    ["-0.5", -0.5],
    ["9,75", 9.75],
    ["32'", 9.7536],
    [`31' 11 3/4"`, 9.74725],
    ["9750 mm", 9.75],
  ])("takes --floor %s", async (typed, m) => {
    const { code, out } = await run(["solve", "p.json", "--json", "--floor", typed], commands, file(field()));
    expect(code).toBe(0);
    expect(JSON.parse(out).floor).toBe(m);
  });

  it("refuses a floor that can't be read, or without a building", async () => {
    const unread = await run(["solve", "p.json", "--floor", "high"], commands, file(field()));
    expect(unread).toMatchObject({ code: 2, out: "" });
    expect(unread.said).toContain(`--floor: Can't read "high" as a length.`);
    const without = await run(["solve", "p.json", "--floor", "9"], commands, file(field({ building: null })));
    expect(without).toMatchObject({ code: 2, out: "" });
    expect(without.said).toContain("there is no building in p.json yet");
  });

  it("warns of a floor far from all ground, and solves all the same", async () => {
    const far = await run(["solve", "p.json", "--floor", "32.5"], commands, file(field()));
    expect(far.code).toBe(0);
    expect(far.said).toContain("--floor 32.500 m lies 23.500 m above all the ground that was shot");
    const low = await run(["solve", "p.json", "--floor", "5.9"], commands, file(field()));
    expect(low.said).toContain("3.100 m below");
    const near = await run(["solve", "p.json", "--floor", "11.9"], commands, file(field()));
    expect(near.said).toBe("");
  });

  it("tells the survey's reading of the mark and asks for today's, or tells today's", async () => {
    const survey = await run(["solve", "p.json"], commands, file(field()));
    expect(survey.out).toContain("(the survey's reading of the mark was 0.500 m; read it again today)");
    const typed = field({ worksheet: { markReading: metres(0.75) } });
    const today = await run(["solve", "p.json"], commands, file(typed));
    expect(today.out).toContain("(today the mark reads 0.750 m)");
  });

  it("prints figures without the noise of binary fractions", async () => {
    const { out } = await run(["solve", "p.json", "--json"], commands, file(field()));
    expect(out.match(/\d\.\d{10,}/g)).toBeNull();
    // 9 − (9.6 − 1.2192 − 0.2032)
    expect(JSON.parse(out).trench[0].belowGround).toBe(0.8224);
  });

  it("mentions fields that it doesn't know, and solves all the same", async () => {
    const { code, said } = await run(["solve", "p.json", "--json"], commands, file(field({ colour: "red" })));
    expect(code).toBe(0);
    expect(said).toContain("p.json: colour: Drysill doesn't know this field");
  });
});
