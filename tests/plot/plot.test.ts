import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Point, signedArea } from "../../src/geometry";
import {
  closeTraverse,
  cornerAngles,
  type DeedCall,
  levelLength,
  moveInWords,
  outOfSquare,
  plannedDiagonals,
  squareUp,
  type TapedLength,
  threeFourFive,
  traverseOutline,
} from "../../src/plot";
import { formatLength } from "../../src/units";

const names = "ABCDEFGH";

/** All distances between the corners of a ring, or those that `keep` keeps. */
function tapesOf(
  ring: readonly Point[],
  keep: (i: number, j: number) => boolean = () => true,
): TapedLength[] {
  return ring.flatMap((a, i) =>
    ring.flatMap((b, j): TapedLength[] =>
      j > i && keep(i, j)
        ? [{ from: names[i] ?? "", to: names[j] ?? "", distance: Math.hypot(b[0] - a[0], b[1] - a[1]) }]
        : [],
    ),
  );
}

function squared(tapes: readonly TapedLength[]) {
  const found = squareUp(tapes);
  if (!found.ok) throw new Error(found.what);
  return found.squared;
}

const ELL: Point[] = [
  [0, 0],
  [12, 0],
  [12, 5],
  [7, 5],
  [7, 9],
  [0, 9],
];

describe("corners from tapes", () => {
  it("come out where they are, of any footprint, from all distances or just enough", () => {
    const found = squared(tapesOf(ELL));
    expect(found.redundancy).toBe(6);
    expect(found.standardError).toBeCloseTo(0, 9);
    found.corners.forEach(({ x, y }, i) => {
      expect([x, y]).toEqual((ELL[i] ?? []).map((v) => expect.closeTo(v, 9)));
    });
    const few = squared(tapesOf(ELL.slice(0, 3).concat([[0, 5]]), (i, j) => !(i === 1 && j === 3)));
    expect(few.redundancy).toBe(0);
    expect(few.standardError).toBeNull();
    expect(few.corners[3]).toEqual({ name: "D", x: expect.closeTo(0, 9), y: expect.closeTo(5, 9) });
  });

  it("whatever the order in which they are typed", () => {
    const tapes = tapesOf(ELL);
    const mixed = [...tapes.slice(7), ...tapes.slice(0, 7).reverse()].map(({ from, to, distance }) => ({
      from: to,
      to: from,
      distance,
    }));
    const ring = squared(mixed).corners;
    expect(ring.map(({ name }) => name).sort()).toEqual(["A", "B", "C", "D", "E", "F"]);
    expect(Math.abs(signedArea(ring.map(({ x, y }): Point => [x, y])))).toBeCloseTo(88, 6);
  });

  it("find the ell from its sides and any few diagonals that hold it, in any order", () => {
    const diagonals = tapesOf(ELL, (i, j) => j - i !== 1 && j - i !== 5);
    const sides = tapesOf(ELL, (i, j) => j - i === 1 || j - i === 5);
    const slip = fc.integer({ min: -5, max: 5 }).map((v) => v / 1000);
    fc.assert(
      fc.property(
        fc.shuffledSubarray(diagonals, { minLength: 5 }),
        fc.array(slip, { minLength: 15, maxLength: 15 }),
        fc.infiniteStream(fc.nat(1000)),
        (some, slips, order) => {
          const tapes = [...sides, ...some]
            .map((tape, i) => ({
              tape: { ...tape, distance: tape.distance + (slips[i] ?? 0) },
              key: order.next().value,
            }))
            .sort((a, b) => a.key - b.key)
            .map(({ tape }) => tape);
          const { corners } = squared(tapes);
          const at = new Map(corners.map(({ name, x, y }) => [name, [x, y] as const]));
          for (const { from, to, distance } of tapesOf(ELL)) {
            const [[ax, ay] = [0, 0], [bx, by] = [0, 0]] = [at.get(from), at.get(to)];
            expect(Math.abs(Math.hypot(bx - ax, by - ay) - distance)).toBeLessThan(0.06);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it("share a slip in one diagonal, so that every residual points at it", () => {
    const tapes = tapesOf(ELL.slice(0, 3).concat([[0, 5]]));
    const slipped = tapes.map((tape, i) => (i === 1 ? { ...tape, distance: tape.distance + 0.1 } : tape));
    const { residuals, standardError, redundancy } = squared(slipped);
    expect(redundancy).toBe(1);
    expect(standardError).toBeGreaterThan(0.02);
    const [, ac] = residuals;
    expect(ac?.residual).toBeGreaterThan(0.02);
    expect(ac?.adjusted).toBeCloseTo((slipped[1]?.distance ?? 0) - (ac?.residual ?? 0), 12);
  });

  it.each<[string, TapedLength[], string, string]>([
    [
      "sides alone",
      tapesOf(ELL.slice(0, 3).concat([[0, 5]]), (i, j) => j - i === 1 || j - i === 3),
      "swing like a gate",
      "diagonal",
    ],
    ["one side", [{ from: "A", to: "B", distance: 3 }], "Only 2 corners", "three sides"],
    ["no length", [{ from: "A", to: "B", distance: 0 }], "A–B is no length", "tape read"],
    ["a corner to itself", [{ from: "A", to: "A", distance: 2 }], "A to itself", "two corners"],
  ])("%s: says what is missing", (_what, tapes, what, how) => {
    const found = squareUp(tapes);
    expect(found.ok).toBe(false);
    if (!found.ok)
      expect([found.what, found.how]).toEqual([expect.stringContaining(what), expect.stringContaining(how)]);
  });

  it("least squares: no small change of a corner fits the tapes better", () => {
    const slip = fc.integer({ min: -30, max: 30 }).map((v) => v / 1000);
    fc.assert(
      fc.property(fc.array(slip, { minLength: 6, maxLength: 6 }), (slips) => {
        const tapes = tapesOf([
          [0, 0],
          [9, 0],
          [9, 6],
          [0, 6],
        ]).map((tape, i) => ({
          ...tape,
          distance: tape.distance + (slips[i] ?? 0),
        }));
        const { corners } = squared(tapes);
        const at = new Map(corners.map(({ name, x, y }) => [name, [x, y] as const]));
        const misfit = (moved: ReadonlyMap<string, readonly [number, number]>) =>
          tapes.reduce((sum, { from, to, distance }) => {
            const [a = [0, 0], b = [0, 0]] = [moved.get(from), moved.get(to)];
            return sum + (Math.hypot(b[0] - a[0], b[1] - a[1]) - distance) ** 2;
          }, 0);
        const best = misfit(at);
        for (const [name, [x, y]] of at) {
          for (const [dx, dy] of [
            [1e-4, 0],
            [-1e-4, 0],
            [0, 1e-4],
            [0, -1e-4],
          ] as const) {
            expect(misfit(new Map(at).set(name, [x + dx, y + dy]))).toBeGreaterThanOrEqual(best - 1e-13);
          }
        }
      }),
    );
  });
});

describe("what to move", () => {
  const tape = (m: number) => formatLength(m, "in", 8);

  it("a corner that is out along one side is told in the field's terms", () => {
    // C stands 1 3/8 in too far from D.
    const out = 1.375 * 0.0254;
    const { corners } = squared(
      tapesOf([
        [0, 0],
        [9, 0],
        [9 + out, 6],
        [0, 6],
      ]),
    );
    const found = outOfSquare(corners);
    const moves = (found?.moves ?? []).map(
      (move) => `${move.corner}: ${moveInWords(move, tape, 0.0254 / 8)}`,
    );
    expect(moves).toEqual(["A: stays", "B: stays", "C: 1⅜″ towards D", "D: stays"]);
    expect(found?.most).toBeCloseTo(out, 9);
  });

  it("a planned outline is laid on the first side, turned and mirrored as it must be", () => {
    const { corners } = squared(
      tapesOf([
        [0, 0],
        [9, 0],
        [9, 6],
        [0, 6],
      ]),
    );
    const planned: Point[] = [
      [5, 5],
      [5, 14.02],
      [-1, 14.02],
      [-1, 5],
    ];
    for (const plan of [planned, planned.map(([x, y]): Point => [-x, y])]) {
      const moves = outOfSquare(corners, plan)?.moves ?? [];
      expect(moves.map((move) => moveInWords(move, (m) => m.toFixed(3), 0.001))).toEqual([
        "stays",
        "0.020 away from A",
        "0.020 away from D",
        "stays",
      ]);
    }
  });

  it("an ell is squared too; a kite is not", () => {
    const leaning = ELL.map(([x, y]): Point => [x + 0.02 * y, y]);
    const found = outOfSquare(squared(tapesOf(leaning)).corners);
    expect(found?.moves.find(({ corner }) => corner === "F")?.distance).toBeCloseTo(0.18, 6);
    expect(
      outOfSquare(
        squared(
          tapesOf([
            [0, 0],
            [5, -3],
            [9, 0],
            [5, 3],
          ]),
        ).corners,
      ),
    ).toBeNull();
  });

  it("angles add up to those of the figure, reflex corners too", () => {
    const angles = cornerAngles(squared(tapesOf(ELL)).corners);
    expect(angles.reduce((sum, { angle }) => sum + angle, 0)).toBeCloseTo(4 * Math.PI, 9);
    expect(angles.map(({ off }) => off)).toEqual(angles.map(() => expect.closeTo(0, 9)));
  });

  it("after the moves the corners are square and the diagonals of a rectangle equal", () => {
    const slip = fc.integer({ min: -200, max: 200 }).map((v) => v / 1000);
    fc.assert(
      fc.property(slip, slip, slip, slip, (a, b, c, d) => {
        const { corners } = squared(
          tapesOf([
            [0, 0],
            [9, 0],
            [9 + a, 6 + b],
            [c, 6 + d],
          ]),
        );
        const [A, B, C, D] = outOfSquare(corners)?.target ?? [];
        if (!A || !B || !C || !D) throw new Error("no target");
        const length = (p: Point, q: Point) => Math.hypot(q[0] - p[0], q[1] - p[1]);
        expect(length(A, C)).toBeCloseTo(length(B, D), 9);
        expect(length(A, B)).toBeCloseTo(9, 6);
        expect(length(A, B)).toBeCloseTo(length(D, C), 9);
      }),
    );
  });
});

describe("right angles with tapes", () => {
  it("every footprint has n (n - 3) / 2 diagonals", () => {
    expect(plannedDiagonals(ELL)).toHaveLength(9);
    expect(plannedDiagonals(ELL)[0]).toEqual({ from: 0, to: 2, length: 13 });
  });

  it("the largest 3-4-5 that fits, longer leg where there is more room", () => {
    expect(threeFourFive(10, 7, 0.5)).toEqual({ along: 8, across: 6, diagonal: 10 });
    expect(threeFourFive(7, 10, 0.5)).toEqual({ along: 6, across: 8, diagonal: 10 });
    expect(threeFourFive(3, 2, 1)).toBeNull();
  });

  it("a tape on the slope is never shorter than the level way", () => {
    const mm = fc.integer({ min: 1, max: 60_000 }).map((v) => v / 1000);
    fc.assert(
      fc.property(mm, mm, (level, rise) => {
        const slope = Math.hypot(level, rise);
        expect(levelLength(slope, rise)).toBeCloseTo(level, 6);
        expect(levelLength(slope, -rise)).toBeCloseTo(level, 6);
      }),
    );
    expect(levelLength(2, 3)).toBeNull();
  });
});

describe("lot lines from a deed", () => {
  const line = (degrees: number, distance: number): DeedCall => ({
    bearing: (degrees * Math.PI) / 180,
    distance,
    curve: null,
  });
  const traverse = (calls: readonly DeedCall[]) => {
    const found = closeTraverse(calls);
    if (!found.ok) throw new Error(found.what);
    return found.traverse;
  };
  const square = [line(0, 100), line(90, 100), line(180, 100), line(270, 100)];

  it("a square closes exactly", () => {
    const found = traverse(square);
    expect([found.misclosure, found.precision, found.perimeter]).toEqual([0, null, 400]);
    expect(found.area).toBeCloseTo(10_000, 6);
  });

  it("a rounded corner: the curve's area counts, on the outside and on the inside", () => {
    // A quarter circle of radius 20 cuts the corner between a line north and a line east.
    const arc = (20 * Math.PI) / 2;
    const curve = { radius: 20, turns: "right" as const };
    const rounded = [
      line(0, 80),
      { bearing: Math.PI / 4, distance: arc, curve },
      line(90, 80),
      line(180, 100),
      line(270, 100),
    ];
    const area = 10_000 - 400 + (Math.PI * 400) / 4;
    expect(traverse(rounded).misclosure).toBe(0);
    expect(traverse(rounded).area).toBeCloseTo(area, 6);
    const tangent = rounded.map((call) => (call.curve ? { ...call, bearing: null } : call));
    expect(traverse(tangent).area).toBeCloseTo(area, 6);
    // The same lot walked the other way round: the curve turns left.
    const back = [...rounded].reverse().map((call) => ({
      ...call,
      bearing: (call.bearing ?? 0) + Math.PI,
      curve: call.curve && { radius: 20, turns: "left" as const },
    }));
    expect(traverse(back).area).toBeCloseTo(area, 6);
    const outline = traverseOutline(rounded, traverse(rounded), { start: [5, 5], turn: 0, adjust: false });
    expect(Math.abs(signedArea(outline))).toBeCloseTo(area, 0);
    for (const [x, y] of outline.slice(1, -3)) expect(Math.hypot(x - 25, y - 85)).toBeCloseTo(20, 9);
  });

  it("north turned turns the outline about its start", () => {
    const outline = traverseOutline(square, traverse(square), {
      start: [1, 2],
      turn: Math.PI / 2,
      adjust: true,
    });
    expect(outline).toEqual(
      [
        [1, 2],
        [101, 2],
        [101, -98],
        [1, -98],
      ].map((p) => p.map((v) => expect.closeTo(v, 9))),
    );
  });

  it.each<[string, DeedCall[], number, string]>([
    ["too few", square.slice(0, 2), 2, "Only 2 courses"],
    ["no length", [...square.slice(0, 3), line(270, 0)], 3, "no length"],
    ["no bearing", [...square.slice(0, 3), { bearing: null, distance: 3, curve: null }], 3, "no bearing"],
    [
      "a curve first without a chord",
      [{ bearing: null, distance: 3, curve: { radius: 9, turns: "left" } }, ...square],
      0,
      "nothing goes before",
    ],
    [
      "more than a circle",
      [...square, { bearing: 0, distance: 70, curve: { radius: 10, turns: "left" } }],
      4,
      "full circle",
    ],
    [
      "no radius",
      [...square, { bearing: 0, distance: 70, curve: { radius: 0, turns: "left" } }],
      4,
      "radius is no length",
    ],
  ])("%s: names the course", (_what, calls, course, what) => {
    expect(closeTraverse(calls)).toMatchObject({ ok: false, course, what: expect.stringContaining(what) });
  });

  it("adjusted courses close, whatever was measured, and turning north changes no figure", () => {
    const course = fc.tuple(fc.integer({ min: 0, max: 3599 }), fc.integer({ min: 1000, max: 200_000 }));
    fc.assert(
      fc.property(
        fc.array(course, { minLength: 3, maxLength: 12 }),
        fc.integer({ min: 0, max: 359 }),
        (legs, turn) => {
          const calls = legs.map(([tenths, millis]) => line(tenths / 10, millis / 1000));
          const found = traverse(calls);
          const end = found.adjusted.at(-1);
          expect(Math.hypot(end?.x ?? 1, end?.y ?? 1)).toBeLessThan(1e-9 * found.perimeter);
          const turned = traverse(calls.map((call) => ({ ...call, bearing: (call.bearing ?? 0) + turn })));
          expect(turned.misclosure).toBeCloseTo(found.misclosure, 6);
          expect(turned.area / found.perimeter ** 2).toBeCloseTo(found.area / found.perimeter ** 2, 9);
        },
      ),
    );
  });
});
