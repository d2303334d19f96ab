import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  contourLevels,
  type Ground,
  type GroundContours,
  groundAt,
  groundContours,
  makeGround,
  type Tin,
  tinAt,
  tinContours,
  triangulate,
} from "../../src/terrain";
import { columns, forEachTriangle, type Spot, surfaceOf } from "./surfaces";

const coarse = fc.integer({ min: 0, max: 6 });
const wholeHeights = fc.integer({ min: 0, max: 4 });
const spots = fc.uniqueArray(fc.tuple(coarse, coarse, wholeHeights), {
  minLength: 4,
  maxLength: 40,
  selector: ([x, y]) => `${x} ${y}`,
});

/** A pyramid 1 high over a square of half-side 2 about the origin. */
const pyramid: Spot[] = [
  [-2, -2, 0],
  [2, -2, 0],
  [2, 2, 0],
  [-2, 2, 0],
  [0, 0, 1],
];

describe("contours of a surface, worked by hand", () => {
  it("a slope: one straight line from rim to rim, whatever triangles it crosses", () => {
    const slope = surfaceOf([
      [0, 0, 0],
      [4, 0, 4],
      [4, 3, 4],
      [0, 3, 0],
      [2, 1, 2],
    ]);
    const [lines] = tinContours(slope, [1]) as [Float64Array[]];
    expect(lines).toHaveLength(1);
    const [line] = lines as [Float64Array];
    expect(lengthOf(line)).toBeCloseTo(3, 12);
    for (let i = 0; i < line.length; i += 2) expect(line[i]).toBeCloseTo(1, 12);
  });

  it("a pyramid at half its height: a closed square of half the side, counter-clockwise round the top", () => {
    const [lines] = tinContours(surfaceOf(pyramid), [0.5]) as [Float64Array[]];
    expect(lines).toHaveLength(1);
    const [ring] = lines as [Float64Array];
    expect(isClosed(ring)).toBe(true);
    expect(lengthOf(ring)).toBeCloseTo(8, 12);
    expect(areaOf(ring)).toBeCloseTo(4, 12);
  });

  it("a hollow: the same square, clockwise, for the higher ground is on the left", () => {
    const hollow = surfaceOf(pyramid.map(([x, y, z]): Spot => [x, y, -z]));
    const [lines] = tinContours(hollow, [-0.5]) as [Float64Array[]];
    expect(areaOf(lines[0] as Float64Array)).toBeCloseTo(-4, 12);
  });

  it("a level through a top only, or beyond all heights: nothing", () => {
    expect(tinContours(surfaceOf(pyramid), [1, 1.5, -3])).toEqual([[], [], []]);
  });

  it("level ground at a level counts as above: the line runs round its lower side", () => {
    const bench: Spot[] = [
      [0, 0, 0],
      [0, 2, 0],
      [2, 0, 1],
      [2, 2, 1],
      [4, 0, 1],
      [4, 2, 1],
    ];
    const [lines] = tinContours(surfaceOf(bench), [1]) as [Float64Array[]];
    expect(lines.map((line) => [...line])).toEqual([[2, 2, 2, 0]]);
  });

  it("answers in the order of the levels asked", () => {
    const found = tinContours(surfaceOf(pyramid), [0.75, 0.25]);
    expect(found.map((lines) => lengthOf(lines[0] as Float64Array))).toEqual([4, 12]);
  });

  it("answers in any order asked, the same as one level at a time", () => {
    const tin = surfaceOf(pyramid.map(([x, y, z]): Spot => [x, y, z - 0.5]));
    const levels = [0.25, -0.25, 0.4, 0, -0.4];
    expect(tinContours(tin, levels)).toEqual(levels.map((level) => tinContours(tin, [level])[0]));
  });
});

describe("contours of any surface", () => {
  it("lie at their level, cross each triangle once, and end on the rim or close", () => {
    fc.assert(
      fc.property(spots, fc.integer({ min: 0, max: 16 }), (points, quarters) => {
        const made = triangulate(...columns(points));
        fc.pre(made.ok);
        const level = quarters / 4;
        const [lines] = tinContours(made.tin, [level]) as [Float64Array[]];
        let length = 0;
        for (const line of lines) {
          length += lengthOf(line);
          if (!isClosed(line))
            for (const end of [0, line.length - 2]) expect(onRim(made.tin, line, end)).toBe(true);
          for (let i = 0; i < line.length; i += 2)
            expect(tinAt(made.tin, line[i] as number, line[i + 1] as number)?.z).toBeCloseTo(level, 9);
        }
        expect(length).toBeCloseTo(crossingLength(made.tin, level), 9);
      }),
      { numRuns: 300 },
    );
  });
});

describe("contours of the ground", () => {
  const ground = makeGround(surfaceOf(pyramid), { minX: -6, minY: -6, maxX: 6, maxY: 6 });

  it("are whole inside the measured points", () => {
    const [at] = groundContours(ground, [0.5]) as [ReturnType<typeof groundContours>[number]];
    expect(at.guessed).toEqual([]);
    expect(at.measured).toHaveLength(1);
    expect(isClosed(at.measured[0] as Float64Array)).toBe(true);
  });

  it("change from measured to guessed at the hull, and lose no length", () => {
    const tilted = makeGround(
      surfaceOf([
        [0, 0, 0],
        [4, 0, 4],
        [4, 3, 4],
        [0, 3, 0],
      ]),
      { minX: -5, minY: -5, maxX: 9, maxY: 8 },
    );
    const [at] = groundContours(tilted, [1]) as [ReturnType<typeof groundContours>[number]];
    expect(at.measured).toHaveLength(1);
    expect(at.guessed).toHaveLength(2);
    expect(lengthOf(at.measured[0] as Float64Array)).toBeCloseTo(3, 9);
    const [whole] = tinContours(tilted.tin, [1]) as [Float64Array[]];
    const parts = [...at.measured, ...at.guessed].reduce((sum, line) => sum + lengthOf(line), 0);
    expect(parts).toBeCloseTo(lengthOf(whole[0] as Float64Array), 9);
  });

  it("have each part on its own kind of ground, joined end to end, with nothing lost", () => {
    fc.assert(
      fc.property(spots, fc.integer({ min: 0, max: 16 }), (points, quarters) => {
        const made = triangulate(...columns(points));
        fc.pre(made.ok);
        const ground = makeGround(made.tin, { minX: -5, minY: -5, maxX: 11, maxY: 11 });
        const level = quarters / 4 + 0.01; // off the points' own heights, so that no piece runs along the hull
        const [{ measured, guessed }] = groundContours(ground, [level]) as [GroundContours];
        for (const [lines, kind] of [
          [measured, false],
          [guessed, true],
        ] as const)
          for (const line of lines)
            for (let i = 2; i < line.length; i += 2)
              expect(groundAt(ground, mean(line, i), mean(line, i + 1))?.guessed).toBe(kind);
        const [whole] = tinContours(ground.tin, [level]) as [Float64Array[]];
        expect(totalOf([...measured, ...guessed])).toBeCloseTo(totalOf(whole), 9);
        const ends = [...measured, ...guessed].filter((line) => !isClosed(line)).length;
        const cuts = whole.reduce((sum, line) => sum + changesOfKind(ground, line), 0);
        expect(ends).toBe(cuts);
      }),
    );
  });
});

describe("contour levels", () => {
  const FOOT = 0.3048;

  it.each([
    [10, 0.5, 4],
    [2, 0.1, 5],
    [24, 1, 5],
    [60, 5, 4],
    [3000, 200, 5],
  ])("%d ft of relief: every %d ft, each %dth a major one", (relief, interval, every) => {
    const got = contourLevels(100 * FOOT, (100 + relief) * FOOT, "foot");
    expect(got.interval / FOOT).toBeCloseTo(interval, 12);
    expect(got.majorEvery).toBe(every);
    expect(got.levels.length).toBeLessThanOrEqual(25);
  });

  it.each([
    [1, 1, 6],
    [4, 3, 4],
    [6, 3, 4],
    [10, 6, 4],
    [24, 12, 5],
    [100, 60, 4],
  ])("%d ft of relief read in inches: every %d in, each %dth a major one", (relief, interval, every) => {
    const got = contourLevels(100 * FOOT, (100 + relief) * FOOT, "inch");
    expect((got.interval / FOOT) * 12).toBeCloseTo(interval, 9);
    expect(got.majorEvery).toBe(every);
    expect(got.levels.length).toBeLessThanOrEqual(25);
  });

  it.each([
    [1, 0.05],
    [3, 0.25],
    [10, 0.5],
    [120, 5],
  ])("%d m of relief: every %d m", (relief, interval) => {
    expect(contourLevels(7.3, 7.3 + relief, "metre").interval).toBe(interval);
  });

  it("are whole multiples within the heights; major ones are rounder", () => {
    const { levels, major, interval } = contourLevels(-1.02, 1.3, "metre");
    expect(interval).toBe(0.1);
    expect(levels[0]).toBeCloseTo(-1, 12);
    expect(levels.at(-1)).toBeCloseTo(1.3, 12);
    const majors = levels.filter((_, i) => major[i]);
    [-1, -0.5, 0, 0.5, 1].forEach((height, i) => {
      expect(majors[i]).toBeCloseTo(height, 12);
    });
    expect(majors).toHaveLength(5);
  });

  it("are none on level ground", () => {
    expect(contourLevels(2, 2, "inch").levels).toEqual([]);
  });
});

function lengthOf(line: Float64Array): number {
  let sum = 0;
  for (let i = 2; i < line.length; i += 2)
    sum += Math.hypot(
      (line[i] as number) - (line[i - 2] as number),
      (line[i + 1] as number) - (line[i - 1] as number),
    );
  return sum;
}

function totalOf(lines: readonly Float64Array[]): number {
  return lines.reduce((sum, line) => sum + lengthOf(line), 0);
}

function mean(line: Float64Array, i: number): number {
  return ((line[i - 2] as number) + (line[i] as number)) / 2;
}

/** Number of open parts a line must fall into. */
function changesOfKind(ground: Ground, line: Float64Array): number {
  const kinds: boolean[] = [];
  for (let i = 2; i < line.length; i += 2)
    kinds.push(groundAt(ground, mean(line, i), mean(line, i + 1))?.guessed as boolean);
  const changes = kinds.filter((kind, i) => i > 0 && kind !== kinds[i - 1]).length;
  if (!isClosed(line)) return changes + 1;
  return changes + (kinds[0] === kinds.at(-1) ? 0 : 1);
}

function isClosed(line: Float64Array): boolean {
  return line[0] === line.at(-2) && line[1] === line.at(-1);
}

function areaOf(ring: Float64Array): number {
  let twice = 0;
  for (let i = 2; i < ring.length; i += 2)
    twice +=
      (ring[i - 2] as number) * (ring[i + 1] as number) - (ring[i] as number) * (ring[i - 1] as number);
  return twice / 2;
}

/** Length of a level over each triangle apart, from its corners alone. */
function crossingLength(tin: Tin, level: number): number {
  let sum = 0;
  forEachTriangle(tin, (a, b, c) => {
    const ends: [number, number][] = [];
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const [zp, zq] = [tin.z[p] as number, tin.z[q] as number];
      if (zp >= level === zq >= level) continue;
      const t = (level - zp) / (zq - zp);
      ends.push([
        (tin.x[p] as number) * (1 - t) + (tin.x[q] as number) * t,
        (tin.y[p] as number) * (1 - t) + (tin.y[q] as number) * t,
      ]);
    }
    const [from, to] = ends;
    if (from && to) sum += Math.hypot(to[0] - from[0], to[1] - from[1]);
  });
  return sum;
}

function onRim(tin: Tin, line: Float64Array, at: number): boolean {
  const [x, y] = [line[at] as number, line[at + 1] as number];
  return [...tin.hull].some((a, i) => {
    const b = tin.hull[(i + 1) % tin.hull.length] as number;
    const [ax, ay, bx, by] = [tin.x[a], tin.y[a], tin.x[b], tin.y[b]] as [number, number, number, number];
    return Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) < 1e-9;
  });
}
