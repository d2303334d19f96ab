import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CubicPiece, cubicAt, cubicCurve, volumeCurve } from "../../src/earthwork";
import type { Point } from "../../src/geometry";
import { makeGround, triangulate } from "../../src/terrain";
import { columns, type Spot } from "../terrain/surfaces";

const wide = { minX: -90, minY: -90, maxX: 90, maxY: 90 };
const square: Point[] = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
];

function groundOf(points: readonly Spot[]) {
  const made = triangulate(...columns(points));
  return made.ok ? makeGround(made.tin, wide) : null;
}

const pieceAt = (pieces: readonly CubicPiece[], h: number) =>
  pieces.find(({ from, to }) => (from === null || h >= from) && (to === null || h <= to)) as CubicPiece;

describe("volume against height as cubics", () => {
  it("of one tilted triangle under a square: hand-worked", () => {
    // z = x over a 2 by 2 square: fill up to h is 2 · h² / 2 between 0 and 2, so h² exactly.
    const ground = groundOf([
      [-10, -10, -10],
      [10, -10, 10],
      [10, 10, 10],
      [-10, 10, -10],
    ]);
    if (!ground) throw new Error("no ground");
    const pieces = cubicCurve(ground, square);
    const at = (h: number) => cubicAt(pieceAt(pieces, h), h);
    expect(at(0.5).fill).toBeCloseTo(0.25, 12);
    expect(at(1.5).fill).toBeCloseTo(2.25, 12);
    expect(at(0.5).cut).toBeCloseTo(4 - 2 + 0.25, 12);
    expect(at(-1)).toEqual({ fill: 0, cut: expect.closeTo(8, 12) });
    expect(at(5)).toEqual({ fill: expect.closeTo(16, 12), cut: expect.closeTo(0, 12) });
  });

  it("is the clipped-prism volume at every height, on any ground and inside its knots too", () => {
    const millimetres = fc.integer({ min: -9000, max: 9000 }).map((mm) => mm / 1000);
    const height = fc.integer({ min: -3000, max: 3000 }).map((mm) => mm / 1000);
    const spots = fc.uniqueArray(fc.tuple(millimetres, millimetres, height), {
      minLength: 4,
      maxLength: 30,
      selector: ([x, y]) => `${x} ${y}`,
    });
    fc.assert(
      fc.property(spots, fc.array(height, { minLength: 1, maxLength: 8 }), (points, heights) => {
        const ground = groundOf(points);
        fc.pre(ground !== null);
        const curve = volumeCurve(ground, square);
        const pieces = cubicCurve(ground, square);
        const knots = pieces.flatMap(({ from }) => (from === null ? [] : [from]));
        for (const h of [...heights, ...knots]) {
          const want = curve.at(h);
          const got = cubicAt(pieceAt(pieces, h), h);
          const most = 1e-9 * Math.max(1, want.cut + want.fill);
          expect(Math.abs(got.fill - want.fill)).toBeLessThanOrEqual(most);
          expect(Math.abs(got.cut - want.cut)).toBeLessThanOrEqual(most);
        }
      }),
    );
  });

  it("joins without a step in value or in slope (the area below) from piece to piece", () => {
    const ground = groundOf([
      [-10, -10, 1],
      [10, -10, 2],
      [10, 10, 4],
      [-10, 10, 0],
      [1, 1, 3],
    ]);
    if (!ground) throw new Error("no ground");
    const pieces = cubicCurve(ground, square);
    expect(pieces.length).toBeGreaterThan(4);
    for (let i = 1; i < pieces.length; i++) {
      const [before, after] = [pieces[i - 1] as CubicPiece, pieces[i] as CubicPiece];
      const knot = after.from as number;
      expect(before.to).toBe(knot);
      expect(cubicAt(before, knot).fill).toBeCloseTo(cubicAt(after, knot).fill, 9);
      const slope = ({ zero, fill: [, b, c, d] }: CubicPiece) =>
        b + 2 * c * (knot - zero) + 3 * d * (knot - zero) ** 2;
      expect(slope(before)).toBeCloseTo(slope(after), 6);
    }
  });
});
