import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Place, type Point, placeSchema, surveySchema } from "../../src/document";
import { leansOnBuilding, placeResolver, stakeOrder, stakePoint } from "../../src/document/places";

const m = (value: number) => ({ text: `${value} m`, m: value });
const corners: Point[] = [
  [0, 0],
  [8, 0],
  [8, 6],
  [0, 6],
];
const survey = surveySchema.parse({
  marks: [
    { id: "bolt", name: "Bolt", at: [-0.1, -0.2], height: m(30) },
    { id: "lost", name: "Lost", height: m(30) },
  ],
  shots: [
    { id: "tree", setup: "1", reading: null, place: { kind: "at", x: 2, y: 1 } },
    { id: "onBolt", setup: "1", reading: null, kind: "mark", of: "bolt" },
    { id: "b", setup: "1", reading: null, place: baseline("a") },
    { id: "a", setup: "1", reading: null, place: baseline("b") },
  ],
  grids: [
    { id: "g", at: [10, 20], turn: Math.PI / 2, rows: 3, columns: 4, rowSpacing: m(5), columnSpacing: m(2) },
  ],
});
const resolve = placeResolver(survey, corners);
const at = (place: unknown) => resolve(placeSchema.parse(place)).at;
const fault = (place: unknown) => resolve(placeSchema.parse(place)).fault;
const near = ([x, y]: readonly number[], digits = 9) => [
  expect.closeTo(x ?? 0, digits),
  expect.closeTo(y ?? 0, digits),
];

function baseline(shot: string): unknown {
  return {
    kind: "baseline",
    from: { kind: "shot", shot },
    to: { kind: "at", x: 9, y: 9 },
    along: m(1),
    right: m(0),
  };
}

describe("places", () => {
  it("by coordinates, on a corner, and nowhere", () => {
    expect(at({ kind: "at", x: 3, y: 4 })).toEqual([3, 4]);
    expect(at({ kind: "corner", corner: 2 })).toEqual([8, 6]);
    expect(resolve({ kind: "none" })).toEqual({ at: null, fault: null });
  });

  it("off a wall: along from its first corner, out from the building, whichever way the outline runs", () => {
    const place: Place = { kind: "wall", wall: 1, along: m(2), out: m(3) };
    expect(at(place)).toEqual(near([11, 2]));
    const clockwise = placeResolver(survey, [...corners].reverse());
    // Wall 1 of the reversed outline runs from (8, 6) to (8, 0).
    expect(clockwise(place).at).toEqual(near([11, 4]));
    expect(at({ ...place, out: m(-1) })).toEqual(near([7, 2]));
  });

  // UMBC course material (J. Squire), printed run of a circle-circle intersection program; 6 decimals.
  it("by two tapes, on the side that was picked", () => {
    const tapes = {
      kind: "tapes",
      from: [
        { kind: "mark", mark: "bolt" },
        { kind: "shot", shot: "tree" },
      ],
      lengths: [m(2), m(2.1)],
    };
    expect(at({ ...tapes, side: "right" })).toEqual(near([1.696964, -1.078021], 6));
    expect(at({ ...tapes, side: "left" })).toEqual(near([0.055856, 1.793918], 6));
  });

  it("by a baseline and by angle and distance", () => {
    const from = { kind: "corner", corner: 0 };
    const to = { kind: "corner", corner: 1 };
    expect(at({ kind: "baseline", from, to, along: m(5), right: m(2) })).toEqual(near([5, -2]));
    const angle = { text: "90°", radians: Math.PI / 2 };
    expect(at({ kind: "polar", from, angle, distance: m(4) })).toEqual(near([4, 0]));
    // 90° clockwise from looking along the wall to the east is south.
    expect(at({ kind: "polar", from, back: to, angle, distance: m(4) })).toEqual(near([0, -4]));
    expect(at({ kind: "polar", from: { kind: "shot", shot: "onBolt" }, angle, distance: m(1) })).toEqual(
      near([0.9, -0.2]),
    );
  });

  it("on a grid of stakes, walked forth and back", () => {
    expect(at({ kind: "stake", grid: "g", row: 1, column: 3 })).toEqual(near([5, 26]));
    expect(stakeOrder({ rows: 2, columns: 3 }).map(({ row, column }) => `${row}${column}`)).toEqual([
      "00",
      "01",
      "02",
      "12",
      "11",
      "10",
    ]);
    const grid = survey.grids[0];
    if (!grid) throw new Error("no grid");
    const walk = stakeOrder(grid).map(({ row, column }) => stakePoint(grid, row, column));
    const steps = walk
      .slice(1)
      .map(([x, y], i) => Math.hypot(x - (walk[i]?.[0] ?? 0), y - (walk[i]?.[1] ?? 0)));
    expect(new Set(walk.map(String)).size).toBe(12);
    expect(Math.max(...steps)).toBeCloseTo(5, 9);
  });

  it.each<[unknown, string, string]>([
    [{ kind: "corner", corner: 9 }, "no-corner", "corner 10 of the building, which has 4"],
    [{ kind: "wall", wall: 7, along: m(1), out: m(1) }, "no-wall", "isn't there"],
    [{ kind: "stake", grid: "g", row: 3, column: 0 }, "no-grid", "3 rows of 4"],
    [{ kind: "stake", grid: "x", row: 0, column: 0 }, "no-grid", "isn't there"],
    [baseline("nobody"), "no-point", "no place itself"],
    [baseline("a"), "no-point", "no place itself"],
    [
      {
        kind: "polar",
        from: { kind: "mark", mark: "lost" },
        angle: { text: "0", radians: 0 },
        distance: m(1),
      },
      "no-point",
      "no place itself",
    ],
  ])("that can't be found say why: %j", (place, code, words) => {
    expect(fault(place)).toMatchObject({ code });
    expect(fault(place)?.what).toContain(words);
    expect(at(place)).toBeNull();
  });

  it("by tapes that don't meet say which way", () => {
    const tapes = (a: number, b: number) =>
      fault({
        kind: "tapes",
        from: [
          { kind: "corner", corner: 0 },
          { kind: "corner", corner: 1 },
        ],
        lengths: [m(a), m(b)],
        side: "left",
      });
    expect(tapes(3, 4)?.what).toContain("shorter than the way");
    expect(tapes(20, 4)?.what).toContain("so long");
    expect(tapes(4, 4)).toBeNull();
  });

  it("lean on the building where a corner is in them", () => {
    expect(leansOnBuilding({ kind: "corner", corner: 0 })).toBe(true);
    expect(leansOnBuilding({ kind: "wall", wall: 0, along: m(1), out: m(1) })).toBe(true);
    expect(leansOnBuilding({ kind: "at", x: 0, y: 0 })).toBe(false);
    const from = { kind: "mark", mark: "bolt" } as const;
    expect(
      leansOnBuilding({
        kind: "baseline",
        from,
        to: { kind: "corner", corner: 0 },
        along: m(1),
        right: m(1),
      }),
    ).toBe(true);
  });

  it("taped from two points come out at those distances, on that side", () => {
    const mm = fc.integer({ min: -20_000, max: 20_000 }).map((v) => v / 1000);
    fc.assert(
      fc.property(mm, mm, mm, mm, mm, mm, (ax, ay, bx, by, px, py) => {
        const cross = (bx - ax) * (py - ay) - (by - ay) * (px - ax);
        fc.pre(Math.abs(cross) > 0.5 && Math.hypot(bx - ax, by - ay) > 0.5);
        const found = at({
          kind: "tapes",
          from: [
            { kind: "at", x: ax, y: ay },
            { kind: "at", x: bx, y: by },
          ],
          lengths: [m(Math.hypot(px - ax, py - ay)), m(Math.hypot(px - bx, py - by))],
          side: cross > 0 ? "left" : "right",
        });
        expect(found).toEqual(near([px, py], 5));
      }),
    );
  });
});
