import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { surveySchema } from "../../src/document/schema";
import { leaveOneOut, levelSurvey } from "../../src/survey";
import { parseLength } from "../../src/units";

/** A slope of 5 % with a little unevenness, shot on a grid of 5 m; readings in inches to an eighth. */
const height = (x: number, y: number) => 30 + 0.05 * x - 0.03 * y + 0.015 * Math.sin(3 * x + 5 * y);
const beam = 33;

interface Change {
  readonly row: number;
  readonly text?: string;
  readonly accepted?: boolean;
  readonly take?: number;
}

const eighths = (m: number) => {
  const parts = Math.round((m / 0.0254) * 8);
  return `${Math.floor(parts / 8)} ${parts % 8}/8`;
};
const places = Array.from({ length: 36 }, (_, i) => [5 * (i % 6), 5 * Math.floor(i / 6)] as const);
const readingAt = (row: number) => {
  const [x, y] = places[row] ?? [0, 0];
  return eighths(beam - height(x, y));
};

function level(changes: readonly Change[], reads: "down" | "up" = "down") {
  const shots = places.map(([x, y], row) => {
    const { text: typed, accepted = false, take } = changes.find((change) => change.row === row) ?? { row };
    const text = typed ?? readingAt(take ?? row);
    const parsed = parseLength(text, "in");
    if (!parsed.ok) throw new Error(parsed.message);
    const m = reads === "up" ? beam - parsed.m - 28 : parsed.m;
    const reading = reads === "up" ? { text: `${m.toFixed(3)} m`, m: Number(m.toFixed(3)) } : { text, m };
    return { id: `s${row}`, name: `${row}`, setup: "1", reading, accepted, place: { kind: "at", x, y } };
  });
  const zero = { text: "", m: reads === "up" ? 28 : beam };
  const survey = surveySchema.parse({
    setups: [
      { id: "1", name: "S1", assumedBeam: zero, rod: reads === "up" ? { kind: "direct", reads } : {} },
    ],
    shots,
  });
  return levelSurvey(survey, []).problems.filter(({ code }) => code === "shot-odd");
}

const inches = (row: number, more: number) => {
  const parsed = parseLength(readingAt(row), "in");
  return parsed.ok ? eighths(parsed.m + more * 0.0254) : "";
};

describe("shots that don't fit their neighbours", () => {
  it("are none on even ground", () => expect(level([])).toEqual([]));

  it("are none where the ground bends: a gentle top over a steeper bank, three shots a row", () => {
    const foot = 0.3048;
    const shots = [-30, -70, -100, -125].flatMap((y, row) =>
      [20, 60, 100].map((x, column) => {
        const text = `${(([61, 68, 82, 94][row] ?? 0) + ([0, 0.5, -0.25][column] ?? 0)).toString()}"`;
        const parsed = parseLength(text, "in");
        if (!parsed.ok) throw new Error(parsed.message);
        return {
          id: `s${row}${column}`,
          name: `${row}${column}`,
          setup: "1",
          reading: { text, m: parsed.m },
          place: { kind: "at", x: x * foot, y: y * foot },
        };
      }),
    );
    const survey = surveySchema.parse({
      setups: [{ id: "1", name: "S1", assumedBeam: { text: "", m: 31.7 } }],
      shots,
    });
    expect(levelSurvey(survey, []).problems.filter(({ code }) => code === "shot-odd")).toEqual([]);
  });

  it("no slip of the hand is guessed at in a figure that a program wrote", () => {
    const written = parseLength(inches(14, -40), "in");
    const m = written.ok ? written.m : 0;
    const [problem] = level([{ row: 14, text: `${m.toFixed(6)} m` }]);
    expect(problem?.what).toContain("than its neighbours make likely");
    expect(problem?.fixes?.map(({ words }) => words)).toEqual(["Set it aside", "Accept it as it is"]);
  });

  it("a foot off, either way, at the edge as amid the others", () => {
    for (const [row, more, words] of [
      [14, -12, "a foot too small"],
      [14, 12, "a foot too large"],
      [33, -12, "a foot too small"],
    ] as const) {
      const problems = level([{ row, text: inches(row, more) }]);
      expect(problems).toMatchObject([{ severity: "caution", where: `shot "${row}"`, ids: [`s${row}`] }]);
      expect(problems[0]?.what).toContain(words);
      const [mend, aside, accept] = problems[0]?.fixes ?? [];
      const right = parseLength(readingAt(row), "in");
      expect(mend?.edits).toEqual([
        {
          command: "survey.correctReading",
          args: { id: `s${row}`, m: expect.closeTo(right.ok ? right.m : 0, 2) },
        },
      ]);
      expect(aside?.edits[0]).toEqual({ command: "survey.setAside", args: { id: `s${row}`, aside: true } });
      expect(accept?.edits[0]).toEqual({ command: "survey.acceptShot", args: { id: `s${row}` } });
    }
  });

  it("the same where the rod reads up", () => {
    const problems = level([{ row: 14, text: inches(14, 12) }], "up");
    expect(problems[0]?.what).toContain("a foot too small");
    expect(problems).toHaveLength(1);
  });

  it("digits exchanged, with the reading that was meant", () => {
    // Row 14 reads 103 4/8 or so; typed 130.
    const typed = readingAt(14)
      .replace("10", "01")
      .replace(/^01(\d)/, "1$10");
    const problems = level([{ row: 14, text: typed }]);
    expect(problems[0]?.what).toContain(`Two digits are exchanged: ${readingAt(14)}.`);
  });

  it("inches typed as feet, and feet as inches", () => {
    const parsed = parseLength(readingAt(14), "in");
    const feet = `${(parsed.ok ? parsed.m / 0.3048 : 0).toFixed(2)}`;
    expect(level([{ row: 14, text: feet }])[0]?.what).toContain("feet read as inches");
    const number = `${(parsed.ok ? parsed.m / 0.0254 : 0).toFixed(2)} ft`;
    expect(level([{ row: 14, text: number }])[0]?.what).toContain("inches read as feet");
  });

  it("two rows exchanged: one question for both, and one click", () => {
    const problems = level([
      { row: 17, take: 18 },
      { row: 18, take: 17 },
    ]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ ids: ["s17", "s18"] });
    expect(problems[0]?.what).toContain("the two rows seem exchanged");
    expect(problems[0]?.fixes?.[0]?.edits).toHaveLength(2);
  });

  it("one that nothing explains is asked about, a ditch isn't, and what was accepted is not asked about again", () => {
    const [odd] = level([{ row: 14, text: inches(14, 25) }]);
    expect(odd?.what).not.toContain("too");
    expect(odd?.fixes?.map(({ words }) => words)).toEqual(["Set it aside", "Accept it as it is"]);
    expect(level([{ row: 14, text: inches(14, 16.3) }])).toEqual([]);
    expect(level([{ row: 14, text: inches(14, 25), accepted: true }])).toEqual([]);
  });
});

describe("leave-one-out", () => {
  const coordinate = fc.integer({ min: 0, max: 40_000 }).map((v) => v / 1000);
  const spots = fc.array(fc.tuple(coordinate, coordinate), { minLength: 8, maxLength: 80 });

  it("finds a plane exactly, whatever lies on it, and in any order", () => {
    fc.assert(
      fc.property(spots, (places_) => {
        const plane = places_.map(([x, y]) => ({ x, y, z: 12 + 0.1 * x - 0.04 * y }));
        for (const found of leaveOneOut(plane)) if (found) expect(Math.abs(found.off)).toBeLessThan(1e-6);
      }),
    );
  });

  it("an odd shot is off by what it is off, and hardly sways its neighbours", () => {
    const many = Array.from({ length: 100 }, (_, i) => {
      const [x, y] = [(i % 10) * 4, Math.floor(i / 10) * 4];
      return { x, y, z: 12 + 0.1 * x + (i === 44 ? 1 : 0) };
    });
    const found = leaveOneOut(many);
    expect(found[44]?.off).toBeCloseTo(1, 6);
    expect(Math.max(...found.map((each, i) => (i === 44 ? 0 : Math.abs(each?.off ?? 0))))).toBeLessThan(0.05);
  });

  it("says nothing with too few, in a line, or all at one place", () => {
    const line = Array.from({ length: 20 }, (_, i) => ({ x: i, y: 2 * i, z: 3 }));
    expect(leaveOneOut(line).every((each) => each === null)).toBe(true);
    expect(leaveOneOut(line.slice(0, 7))).toEqual(Array(7).fill(null));
    const heap = Array.from({ length: 12 }, (_, i) => ({ x: 1, y: 1, z: i }));
    expect(leaveOneOut(heap).every((each) => each === null)).toBe(true);
  });
});
