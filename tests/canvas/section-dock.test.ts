/** The sections below the plan: which there are, what they show, and the figures beside them. */
import { describe, expect, it } from "vitest";
import { cutLine, sectionEntries, shownSection } from "../../src/canvas/section/sectionChoice";
import { sectionFigures } from "../../src/canvas/section/sectionFigures";
import { sectionGrid } from "../../src/canvas/section/sectionGridLines";
import { fitSection, sectionRange } from "../../src/canvas/section/sectionShapes";
import { newProject } from "../../src/document";
import { polylineLength } from "../../src/geometry";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

const studio = demoProject("pottery-studio");
const results = createSolver().solve(studio);
const floor = studio.building?.floor ?? 0;

describe("sections below the plan", () => {
  it("go through the building both ways, along each drive and each line that was drawn", () => {
    const drawn = {
      ...studio,
      drawing: {
        ...studio.drawing,
        sections: [
          {
            id: "x1",
            name: "section P",
            line: [
              [10, 5],
              [30, 25],
            ] as [[number, number], [number, number]],
          },
        ],
      },
    };
    expect(sectionEntries(drawn).map(({ key }) => key)).toEqual([
      "along",
      "across",
      "drive:v1",
      "over:v1",
      "section:x1",
    ]);
    for (const { key } of sectionEntries(drawn)) {
      const shown = shownSection(key, drawn, results, floor, 0);
      expect(shown?.section.existing.length, key).toBeGreaterThan(100);
    }
    expect(sectionEntries(newProject())).toEqual([]);
  });

  it("go across a drive square to it, where most is moved before its landing or where it is asked for", () => {
    const [drive] = results.drives;
    const landing = drive?.nodes.find(({ kind }) => kind === "landing")?.distance ?? 0;
    const before = (drive?.stations ?? []).filter(({ distance }) => distance <= landing + 1e-6);
    const deepest = Math.max(...before.map((one) => Math.abs(one.finished - one.existing)));
    const shown = shownSection("over:v1", studio, results, floor, 0);
    const at = drive?.stations.find(({ distance }) => distance === shown?.over?.distance);
    expect(Math.abs((at?.finished ?? 0) - (at?.existing ?? 0))).toBe(deepest);
    const asked = shownSection("over:v1", studio, results, floor, 0, 4);
    expect(asked?.over).toEqual({ distance: 4, length: drive?.length });
    expect(asked?.name).toBe("drive");
    // It is cut on the plan where it is told.
    expect(cutLine(asked ?? null)).toEqual({ start: asked?.section.start, end: asked?.section.end });
    expect(shownSection("over:v1", studio, results, floor, 0, 900)?.over?.distance).toBe(drive?.length);
  });

  it("across the fall runs square to down the fall, through the middle of the building", () => {
    const [along, across] = (["along", "across"] as const).map((key) =>
      shownSection(key, studio, results, floor, 0),
    );
    const way = (shown: typeof along) => {
      const { start, end } = shown?.section ?? { start: [0, 0], end: [0, 0] };
      return [end[0] - start[0], end[1] - start[1]] as const;
    };
    const [a, b] = [way(along), way(across)];
    expect((a[0] * b[0] + a[1] * b[1]) / Math.hypot(...a) / Math.hypot(...b)).toBeCloseTo(0, 9);
    const [from, to] = across?.section.building ?? [0, 0];
    // The studio is 32′ by 24′.
    expect([7.3152, 9.7536].some((side) => Math.abs(to - from - side) < 1e-6)).toBe(true);
    expect(cutLine(across ?? null)).toEqual({ start: across?.section.start, end: across?.section.end });
  });

  it("along a drive is as long as its line, from the road to the door, and needs no line of its own", () => {
    const shown = shownSection("drive:v1", studio, results, floor, 0);
    const drive = studio.grading.drives[0];
    const distances = shown?.section.existing.filter((_, i) => i % 2 === 0) ?? new Float64Array();
    expect(distances[distances.length - 1]).toBeCloseTo(polylineLength(drive?.line ?? []), 6);
    expect(cutLine(shown)).toBeNull();
  });

  it("turn round with the plan: what is left on the plan is left in the section", () => {
    const [up, down] = [0.1, 0.1 + Math.PI].map((turn) =>
      shownSection("across", studio, results, floor, turn),
    );
    expect(up?.section.start).toEqual(down?.section.end);
    expect(up?.line[0]).toEqual(up?.section.start);
  });
});

describe("the figures", () => {
  const flat = {
    existing: Float64Array.of(0, 100, 10, 101, 20, 101),
    finished: Float64Array.of(0, 100, 10, 101.5, 20, 100.75),
    guessed: new Uint8Array(3),
    start: [0, 0] as [number, number],
    end: [20, 0] as [number, number],
    building: null,
  };
  const metric = { ...studio.display, length: "m" as const, rounding: 2 };

  it("at a distance lie between the samples", () => {
    expect(sectionFigures(flat, 5, metric)).toMatchObject({ existing: 100.5, finished: 100.75 });
    expect(sectionFigures(flat, 5, metric)?.words).toBe("5.00 m along · 0.25 m of fill");
    expect(sectionFigures(flat, 20, metric)?.words).toBe("20.00 m along · 0.25 m of cut");
    expect(sectionFigures(flat, 20.1, metric)).toBeNull();
  });

  it("stand at round heights from the mark and round lengths, with room between them", () => {
    const fit = fitSection(sectionRange(flat, null), {
      width: 620,
      height: 200,
      padding: 60,
      above: 34,
      below: 22,
    });
    const { heights, lengths } = sectionGrid(fit, metric, 100.5);
    expect(heights.map(({ text }) => text)).toContain("0");
    expect(heights.map(({ text }) => text)).toContain("+0.50 m");
    expect(lengths.map(({ text }) => text)).toEqual(["5.00 m", "10.00 m", "15.00 m", "20.00 m"]);
    for (const [i, { at }] of heights.entries()) {
      const next = heights[i + 1];
      if (next) expect((next.at - at) * fit.scale * fit.exaggeration).toBeGreaterThanOrEqual(22);
    }
  });

  it("are drawn as true as lengths where that is asked for", () => {
    const room = { width: 620, height: 200, padding: 60, above: 34, below: 22 };
    expect(fitSection(sectionRange(flat, null), room).exaggeration).toBeGreaterThan(1);
    expect(fitSection(sectionRange(flat, null), room, undefined, 1).exaggeration).toBe(1);
  });
});
