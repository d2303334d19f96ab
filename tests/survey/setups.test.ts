import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { surveySchema } from "../../src/document/schema";
import { levelSurvey, reduceLevelBook, rodRule, surveyBook } from "../../src/survey";

const mm = (value: number) => ({ text: `${value} mm`, m: value / 1000 });
const bolt = { id: "bolt", name: "Bolt", height: mm(30_000), at: [0, 0] };

interface Draft {
  readonly id: string;
  readonly setup?: string;
  readonly reading: number | null;
  readonly kind?: string;
  readonly of?: string;
  readonly place?: unknown;
}

function level(shots: readonly Draft[], setup: object = {}, more: object = {}) {
  const ids = [...new Set(shots.map((shot) => shot.setup ?? "1"))];
  const survey = surveySchema.parse({
    marks: [bolt],
    setups: ids.map((id) => ({ id, name: `S${id}`, ...setup })),
    shots: shots.map((shot) => ({
      setup: "1",
      name: shot.id,
      ...shot,
      reading: shot.reading === null ? null : mm(shot.reading),
    })),
    ...more,
  });
  const { result, problems } = levelSurvey(survey, []);
  const rounded = (value: number | null | undefined) =>
    typeof value === "number" ? Math.round(value * 1e6) / 1e6 : (value ?? null);
  const heights = Object.fromEntries(result.points.map(({ shot, height }) => [shot, rounded(height)]));
  const sigmas = Object.fromEntries(result.points.map(({ shot, sigma }) => [shot, rounded(sigma)]));
  return { survey, result, problems, heights, sigmas };
}

const onBolt = (reading: number, setup = "1"): Draft => ({
  id: `m${setup}`,
  setup,
  reading,
  kind: "mark",
  of: "bolt",
});
const at = (x: number, y: number) => ({ kind: "at", x, y });

describe("rods", () => {
  it("plain: a bigger reading is lower ground", () => {
    expect(level([onBolt(1200), { id: "g", reading: 2000 }]).heights).toEqual({ m1: 30, g: 29.2 });
  });

  it("direct elevation: a bigger reading is higher ground, and only differences count", () => {
    const rod = { rod: { kind: "direct", reads: "up" } };
    const { heights, result } = level(
      [onBolt(2500), { id: "g", reading: 2000 }, { id: "h", reading: 3100 }],
      rod,
    );
    expect(heights).toEqual({ m1: 30, g: 29.5, h: 30.6 });
    expect(result.setups[0]).toMatchObject({ reads: "up", beam: 27.5 });
  });

  it("cut and fill from a grade whose height is typed, in either sense", () => {
    const zero = { assumedBeam: mm(31_000) };
    const shots = [
      { id: "cut", reading: 350 },
      { id: "fill", reading: -800 },
    ];
    expect(level(shots, { rod: { kind: "cut-fill", reads: "up" }, ...zero }).heights).toEqual({
      cut: 31.35,
      fill: 30.2,
    });
    expect(level(shots, { rod: { kind: "cut-fill", reads: "down" }, ...zero }).heights).toEqual({
      cut: 30.65,
      fill: 31.8,
    });
    expect(level(shots, { rod: { kind: "cut-fill", reads: "up" }, ...zero }).problems).toEqual([]);
  });

  it("a laser line: readings go up and down from it", () => {
    const line = { rod: { kind: "line" }, assumedBeam: mm(31_000) };
    const { heights, problems } = level(
      [
        { id: "a", reading: 500 },
        { id: "b", reading: -200 },
      ],
      line,
    );
    expect(heights).toEqual({ a: 30.5, b: 31.2 });
    expect(problems).toEqual([]);
  });

  it("a receiver's offset cancels between mark and ground, but counts from a beam of known height", () => {
    const rod = { rod: { offset: mm(40) } };
    expect(level([onBolt(1200), { id: "g", reading: 2000 }], rod).heights).toEqual({ m1: 30, g: 29.2 });
    expect(level([{ id: "g", reading: 2000 }], { ...rod, assumedBeam: mm(31_000) }).heights).toEqual({
      g: 28.96,
    });
  });
});

describe("corrections by distance", () => {
  const shots = [onBolt(1200), { id: "g", reading: 2000, place: at(0, 100) }];

  it("a line of sight that points up reads too much far off", () => {
    // Two-peg error 0.085 m in 100 m, as in the check of a textbook; the mark is 20 m off, the point 80 m.
    const { heights } = level(shots, { at: [0, 20], collimation: 0.00085 });
    expect(heights.g).toBeCloseTo(30 + 1.2 - 0.00085 * 20 - (2 - 0.00085 * 80), 9);
  });

  it("curvature and refraction only when asked for, and only where the distance is known", () => {
    expect(level(shots, { at: [0, 0] }).heights.g).toBe(29.2);
    expect(level(shots, { at: [0, 0] }, { longSights: true }).heights.g).toBeCloseTo(29.2 + 0.000673, 6);
    expect(level(shots, {}, { longSights: true }).heights.g).toBe(29.2);
  });
});

describe("sights by their length", () => {
  const shots = [onBolt(1200), { id: "g", reading: 2000, place: at(0, 200) }, { id: "loose", reading: 1800 }];

  it("a long one is told once for a set-up, until it is corrected", () => {
    const { problems } = level(shots, { at: [0, 0] });
    expect(problems).toMatchObject([{ code: "shot-far", severity: "note", where: 'set-up "S1", shot "g"' }]);
    expect(problems[0]?.what).toContain("3 mm (⅛″) too low");
    expect(level(shots, { at: [0, 0] }, { longSights: true }).problems).toEqual([]);
    expect(level(shots, { at: [0, 100] }).problems).toEqual([]);
  });

  it("a known error that can't come off is told", () => {
    const { problems } = level(shots, { at: [0, 100], collimation: 1e-4 });
    expect(problems).toMatchObject([{ code: "setup-error-stays", ids: ["1", "loose"] }]);
  });
});

describe("whatever is named where", () => {
  it("never throws, says something of every problem, and gives no height that isn't a number", () => {
    const id = fc.constantFrom("a", "b", "c", "d", "bolt", "nobody");
    const place = fc.constantFrom<unknown>(
      { kind: "none" },
      at(3, 4),
      { kind: "corner", corner: 1 },
      { kind: "wall", wall: 0, along: mm(1000), out: mm(500) },
      { kind: "stake", grid: "g", row: 0, column: 1 },
      ...["a", "b", "nobody"].map((shot) => ({
        kind: "tapes",
        from: [
          { kind: "shot", shot },
          { kind: "mark", mark: "bolt" },
        ],
        lengths: [mm(4000), mm(3000)],
        side: "left",
      })),
      {
        kind: "polar",
        from: { kind: "shot", shot: "c" },
        angle: { text: "1", radians: 1 },
        distance: mm(2000),
      },
    );
    const shot = fc.record({
      id,
      setup: fc.constantFrom("1", "2", "3"),
      reading: fc.option(fc.integer({ min: -500, max: 5000 }).map(mm), { nil: null }),
      kind: fc.constantFrom("mark", "turning", "ground", "check"),
      of: fc.option(id, { nil: null }),
      place,
      aside: fc.boolean(),
    });
    const setup = fc.record({
      id: fc.constantFrom("1", "2"),
      name: fc.constant("S"),
      at: fc.constantFrom(null, [0, 0], [9, 9]),
      assumedBeam: fc.option(fc.constant(mm(31_000)), { nil: null }),
      rod: fc.constantFrom({}, { kind: "direct", reads: "up" }, { offset: mm(30) }),
      accuracy: fc.constantFrom(null, { text: "", ratio: 1e-4 }),
      collimation: fc.constantFrom(0, 1e-4),
      bumps: fc.array(fc.record({ check: id, from: fc.option(id, { nil: null }) }), { maxLength: 3 }),
    });
    fc.assert(
      fc.property(fc.array(shot, { maxLength: 12 }), fc.array(setup, { maxLength: 3 }), (shots, setups) => {
        const survey = surveySchema.parse({ marks: [bolt], setups, shots });
        const { result, problems } = levelSurvey(survey, []);
        surveyBook(survey);
        for (const { height, sigma, shift } of result.points)
          for (const figure of [height, sigma, shift]) expect(Number.isNaN(figure ?? 0)).toBe(false);
        for (const { beam, sigma } of result.setups)
          expect(Number.isFinite((beam ?? 0) + (sigma ?? 0))).toBe(true);
        for (const { what, how, where } of problems)
          expect(Math.min(what.length, how.length, where.length)).toBeGreaterThan(0);
      }),
      { numRuns: 400 },
    );
  });
});

describe("the beam's accuracy", () => {
  const accurate = { accuracy: { text: "3 mm at 30 m", ratio: 1e-4 }, at: [30, 40] };

  it("grows with distance and adds up through the tie", () => {
    const { sigmas, result } = level(
      [onBolt(1200), { id: "g", reading: 2000, place: at(30, 100) }],
      accurate,
    );
    // 5 mm at the mark 50 m off, 6 mm at the point 60 m off.
    expect(result.setups[0]?.sigma).toBeCloseTo(0.005, 9);
    expect(sigmas).toEqual({ m1: 0, g: expect.closeTo(Math.hypot(0.005, 0.006), 6) });
  });

  it("is unknown without a distance, and not spoken of without a data sheet", () => {
    expect(level([onBolt(1200), { id: "g", reading: 2000 }], accurate).sigmas).toEqual({ m1: 0, g: null });
    expect(level([onBolt(1200)], { at: [1, 1] }).result.points[0]).not.toHaveProperty("sigma");
  });

  it("is halved in variance by a second tie of the same kind", () => {
    const spike = { id: "spike", name: "Spike", height: mm(31_000), at: [60, 80] };
    const { result } = level([onBolt(1200), { id: "n", reading: 200, kind: "mark", of: "spike" }], accurate, {
      marks: [bolt, spike],
    });
    expect(result.setups[0]?.sigma).toBeCloseTo(0.005 / Math.SQRT2, 9);
  });

  it("stays with the set-up that read the mark when another, of which nothing is known, is tied to it", () => {
    const { result } = level(
      [
        onBolt(1200),
        { id: "t", reading: 1500, kind: "turning", place: at(60, 80) },
        { id: "u", setup: "2", reading: 900, kind: "turning", of: "t" },
      ],
      {},
      {
        setups: [
          { id: "1", name: "S1", ...accurate },
          { id: "2", name: "S2" },
        ],
      },
    );
    expect(result.setups[0]?.sigma).toBeCloseTo(0.005, 9);
  });

  it("takes the place of the point for the row that reads it again", () => {
    const { sigmas } = level(
      [
        onBolt(1200),
        { id: "t", reading: 1500, kind: "turning", place: at(60, 80) },
        { id: "u", setup: "2", reading: 900, kind: "turning", of: "t" },
        { id: "g", setup: "2", reading: 1000, place: at(60, 80) },
      ],
      accurate,
    );
    expect(sigmas.g).toBeCloseTo(0.005 * 2, 6);
  });

  it("adds up along a chain of set-ups as independent errors", () => {
    const shots: Draft[] = [
      onBolt(1200),
      { id: "t", reading: 1500, kind: "turning", place: at(60, 80) },
      { id: "u", setup: "2", reading: 900, kind: "turning", of: "t", place: at(60, 80) },
      { id: "g", setup: "2", reading: 1000, place: at(60, 80) },
    ];
    const { sigmas } = level(shots, accurate);
    expect(sigmas.t).toBeCloseTo(0.005 * Math.SQRT2, 6);
    expect(sigmas.g).toBeCloseTo(0.005 * 2, 6);
  });
});

describe("two or more shared points", () => {
  const shared = (offsets: readonly number[]): Draft[] => [
    onBolt(1000),
    ...offsets.map((_, i): Draft => ({ id: `a${i}`, reading: 1500 + 10 * i, kind: "turning" })),
    ...offsets.map(
      (off, i): Draft => ({
        id: `b${i}`,
        setup: "2",
        reading: 900 + 10 * i + off,
        kind: "turning",
        of: `a${i}`,
      }),
    ),
  ];

  it("are fitted, with the residual of each", () => {
    const { result } = level(shared([0, 3, -3]));
    expect(result.setups[1]?.beam).toBeCloseTo(30.4, 9);
    expect(result.setups[1]?.spread).toBeCloseTo(0.006, 9);
    const residuals = result.points.slice(4).map(({ shift }) => shift);
    expect(residuals).toEqual([0, -0.003, 0.003].map((r) => expect.closeTo(r, 9)));
  });

  it("give the mean of what each gives, whatever they are", () => {
    const offset = fc.integer({ min: -3, max: 3 });
    fc.assert(
      fc.property(fc.array(offset, { minLength: 1, maxLength: 8 }), (offsets) => {
        const mean = offsets.reduce((sum, off) => sum + off, 0) / offsets.length / 1000;
        expect(level(shared(offsets)).result.setups[1]?.beam).toBeCloseTo(30.4 + mean, 9);
      }),
    );
  });

  it("a set-up whose tie is missing keeps its shots and invents no height", () => {
    const { heights, problems } = level([onBolt(1000), { id: "lost", setup: "2", reading: 900 }]);
    expect(heights).toEqual({ m1: 30, lost: null });
    expect(problems.map(({ code }) => code)).toEqual(["setup-not-tied"]);
  });
});

describe("a run that comes back to its mark", () => {
  const loop = (closing: number): Draft[] => [
    onBolt(1000),
    { id: "t", reading: 1500, kind: "turning", place: at(0, 200) },
    { id: "u", setup: "2", reading: 900, kind: "turning", of: "t", place: at(0, 200) },
    onBolt(closing, "2"),
  ];

  it("is judged by the class that was chosen, by set-ups or by length", () => {
    const permitted = (more: object, setup: object = {}) =>
      level(loop(408), setup, more).result.closings[0]?.permitted;
    expect(permitted({})).toBeCloseTo(0.005 * Math.SQRT2, 9);
    expect(permitted({ misclosureClass: "earthwork" })).toBeCloseTo(0.012 * Math.SQRT2, 9);
    expect(permitted({ misclosureClass: "third" })).toBeNull();
    // Four sights of 100 m.
    expect(permitted({ misclosureClass: "third" }, { at: [0, 100] })).toBeCloseTo(0.012 * Math.sqrt(0.4), 9);
  });

  it("is asked about beyond that, not within", () => {
    const codes = (more: object) => level(loop(410), {}, more).problems.map(({ code }) => code);
    expect(codes({})).toEqual(["ties-disagree"]);
    expect(codes({ misclosureClass: "earthwork" })).toEqual([]);
  });
});

describe("each rod", () => {
  it("states its rule once, in words that fit its sense", () => {
    const rule = (rod: object) =>
      rodRule(surveySchema.parse({ setups: [{ id: "1", name: "", rod }] }).setups[0]?.rod ?? never()).rule;
    expect(rule({})).toContain("a bigger number is lower ground");
    expect(rule({ kind: "direct", reads: "up" })).toContain("higher ground");
    expect(rule({ kind: "cut-fill", reads: "up" })).toContain("plus is ground above it, to cut");
    expect(rule({ kind: "cut-fill", reads: "down" })).toContain("plus is ground below it, to fill");
    expect(rule({ kind: "line" })).toContain("up is minus");
    expect(rule({ offset: mm(40) })).toContain("The receiver's 40 mm is added");
  });
});

function never(): never {
  throw new Error("no set-up");
}

describe("a bumped laser", () => {
  /** The laser sinks by 50 mm between c and d: readings after it are 50 mm too small. */
  const day: readonly Draft[] = [
    onBolt(1000),
    { id: "a", reading: 1500 },
    { id: "good", reading: 1002, kind: "check", of: "bolt" },
    { id: "b", reading: 1600 },
    { id: "c", reading: 1700 },
    { id: "d", reading: 1750 },
    { id: "e", reading: 1850 },
    { id: "bad", reading: 950, kind: "check", of: "bolt" },
    { id: "f", reading: 1950 },
  ];
  const bumped = (from: string | null) => ({ bumps: [{ check: "bad", from }] });
  const truth = { a: 29.5, b: 29.4, c: 29.3, d: 29.2, e: 29.1, f: 29 };

  it("from a row that the user names: the shift applies from there on", () => {
    const { heights, result, problems } = level(day, bumped("d"));
    expect(heights).toMatchObject(truth);
    expect(result.setups[0]?.moves).toEqual([
      { check: "bad", from: "d", by: expect.closeTo(-0.05, 9), waiting: [] },
    ]);
    expect(problems).toMatchObject([{ code: "laser-moved", severity: "note" }]);
    expect(problems[0]?.what).toContain('50 mm (1¹⁵⁄₁₆″) down before shot "d"');
  });

  it("is as large as the two readings of its own set-up on the same point differ, whatever else ties it", () => {
    const { result, problems } = level(
      [
        onBolt(1000),
        { id: "p", reading: 1500 },
        { id: "q", reading: 1600 },
        { id: "p2", setup: "2", reading: 900, kind: "turning", of: "p" },
        { id: "q2", setup: "2", reading: 1005, kind: "turning", of: "q" },
        { id: "j", setup: "2", reading: 1200 },
        { id: "again", setup: "2", reading: 925, kind: "check", of: "p" },
        { id: "k", setup: "2", reading: 1225 },
      ],
      {},
      {
        setups: [
          { id: "1", name: "S1" },
          { id: "2", name: "S2", bumps: [{ check: "again", from: "again" }] },
        ],
      },
    );
    expect(result.setups[1]?.moves).toMatchObject([{ by: expect.closeTo(0.025, 9) }]);
    const by = new Map(result.points.map(({ shot, height }) => [shot, height ?? Number.NaN]));
    expect(by.get("k")).toBeCloseTo(by.get("j") ?? 0, 6);
    expect(problems.some(({ what }) => what.includes("25 mm"))).toBe(true);
  });

  it("unknown from where: all since the last good look wait, with no height", () => {
    for (const setup of [bumped(null), {}]) {
      const { heights, result, problems } = level(day, setup);
      expect(heights).toMatchObject({ a: 29.5, b: null, c: null, d: null, e: null, f: 29 });
      expect(result.points.filter(({ waiting }) => waiting).map(({ shot }) => shot)).toEqual([
        "b",
        "c",
        "d",
        "e",
      ]);
      expect(problems).toMatchObject([{ code: "laser-moved", severity: "error" }]);
      expect(problems[0]?.what).toContain("the 4 shots since the last good look wait");
    }
  });

  it("the message carries what may be done: rows to shoot again, from which row it moved, or that the look was misread", () => {
    const { problems } = level(day, {});
    const fixes = problems[0]?.fixes ?? [];
    expect(fixes.map(({ choice, words }) => [choice, words])).toEqual([
      [undefined, "Add rows: b and c again"],
      ...["b", "c", "d", "e", "bad"].map((row) => ["Bumped before", row]),
      [undefined, "Not bumped, misread: set it aside"],
    ]);
    expect(fixes[3]?.edits).toEqual([{ command: "survey.reportBump", args: { check: "bad", from: "d" } }]);
  });

  it("a small shift offers that nobody knows when, too", () => {
    const small = day.map((shot) => (shot.id === "bad" ? { ...shot, reading: 988 } : shot));
    expect(level(small).problems[0]?.fixes?.[0]).toEqual({
      words: "Bumped, nobody knows when",
      edits: [{ command: "survey.reportBump", args: { check: "bad", from: null } }],
    });
  });

  const again = (id: string, of: string, height: number): Draft => ({
    id,
    reading: Math.round(30_950 - height * 1000),
    kind: "check",
    of,
  });

  it("one shot again is not enough, two settle what lies beyond them", () => {
    const one = level([...day, again("x", "c", 29.3)], bumped(null));
    expect(one.heights).toMatchObject({ b: null, c: null, d: null, e: null });
    const two = level([...day, again("x", "c", 29.3), again("y", "d", 29.2)], bumped(null));
    expect(two.heights).toMatchObject(truth);
    expect(two.problems.filter(({ severity }) => severity === "error")).toEqual([]);
    const wide = level([...day, again("x", "b", 29.4), again("y", "e", 29.1)], bumped(null));
    expect(wide.heights).toMatchObject({ b: 29.4, c: null, d: null, e: 29.1 });
  });

  it("second looks that contradict a single step settle nothing", () => {
    // b as if after the step, c as if before it.
    const odd = level([...day, again("x", "b", 29.35), again("y", "c", 29.3)], bumped(null));
    expect(odd.heights).toMatchObject({ b: null, c: null, d: null, e: null });
  });

  it("a small shift is reported, and nothing waits unless the user says so", () => {
    const small = day.map((shot) => (shot.id === "bad" ? { ...shot, reading: 988 } : shot));
    const { heights, problems } = level(small);
    expect(heights.e).toBeCloseTo(29.15, 6);
    expect(problems).toMatchObject([{ code: "laser-moved", severity: "caution" }]);
  });

  it("found at once after the mark is asked about until the user says so", () => {
    const early: Draft[] = [
      onBolt(1000),
      { id: "bad", reading: 950, kind: "check", of: "bolt" },
      { id: "f", reading: 1950 },
    ];
    expect(level(early).problems).toMatchObject([{ code: "laser-moved", severity: "caution" }]);
    expect(level(early, bumped(null)).problems).toMatchObject([{ code: "laser-moved", severity: "note" }]);
    expect(level(early).heights.f).toBe(29);
  });

  it("twice in one day", () => {
    const { heights } = level(
      [
        ...day,
        { id: "g", reading: 1900 },
        { id: "h", reading: 1980 },
        { id: "worse", reading: 880, kind: "check", of: "bolt" },
        { id: "i", reading: 1880 },
      ],
      {
        bumps: [
          { check: "bad", from: "d" },
          { check: "worse", from: "h" },
        ],
      },
    );
    expect(heights).toMatchObject({ ...truth, g: 29.05, h: 28.9, i: 29 });
  });

  it("wherever the step is, naming its row gives back the true heights", () => {
    const ground = fc.array(fc.integer({ min: 200, max: 4000 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(
        ground,
        fc.integer({ min: 0, max: 7 }),
        fc.integer({ min: -150, max: 150 }),
        (depths, row, step) => {
          const first = Math.min(row, depths.length - 1);
          const shots: Draft[] = [
            onBolt(1000),
            ...depths.map((depth, i): Draft => ({ id: `g${i}`, reading: depth + (i >= first ? step : 0) })),
            { id: "bad", reading: 1000 + step, kind: "check", of: "bolt" },
          ];
          const { heights } = level(shots, { bumps: [{ check: "bad", from: `g${first}` }] });
          depths.forEach((depth, i) => {
            expect(heights[`g${i}`]).toBeCloseTo(31 - depth / 1000, 6);
          });
        },
      ),
    );
  });
});

describe("the survey as a level book", () => {
  it("a laser that was bumped is a set-up of its own from there, and gives the heights that the survey gives", () => {
    const { survey, result } = level(
      [
        onBolt(1000),
        { id: "a", reading: 1500 },
        { id: "b", reading: 1600 },
        { id: "again", reading: 1525, kind: "check", of: "a" },
        { id: "c", reading: 1725 },
      ],
      { bumps: [{ check: "again", from: "again" }] },
    );
    const reduced = reduceLevelBook(surveyBook(survey));
    if (!reduced.ok) throw new Error("not reduced");
    const run = new Map(reduced.book.points.map(({ name, adjusted }) => [name, adjusted]));
    for (const { name, height } of result.points.filter(({ kind }) => kind === "ground"))
      expect(run.get(name)).toBeCloseTo(height ?? 0, 9);
    expect(run.get("c")).toBeCloseTo(29.3, 9);
  });

  it("backsight on the mark, turning points with both sights in one row, a closing foresight", () => {
    const { survey } = level(
      [
        onBolt(1216),
        { id: "a", reading: 25 },
        { id: "t", reading: 2508, kind: "turning" },
        { id: "b", reading: 1555 },
        { id: "u", setup: "2", reading: 1386, kind: "turning", of: "t" },
        { id: "end", setup: "2", reading: 3625 },
      ],
      {},
    );
    expect(
      surveyBook(survey).map(({ point, bs, is, fs, elevation }) => [point, bs, is, fs, elevation]),
    ).toEqual([
      ["Bolt", 1.216, null, null, 30],
      ["a", null, 0.025, null, null],
      ["b", null, 1.555, null, null],
      ["t", 1.386, null, 2.508, null],
      ["end", null, null, 3.625, null],
    ]);
  });
});
