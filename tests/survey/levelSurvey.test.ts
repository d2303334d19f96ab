import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Point, type Survey, surveySchema } from "../../src/document/schema";
import { aboveMark, levelSurvey } from "../../src/survey";

/** A reading of so many millimetres. */
const mm = (value: number) => ({ text: `${value} mm`, m: value / 1000 });
const bolt = { id: "bolt", name: "Bolt", height: mm(30_000), at: [3, 4] as Point };
const spike = { id: "spike", name: "Spike", height: mm(31_000) };

interface ShotDraft {
  readonly id: string;
  readonly setup?: string;
  readonly reading: number | null;
  readonly kind?: "mark" | "turning" | "ground" | "check";
  readonly of?: string;
  readonly place?: unknown;
  readonly aside?: boolean;
}

function survey(shots: readonly ShotDraft[], more: { marks?: unknown[]; setups?: unknown[] } = {}): Survey {
  const ids = [...new Set(shots.map((shot) => shot.setup ?? "1"))];
  return surveySchema.parse({
    marks: more.marks ?? [bolt, spike],
    setups: more.setups ?? ids.map((id) => ({ id, name: `S${id}` })),
    shots: shots.map((shot) => ({
      setup: "1",
      name: shot.id,
      ...shot,
      reading: shot.reading === null ? null : mm(shot.reading),
    })),
  });
}

function level(drawn: Survey, corners: Point[] = []) {
  const { result, problems } = levelSurvey(drawn, corners);
  const heights = Object.fromEntries(
    result.points.map((point) => [
      point.shot,
      point.height === null ? null : Math.round(point.height * 1e6) / 1e6,
    ]),
  );
  const beams = Object.fromEntries(result.setups.map((setup) => [setup.id, setup.beam]));
  return { result, problems, heights, beams, codes: problems.map((problem) => problem.code) };
}

describe("one set-up", () => {
  it("beam = mark + reading, height = beam - reading", () => {
    const { result, problems, heights } = level(
      survey([
        { id: "m", reading: 1200, kind: "mark", of: "bolt" },
        { id: "low", reading: 2000 },
        { id: "high", reading: 500, place: { kind: "at", x: 7, y: 8 } },
      ]),
    );
    expect(result.setups).toEqual([
      { id: "1", name: "S1", beam: 31.2, tied: true, tie: "reading on Bolt", spread: 0 },
    ]);
    expect(heights).toEqual({ m: 30, low: 29.2, high: 30.7 });
    expect(result.points[2]).toMatchObject({ at: [7, 8], kind: "ground", shift: null });
    expect(aboveMark(heights.high ?? null, survey([]).marks)).toBeCloseTo(0.7, 12);
    expect(result.points[0]).toMatchObject({ at: [3, 4], shift: 0 });
    expect(result.mark).toEqual({ id: "bolt", name: "Bolt", height: 30, at: [3, 4] });
    expect(problems).toEqual([]);
  });

  it("leaves empty rows without a height and without a word, and shots set aside out", () => {
    const { result, problems, heights } = level(
      survey([
        { id: "m", reading: 1200, kind: "mark", of: "bolt" },
        { id: "bad", reading: 9000, kind: "mark", of: "spike", aside: true },
        { id: "empty", reading: null },
        { id: "emptyMark", reading: null, kind: "mark", of: "spike" },
      ]),
    );
    expect(result.points.map((point) => point.shot)).toEqual(["m", "empty", "emptyMark"]);
    expect(heights).toEqual({ m: 30, empty: null, emptyMark: null });
    expect(problems).toEqual([]);
  });

  it("takes the assumed beam when nothing ties it", () => {
    const setups = [{ id: "1", name: "S1", assumedBeam: mm(50_000) }];
    const { result, heights, codes } = level(survey([{ id: "a", reading: 1000 }], { setups, marks: [] }));
    expect(result.setups[0]).toMatchObject({ beam: 50, tied: true, tie: "assumed" });
    expect(heights).toEqual({ a: 49 });
    expect(result.mark).toBeNull();
    expect(aboveMark(49, [])).toBeNull();
    expect(codes).toEqual([]);
  });

  it("lets a mark overrule the assumed beam", () => {
    const setups = [{ id: "1", name: "S1", assumedBeam: mm(50_000) }];
    const { beams } = level(survey([{ id: "m", reading: 1000, kind: "mark", of: "bolt" }], { setups }));
    expect(beams).toEqual({ 1: 31 });
  });

  it("says how to tie it when nothing does", () => {
    const { result, heights, problems } = level(
      survey([
        { id: "a", reading: 1000 },
        { id: "b", reading: 1200 },
      ]),
    );
    expect(result.setups[0]).toEqual({
      id: "1",
      name: "S1",
      beam: null,
      tied: false,
      tie: "not tied",
      spread: 0,
    });
    expect(heights).toEqual({ a: null, b: null });
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: "setup-not-tied", severity: "error", where: 'set-up "S1"' });
    expect(problems[0]?.what).toBe(
      "No reading ties it to a known height. The 2 readings taken from it give no height.",
    );
    expect(problems[0]?.how).toContain("Read a mark from it");
  });

  it("has nothing to say of a set-up that is still empty", () => {
    const setups = [{ id: "1", name: "S1" }];
    const { result, problems } = level(survey([{ id: "a", reading: null }], { setups }));
    expect(result.setups[0]?.tied).toBe(false);
    expect(problems).toEqual([]);
  });
});

describe("several ties", () => {
  const twoMarks = (second: number) =>
    survey([
      { id: "m", reading: 1500, kind: "mark", of: "bolt" },
      { id: "n", reading: second, kind: "mark", of: "spike" },
      { id: "g", reading: 1000 },
    ]);

  it("are averaged, each with its shift", () => {
    const { result, heights, codes } = level(twoMarks(504));
    expect(result.setups[0]?.beam).toBeCloseTo(31.502, 12);
    expect(result.setups[0]?.spread).toBeCloseTo(0.004, 12);
    expect(result.setups[0]?.tie).toBe("reading on Bolt, reading on Spike");
    // Marks keep their own heights; what their readings make of them is the shift.
    expect(heights).toEqual({ m: 30, n: 31, g: 30.502 });
    expect(result.points[0]?.shift).toBeCloseTo(0.002, 12);
    expect(result.points[1]?.shift).toBeCloseTo(-0.002, 12);
    expect(codes).toEqual([]);
  });

  it("are doubted beyond 6 mm and wrong beyond 25 mm", () => {
    expect(level(twoMarks(506)).problems).toEqual([]);
    expect(level(twoMarks(507)).problems).toMatchObject([
      {
        code: "ties-disagree",
        severity: "caution",
        where: 'set-up "S1"',
        what: 'The readings that tie it (reading on Bolt, reading on Spike) disagree by 7 mm (¼″). Nothing is averaged: the reading on Bolt is used, for it agrees with a second look or was typed first; the reading on Spike (shot "n") would put the beam 7 mm (¼″) higher and is kept out.',
        ids: ["1", "m", "n"],
      },
    ]);
    const gross = level(twoMarks(526));
    expect(gross.problems).toMatchObject([{ severity: "error" }]);
    // The one that was typed first holds, its heights too; the other is kept out.
    expect(gross.result.setups[0]).toMatchObject({ beam: 31.5, tie: "reading on Bolt" });
    expect(gross.result.setups[0]?.keptOut).toEqual([{ shot: "n", by: expect.closeTo(0.026, 9) }]);
    expect(gross.heights).toEqual({ m: 30, n: 31, g: 30.5 });
  });

  it("that contradict each other are settled by one click: the other, without the one, or shared after all", () => {
    const [use, aside, share] = level(twoMarks(526)).problems[0]?.fixes ?? [];
    expect(use).toEqual({
      words: "Use the reading on Spike, “n”",
      edits: [{ command: "survey.setAside", args: { id: "m", aside: true } }],
    });
    expect(aside?.edits).toEqual([{ command: "survey.setAside", args: { id: "n", aside: true } }]);
    expect(share?.edits).toEqual([{ command: "survey.acceptShot", args: { id: "n" } }]);
    const accepted = twoMarks(526);
    const shots = accepted.shots.map((shot) => ({ ...shot, accepted: shot.id === "n" }));
    const shared = level({ ...accepted, shots });
    expect(shared.result.setups[0]?.beam).toBeCloseTo(31.513, 9);
    expect(shared.problems).toMatchObject([{ code: "ties-disagree", severity: "note" }]);
  });

  it("of which two agree leave the third out, whichever was typed first", () => {
    const { result, problems } = level(
      survey([
        { id: "a", reading: 1800, kind: "mark", of: "bolt" },
        { id: "b", reading: 500, kind: "mark", of: "spike" },
        { id: "c", reading: 1502, kind: "mark", of: "bolt" },
        { id: "g", reading: 1000 },
      ]),
    );
    expect(result.setups[0]?.beam).toBeCloseTo(31.501, 9);
    expect(result.setups[0]?.keptOut).toMatchObject([{ shot: "a" }]);
    expect(problems).toMatchObject([{ code: "ties-disagree", severity: "error" }]);
  });

  it("of which one agrees with a second look at a mark: that one holds", () => {
    const { result, codes } = level(
      survey([
        { id: "a1", setup: "1", reading: 1000, kind: "mark", of: "bolt" },
        { id: "a2", setup: "1", reading: 1500, kind: "turning" },
        { id: "b1", setup: "2", reading: 1900, kind: "turning", of: "a2" },
        { id: "look", setup: "2", reading: 400, kind: "check", of: "bolt" },
        { id: "b2", setup: "2", reading: 400, kind: "mark", of: "bolt" },
      ]),
    );
    expect(result.setups[1]).toMatchObject({ beam: 30.4, tie: "reading on Bolt" });
    expect(codes).toEqual(["ties-disagree"]);
  });
});

describe("turning points", () => {
  const chain: ShotDraft[] = [
    { id: "c1", setup: "3", reading: 700, kind: "turning", of: "b2" },
    { id: "g3", setup: "3", reading: 1000 },
    { id: "b1", setup: "2", reading: 900, kind: "turning", of: "a2" },
    { id: "b2", setup: "2", reading: 1600, kind: "turning" },
    { id: "a1", setup: "1", reading: 1000, kind: "mark", of: "bolt" },
    { id: "a2", setup: "1", reading: 1500, kind: "turning" },
  ];

  it("carry the height on, in whatever order they stand", () => {
    const forward = level(survey([...chain].reverse()));
    const backward = level(survey(chain));
    // 30 + 1.0 = 31.0; TP1 29.5; + 0.9 = 30.4; TP2 28.8; + 0.7 = 29.5; g3 28.5
    expect(forward.heights).toEqual({ a1: 30, a2: 29.5, b1: 29.5, b2: 28.8, c1: 28.8, g3: 28.5 });
    expect(backward.heights).toEqual(forward.heights);
    expect(forward.result.setups.map((setup) => setup.tie)).toEqual([
      "reading on Bolt",
      "turning point a2",
      "turning point b2",
    ]);
    expect(forward.problems).toEqual([]);
  });

  it("tie the set-up before, too, when the mark is only read later", () => {
    const shots: ShotDraft[] = [
      { id: "g", setup: "1", reading: 1200 },
      { id: "t", setup: "1", reading: 1500, kind: "turning" },
      { id: "t2", setup: "2", reading: 900, kind: "turning", of: "t" },
      { id: "m", setup: "2", reading: 1000, kind: "mark", of: "bolt" },
    ];
    const { heights, result, problems } = level(survey(shots));
    expect(heights).toEqual({ g: 30.4, t: 30.1, t2: 30.1, m: 30 });
    expect(result.setups[0]?.tie).toBe("turning point read from a later set-up");
    expect(problems).toEqual([]);
  });

  it("go before an assumed beam; the assumption then carries on from the set-up that has no other", () => {
    const setups = [
      { id: "2", name: "S2", assumedBeam: mm(99_000) },
      { id: "1", name: "S1", assumedBeam: mm(10_000) },
    ];
    const shots: ShotDraft[] = [
      { id: "t", setup: "1", reading: 1500, kind: "turning" },
      { id: "t2", setup: "2", reading: 500, kind: "turning", of: "t" },
    ];
    const { beams } = level(survey(shots, { setups }));
    expect(beams).toEqual({ 1: 10, 2: 9 });
  });

  it("close a loop on the mark and report how far it misses", () => {
    const shots: ShotDraft[] = [
      { id: "a1", setup: "1", reading: 1000, kind: "mark", of: "bolt" },
      { id: "a2", setup: "1", reading: 1500, kind: "turning" },
      { id: "b1", setup: "2", reading: 900, kind: "turning", of: "a2" },
      { id: "b2", setup: "2", reading: 388, kind: "mark", of: "bolt" },
    ];
    const { result, codes } = level(survey(shots));
    // Carried: 30 + 1.0 - 1.5 + 0.9 = 30.4 against 30.388; the 12 mm are more than the 7 mm permitted, so nothing is shared.
    expect(result.setups.map(({ beam }) => beam)).toEqual([31, 30.4]);
    // Where earthwork permits 17 mm they are shared over two set-ups, 6 mm each.
    const coarse = level({ ...survey(shots), misclosureClass: "earthwork" });
    expect(coarse.result.setups.map(({ beam }) => beam)).toEqual([
      expect.closeTo(30.994, 6),
      expect.closeTo(30.388, 6),
    ]);
    expect(coarse.codes).toEqual([]);
    expect(result.setups[1]?.spread).toBeCloseTo(0.012, 12);
    expect(result.closings).toEqual([
      {
        setup: "2",
        shot: "b2",
        misclosure: expect.closeTo(0.012, 9),
        setups: 2,
        length: null,
        permitted: expect.closeTo(0.00707, 5),
      },
    ]);
    expect(codes).toEqual(["ties-disagree"]);
  });

  it("leave what was read well alone where a blunder is among them: it isn't shared", () => {
    const { heights, problems } = level(
      survey([
        { id: "a1", setup: "1", reading: 1000, kind: "mark", of: "bolt" },
        { id: "a2", setup: "1", reading: 1500, kind: "turning" },
        { id: "b1", setup: "2", reading: 1900, kind: "turning", of: "a2" },
        { id: "b2", setup: "2", reading: 388, kind: "mark", of: "bolt" },
      ]),
    );
    expect(heights.a2).toBe(29.5);
    expect(problems).toMatchObject([{ code: "ties-disagree", severity: "error" }]);
    expect(problems[0]?.how).toContain("Until then all heights of this set-up hang on what is used");
  });

  it("that lead in a circle without a mark tie nothing, with a mark they do", () => {
    const circle: ShotDraft[] = [
      { id: "a", setup: "1", reading: 1000, kind: "turning", of: "b" },
      { id: "b", setup: "2", reading: 1100, kind: "turning", of: "a" },
    ];
    const loose = level(survey(circle));
    expect(loose.heights).toEqual({ a: null, b: null });
    expect(loose.codes).toEqual(["setup-not-tied", "setup-not-tied"]);
    expect(loose.problems[0]?.what).toContain("set-ups that aren't tied");
    const tied = level(survey([...circle, { id: "m", setup: "2", reading: 500, kind: "mark", of: "bolt" }]));
    expect(tied.heights).toEqual({ a: 29.4, b: 29.4, m: 30 });
    expect(tied.problems).toEqual([]);
  });

  it.each<[string, Partial<ShotDraft>, string]>([
    ["a shot that isn't there", { of: "nobody" }, "isn't there"],
    ["a shot set aside", { of: "x" }, "is set aside"],
    ["itself", { of: "t" }, "tied to itself"],
    ["a shot of its own set-up", { of: "g" }, 'tied to shot "g" of its own set-up'],
    ["no mark", { kind: "mark" }, "doesn't say on which"],
    ["a mark that isn't there", { kind: "mark", of: "nobody" }, "names one that isn't there"],
  ])("a tie to %s is named", (_what, draft, message) => {
    const { problems, heights } = level(
      survey([
        { id: "m", reading: 1000, kind: "mark", of: "bolt" },
        { id: "g", reading: 1200 },
        { id: "x", reading: 1200, aside: true },
        { id: "t", reading: 1500, kind: "turning", ...draft },
      ]),
    );
    expect(problems).toMatchObject([
      { code: "tie-to-nothing", severity: "error", where: 'shot "t"', ids: ["t"] },
    ]);
    expect(problems[0]?.what).toContain(message);
    expect(heights.t).toBe(29.5);
  });
});

describe("second looks", () => {
  const looking = (second: number, of = "bolt") =>
    level(
      survey([
        { id: "m", reading: 1000, kind: "mark", of: "bolt" },
        { id: "g", reading: 1500, place: { kind: "at", x: 1, y: 2 } },
        { id: "c", reading: second, kind: "check", of },
      ]),
    );

  it("report found minus known and tie nothing", () => {
    const { result, beams } = looking(1004);
    expect(beams).toEqual({ 1: 31 });
    expect(result.points[2]?.shift).toBeCloseTo(-0.004, 12);
    expect(result.points[2]?.at).toEqual([3, 4]);
    expect(looking(1497, "g").result.points[2]?.shift).toBeCloseTo(0.003, 12);
    expect(looking(1497, "g").result.points[2]?.at).toEqual([1, 2]);
  });

  it("say that the laser seems to have moved beyond 6 mm", () => {
    expect(looking(1006).codes).toEqual([]);
    const { problems } = looking(1012);
    expect(problems).toMatchObject([
      {
        code: "laser-moved",
        severity: "caution",
        where: 'set-up "S1", shot "c"',
        ids: ["c", "1"],
        at: [3, 4],
      },
    ]);
    expect(problems[0]?.what).toContain('The second look at "Bolt" comes out 12 mm (½″) lower than before');
    expect(looking(990).problems[0]?.what).toContain("higher than before");
    expect(looking(1100).problems).toMatchObject([{ severity: "error" }]);
  });

  it.each([
    ["nobody", "isn't there"],
    ["c", "names itself"],
  ])("of %s are named", (of, message) => {
    const { problems, result } = looking(1000, of);
    expect(problems).toMatchObject([{ code: "check-of-nothing", where: 'shot "c"' }]);
    expect(problems[0]?.what).toContain(message);
    expect(result.points[2]?.shift).toBeNull();
  });
});

describe("broken references never stop the rest", () => {
  it("a shot of a set-up that isn't there", () => {
    const setups = [{ id: "1", name: "S1" }];
    const { problems, heights } = level(
      survey(
        [
          { id: "m", reading: 1000, kind: "mark", of: "bolt" },
          { id: "lost", setup: "9", reading: 1000 },
          { id: "lostMark", setup: "9", reading: 1000, kind: "mark", of: "bolt" },
        ],
        { setups },
      ),
    );
    expect(heights).toEqual({ m: 30, lost: null, lostMark: null });
    expect(problems.map((problem) => [problem.code, problem.where])).toEqual([
      ["shot-without-setup", 'shot "lost"'],
      ["shot-without-setup", 'shot "lostMark"'],
    ]);
  });

  it("a corner that isn't there, and one that is", () => {
    const shots: ShotDraft[] = [
      { id: "m", reading: 1000, kind: "mark", of: "bolt" },
      { id: "A", reading: 1000, place: { kind: "corner", corner: 0 } },
      { id: "E", reading: 1000, place: { kind: "corner", corner: 4 } },
    ];
    const four: Point[] = [
      [5, 6],
      [9, 6],
      [9, 9],
      [5, 9],
    ];
    const built = level(survey(shots), four);
    expect(built.result.points.map((point) => point.at)).toEqual([[3, 4], [5, 6], null]);
    expect(built.problems[0]?.what).toContain("corner 5 of the building, which has 4 corners");
    expect(level(survey(shots)).problems[0]?.what).toContain("there is no building yet");
  });

  it("ids that are there twice: the first counts", () => {
    const drawn = survey(
      [
        { id: "m", reading: 1000, kind: "mark", of: "bolt" },
        { id: "m", reading: 1500 },
      ],
      {
        marks: [bolt, { ...spike, id: "bolt" }],
        setups: [
          { id: "1", name: "S1" },
          { id: "1", name: "S1 again" },
        ],
      },
    );
    const { problems, result } = level(drawn);
    expect(result.setups).toHaveLength(1);
    expect(result.points.map((point) => point.height)).toEqual([30, 29.5]);
    expect(problems.map((problem) => [problem.code, problem.where])).toEqual([
      ["duplicate-id", 'mark "Spike"'],
      ["duplicate-id", 'set-up "S1 again"'],
      ["duplicate-id", 'shot "m"'],
    ]);
  });

  it("names a shot without a name by its row", () => {
    const drawn = survey([
      { id: "a", reading: 1000, aside: true },
      { id: "b", reading: 1000, kind: "mark" },
    ]);
    const nameless = { ...drawn, shots: drawn.shots.map((shot) => ({ ...shot, name: "" })) };
    expect(level(nameless).problems[0]?.where).toBe("shot in row 2");
    const tied = survey([
      { id: "m", reading: 1000, kind: "mark", of: "bolt" },
      { id: "t", reading: 1500, kind: "turning" },
      { id: "u", setup: "2", reading: 900, kind: "turning", of: "t" },
    ]);
    const unnamed = {
      ...tied,
      marks: tied.marks.map((mark) => ({ ...mark, name: "" })),
      shots: tied.shots.map((shot) => ({ ...shot, name: "" })),
    };
    expect(level(unnamed).result.setups.map((setup) => setup.tie)).toEqual([
      "reading on bolt",
      "turning point in row 2",
    ]);
  });
});

describe("readings that are asked about", () => {
  const among = (odd: number) =>
    level(
      survey([
        { id: "m", reading: 1000, kind: "mark", of: "bolt" },
        { id: "g1", reading: 1591 },
        { id: "g2", reading: 1400 },
        { id: "g3", reading: 1800 },
        { id: "odd", reading: odd, place: { kind: "at", x: 1, y: 1 } },
      ]),
    );

  it.each([
    [159_100, "The reading 159100 mm is many times larger than the others from this set-up."],
    [19_000, "The reading 19000 mm is many times larger"],
    [1.591, "The reading 1.591 mm is many times smaller"],
    [8000, "The reading 8000 mm is longer than common rods are."],
    [-1500, "The reading -1500 mm is above the beam"],
  ])("%d mm among some 1.5 m", (reading, question) => {
    const { problems, heights } = among(reading);
    expect(problems).toMatchObject([
      { code: "reading-doubtful", severity: "caution", where: 'shot "odd"', at: [1, 1] },
    ]);
    expect(problems[0]?.what).toContain(question);
    expect(heights.odd).toBe(Math.round((31 - reading / 1000) * 1e6) / 1e6);
  });

  it("longer ones than rods are left alone where all are long", () => {
    const shots = [7000, 8000, 9000, 10_000].map((reading, i) => ({ id: `${i}`, reading }));
    const setups = [{ id: "1", name: "S1", assumedBeam: mm(90_000) }];
    expect(level(survey(shots, { setups })).problems).toEqual([]);
    expect(level(survey(shots.slice(1, 2), { setups })).codes).toEqual(["reading-doubtful"]);
  });

  it.each([60, 500, 3000, 7000])("%d mm is left alone", (reading) => {
    expect(among(reading).problems).toEqual([]);
  });
});

describe("for any chain of set-ups", () => {
  const reading = fc.integer({ min: 100, max: 4500 });
  const chains = fc.array(fc.tuple(reading, reading, reading), { minLength: 1, maxLength: 12 });

  function build(legs: readonly (readonly [number, number, number])[]): ShotDraft[] {
    return legs.flatMap(([back, ground, fore], i): ShotDraft[] => [
      i === 0
        ? { id: `b${i}`, setup: `${i}`, reading: back, kind: "mark", of: "bolt" }
        : { id: `b${i}`, setup: `${i}`, reading: back, kind: "turning", of: `f${i - 1}` },
      { id: `g${i}`, setup: `${i}`, reading: ground },
      { id: `f${i}`, setup: `${i}`, reading: fore, kind: "turning" },
    ]);
  }

  it("the last point = mark + sum of backsights - sum of foresights, whatever the order", () => {
    fc.assert(
      fc.property(chains, fc.boolean(), (legs, turned) => {
        const shots = build(legs);
        const { result } = levelSurvey(survey(turned ? shots.reverse() : shots), []);
        const last = result.points.find((point) => point.shot === `f${legs.length - 1}`);
        const sum = legs.reduce((total, [back, , fore]) => total + back - fore, 30_000) / 1000;
        expect(last?.height).toBeCloseTo(sum, 9);
      }),
    );
  });

  it("lowering the mark lowers every point by as much", () => {
    fc.assert(
      fc.property(chains, fc.integer({ min: -5000, max: 5000 }), (legs, down) => {
        const shots = build(legs);
        const before = levelSurvey(survey(shots), []).result.points;
        const marks = [{ ...bolt, height: mm(30_000 - down) }];
        const after = levelSurvey(survey(shots, { marks }), []).result.points;
        before.forEach((point, i) => {
          expect((point.height ?? Number.NaN) - (after[i]?.height ?? Number.NaN)).toBeCloseTo(down / 1000, 9);
          const above = aboveMark(point.height, survey([]).marks) ?? Number.NaN;
          expect(aboveMark(after[i]?.height ?? null, survey([], { marks }).marks)).toBeCloseTo(above, 9);
        });
      }),
    );
  });

  it("never throws, whatever points where", () => {
    const id = fc.constantFrom("1", "2", "3", "bolt", "nobody");
    const shot = fc.record({
      id,
      setup: id,
      name: id,
      reading: fc.option(reading.map(mm), { nil: null }),
      kind: fc.constantFrom("mark", "turning", "ground", "check"),
      of: fc.option(id, { nil: null }),
      place: fc.constantFrom({ kind: "none" }, { kind: "corner", corner: 2 }, { kind: "at", x: 0, y: 0 }),
      aside: fc.boolean(),
    });
    const setup = fc.record({ id, name: id, assumedBeam: fc.option(reading.map(mm), { nil: null }) });
    fc.assert(
      fc.property(fc.array(shot, { maxLength: 10 }), fc.array(setup, { maxLength: 4 }), (shots, setups) => {
        const { result, problems } = levelSurvey(surveySchema.parse({ marks: [bolt], setups, shots }), []);
        expect(result.points).toHaveLength(shots.filter((s) => !s.aside).length);
        for (const { what, how, where } of problems)
          expect(Math.min(what.length, how.length, where.length)).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });
});
