import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SectionLine } from "../../src/solve/results";
import { sectionEarth } from "../../src/solve/section-earth";

/** A section whose lines have these heights a metre apart. */
function section(
  existing: number[],
  finished: number[],
  building: [number, number] | null = null,
): SectionLine {
  const pairs = (heights: number[]) => Float64Array.from(heights.flatMap((z, i) => [i, z]));
  return {
    existing: pairs(existing),
    finished: pairs(finished),
    guessed: new Uint8Array(existing.length),
    start: [0, 0],
    end: [existing.length - 1, 0],
    building,
  };
}

describe("cut and fill along a section", () => {
  it("are trapezia between the lines, and triangles where they cross: first principles", () => {
    // A bank of 1 m over 2 m: trapezium of 1 to 1 over a metre, then down to nothing.
    expect(sectionEarth(section([0, 0, 0], [1, 1, 0]), 0, 0)).toMatchObject({ fill: 1.5, cut: 0 });
    // From 1 m of fill to 1 m of cut over 1 m: two triangles of half a metre by 1 m.
    const crossing = sectionEarth(section([0, 0], [1, -1]), 0, 0);
    expect(crossing.fill).toBeCloseTo(0.25, 12);
    expect(crossing.cut).toBeCloseTo(0.25, 12);
  });

  it("end inside the walls at the underside of the base, not at the floor", () => {
    const through = sectionEarth(section([0, 0, 0, 0, 0], [2, 2, 2, 2, 2], [0.5, 3.5]), 0.5, 0);
    expect([...through.earth]).toEqual([2, 0.5, 0.5, 0.5, 2]);
  });

  it("start from the stripped ground only where something is done", () => {
    const { stripped } = sectionEarth(section([5, 5, 5], [5, 6, 4]), 0, 0.2);
    expect([...stripped]).toEqual([5, 4.8, 4.8]);
  });

  it("differ by the area under the finished line less that under the ground", () => {
    const heights = fc.array(fc.integer({ min: -3000, max: 3000 }), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(heights, heights, (a, b) => {
        const count = Math.min(a.length, b.length);
        const [was, is] = [a, b].map((list) => list.slice(0, count).map((mm) => mm / 1000)) as [
          number[],
          number[],
        ];
        const { cut, fill } = sectionEarth(section(was, is), 0, 0);
        const under = (z: number[]) => z.slice(1).reduce((sum, next, i) => sum + (next + (z[i] ?? 0)) / 2, 0);
        expect(cut).toBeGreaterThanOrEqual(0);
        expect(fill).toBeGreaterThanOrEqual(0);
        expect(fill - cut).toBeCloseTo(under(is) - under(was), 9);
      }),
    );
  });
});
