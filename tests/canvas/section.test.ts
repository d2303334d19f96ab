import { describe, expect, it } from "vitest";
import { sectionOnPlan } from "../../src/canvas/section/sectionOnPlan";
import {
  asOnPlan,
  exaggerationWords,
  fitSection,
  footingBottom,
  sectionEnds,
  sectionPaths,
  sectionRange,
  sectionWay,
  sectionX,
  sectionY,
} from "../../src/canvas/section/sectionShapes";
import type { Box } from "../../src/canvas/view/freeArea";
import { foundationSchema } from "../../src/document";
import type { TextMark } from "../../src/drawing/marks";
import type { SectionLine } from "../../src/solve/results";
import { sectionEarth } from "../../src/solve/section-earth";

/** Level ground at 100 for 40 m; finished 101 between 10 and 20 m, 99.5 between 30 and 35 m. */
function section(): SectionLine {
  const stations = [0, 9, 10, 20, 21, 29, 30, 35, 36, 40];
  const finished = [100, 100, 101, 101, 100, 100, 99.5, 99.5, 100, 100];
  return {
    existing: Float64Array.from(stations.flatMap((d) => [d, 100])),
    finished: Float64Array.from(stations.flatMap((d, i) => [d, finished[i] as number])),
    guessed: new Uint8Array(10),
    start: [0, 20],
    end: [0, -20],
    building: null,
  };
}

const room = { width: 440, height: 170, padding: 20, above: 50 };
const building = { from: 10, to: 20, floor: 101, topOfWall: 101, foundation: foundationSchema.parse({}) };

/** Of all rings of a path, px2. */
function pathArea(path: string): number {
  const rings = path.split("M").filter((ring) => ring !== "");
  const area = (ring: string) => {
    const places = ring
      .replace("Z", "")
      .split("L")
      .map((place) => place.split(" ").map(Number));
    return places.reduce((sum, [x = 0, y = 0], i) => {
      const [u = 0, v = 0] = places[(i + 1) % places.length] ?? [];
      return sum + (x * v - u * y) / 2;
    }, 0);
  };
  return rings.reduce((sum, ring) => sum + Math.abs(area(ring)), 0);
}

describe("the section", () => {
  it("takes the largest round exaggeration that fits: 1.5 m on 100 px at 10 px a metre allows 6 times", () => {
    const fit = fitSection(sectionRange(section(), null), room);
    expect(fit.scale).toBe(10);
    expect(fit.exaggeration).toBe(6);
    expect(sectionX(fit, 0)).toBe(20);
    expect(sectionX(fit, 40)).toBe(420);
    // 90 of 100 px used: five above, five below.
    expect(sectionY(fit, 101)).toBeCloseTo(55, 9);
    expect(sectionY(fit, 99.5)).toBeCloseTo(145, 9);
  });

  it("sees down to the footing: 1.2192 + 0.2032 m below the wall's top", () => {
    const range = sectionRange(section(), { ...building, floor: 100.5, topOfWall: 100.5 });
    expect(range.low).toBeCloseTo(100.5 - 1.4224, 9);
    expect(range.high).toBe(101);
  });

  it("draws a steep hill smaller rather than flatter", () => {
    const steep = fitSection({ length: 40, low: 0, high: 20 }, room);
    expect(steep.exaggeration).toBe(1);
    expect(steep.scale).toBe(5);
    expect(sectionX(steep, 0)).toBe(120);
  });

  it("stays under the hand while everything still shows, and makes room when it doesn't", () => {
    const fit = fitSection(sectionRange(section(), building), room);
    const higher = { ...building, floor: 101.1, topOfWall: 101.1 };
    expect(fitSection(sectionRange(section(), higher), room, fit)).toBe(fit);
    const far = { ...building, floor: 109, topOfWall: 109 };
    expect(fitSection(sectionRange(section(), far), room, fit)).not.toBe(fit);
    expect(fitSection(sectionRange(section(), building), { ...room, width: 300 }, fit)).not.toBe(fit);
  });

  it("parts cut from fill", () => {
    const fit = fitSection(sectionRange(section(), null), room);
    const { cut, fill } = sectionPaths(section(), fit, null, sectionEarth(section(), 0, 0.2));
    const xs = (path: string) => [...path.matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x));
    expect(Math.min(...xs(fill))).toBe(sectionX(fit, 9));
    expect(Math.max(...xs(fill))).toBe(sectionX(fit, 21));
    expect(Math.min(...xs(cut))).toBe(sectionX(fit, 29));
    expect(Math.max(...xs(cut))).toBe(sectionX(fit, 36));
  });

  it("draws each stretch of cut or fill as one strip, as large as what is dug and filled", () => {
    const crossed = {
      ...section(),
      finished: section().finished.map((z, i) => (i === 7 ? 99 : z)),
    };
    const done = sectionEarth(crossed, 0, 0);
    const fit = fitSection(sectionRange(crossed, null), room);
    const { cut, fill } = sectionPaths(crossed, fit, null, done);
    // Fill to 10 m, then across into cut before 20 m; cut again from 29 m on.
    expect([fill.match(/M/g)?.length, cut.match(/M/g)?.length]).toEqual([1, 2]);
    const pixels = fit.scale ** 2 * fit.exaggeration;
    expect(pathArea(fill) / pixels).toBeCloseTo(done.fill, 1);
    expect(pathArea(cut) / pixels).toBeCloseTo(done.cut, 1);
  });

  it("shows the stripped ground only where something is done", () => {
    const fit = fitSection(sectionRange(section(), null), room);
    const { stripped } = sectionPaths(section(), fit, null, sectionEarth(section(), 0, 0.2));
    const xs = [...stripped.matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x));
    expect(Math.min(...xs)).toBeGreaterThan(sectionX(fit, 9));
    expect(Math.max(...xs)).toBeLessThan(sectionX(fit, 36));
    expect(sectionPaths(section(), fit, null, sectionEarth(section(), 0, 0)).stripped).toBe("");
  });

  it("leaves the finished line out inside the walls, where the floor stands", () => {
    const fit = fitSection(sectionRange(section(), building), room);
    const through = sectionPaths(
      section(),
      fit,
      { ...building, from: 9.5, to: 20.5 },
      sectionEarth(section(), 100, 0),
    ).finished;
    expect(through.match(/M/g)).toHaveLength(2);
  });

  it("says which way it runs, true north counted, and how it is drawn", () => {
    expect(sectionWay(section(), 0)).toBe("north to south");
    // True north a quarter clockwise of the plan's y axis is the plan's east, so the plan's south is true east.
    expect(sectionWay(section(), Math.PI / 2)).toBe("west to east");
    expect(exaggerationWords(1)).toBe("heights not stretched");
    expect(exaggerationWords(2.5)).toBe("heights drawn 2½ times");
    expect(exaggerationWords(6)).toBe("heights drawn 6 times");
  });
});

describe("the section beside the plan", () => {
  /** From x = 40 west to x = 0, down from 104 to 100, the building between 25 and 35 m along. */
  const westward = (): SectionLine => ({
    existing: Float64Array.from([0, 104, 10, 103, 40, 100]),
    finished: Float64Array.from([0, 104, 10, 102, 40, 100]),
    guessed: Uint8Array.from([1, 0, 0]),
    start: [40, 0],
    end: [0, 0],
    building: [25, 35],
  });

  it("shows on the left what lies left on the plan", () => {
    const seen = asOnPlan(westward());
    expect([...seen.existing]).toEqual([0, 100, 30, 103, 40, 104]);
    expect([...seen.finished]).toEqual([0, 100, 30, 102, 40, 104]);
    expect([...seen.guessed]).toEqual([0, 0, 1]);
    expect(seen.building).toEqual([5, 15]);
    expect([seen.start, seen.end]).toEqual([
      [0, 0],
      [40, 0],
    ]);
  });

  it("keeps a section that runs to the right, or straight down the plan", () => {
    const seen = asOnPlan(westward());
    expect(asOnPlan(seen)).toBe(seen);
    const down = section();
    expect(asOnPlan(down)).toBe(down);
  });

  it("names its ends by the project's north", () => {
    const seen = asOnPlan(westward());
    expect(sectionEnds(seen, 0)).toEqual(["W", "E"]);
    // North lies to the right on this plan.
    expect(sectionEnds(seen, Math.PI / 2)).toEqual(["S", "N"]);
    expect(sectionEnds(section(), 0)).toEqual(["N", "S"]);
  });

  it("is a line on the plan with the same letters, inside the plan's rim", () => {
    const view = { centre: [20, 0], scale: 40, angle: 0, width: 600, height: 400 } as const;
    const marks = sectionOnPlan(westward(), 0, view);
    const texts = marks.flatMap((mark) => (mark.kind === "text" ? [[mark.text, mark.at[0]]] : []));
    // 600 px show 15 m about x = 20; the letters stand 70 px, 1.75 m, inside.
    expect(texts).toEqual([
      ["W", expect.closeTo(14.25, 9)],
      ["E", expect.closeTo(25.75, 9)],
    ]);
    expect(sectionOnPlan(westward(), 0, { ...view, centre: [20, 90] })).toEqual([]);
  });

  it("has its letters clear of the plan's texts, while there is such a place", () => {
    const view = { centre: [20, 0], scale: 40, angle: 0, width: 600, height: 400 } as const;
    const lastLetter = (written: readonly Box[]) => {
      const letters = sectionOnPlan(westward(), 0, view, { written }).filter(({ kind }) => kind === "text");
      return (letters.at(-1) as TextMark | undefined)?.at[0];
    };
    // A lot line's length stands across the way of the letter E: 542 px is 12 px beyond the end at x = 25.75.
    const lotLine = { left: 535, right: 549, top: 120, bottom: 280 };
    expect(lastLetter([])).toBeCloseTo(25.75, 9);
    const moved = lastLetter([lotLine]) ?? 0;
    expect(300 + (moved - 20) * 40 + 12).toBeLessThan(lotLine.left - 9);
    // Texts everywhere: rather across one than no section.
    expect(lastLetter([{ left: 0, right: 600, top: 0, bottom: 400 }])).toBeCloseTo(25.75, 9);
  });
});

describe("the building's foundation in a section", () => {
  const bottom = (part: object, holes: number | null = null) =>
    footingBottom({ ...building, foundation: foundationSchema.parse(part), holes });

  it("reaches down by its kind: footing, edge, deepest hole", () => {
    expect(bottom({})).toBeCloseTo(101 - 1.2192 - 0.2032, 9);
    expect(bottom({ kind: "thickened-edge", edge: { depth: 0.4 } })).toBeCloseTo(100.6, 9);
    expect(bottom({ kind: "posts" }, 98.5)).toBe(98.5);
  });
});
