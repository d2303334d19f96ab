import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LevelBook, type LevelBookRow, reduceLevelBook } from "../../src/survey";

type Sight = readonly [
  point: string,
  bs: number | null,
  is: number | null,
  fs: number | null,
  elevation?: number,
];

function rows(sights: readonly Sight[]): LevelBookRow[] {
  return sights.map(([point, bs, is, fs, elevation], i) => ({
    line: i + 2,
    point,
    bs,
    is,
    fs,
    elevation: elevation ?? null,
  }));
}

function reduce(sights: readonly Sight[]): LevelBook {
  const reduced = reduceLevelBook(rows(sights));
  if (!reduced.ok) throw new Error(JSON.stringify(reduced.faults));
  return reduced.book;
}

function faults(sights: readonly Sight[]) {
  const reduced = reduceLevelBook(rows(sights));
  if (reduced.ok) throw new Error("was accepted");
  return reduced.faults;
}

const _ = null;

describe("a run from one benchmark", () => {
  const book = reduce([
    ["BM", 1.5, _, _, 100],
    ["a", _, 2.5, _],
    ["TP", 0.7, _, 1.9],
    ["b", _, 0.2, _],
    ["end", _, _, 1.1],
  ]);

  it("reduces by height of instrument", () => {
    // 100 + 1.5 = 101.5; a 99; TP 99.6; 99.6 + 0.7 = 100.3; b 100.1; end 99.2
    expect(book.setups).toEqual([
      { hi: 101.5, on: "BM" },
      { hi: 100.3, on: "TP" },
    ]);
    expect(book.points.map((point) => [point.name, point.elevation])).toEqual([
      ["BM", 100],
      ["a", 99],
      ["TP", 99.6],
      ["b", 100.1],
      ["end", 99.2],
    ]);
  });

  it("isn't closed: no misclosure, nothing to adjust", () => {
    expect(book.misclosure).toBeNull();
    expect(book.closings).toEqual([]);
    expect(book.points.every((point) => point.adjusted === point.elevation)).toBe(true);
  });

  it("checks the page", () => {
    expect([book.sumBs, book.sumFs, book.pageCheck]).toEqual([2.2, 3, true]);
  });
});

describe("a run closed on a second known elevation", () => {
  it("shares the misclosure equally over the set-ups, side shots with their set-up", () => {
    const book = reduce([
      ["BM1", 1, _, _, 50],
      ["a", _, 2, _],
      ["TP1", 1, _, 2],
      ["b", _, 2, _],
      ["TP2", 1, _, 2],
      ["BM2", _, _, 2, 46.97],
    ]);
    // found 47, known 46.97: 0.03 too high, 0.01 a set-up
    expect(book.misclosure).toBe(0.03);
    expect(book.points.map((point) => point.elevation)).toEqual([50, 49, 49, 48, 48, 47]);
    expect(book.points.map((point) => point.adjusted)).toEqual([50, 48.99, 48.99, 47.98, 47.98, 46.97]);
    expect(book.setups.map((setup) => setup.hi)).toEqual([51, 50, 49]);
  });

  it("may close on a turning point, with the run going on from the height as found", () => {
    const book = reduce([
      ["BM1", 1, _, _, 50],
      ["BM2", 1, _, 2, 48.98],
      ["c", _, 3, _],
      ["end", _, _, 2],
    ]);
    expect(book.misclosure).toBe(0.02);
    expect(book.setups.map((setup) => setup.hi)).toEqual([51, 50]);
    expect(book.points.map((point) => point.elevation)).toEqual([50, 49, 47, 48]);
    // beyond the last known elevation the correction stays
    expect(book.points.map((point) => point.adjusted)).toEqual([50, 48.98, 46.98, 47.98]);
  });

  it("may close on a side shot", () => {
    const book = reduce([
      ["BM1", 1, _, _, 50],
      ["TP", 1, _, 2],
      ["BM2", _, 2, _, 47.98],
    ]);
    expect(book.misclosure).toBe(0.02);
    expect(book.points.map((point) => point.adjusted)).toEqual([50, 48.99, 47.98]);
  });

  it("holds the turning point rather than the side shot where one set-up read two known heights", () => {
    const sideFirst: Sight[] = [
      ["BM1", 1, _, _, 50],
      ["BM2", _, 2, _, 48.9],
      ["BM3", _, _, 3, 47.98],
    ];
    const book = reduce(sideFirst);
    expect(book.closings.map((closing) => closing.misclosure)).toEqual([0.1, 0.02]);
    expect(book.points.map((point) => point.adjusted)).toEqual([50, 48.98, 47.98]);
  });

  it("keeps each of several known elevations, and reports every closing", () => {
    const book = reduce([
      ["BM1", 1, _, _, 50],
      ["TP", 1, _, 2],
      ["BM2", 1, _, 2, 47.98],
      ["BM3", _, _, 2, 47.01],
    ]);
    expect(book.closings).toEqual([
      { name: "BM2", known: 47.98, found: 48, misclosure: 0.02 },
      { name: "BM3", known: 47.01, found: 47, misclosure: -0.01 },
    ]);
    expect(book.misclosure).toBe(-0.01);
    expect(book.points.map((point) => point.adjusted)).toEqual([50, 48.99, 47.98, 47.01]);
  });

  it("reports a run that closes to the last figure as closed, with no misclosure", () => {
    const book = reduce([
      ["BM", 0.1, _, _, 10.1],
      ["TP", 0.2, _, 0.2],
      ["BM", _, _, 0.1, 10.1],
    ]);
    expect(book.misclosure).toBe(0);
    expect(book.points.map((point) => point.adjusted)).toEqual([10.1, 10, 10.1]);
  });
});

describe("books that are kept in other ways", () => {
  it("the benchmark stands in the middle of the book", () => {
    const book = reduce([
      ["start", 1, _, _],
      ["BM", _, 0.5, _, 100],
      ["end", _, _, 2],
    ]);
    expect(book.setups).toEqual([{ hi: 100.5, on: "start" }]);
    expect(book.points.map((point) => point.elevation)).toEqual([99.5, 100, 98.5]);
    expect(book.misclosure).toBeNull();
  });

  it("a turning point takes two rows", () => {
    const split = reduce([
      ["BM", 1, _, _, 50],
      ["TP", _, _, 2],
      ["TP", 1.5, _, _],
      ["end", _, _, 2],
    ]);
    expect(split.setups.map((setup) => setup.hi)).toEqual([51, 50.5]);
    expect(split.points.map((point) => point.elevation)).toEqual([50, 49, 49, 48.5]);
    expect(split.pageCheck).toBe(true);
  });

  it("a second benchmark starts a second run", () => {
    const book = reduce([
      ["BM1", 1, _, _, 50],
      ["a", _, 2, _],
      ["BM9", 1, _, _, 80],
      ["b", _, 2, _],
      ["BM8", _, _, 3, 78.02],
    ]);
    expect(book.setups.map((setup) => setup.hi)).toEqual([51, 81]);
    expect(book.points.map((point) => point.elevation)).toEqual([50, 49, 80, 79, 78]);
    expect(book.misclosure).toBe(-0.02);
    expect(book.points.map((point) => point.adjusted)).toEqual([50, 49, 80, 79.02, 78.02]);
    expect(book.pageCheck).toBe(true);
  });

  it("only side shots: checked against the height of instrument", () => {
    const book = reduce([
      ["BM", 1, _, _, 50],
      ["a", _, 2, _],
    ]);
    expect([book.sumBs, book.sumFs, book.pageCheck]).toEqual([1, 0, true]);
  });
});

describe("rows that can't be reduced are named", () => {
  it("a book that starts with no bs has one fault, not one a row", () => {
    const sights: Sight[] = [
      ["a", _, 1, _],
      ["b", _, 2, _],
      ["c", _, _, 3],
    ];
    expect(faults(sights)).toHaveLength(1);
  });

  it.each<[string, Sight[], number, string, string]>([
    ["an is before any bs", [["a", _, 1, _]], 2, "is", "before any set-up has a bs"],
    ["an fs before any bs", [["a", _, _, 1, 50]], 2, "fs", "before any set-up has a bs"],
    ["a turning point before any bs", [["a", 1, _, 1, 50]], 2, "fs", "before any set-up has a bs"],
    [
      "no reading",
      [
        ["BM", 1, _, _, 50],
        ["a", _, _, _],
      ],
      3,
      "bs",
      "no reading in this row",
    ],
    [
      "is and fs in one row",
      [
        ["BM", 1, _, _, 50],
        ["a", _, 1, 1],
      ],
      3,
      "is",
      "an is beside the fs",
    ],
    [
      "is and bs in one row",
      [
        ["BM", 1, _, _, 50],
        ["a", 1, 1, _],
      ],
      3,
      "is",
      "an is beside the bs",
    ],
    [
      "a side shot after the fs",
      [
        ["BM", 1, _, _, 50],
        ["a", _, _, 1],
        ["b", _, 1, _],
      ],
      4,
      "is",
      "after the set-up ended with its fs",
    ],
    [
      "two fs",
      [
        ["BM", 1, _, _, 50],
        ["a", _, _, 1],
        ["b", _, _, 1],
      ],
      4,
      "fs",
      "side shots go under is",
    ],
    [
      "no known elevation",
      [
        ["BM", 1, _, _],
        ["a", _, 1, _],
      ],
      2,
      "elevation",
      "no known elevation",
    ],
    [
      "a bs on a point without a height",
      [
        ["BM", 1, _, _, 50],
        ["a", _, 1, _],
        ["a", 1, _, _],
        ["b", _, _, 1],
      ],
      4,
      "elevation",
      "or an fs in this row, if it is a turning point",
    ],
  ])("%s", (_what, sights, line, column, what) => {
    expect(faults(sights)).toMatchObject([{ line, column }]);
    expect(faults(sights)[0]?.what).toContain(what);
  });
});

describe("for any run", () => {
  const reading = fc.integer({ min: 0, max: 4500 }).map((mm) => mm / 1000);
  const leg = fc.record({ back: reading, sides: fc.array(reading, { maxLength: 3 }), fore: reading });
  const legs = fc.array(leg, { minLength: 1, maxLength: 10 });
  const height = fc.integer({ min: -50_000, max: 500_000 }).map((mm) => mm / 1000);
  type Leg = { back: number; sides: number[]; fore: number };

  function book(run: readonly Leg[], start: number, end?: number): Sight[] {
    const sights: Sight[] = [];
    run.forEach(({ back, sides, fore }, i) => {
      if (i === 0) sights.push(["start", back, _, _, start]);
      for (const side of sides) sights.push([`s${i}`, _, side, _]);
      const next = run[i + 1]?.back ?? null;
      const known = next === null && end !== undefined;
      sights.push(known ? [`t${i}`, next, _, fore, end] : [`t${i}`, next, _, fore]);
    });
    return sights;
  }

  it("the page checks, and last - first is the same by rises and falls", () => {
    fc.assert(
      fc.property(legs, height, (run, start) => {
        const { points, sumBs, sumFs, pageCheck } = reduce(book(run, start));
        expect(pageCheck).toBe(true);
        const first = points[0]?.elevation ?? Number.NaN;
        expect((points.at(-1)?.elevation ?? Number.NaN) - first).toBeCloseTo(sumBs - sumFs, 8);
        const rises = run.flatMap(({ back, sides, fore }) => {
          const readings = [back, ...sides, fore];
          return readings.slice(1).map((next, i) => (readings[i] ?? 0) - next);
        });
        expect(rises.reduce((a, b) => a + b, 0)).toBeCloseTo(sumBs - sumFs, 8);
      }),
    );
  });

  it("closing: the mark gets its known height, each set-up the same share, nothing else moves", () => {
    fc.assert(
      fc.property(legs, height, fc.integer({ min: -50, max: 50 }), (run, start, miss) => {
        const open = reduce(book(run, start));
        const found = open.points.at(-1)?.elevation ?? Number.NaN;
        const closed = reduce(book(run, start, found - miss / 1000));
        expect(closed.misclosure).toBeCloseTo(miss / 1000, 9);
        expect(closed.setups).toEqual(open.setups);
        expect(closed.points.map((point) => point.elevation)).toEqual(
          open.points.map((point) => point.elevation),
        );
        let setup = 0;
        for (const point of closed.points) {
          if (/^[st]\d/.test(point.name)) setup = Number(point.name.slice(1)) + 1;
          const share = (-miss / 1000) * (setup / run.length);
          expect(point.adjusted - point.elevation).toBeCloseTo(share, 9);
        }
      }),
    );
  });
});
