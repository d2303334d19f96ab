import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foundationSchema } from "../../src/document/schema";
import { stepPieces } from "../../src/foundation";
import { flat, inch, onGround, plane } from "./sites";

const millimetres = (min: number, max: number) => fc.integer({ min, max }).map((mm) => mm / 1000);

/** A round of 40 m with random heights asked for at every metre. */
const demands = fc.record({
  heights: fc.array(millimetres(-3000, 500), { minLength: 40, maxLength: 40 }),
  rise: millimetres(150, 600),
  leastRun: millimetres(300, 2000),
});

function piecesFor({ heights, rise, leastRun }: { heights: number[]; rise: number; leastRun: number }) {
  const at = Array.from({ length: 41 }, (_, i) => i);
  const asked = at.map((i) => heights[i % 40] as number);
  return { at, asked, pieces: stepPieces({ round: 40, at, asked }, 0, { rise, leastRun }) };
}

describe("pieces of a stepped footing", () => {
  it("cover the whole round, one after the other", () => {
    fc.assert(
      fc.property(demands, (demand) => {
        const { pieces } = piecesFor(demand);
        expect(pieces[0]?.from).toBe(0);
        expect(pieces[pieces.length - 1]?.to).toBeCloseTo(40, 9);
        for (let i = 1; i < pieces.length; i++) expect(pieces[i]?.from).toBe(pieces[i - 1]?.to);
      }),
    );
  });

  it("lie nowhere above what is asked for", () => {
    fc.assert(
      fc.property(demands, (demand) => {
        const { at, asked, pieces } = piecesFor(demand);
        at.forEach((position, i) => {
          const here = pieces.filter(({ from, to }) => position >= from - 1e-9 && position <= to + 1e-9);
          const bottom = Math.min(...here.map(({ level }) => -level * demand.rise));
          expect(bottom).toBeLessThanOrEqual(Math.max(0, asked[i] as number));
          if ((asked[i] as number) < 0) expect(bottom).toBeLessThanOrEqual((asked[i] as number) + 1e-6);
        });
      }),
    );
  });

  it("step by one rise, and each is a least run long", () => {
    fc.assert(
      fc.property(demands, (demand) => {
        const { pieces } = piecesFor(demand);
        const [first, last] = [pieces[0], pieces[pieces.length - 1]];
        if (!first || !last || pieces.length === 1) return;
        pieces.forEach((piece, i) => {
          const next = pieces[(i + 1) % pieces.length];
          expect(Math.abs(piece.level - (next?.level ?? 0))).toBeLessThanOrEqual(1);
        });
        // The first and the last are one piece where they lie at one level.
        const runs = pieces.map(({ from, to }) => to - from);
        if (first.level === last.level) runs.splice(0, 1, (runs[0] ?? 0) + (runs.pop() ?? 0));
        for (const run of runs) expect(run).toBeGreaterThanOrEqual(demand.leastRun - 1e-6);
      }),
    );
  });

  it("stay level where nothing more is asked", () => {
    expect(
      stepPieces({ round: 10, at: [0, 5, 10], asked: [0, 0.2, Number.NaN] }, 0, { rise: 0.2, leastRun: 0.6 }),
    ).toEqual([{ from: 0, to: 10, level: 0 }]);
  });

  it("go down with a place that asks for it, and up again behind it", () => {
    // 10 m round, 0.35 m deeper asked between 4 and 5 m: two steps of 0.2 m, each tread 0.6 m.
    const at = Array.from({ length: 41 }, (_, i) => i / 4);
    const asked = at.map((position) => (position >= 4 && position <= 5 ? -0.35 : 0));
    const pieces = stepPieces({ round: 10, at, asked }, 0, { rise: 0.2, leastRun: 0.6 });
    expect(pieces.map(({ level }) => level)).toEqual([0, 1, 2, 1, 0]);
    expect(pieces[2]).toMatchObject({ from: 3.75, to: 5.25 });
    expect(pieces[1]?.from).toBeCloseTo(3.15, 9);
    expect(pieces[3]?.to).toBeCloseTo(5.85, 9);
  });
});

describe("a stepped foundation on falling ground", () => {
  const steps = { ...foundationSchema.parse({}).steps, on: true, rise: 8 * inch, leastRun: 24 * inch };
  const site = (more: object = {}) =>
    onGround(flat(10), plane(0, -0.12), {
      floor: 0.3,
      foundation: { frostDepth: 0.9, wallHeight: 1.2192, footingThickness: 0.2032, steps, ...more },
    });

  it("keeps frost and bearing everywhere, which the level one doesn't", () => {
    const level = site({ steps: { ...steps, on: false } });
    const stepped = site();
    expect(level.cover.undisturbed.failing).toEqual(["B", "C"]);
    expect(level.cover.bearing.failing).toEqual(["B", "C"]);
    expect(stepped.cover.undisturbed.margin).toBeGreaterThanOrEqual(-1e-9);
    expect(stepped.cover.bearing.margin).toBeGreaterThanOrEqual(-1e-9);
    expect(stepped.cover.undisturbed.failing).toEqual([]);
    expect(stepped.cover.undisturbed.share).toBe(0);
  });

  it("takes less concrete than a level trench as deep as its lowest step, and more than the level one above", () => {
    const stepped = site();
    const deep = site({
      steps: { ...steps, on: false },
      wallHeight: 1.2192 + (stepped.stepped?.levels ?? 0) * 8 * inch,
    });
    expect(stepped.stepped?.saved).toBeGreaterThan(0);
    expect(deep.takeOff.total - stepped.takeOff.total).toBeCloseTo(stepped.stepped?.saved ?? 0, 9);
    expect(stepped.takeOff.total).toBeGreaterThan(site({ steps: { ...steps, on: false } }).takeOff.total);
  });

  it("goes down to firm ground where test pits tell of it", () => {
    const result = onGround(flat(10), plane(0), {
      floor: 0.3,
      firm: ([x]) => (x > 6 ? -2 : -0.2),
      foundation: { steps },
    });
    const [, second] = result.walls;
    expect(Math.max(...(second?.bottom ?? []))).toBeLessThanOrEqual(-2 - 0.3048 + 1e-9);
    expect(result.cover.bearing.failing).toEqual([]);
  });
});
