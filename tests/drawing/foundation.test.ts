import { describe, expect, it } from "vitest";
import {
  type DimensionKey,
  dimension,
  dimensionKeys,
  dimensionsOf,
  withDimension,
} from "../../src/document/foundationDimensions";
import { foundationKinds, foundationSchema } from "../../src/document/schema";
import {
  type DrawingMark,
  dimensionMarks,
  elevationRows,
  elevationStrip,
  foundationSection,
  type SectionFacts,
  sectionCuts,
} from "../../src/drawing";
import { textBox } from "../../src/drawing/context";
import type { TextMark } from "../../src/drawing/marks";
import { createSolver } from "../../src/solve/pipeline";
import { flat, onGround, plane } from "../foundation/sites";
import { demoProject } from "../support/demo";

const metresPerMm = 0.03;
const facts = (part: object = {}, more: Partial<SectionFacts> = {}): SectionFacts => ({
  foundation: foundationSchema.parse(part),
  topOfWallAboveFloor: 0,
  existing: -0.5,
  finished: -0.15,
  bottom: -1.4224,
  fall: 0.05,
  sillBelowFloor: null,
  ...more,
});

function places(marks: readonly DrawingMark[]): [number, number][] {
  return marks.flatMap((mark) => {
    if (mark.kind === "text" || mark.kind === "symbol") return [[...mark.at] as [number, number]];
    const lists = mark.kind === "line" ? [mark.points] : mark.rings;
    return lists.flatMap((points) =>
      Array.from({ length: points.length / 2 }, (_, i): [number, number] => [
        points[2 * i] as number,
        points[2 * i + 1] as number,
      ]),
    );
  });
}

describe("the section through a foundation", () => {
  it("draws every kind within its bounds, with each of the kind's dimensions", () => {
    for (const kind of foundationKinds) {
      const at = facts(
        { kind, insulation: 0.05, frostDepth: 0.9 },
        { topOfWallAboveFloor: kind === "crawl-space" ? -0.2667 : 0 },
      );
      const { marks, dimensions, bounds } = foundationSection(at, metresPerMm);
      expect([...dimensions.map(({ key }) => key)].sort()).toEqual([...dimensionsOf(at.foundation)].sort());
      for (const [x, y] of places(marks)) {
        expect(x).toBeGreaterThanOrEqual(bounds.minX - 1e-9);
        expect(x).toBeLessThanOrEqual(bounds.maxX + 1e-9);
        expect(y).toBeGreaterThanOrEqual(bounds.minY - 1e-9);
        expect(y).toBeLessThanOrEqual(bounds.maxY + 1e-9);
      }
    }
  });

  it("is to scale: each dimension is as long as it says", () => {
    for (const kind of foundationKinds) {
      const foundation = foundationSchema.parse({ kind, insulation: 0.05 });
      const topOfWallAboveFloor = kind === "crawl-space" ? -foundation.crawl.floorThickness : 0;
      const bottoms = {
        "stem-wall": -foundation.wallHeight - foundation.footingThickness,
        "crawl-space": topOfWallAboveFloor - foundation.wallHeight - foundation.footingThickness,
        "thickened-edge": -foundation.edge.depth,
        posts: -2,
      };
      const { dimensions } = foundationSection(
        facts({ ...foundation }, { topOfWallAboveFloor, bottom: bottoms[kind] }),
        metresPerMm,
      );
      for (const { key, from, to } of dimensions)
        expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(dimension(foundation, key), 9);
    }
  });

  it("has a place for insulation that isn't there yet, and draws no figure for it", () => {
    for (const kind of ["stem-wall", "thickened-edge"] as const) {
      const at = facts({ kind });
      const found = foundationSection(at, metresPerMm).dimensions.find(({ key }) => key === "insulation");
      expect(found && dimensionMarks(found, String)).toEqual([]);
    }
  });

  it("writes each dimension's figure beside its line", () => {
    const at = facts();
    const [first] = foundationSection(at, metresPerMm).dimensions;
    if (!first) throw new Error("a section has dimensions");
    const marks = dimensionMarks(first, (m) => `${m.toFixed(4)} m`);
    expect(marks.filter(({ kind }) => kind === "symbol")).toHaveLength(2);
    expect(marks.find(({ kind }) => kind === "text")).toMatchObject({ text: "1.2192 m" });
  });

  it("measures the steps under the typed wall where the footing has stepped down", () => {
    const { measures } = foundationSection(facts({}, { bottom: -1.4224 - 0.4064 }), metresPerMm);
    expect(measures).toHaveLength(1);
    expect((measures[0]?.to[1] ?? 0) - (measures[0]?.from[1] ?? 0)).toBeCloseTo(0.4064, 9);
    expect(foundationSection(facts(), metresPerMm).measures).toEqual([]);
  });

  it("steps the slab down to a door's sill", () => {
    const slabOf = (sillBelowFloor: number | null) =>
      foundationSection(facts({}, { sillBelowFloor }), metresPerMm).marks.filter(
        (mark) =>
          mark.kind === "area" &&
          mark.style === "foundation-concrete" &&
          places([mark]).some(([x]) => x >= 1.25),
      );
    expect(Math.min(...places(slabOf(0.1)).map(([, y]) => y))).toBeCloseTo(-0.1 - 0.127, 9);
    expect(Math.min(...places(slabOf(null)).map(([, y]) => y))).toBeCloseTo(-0.127, 9);
  });
});

describe("dimensions by name", () => {
  it("read back what they set, whatever the kind", () => {
    const foundation = foundationSchema.parse({});
    for (const key of dimensionKeys) {
      const next = { ...foundation, ...withDimension(foundation, key, 0.321) };
      expect(dimension(next, key)).toBe(0.321);
      const others = dimensionKeys.filter((other: DimensionKey) => other !== key);
      for (const other of others) expect(dimension(next, other)).toBe(dimension(foundation, other));
    }
  });
});

describe("walls in elevation", () => {
  const options = { metresPerMm, figures: { length: (m: number) => m.toFixed(3) }, frostDepth: 0.9 };

  it("unroll each side at its true length, one beside the other", () => {
    const result = onGround(flat(10), plane(0, -0.1), { floor: 0.5 });
    const strip = elevationStrip(result, options);
    expect(strip.starts.map(({ length }) => length)).toEqual([10, 10, 10, 10]);
    strip.starts.slice(1).forEach(({ x }, i) => {
      expect(x).toBeGreaterThan((strip.starts[i]?.x ?? 0) + 10);
    });
    for (const [x, y] of places(strip.marks)) {
      expect(x).toBeGreaterThanOrEqual(strip.bounds.minX - 1e-9);
      expect(x).toBeLessThanOrEqual(strip.bounds.maxX + 1e-9);
      expect(y).toBeGreaterThanOrEqual(strip.bounds.minY - 1e-9);
      expect(y).toBeLessThanOrEqual(strip.bounds.maxY + 1e-9);
    }
  });

  it("tell how much shows and how deep the trench is at each end, and corners that fail", () => {
    const result = onGround(flat(10), plane(0, -0.1), { floor: 0.5, foundation: { frostDepth: 0.9 } });
    const texts = elevationStrip(result, options).marks.flatMap((mark) =>
      mark.kind === "text" ? [mark.text] : [],
    );
    expect(texts).toContain("side A-B, 10.000");
    expect(texts).toContain("shows 0.152");
    // 0.5 − 1.4224 = −0.9224 under A at 0 and B at −1.
    expect(texts).toContain("0.922 down");
    expect(texts).toContain("0.078 above ground");
    expect(texts.filter((text) => text === "above frost, too shallow")).toHaveLength(2);
  });

  it("stand so far apart that no side's words reach into the next or beyond the strip, however small they are drawn", () => {
    const result = onGround(flat(4), plane(0, -0.1), { floor: 0.5, foundation: { frostDepth: 0.9 } });
    for (const metresPerMm of [0.02, 0.1, 0.2]) {
      const { marks, bounds, starts } = elevationStrip(result, { ...options, metresPerMm });
      const spans = starts.map(({ x }, i) => {
        const next = starts[i + 1]?.x ?? Number.POSITIVE_INFINITY;
        const own = marks.filter(
          (mark): mark is TextMark =>
            mark.kind === "text" && mark.at[0] >= x - 2 * metresPerMm && mark.at[0] < next - 2 * metresPerMm,
        );
        const ends = own.map((mark) => {
          const box = textBox(mark, metresPerMm, 0);
          return [(box.x - box.width / 2) * metresPerMm, (box.x + box.width / 2) * metresPerMm] as const;
        });
        return [Math.min(...ends.map(([from]) => from)), Math.max(...ends.map(([, to]) => to))] as const;
      });
      spans.forEach(([from], i) => {
        expect(from).toBeGreaterThan(spans[i - 1]?.[1] ?? bounds.minX);
      });
      expect(spans.at(-1)?.[1]).toBeLessThan(bounds.maxX);
    }
  });

  it("stand in rows that are as wide as the page", () => {
    const result = onGround(flat(10), plane(0, -0.1), { floor: 0.5 });
    const rowsIn = (width: number) =>
      elevationRows(result, options, width).map(({ starts }) => starts.map(({ wall }) => wall));
    expect(rowsIn(100)).toEqual([[0, 1, 2, 3]]);
    expect(rowsIn(28)).toEqual([
      [0, 1],
      [2, 3],
    ]);
    expect(rowsIn(5)).toEqual([[0], [1], [2], [3]]);
  });

  it("draw steps with their height", () => {
    const { steps } = foundationSchema.parse({});
    const result = onGround(flat(10), plane(0, -0.1), {
      floor: 0.5,
      foundation: { steps: { ...steps, on: true } },
    });
    const strip = elevationStrip(result, { ...options, walls: [0] });
    const pieces = result.walls[0]?.pieces.length ?? 0;
    expect(pieces).toBeGreaterThan(2);
    expect(strip.marks.filter((mark) => mark.kind === "text" && mark.text === "0.203")).toHaveLength(
      pieces - 1,
    );
  });
});

describe("places to cut", () => {
  it("are the low and the high corner and each door", () => {
    const project = demoProject("pottery-studio");
    const { foundation } = createSolver().solve(project);
    if (!foundation) throw new Error("the demo has a foundation");
    const cuts = sectionCuts(project, foundation);
    expect(cuts.map(({ words }) => words)).toEqual([
      "at the low corner C",
      "at the high corner A",
      "through big door",
      "through side door",
    ]);
    expect(cuts[0]?.facts.existing).toBeLessThan(cuts[1]?.facts.existing ?? 0);
  });
});
