import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inCircle, turn } from "../../src/geometry";
import { type Breakline, type Tin, tinAt, triangulateWithLines } from "../../src/terrain";
import { columns, expectSound, planAreaOf, type Spot, surfaceOf } from "./surfaces";

const line = (name: string, ...corners: (readonly [number, number, number?])[]): Breakline => ({
  name,
  x: corners.map((c) => c[0]),
  y: corners.map((c) => c[1]),
  z: corners.map((c) => c[2] ?? null),
});

function lined(points: readonly Spot[], ...lines: Breakline[]) {
  const made = triangulateWithLines(...columns(points), lines);
  if (!made.ok) throw new Error(made.reason);
  return made;
}

/** Whether the way between two places runs along sides of triangles all the way. */
function isAlongSides(tin: Tin, from: readonly [number, number], to: readonly [number, number]): boolean {
  const on = new Set<number>();
  const { x, y, triangles } = tin;
  for (const i of triangles) {
    const t = turn(from[0], from[1], to[0], to[1], x[i] as number, y[i] as number);
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (Math.abs(t) < 1e-3 * length) on.add(i);
  }
  const along = (i: number) =>
    ((x[i] as number) - from[0]) * (to[0] - from[0]) + ((y[i] as number) - from[1]) * (to[1] - from[1]);
  const end = (to[0] - from[0]) ** 2 + (to[1] - from[1]) ** 2;
  const way = [...on]
    .filter((i) => along(i) > -1e-3 && along(i) < end + 1e-3)
    .sort((i, j) => along(i) - along(j));
  const sides = new Set<string>();
  for (let e = 0; e < triangles.length; e++)
    sides.add(`${triangles[e]} ${triangles[e % 3 === 2 ? e - 2 : e + 1]}`);
  const near = (i: number | undefined, at: readonly [number, number]) =>
    i !== undefined && Math.hypot((x[i] as number) - at[0], (y[i] as number) - at[1]) < 1e-3;
  // Points a hair beside the line may stand between its own: the way may pass them by.
  const reached: number[] = [];
  for (const i of way) {
    if (near(i, from) || reached.some((j) => sides.has(`${j} ${i}`) || sides.has(`${i} ${j}`)))
      reached.push(i);
  }
  return reached.some((i) => near(i, to));
}

const square: Spot[] = [
  [0, 0, 0],
  [10, 0, 0],
  [10, 10, 0],
  [0, 10, 0],
];

describe("a surface with breaklines, worked by hand", () => {
  it("a ditch across a level square: the line is the bottom, whichever way the square would be halved", () => {
    for (const ditch of [line("ditch", [0, 0, -1], [10, 10, -1]), line("ditch", [10, 0, -1], [0, 10, -1])]) {
      const { tin } = lined(
        [
          [5, 1, 0],
          [1, 5, 0],
          [9, 5, 0],
          [5, 9, 0],
          [-1, 5, 0],
          [5, -1, 0],
        ],
        ditch,
      );
      expect(tinAt(tin, 5, 5)?.z).toBeCloseTo(-1, 12);
      expect(tinAt(tin, 2.5, ditch.y[0] === 0 && ditch.x[0] === 0 ? 2.5 : 7.5)?.z).toBeCloseTo(-1, 12);
    }
  });

  it("a line through a measured point goes through it", () => {
    const { tin, conflicts } = lined([...square, [5, 5, 2]], line("ridge", [0, 5, 1], [10, 5, 1]));
    expect(tinAt(tin, 5, 5)?.z).toBe(2);
    expect(tinAt(tin, 2.5, 5)?.z).toBeCloseTo(1.5, 12);
    expect(conflicts).toEqual([]);
  });

  it("corners without a height take it from the points' own surface", () => {
    const tilted = square.map(([x, y]): Spot => [x, y, 0.1 * x + 0.3 * y]);
    const { tin } = lined(tilted, line("edge", [2, 3], [7, 8]), line("half", [1, 1, 9], [1, 4]));
    expect(tinAt(tin, 2, 3)?.z).toBeCloseTo(1.1, 12);
    expect(tinAt(tin, 7, 8)?.z).toBeCloseTo(3.1, 12);
    expect(tinAt(tin, 1, 1)?.z).toBe(9);
    expect(tinAt(tin, 1, 4)?.z).toBeCloseTo(1.3, 12);
  });

  it("names corners that can have no height", () => {
    const made = triangulateWithLines(...columns(square), [
      line("a", [1, 1], [30, 1]),
      line("b", [-5, 0], [0, 0, 1]),
    ]);
    expect(made).toEqual({
      ok: false,
      reason: "no-height",
      missing: [
        [0, 1],
        [1, 0],
      ],
    });
  });

  it("lines beyond the points widen the surface", () => {
    const { tin } = lined(square, line("road", [20, 0, 1], [20, 10, 1]));
    expect(planAreaOf(tin)).toBeCloseTo(200, 9);
    expect(tinAt(tin, 15, 5)?.z).toBeCloseTo(0.5, 12);
  });

  it("crossing lines meet: at the mean of their heights, with a word where they disagree", () => {
    const made = lined(square, line("a", [1, 1, 0], [9, 9, 4]), line("b", [1, 9, 3], [9, 1, 3]));
    expect(tinAt(made.tin, 5, 5)?.z).toBeCloseTo(2.5, 4);
    expect(made.conflicts).toEqual([
      {
        kind: "crossing",
        x: expect.closeTo(5, 3),
        y: expect.closeTo(5, 3),
        lines: ["a", "b"],
        heights: [expect.closeTo(2, 9), 3],
        taken: expect.closeTo(2.5, 9),
      },
    ]);
    expect(isAlongSides(made.tin, [1, 1], [9, 9]) && isAlongSides(made.tin, [1, 9], [9, 1])).toBe(true);
  });

  it("at a crossing a given height goes before one that was read off", () => {
    const made = lined(square, line("given", [1, 1, 7], [9, 9, 7]), line("read", [1, 9], [9, 1]));
    expect(tinAt(made.tin, 5, 5)?.z).toBeCloseTo(7, 9);
    expect(made.conflicts).toEqual([]);
  });

  it("a corner on a point keeps the point's height, and says so; on a corner without height it gives its own", () => {
    const made = lined(square, line("a", [0, 0, 5], [5, 5]), line("b", [5, 5, 3], [9, 2, 0]));
    expect(tinAt(made.tin, 0, 0)?.z).toBe(0);
    expect(tinAt(made.tin, 5, 5)?.z).toBe(3);
    expect(made.conflicts).toEqual([{ kind: "corner", x: 0, y: 0, lines: ["a"], heights: [0, 5], taken: 0 }]);
  });

  it("doubled corners, a closed line, a line of one corner and one along the rim are all fine", () => {
    const { tin } = lined(
      square,
      line("closed", [2, 2, 1], [8, 2, 1], [8, 8, 1], [8, 8, 1], [2, 8, 1], [2, 2, 1]),
      line("one", [5, 5, 4]),
      line("rim", [0, 0, 0], [10, 0, 0]),
    );
    expectSound(tin, 9);
    expect(tinAt(tin, 5, 2)?.z).toBeCloseTo(1, 12);
    expect(tinAt(tin, 5, 5)?.z).toBe(4);
  });

  it("is the plain surface when there are no lines, and too little is too little", () => {
    expect([...lined(square).tin.triangles]).toEqual([...surfaceOf(square).triangles]);
    expect(triangulateWithLines([0, 1], [0, 0], [0, 0], [])).toEqual({ ok: false, reason: "too-few" });
    expect(triangulateWithLines([0, 1, 2], [0, 0, 0], [0, 0, 0], [line("a", [5, 0, 1], [9, 0, 1])])).toEqual({
      ok: false,
      reason: "in-line",
    });
  });
});

describe("a surface with any breaklines", () => {
  const small = fc.integer({ min: 0, max: 7 });
  const fine = fc.integer({ min: 0, max: 40_000 }).map((mm) => mm / 1000);
  const place = fc.constantFrom(small, fine);
  const site = place.chain((at) =>
    fc.record({
      points: fc.uniqueArray(fc.tuple(at, at, small), {
        minLength: 4,
        maxLength: 30,
        selector: ([x, y]) => `${x} ${y}`,
      }),
      lines: fc.array(fc.array(fc.tuple(at, at, small), { minLength: 2, maxLength: 4 }), {
        minLength: 1,
        maxLength: 4,
      }),
    }),
  );

  it("has every line along sides of triangles, is sound, and Delaunay but for the lines", () => {
    fc.assert(
      fc.property(site, ({ points, lines }) => {
        const made = triangulateWithLines(
          ...columns(points),
          lines.map((corners, i) => line(`${i}`, ...corners)),
        );
        fc.pre(made.ok);
        const { tin } = made;
        expectSound(tin, new Set(tin.triangles).size);
        for (const corners of lines)
          for (let i = 1; i < corners.length; i++) {
            const [from, to] = [corners[i - 1], corners[i]] as [Spot, Spot];
            if (from[0] === to[0] && from[1] === to[1]) continue;
            expect(isAlongSides(tin, [from[0], from[1]], [to[0], to[1]])).toBe(true);
          }
        expect(unforcedFaults(tin, lines)).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });

  /** Sides off the lines whose point across lies well inside the circle. */
  function unforcedFaults(tin: Tin, lines: readonly (readonly Spot[])[]): number[] {
    const { x, y, triangles, halfedges } = tin;
    const at = (e: number) =>
      [x[triangles[e] as number] as number, y[triangles[e] as number] as number] as const;
    const faults: number[] = [];
    for (let e = 0; e < halfedges.length; e++) {
      const twin = halfedges[e] as number;
      if (twin < 0) continue;
      const base = e - (e % 3);
      const next = e % 3 === 2 ? e - 2 : e + 1;
      const far = twin % 3 === 0 ? twin + 2 : twin - 1;
      const inside = inCircle(...at(base), ...at(base + 1), ...at(base + 2), ...at(far));
      // Topology is decided on a grid of 0.06 mm: a hair inside the circle may be outside there.
      if (inside > 0.2 && !isOnLine(lines, at(e), at(next))) faults.push(e);
    }
    return faults;
  }

  function isOnLine(
    lines: readonly (readonly Spot[])[],
    p: readonly [number, number],
    q: readonly [number, number],
  ): boolean {
    return lines.some((corners) =>
      corners.slice(1).some((to, i) => {
        const from = corners[i] as Spot;
        return [p, q].every((at) => Math.abs(turn(from[0], from[1], to[0], to[1], at[0], at[1])) < 0.01);
      }),
    );
  }
});
