/**
 * Level, rod and beam against printed examples: curvature and refraction, the two-peg check, permitted misclosures, the
 * page by rise and fall, a run that is adjusted.
 */
import { describe, expect, it } from "vitest";
import { surveySchema } from "../../src/document/schema";
import {
  bookPage,
  curvatureAndRefraction,
  type LevelBookRow,
  levelSurvey,
  misclosureClasses,
  permittedMisclosure,
  reciprocalDifference,
  reduceLevelBook,
  surveyBook,
  twoPegCheck,
} from "../../src/survey";

type Row = readonly [
  point: string,
  bs: number | null,
  is: number | null,
  fs: number | null,
  elevation?: number,
];
const _ = null;
const book = (rows: readonly Row[]): LevelBookRow[] =>
  rows.map(([point, bs, is, fs, elevation = null], i) => ({ line: i + 2, point, bs, is, fs, elevation }));

// A surveying textbook's solved examples 5.1 and 5.2 (book believed to be N. N. Basak, Surveying and Levelling), by the
// code of FOSSEE Scilab Textbook Companion 3782; m.
describe("curvature and refraction", () => {
  it("2.525 at 150 m and 1.755 at 100 m: corrected 2.523 and 1.754", () => {
    expect(Math.abs(2.525 - curvatureAndRefraction(150) - 2.523)).toBeLessThan(0.0006);
    expect(Math.abs(1.755 - curvatureAndRefraction(100) - 1.754)).toBeLessThan(0.0006);
  });

  it("30 km: 60.57 m", () => expect(curvatureAndRefraction(30_000)).toBeCloseTo(60.57, 2));

  // The same in feet as printed for field use: 0.021 K², K in thousands of feet.
  it("1000 ft: 0.021 ft", () => {
    expect(Math.abs(curvatureAndRefraction(304.8) / 0.3048 - 0.021)).toBeLessThan(0.0006);
  });

  // Example 5.10 of the same companion: 0.0168 m in 500 m.
  it("500 m: 0.0168 m", () => expect(curvatureAndRefraction(500)).toBeCloseTo(0.0168, 4));
});

// The same companion, examples 5.9, 5.10, 5.11 and 5.14; m.
describe("two-peg check", () => {
  it("from the middle, then near A: the line points up by 0.085 in 100", () => {
    const first = { a: 1.585, b: 1.225, toA: 50, toB: 50 };
    const found = twoPegCheck(first, { a: 1.425, b: 1.15, toA: 0, toB: 100 });
    expect(found?.trueDifference).toBeCloseTo(0.36, 9);
    expect(found?.correct.b).toBeCloseTo(1.065, 9);
    expect((found?.error ?? 0) * 100).toBeCloseTo(0.085, 9);
  });

  it("near one, then near the other: it points down by 0.015 in the length between", () => {
    const nearA = { a: 1.725, b: 1.37, toA: 0, toB: 80 };
    const found = twoPegCheck(nearA, { a: 1.56, b: 1.235, toA: 80, toB: 0 });
    expect(found?.trueDifference).toBeCloseTo(0.34, 9);
    expect(found?.correct.a).toBeCloseTo(1.575, 9);
    expect((found?.error ?? 0) * 80).toBeCloseTo(-0.015, 9);
  });

  it("reciprocal levelling over a river: B below A", () => {
    expect(reciprocalDifference({ a: 2.245, b: 3.375 }, { a: 1.955, b: 3.055 })).toBeCloseTo(-1.115, 9);
    expect(125.55 + reciprocalDifference({ a: 2.245, b: 3.375 }, { a: 1.955, b: 3.055 })).toBeCloseTo(
      124.435,
      9,
    );
    expect(525.5 + reciprocalDifference({ a: 1.155, b: 2.595 }, { a: 0.985, b: 2.415 })).toBeCloseTo(
      524.065,
      9,
    );
  });

  it("says nothing where both set-ups have the same sights", () => {
    const same = { a: 1, b: 2, toA: 10, toB: 20 };
    expect(twoPegCheck(same, { ...same, a: 1.1 })).toBeNull();
  });
});

// Ghilani & Wolf, Elementary Surveying, 14th ed., problems 5.12 and 5.37 (data; the constants of FGCC 1984 from memory).
describe("permitted misclosure", () => {
  const permitted = (id: string, length: number) => {
    const found = misclosureClasses.find((each) => each.id === id);
    return found ? (permittedMisclosure(found, { setups: 5, length }) ?? 0) * 1000 : null;
  };

  it("12 √20 km, 4 √30 km, 12 and 8 √1.5 km", () => {
    expect(permitted("third", 20_000)).toBeCloseTo(53.7, 1);
    expect(permitted("first-1", 30_000)).toBeCloseTo(21.9, 1);
    expect(permitted("third", 1500)).toBeCloseTo(14.7, 1);
    expect(permitted("second-2", 1500)).toBeCloseTo(9.8, 1);
  });

  it("a loop of 1.5 km that misses by 10 mm passes third order and fails second order, class II", () => {
    const BS = [4.388, 6.907, 4.68, 3.73, 8.464];
    const FS = [4.538, 8.8, 5.978, 5.245, 3.598];
    const points = ["BM7", "TP1", "BM8", "TP2", "TP3", "BM7"];
    const rows = points.map((point, i): Row => {
      const ends = i === 0 || i === BS.length ? 852.045 : undefined;
      return [point, BS[i] ?? _, _, i === 0 ? _ : (FS[i - 1] ?? _), ends];
    });
    const reduced = reduceLevelBook(book(rows));
    const misclosure = reduced.ok ? (reduced.book.misclosure ?? 0) : Number.NaN;
    expect(misclosure).toBeCloseTo(0.01, 9);
    expect(misclosure * 1000).toBeLessThan(permitted("third", 1500) ?? 0);
    expect(misclosure * 1000).toBeGreaterThan(permitted("second-2", 1500) ?? 0);
    expect(reduced.ok && reduced.book.points.map(({ elevation }) => elevation)).toEqual([
      852.045, 851.895, 850.002, 848.704, 847.189, 852.055,
    ]);
  });

  it("asks for a length where the class goes by length", () => {
    const third = misclosureClasses.find(({ id }) => id === "third");
    expect(third && permittedMisclosure(third, { setups: 4, length: null })).toBeNull();
    const site = misclosureClasses.find(({ id }) => id === "site");
    expect(site && permittedMisclosure(site, { setups: 4, length: null })).toBeCloseTo(0.01, 9);
  });
});

// The same companion, example 5.16: three set-ups, sums as printed; m. The order of the rows follows from its differences.
describe("a page by rise and fall", () => {
  const rows = book([
    ["1", 2.375, _, _, 100],
    ["2", _, 1.73, _],
    ["3", _, 0.615, _],
    ["4", 2.835, _, 3.45],
    ["5", _, 2.07, _],
    ["6", _, 1.835, _],
    ["7", 0.435, _, 0.985],
    ["8", _, 1.63, _],
    ["9", _, 2.255, _],
    ["10", _, _, 3.63],
  ]);

  it("sums and page check", () => {
    const made = bookPage(rows);
    if (!made.ok) throw new Error("not reduced");
    expect(made.page.sums).toEqual({ bs: 5.645, fs: 8.065, rise: 3.61, fall: 6.03 });
    expect(made.page.lastMinusFirst).toBeCloseTo(-2.42, 9);
    expect(made.page.checks).toBe(true);
  });

  it("both forms give the same heights", () => {
    const made = bookPage(rows);
    if (!made.ok) throw new Error("not reduced");
    let byRise = 100;
    for (const { rise, fall, found } of made.page.rows) {
      byRise += (rise ?? 0) - (fall ?? 0);
      expect(byRise).toBeCloseTo(found, 9);
    }
    expect(made.page.rows.map(({ hi }) => hi).filter((hi) => hi !== null)).toEqual([102.375, 101.76, 101.21]);
  });
});

// R. Rode, "Collimation method explained" (survey training handout): 6 set-ups, +0.007 to each; m.
describe("an adjusted run", () => {
  const rows: readonly Row[] = [
    ["BM1", 1.216, _, _, 106.366],
    ["a", _, 0.025, _],
    ["b", _, 1.555, _],
    ["CP1", 1.386, _, 2.508],
    ["c", _, 3.625, _],
    ["CP2", 1.235, _, 1.196],
    ["CP3", 3.655, _, 3.566],
    ["CP4", 2.126, _, 0.506],
    ["d", _, 2.605, _],
    ["e", _, 1.094, _],
    ["CP5", 1.125, _, 3.628],
    ["f", _, 1.394, _],
    ["BM2", _, _, 0.484, 105.263],
  ];
  const final = [
    106.366, 107.564, 106.034, 105.081, 102.849, 105.278, 102.954, 106.11, 105.638, 107.149, 104.615, 104.353,
    105.263,
  ];

  /** The same page as set-ups and shots of a project. It misses by more than our classes permit: it is accepted, as in print. */
  function asSurvey() {
    const m = (value: number) => ({ text: `${value} m`, m: value });
    const shots: object[] = [];
    let setup = 0;
    for (const [point, bs, is, fs, elevation] of rows) {
      const mark = elevation === undefined ? {} : { kind: "mark", of: point };
      const turning = elevation === undefined ? { kind: "turning" } : mark;
      if (is !== null) shots.push({ id: point, name: point, setup: `${setup}`, reading: m(is) });
      const accepted = { accepted: elevation !== undefined };
      if (fs !== null)
        shots.push({ id: point, name: point, setup: `${setup}`, reading: m(fs), ...turning, ...accepted });
      if (bs === null) continue;
      setup++;
      const tie = fs === null ? mark : { kind: "turning", of: point };
      shots.push({ id: `${point}'`, name: point, setup: `${setup}`, reading: m(bs), ...tie });
    }
    const marks = rows.flatMap(([name, , , , elevation]) =>
      elevation === undefined ? [] : [{ id: name, name, height: m(elevation) }],
    );
    const setups = Array.from({ length: setup }, (_each, i) => ({ id: `${i + 1}`, name: `S${i + 1}` }));
    return surveySchema.parse({ marks, setups, shots });
  }

  it("equal shares a set-up, as printed", () => {
    const reduced = reduceLevelBook(book(rows));
    expect(reduced.ok && reduced.book.misclosure).toBeCloseTo(-0.042, 9);
    const adjusted = reduced.ok ? reduced.book.points.map((point) => point.adjusted) : [];
    adjusted.forEach((value, i) => {
      expect(Math.abs(value - (final[i] ?? 0))).toBeLessThan(0.0006);
    });
  });

  it("by distance it is the same where all set-ups are equally long, and else in proportion", () => {
    const long = (length: (i: number) => number) =>
      book(rows).map((row, i) => (row.fs === null ? row : { ...row, distance: length(i) }));
    const byDistance = (length: (i: number) => number) => {
      const reduced = reduceLevelBook(long(length), "distance");
      return reduced.ok ? reduced.book : null;
    };
    expect(byDistance(() => 60)?.points.map((p) => p.adjusted)).toEqual(
      final.map((value) => expect.closeTo(value, 2)),
    );
    const uneven = byDistance((i) => (i === 3 ? 250 : 50));
    // CP1 ends half of the way of 500: half of +0.042.
    expect((uneven?.points[3]?.adjusted ?? 0) - (uneven?.points[3]?.elevation ?? 0)).toBeCloseTo(0.021, 9);
    expect(uneven?.spread).toBe("distance");
    expect(byDistance((i) => (i === 3 ? Number.NaN : 50))?.spread).toBeUndefined();
  });

  it("the survey gives every point the same height, side shots too, in each of its rows", () => {
    const { result } = levelSurvey(asSurvey(), []);
    const heights = new Map(result.points.map((point) => [point.shot, point.height ?? Number.NaN]));
    rows.forEach(([name, bs, , fs], i) => {
      const read = bs !== null && fs !== null ? [name, `${name}'`] : bs === null ? [name] : [`${name}'`];
      for (const shot of read)
        expect(Math.abs((heights.get(shot) ?? 0) - (final[i] ?? 0))).toBeLessThan(0.0006);
    });
    expect(result.closings).toMatchObject([
      { setup: "6", shot: "BM2", misclosure: expect.closeTo(-0.042, 9), setups: 6 },
    ]);
  });

  it("the project's set-ups make the same page", () => {
    const page = surveyBook(asSurvey()).map(({ point, bs, is, fs, elevation }) => [
      point,
      bs,
      is,
      fs,
      ...(elevation === null ? [] : [elevation]),
    ]);
    expect(page).toEqual(rows);
  });
});
