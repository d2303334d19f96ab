import { describe, expect, it } from "vitest";
import { rimOf, textOnScreen } from "../../src/canvas/scene/written";
import { pxPerMm } from "../../src/canvas/screen";
import { type SectionOnPlan, sectionOnPlan } from "../../src/canvas/section/sectionOnPlan";
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
import type { View } from "../../src/canvas/view/view";
import { type Building, foundationSchema, newProject, type Point } from "../../src/document";
import { createDrawContext, type DrawContext, textBox } from "../../src/drawing/context";
import { boxesOverlap } from "../../src/drawing/labels";
import type { TextMark } from "../../src/drawing/marks";
import { containsPoint } from "../../src/geometry";
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

/** From x = 40 west to x = 0, down from 104 to 100, the building between 25 and 35 m along. */
const westward = (): SectionLine => ({
  existing: Float64Array.from([0, 104, 10, 103, 40, 100]),
  finished: Float64Array.from([0, 104, 10, 102, 40, 100]),
  guessed: Uint8Array.from([1, 0, 0]),
  start: [40, 0],
  end: [0, 0],
  building: [25, 35],
});

describe("the section beside the plan", () => {
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
});

describe("the section's line on the plan", () => {
  const view: View = { centre: [20, 0], scale: 40, angle: 0, width: 600, height: 400 };
  const walls: Point[] = [
    [17, -2],
    [23, -2],
    [23, 2],
    [17, 2],
  ];
  const bare = { building: null, lot: { ...newProject().lot, north: 0 } };
  const fresh = (turn = 0) => createDrawContext({ metresPerMm: pxPerMm / 40, turn });
  const on = (context: DrawContext, { taken = [], seen = view, plan = bare }: Given = {}) =>
    sectionOnPlan({ cut: westward(), view: seen, taken }, plan, context);
  interface Given {
    readonly taken?: readonly Box[];
    readonly seen?: View;
    readonly plan?: Parameters<typeof sectionOnPlan>[1];
  }
  const letters = ({ ends }: SectionOnPlan) =>
    ends.flatMap((mark): readonly TextMark[] => (mark.kind === "text" ? [mark] : []));
  const boxOf = (mark: TextMark, turn = 0) => textBox(mark, pxPerMm / 40, 0, turn);

  it("has the letters of its ends, inside the plan's rim", () => {
    // 600 px show 15 m about x = 20; the letters stand 70 px, 1.75 m, inside.
    expect(letters(on(fresh())).map(({ text, at }) => [text, at[0]])).toEqual([
      ["W", expect.closeTo(14.25, 9)],
      ["E", expect.closeTo(25.75, 9)],
    ]);
    expect(on(fresh(), { seen: { ...view, centre: [20, 90] } })).toEqual({ line: [], ends: [] });
  });

  it("gives its letters places that no other text has, and that no other text gets", () => {
    const context = fresh();
    // A text across the way of the letter E, which stands 3.2 mm beyond the end at x = 25.75.
    const other = { x: (25.75 * 40) / pxPerMm + 3.2, y: 0, width: 3, height: 30, angle: 0 };
    context.labels.take("lot", other);
    const boxes = letters(on(context)).map((mark) => boxOf(mark));
    expect(boxes).toHaveLength(2);
    for (const box of boxes) {
      expect(boxesOverlap(box, other)).toBe(false);
      expect(context.labels.fits(box, "firm-lines")).toBe(false);
    }
  });

  it("has them off walls and signs, and not inside the building", () => {
    const turn = Math.PI / 4;
    const context = fresh(turn);
    context.labels.takeLine(
      "walls",
      [...walls.flat(), 17, -2].map((m) => (m * 40) / pxPerMm),
      0.9,
      true,
    );
    const plan = { ...bare, building: { outline: walls } as unknown as Building };
    const near: View = { ...view, angle: turn, width: 400, height: 320 };
    const found = letters(on(context, { seen: near, plan }));
    expect(found).toHaveLength(2);
    for (const mark of found) {
      const { x, y } = boxOf(mark, turn);
      const at: Point = [(x * pxPerMm) / 40, (y * pxPerMm) / 40];
      expect(containsPoint(walls, at[0], at[1])).toBe(false);
    }
  });

  it("has them off what lies over the plan, the line ends there too", () => {
    const button = { left: 520, right: 600, top: 150, bottom: 250 };
    const { line, ends } = on(fresh(), { taken: [button] });
    for (const mark of letters({ line, ends })) {
      const { right } = rimOf(textOnScreen(mark, view));
      expect(right).toBeLessThan(button.left);
    }
    const strokes = ends.flatMap((mark) => (mark.kind === "line" ? [mark.points[0]] : []));
    expect(line[0]?.kind === "line" && [line[0].points[0], line[0].points[2]]).toEqual(strokes);
  });

  it("goes without letters where there is room for none: they pile on nothing", () => {
    const context = fresh();
    context.labels.take("texts everywhere", { x: 100, y: 0, width: 900, height: 900, angle: 0 });
    const { line, ends } = on(context);
    expect(line).toHaveLength(1);
    expect(letters({ line, ends })).toEqual([]);
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
